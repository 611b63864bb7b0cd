import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type Boss, type Check, type Tab, work } from '../mold/index.ts';
import { threadDiameter } from '../tables/index.ts';
import { leftOut, notChecked } from './not-given.ts';
import { bossReach } from './turned-mesh.ts';

/** How much wider than the disc a can may be, mm; 1 to 2 is usual (from memory), with 1 mm to spare. */
const canPlay = { least: 1, most: 3 };
/** How far the halves may stand over or stay under the depth of the can, mm. Our own choice. */
const depthPlay = { over: 2, under: 0.5 };
/** A form of rubber-molding practice leaves with 1 degree at least; common practice, no published source. */
const leastDraftRad = Math.PI / 180;

const degrees = 180 / Math.PI;

const figure = (name: FigureName, subject: string, value: number, source: string): Figure =>
  makeFigure(name, { subject, value, source, estimated: false });

interface CanInput {
  readonly disc: { readonly diameter: number; readonly thickness: number };
  readonly can: { readonly diameter?: number; readonly depth?: number; readonly spacer?: number };
}

/** Disc in can: diameter and depth. */
export const discInCan: Check = work<CanInput, ReportPart>({
  id: 'fit-can',
  title: 'Disc in the can',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ disc, bench, placements }) => {
    // A plan of a sprue form alone has nothing to cure.
    if (placements.length === 0 && !bench.can) return [];
    const { diameter, depth, spacer } = bench.can ?? {};
    const can = {
      ...(diameter !== undefined && { diameter }),
      ...(depth !== undefined && { depth }),
      ...(spacer !== undefined && { spacer }),
    };
    const whole = { diameter: 2 * disc.radius, thickness: disc.lower + disc.upper };
    return [{ subject: 'can', input: { disc: whole, can } }];
  },
  run: ({ disc, can }) => {
    const findings: Finding[] = [];
    const figures: Figure[] = [];
    const missing = leftOut([
      ['can.diameter', can.diameter],
      ['can.depth', can.depth],
    ]);
    if (missing.length > 0)
      findings.push(notChecked('fit.not-checked', 'can', 'The fit of the disc in the can is', missing));
    if (can.diameter !== undefined) {
      const gap = can.diameter - disc.diameter;
      figures.push(figure('fit.canGap', 'can', gap, 'diameter of the can less that of the disc'));
      findings.push(...judgeGap(gap));
    }
    if (can.depth !== undefined) {
      const left = can.depth - (can.spacer ?? 0) - disc.thickness;
      figures.push(figure('fit.depthLeft', 'can', left, 'depth of the can less spacers and both halves'));
      findings.push(...judgeDepth(left));
    }
    return { findings, figures };
  },
});

function judgeGap(gap: number): Finding[] {
  const say = (
    code: 'fit.can-narrow' | 'fit.can-tight' | 'fit.can-wide',
    limit: number,
    says: string,
  ): Finding[] => [
    finding(code, {
      subject: 'can',
      measured: { value: gap, unit: 'mm' },
      limit: { value: limit, unit: 'mm' },
      says,
    }),
  ];
  if (gap < 0) return say('fit.can-narrow', 0, `The disc is ${mm(-gap)} wider than the can.`);
  if (gap < canPlay.least)
    return say(
      'fit.can-tight',
      canPlay.least,
      `The can is ${mm(gap)} wider than the disc; ${mm(canPlay.least)} is wanted.`,
    );
  if (gap > canPlay.most)
    return say(
      'fit.can-wide',
      canPlay.most,
      `The can is ${mm(gap)} wider than the disc; at most ${mm(canPlay.most)} is wanted.`,
    );
  return [];
}

function judgeDepth(left: number): Finding[] {
  const say = (code: 'fit.can-shallow' | 'fit.can-deep', limit: number, says: string): Finding[] => [
    finding(code, {
      subject: 'can',
      measured: { value: left, unit: 'mm' },
      limit: { value: limit, unit: 'mm' },
      says,
    }),
  ];
  if (left < -depthPlay.over)
    return say(
      'fit.can-shallow',
      -depthPlay.over,
      `Both halves stand ${mm(-left)} over the depth of the can.`,
    );
  if (left > depthPlay.under)
    return say(
      'fit.can-deep',
      depthPlay.under,
      `Both halves leave ${mm(left)} of the depth of the can empty.`,
    );
  return [];
}

interface SprueInput {
  readonly holeRadius: number;
  readonly draftRad: number;
  readonly grip: number;
  readonly upper: number;
  readonly inCan: boolean;
}

/** The sprue form in the hole of the upper half: its draft, what is left of it at the outer face, the lid over it. */
export const sprueInHole: Check = work<SprueInput, ReportPart>({
  id: 'fit-sprue',
  title: 'Sprue form in its hole',
  scope: 'whole',
  processes: ['rubber', 'rigid', 'poured'],
  jobs: ({ sprue, disc, bench, process }) => {
    if (!sprue) return [];
    const { holeRadius, draftRad, grip } = sprue;
    const inCan = process === 'rubber' && bench.can !== undefined;
    return [{ subject: 'sprue', input: { holeRadius, draftRad, grip, upper: disc.upper, inCan } }];
  },
  run: ({ holeRadius, draftRad, grip, upper, inCan }) => {
    const top = 2 * (holeRadius - upper * Math.tan(draftRad));
    const figures = [
      figure(
        'fit.sprueDraft',
        'sprue',
        draftRad * degrees,
        'angle between the wall of the shaft and the axis',
      ),
      figure(
        'fit.holeTop',
        'sprue',
        top,
        'radius at the parting plane less thickness times tan of the draft',
      ),
    ];
    return { findings: judgeSprue(top, draftRad, inCan ? grip : 0), figures };
  },
});

function judgeSprue(top: number, draftRad: number, grip: number): Finding[] {
  const subject = 'sprue';
  const closed = finding('fit.sprue-closed', {
    subject,
    measured: { value: top, unit: 'mm' },
    limit: { value: 0, unit: 'mm' },
    says: `With ${(draftRad * degrees).toFixed(1)} degrees of draft nothing of the pouring hole is left at the outer face.`,
  });
  if (top <= 0) return [closed];
  const findings: Finding[] = [];
  if (draftRad < leastDraftRad - 1e-9)
    findings.push(
      finding('fit.sprue-draft', {
        subject,
        measured: { value: draftRad * degrees, unit: 'deg' },
        limit: { value: leastDraftRad * degrees, unit: 'deg' },
        says: `The sprue form has ${(draftRad * degrees).toFixed(2)} degrees of draft, where 1 degree is wanted.`,
      }),
    );
  if (grip > 0) {
    const says = `The sprue form stands ${mm(grip)} out of the upper half: the lid needs a hole of at least ${mm(top)}.`;
    findings.push(finding('fit.sprue-lid', { subject, measured: { value: grip, unit: 'mm' }, says }));
  }
  return findings;
}

type Thing =
  | { readonly id: string; readonly x: number; readonly y: number; readonly reach: number }
  | { readonly id: string; readonly corners: readonly (readonly [number, number])[] };

interface BoltInput {
  readonly things: readonly Thing[];
  readonly bolts?: {
    readonly radius: number;
    readonly circle: number;
    readonly count: number;
    /** Left out: they may stand anywhere on their circle. */
    readonly startRad?: number;
  };
  readonly missing: readonly string[];
}

/** Bosses and tabs clear of the can's bolts. Where the plan does not say how the bolts are turned, of their circle. */
export const clearOfBolts: Check = work<BoltInput, ReportPart>({
  id: 'fit-bolts',
  title: 'Clear of the bolts',
  scope: 'whole',
  processes: ['rubber'],
  jobs: ({ bench, bosses, tabs, disc }) => {
    const given = bench.closing?.bolts;
    if (!given || bosses.length + tabs.length === 0) return [];
    const things = [...bosses.map(roundOf), ...tabs.map((tab) => cornersOf(tab, disc.radius))];
    const { circle, count, size, startRad } = given;
    const diameter = threadDiameter(size);
    const missing = leftOut([['closing.bolts.circle', circle]]);
    if (diameter === undefined) missing.push('closing.bolts.size');
    const bolts =
      circle === undefined || diameter === undefined
        ? {}
        : {
            bolts: {
              radius: diameter / 2,
              circle: circle / 2,
              count,
              ...(startRad !== undefined && { startRad }),
            },
          };
    return [{ subject: 'closing', input: { things, missing, ...bolts } }];
  },
  run: ({ things, bolts, missing }) => {
    if (!bolts)
      return {
        findings: [
          notChecked(
            'fit.not-checked',
            'closing',
            'Whether bosses and tabs are clear of the bolts is',
            missing,
          ),
        ],
      };
    const gaps = things.map((thing) => ({ id: thing.id, gap: gapToBolts(thing, bolts) }));
    return {
      findings: gaps
        .filter(({ gap }) => gap <= 0)
        .map(({ id, gap }) =>
          finding('fit.bolt-hits', {
            subject: id,
            measured: { value: gap, unit: 'mm' },
            limit: { value: 0, unit: 'mm' },
            says:
              bolts.startRad === undefined
                ? `${id} lies on the circle of the bolts by ${mm(-gap)}, and the plan does not say where on it they stand.`
                : `${id} is hit by a bolt, by ${mm(-gap)}.`,
          }),
        ),
      figures: gaps.map(({ id, gap }) =>
        figure(
          'fit.boltGap',
          id,
          gap,
          'distance from the nearest bolt, seen from above, shanks as wide as their thread',
        ),
      ),
    };
  },
});

const roundOf = (boss: Boss): Thing => ({ id: boss.id, x: boss.x, y: boss.y, reach: bossReach(boss) });

/** The four corners of a tab, seen from above. */
function cornersOf({ id, angleRad, width, length, inset }: Tab, radius: number): Thing {
  const half = width / 2;
  // Its outer corners are `inset` from the rim.
  const outer = Math.sqrt(Math.max(0, (radius - inset) ** 2 - half ** 2));
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const corners = (
    [
      [outer, half],
      [outer, -half],
      [outer - length, -half],
      [outer - length, half],
    ] as const
  ).map(([out, side]) => [out * c - side * s, out * s + side * c] as const);
  return { id, corners };
}

function gapToBolts(
  thing: Thing,
  { radius, circle, count, startRad }: NonNullable<BoltInput['bolts']>,
): number {
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

/** Least and greatest distance of a thing from the axis; 0 at least for what holds the axis, which no tab does. */
function span(thing: Thing): { least: number; most: number } {
  if (!('corners' in thing)) {
    const middle = Math.hypot(thing.x, thing.y);
    return { least: middle - thing.reach, most: middle + thing.reach };
  }
  return {
    least: distanceTo(thing, 0, 0),
    most: Math.max(...thing.corners.map(([x, y]) => Math.hypot(x, y))),
  };
}

/** Distance of a point from the outline of a thing, negative inside. */
function distanceTo(thing: Thing, x: number, y: number): number {
  if (!('corners' in thing)) return Math.hypot(x - thing.x, y - thing.y) - thing.reach;
  const { corners } = thing;
  const sides = corners.map((a, i) => sideDistance(a, corners[(i + 1) % corners.length], x, y));
  const nearest = Math.min(...sides.map(({ distance }) => distance));
  const inside = sides.every(({ left }) => left) || sides.every(({ left }) => !left);
  return inside ? -nearest : nearest;
}

type Corner = readonly [number, number];

function sideDistance([ax, ay]: Corner, [bx, by]: Corner, x: number, y: number) {
  const [dx, dy] = [bx - ax, by - ay];
  const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return {
    distance: Math.hypot(x - ax - along * dx, y - ay - along * dy),
    left: dx * (y - ay) - dy * (x - ax) > 0,
  };
}

const mm = (value: number): string => `${value.toFixed(2)} mm`;
