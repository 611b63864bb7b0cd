import { channelMesh, type Mold, pinMesh } from '../../mold/index.ts';
import type { ShownChannel } from './messages.ts';
import { shownOf } from './reduce.ts';
import { send } from './send.ts';

/** Sends runners, gates, vents and vent pins to the page, with the section and the run that they are cut with. */
export function showChannels(
  edit: number,
  { channels, ventPins, disc, parting }: Pick<Mold, 'channels' | 'ventPins' | 'disc' | 'parting'>,
): void {
  const cut = channels.flatMap((channel): ShownChannel[] => {
    const mesh = channelMesh(channel, parting, 0);
    return mesh ? [{ id: channel.id, half: channel.half, mesh: shownOf(mesh, 0, mesh) }] : [];
  });
  const pins = ventPins.map((pin): ShownChannel => {
    const mesh = pinMesh(pin, disc);
    return { id: pin.id, half: pin.half, mesh: shownOf(mesh, 0, mesh) };
  });
  const shown = [...cut, ...pins];
  send(
    { kind: 'channels', edit, channels: shown },
    shown.map(({ mesh }) => mesh),
  );
}
