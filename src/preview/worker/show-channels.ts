import { channelMesh, type Mold } from '../../mold/index.ts';
import type { ShownChannel } from './messages.ts';
import { shownOf } from './reduce.ts';
import { send } from './send.ts';

/** Sends gates and vents to the page, with the section and the run that they are cut with. */
export function showChannels(edit: number, { channels, parting }: Pick<Mold, 'channels' | 'parting'>): void {
  const shown = channels.flatMap((channel): ShownChannel[] => {
    const mesh = channelMesh(channel, parting, 0);
    return mesh ? [{ id: channel.id, half: channel.half, mesh: shownOf(mesh, 0, mesh) }] : [];
  });
  send(
    { kind: 'channels', edit, channels: shown },
    shown.map(({ mesh }) => mesh),
  );
}
