import { finding, makeFigure } from '../../findings/index.ts';
import { type BoltCircle, type Check, check, fitsOnRim } from '../../mold/index.ts';
import { boltCircle } from '../from-mold/index.ts';
import { cornersOf, distanceTo, roundOf, span, type Thing } from './seen-from-above.ts';

const bySpacing = 'distance from the nearest bolt, seen from above, shanks as wide as their thread';

interface BoltInput {
  readonly things: readonly Thing[];
  readonly bolts?: BoltCircle;
  readonly missing: readonly string[];
}

/** Bosses and tabs clear of the can's bolts. Where the plan does not say how the bolts are turned, of their circle. */
export const fitBolts: Check = check<BoltInput>({
  id: 'fit-bolts',
  title: 'Clear of the bolts',
  follows: false,
  processes: ['rubber'],
  units: ({ bench, bosses, tabs, disc }) => {
    const onDisc = tabs.filter((tab) => fitsOnRim(tab, disc.radius));
    if (!bench.closing?.bolts || bosses.length + onDisc.length === 0) return [];
    const things = [...bosses.map(roundOf), ...onDisc.map((tab) => cornersOf(tab, disc.radius))];
    return [{ subject: 'closing', about: [], input: { things, ...boltCircle(bench) } }];
  },
  run: ({ things, bolts, missing }) => {
    if (!bolts) {
      const values = { which: 'bolts', missing } as const;
      return { findings: [finding('fit.not-checked', { subject: 'closing', values })] };
    }
    const which = bolts.startRad === undefined ? 'circle' : 'bolt';
    const gaps = things.map((thing) => ({ id: thing.id, gap: gapToBolts(thing, bolts) }));
    return {
      findings: gaps
        .filter(({ gap }) => gap <= 0)
        .map(({ id, gap }) =>
          finding('fit.bolt-hits', {
            subject: id,
            values: { which, measured: gap, limit: 0, overlap: -gap },
          }),
        ),
      figures: gaps.map(({ id, gap }) =>
        makeFigure('fit.boltGap', { subject: id, value: gap, source: bySpacing, estimated: false }),
      ),
    };
  },
});

function gapToBolts(thing: Thing, { radius, circle, count, startRad }: BoltCircle): number {
  if (startRad === undefined) {
    const { least, most } = span(thing);
    return Math.max(circle - most, least - circle) - radius;
  }
  const gaps = Array.from({ length: count }, (_, k) => {
    const angle = startRad + (2 * Math.PI * k) / count;
    return distanceTo(thing, circle * Math.cos(angle), circle * Math.sin(angle));
  });
  return Math.min(...gaps) - radius;
}
