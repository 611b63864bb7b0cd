import type { RadiusSpec } from './sections/placements.ts';

/** Radial position in mm from the disc axis; may be negative where `fromRim` exceeds the radius. */
export function resolveRadius(spec: RadiusSpec, discRadius: number): number {
  if ('length' in spec) return spec.length;
  return 'share' in spec ? spec.share * discRadius : discRadius - spec.fromRim;
}
