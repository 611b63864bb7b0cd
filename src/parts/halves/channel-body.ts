import { type Body, KernelFault, type Scope } from '../../kernel/index.ts';
import { type Channel, channelMesh, overlap, type PartingSurface } from '../../mold/index.ts';

/** Cutter of a channel in the mold frame: the channel, and `overlap` mm over the parting surface into the other half, which it does not cut. */
export function channelBody(scope: Scope, channel: Channel, surface: PartingSurface): Body {
  const mesh = channelMesh(channel, surface, overlap);
  if (!mesh) throw new KernelFault(channel.id, 'the channel has no length, width or depth');
  return scope.fromExactMesh(mesh, channel.id);
}
