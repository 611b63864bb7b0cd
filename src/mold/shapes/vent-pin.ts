import type { TriangleMesh } from '../../geometry/index.ts';
import type { Disc, VentPin } from '../mold.ts';
import type { Lump } from './lump.ts';
import { rodMesh } from './revolved.ts';

/** From its outer face to where a pin's hole ends, mold frame, the lower first. */
export function pinSpan(
  { half, reach }: VentPin,
  disc: Pick<Disc, 'lower' | 'upper'>,
): readonly [number, number] {
  return half === 'upper' ? [disc.upper - reach, disc.upper] : [-disc.lower, reach - disc.lower];
}

/** The hole as far as it goes through the half. */
export function pinMesh(pin: VentPin, disc: Pick<Disc, 'lower' | 'upper'>): TriangleMesh {
  const [low, high] = pinSpan({ ...pin, reach: pin.depth }, disc);
  return rodMesh({ outer: pin.diameter / 2, low, high }, pin.x, pin.y);
}

/** What it takes out of its half. */
export function pinLump(pin: VentPin, disc: Pick<Disc, 'lower' | 'upper'>): Lump {
  const [low, high] = pinSpan({ ...pin, reach: pin.depth }, disc);
  const { x, y, diameter, depth } = pin;
  return { volume: (Math.PI / 4) * diameter ** 2 * depth, x, y, z: (low + high) / 2 };
}
