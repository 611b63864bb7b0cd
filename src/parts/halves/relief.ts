import type { Body, Profile, Scope } from '../../kernel/index.ts';
import type { HalfName } from '../making/index.ts';

/**
 * How far the relief stays inside the master's shadow (mm): a cutter flush with the silhouette would touch the cavity
 * all along it and leave slivers. A rigid casting keeps an undercut of this much, under its own shrink.
 */
const reliefInset = 0.02;
/** Height of one step, mm: an undercut lower than this may stay. */
const step = 0.2;
const mostSteps = 100;
/** Where in a step the section is taken: not where the faces of a drawn master lie. */
const phase = 0.37;
/** Points of a section stand on a grid of 2^-9 mm, so that steps above each other share their walls exactly. */
const gridPerMm = 512;

/** Overhung material smaller than this in a section, mm2, is left. */
const leastArea = 0.005;

/** Overhung material's section: the area (mm2) of a half's material within a profile at height z. */
export type MaterialWithin = (profile: Profile, z: number) => number;

/**
 * What keeps a rigid casting from leaving a half straight through the parting surface: the half's material over
 * (lower half) or under (upper half) any part of the master. The master is cut in steps of 0.2 mm (a hundred at most);
 * a step in which the shadow of all steps before it meets material is filled with that shadow. `end` (z, mm) is the
 * farthest place of the parting surface; the half itself ends the cut there. None where nothing is overhung.
 */
export function reliefBodies(
  scope: Scope,
  master: Body,
  half: HalfName,
  end: number,
  material: MaterialWithin,
  what: string,
): Body[] {
  const { min, max } = master.boundingBox();
  const up = half === 'lower' ? 1 : -1;
  const start = half === 'lower' ? min[2] : max[2];
  const depth = up * (end - start);
  const height = Math.max(step, depth / mostSteps);
  const slabs: Slab[] = [];
  let shadow: Profile | undefined;
  for (let at = phase * height; at < depth; at += height) {
    const from = start + up * at;
    const section = scope.slice(master, from);
    shadow = shadow ? scope.uniteProfiles([shadow, section]) : section;
    const filled = scope.inset(shadow, reliefInset, reliefInset / 10);
    if (!(material(filled, from) > leastArea)) continue;
    add(slabs, {
      outlines: onGrid(filled.toPolygons()),
      from,
      to: start + up * Math.min(at + height, depth),
    });
  }
  return slabs.map(({ outlines, from, to }) =>
    scope.extrude(outlines, Math.min(from, to), Math.max(from, to), what),
  );
}

type Outlines = readonly (readonly (readonly [number, number])[])[];

interface Slab {
  readonly outlines: Outlines;
  readonly from: number;
  readonly to: number;
}

/** Slabs of one outline on top of each other become one. */
function add(slabs: Slab[], slab: Slab): void {
  const last = slabs.at(-1);
  if (
    last &&
    Math.abs(last.to - slab.from) < 1e-9 &&
    JSON.stringify(last.outlines) === JSON.stringify(slab.outlines)
  ) {
    slabs[slabs.length - 1] = { ...last, to: slab.to };
  } else slabs.push(slab);
}

const onGrid = (outlines: Outlines): Outlines =>
  outlines.map((outline) =>
    outline.map(
      ([x, y]) => [Math.round(x * gridPerMm) / gridPerMm, Math.round(y * gridPerMm) / gridPerMm] as const,
    ),
  );
