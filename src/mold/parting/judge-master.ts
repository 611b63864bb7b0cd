import { type Finding, finding } from '../../findings/index.ts';
import type { Grid, TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { type MasterColumns, silhouetteCells } from './columns.ts';
import type { FieldResult } from './field.ts';
import { thinFeatures } from './thin-features.ts';

/** A contour missed by less than this (mm) is not worth a word. */
const smallConflict = 0.1;
/** Nor is a column or two: undercut under this, mm3. */
const smallUndercut = 0.05;
/** Undercut over this share of what a flat plane would leave, and of the master itself, asks for another lie. */
const lockedShare = { ofFlat: 0.3, ofMaster: 0.01 };
/** Undercut that is worth a warning or a name, mm3. */
const worthNaming = 1;
/** Metal does not reach the end of an edge thinner than this, mm; common practice, no published source. */
const knifeThickness = 0.1;
/** Flakes thinner than this (mm) tear off. */
const flake = 0.02;
/** Areas below this (mm2) are left out. */
const smallArea = 0.25;
/** Share of columns that rounding may spoil in a sound mesh. */
const mayBeCrossed = 0.002;

export interface MasterCase {
  readonly master: MasterColumns;
  readonly mesh: TriangleMesh;
  readonly lattice: Grid;
  /** Undefined where the parting surface is the plane. */
  readonly field: FieldResult | undefined;
  readonly input: { readonly slopeRad: number; readonly limitUp: number; readonly limitDown: number };
}

/** What cannot be done well about one master, each with its worst place. */
export function judgeMaster(given: MasterCase): Finding[] {
  const worst = survey(given);
  return [
    ...conflict(given, worst),
    ...limit(given, worst),
    ...locked(given, worst),
    ...thin(given, worst),
    ...thinFeatures(given.master, given.mesh, given.lattice),
  ];
}

/** A greatest value and its node in the master's window; -1 where there is none. */
interface Worst {
  value: number;
  node: number;
}

interface Survey {
  /** Number of columns over the lattice. */
  covered: number;
  /** Sums over columns, mm: solid; enclosed air; undercut left by a flat plane. */
  solid: number;
  air: number;
  flat: number;
  /** Sum over columns of the height by which conflicts keep the surface off the master, mm. */
  missed: number;
  /** Columns with a knife edge, and with a flake. */
  knives: number;
  flakes: number;
  readonly mostAir: Worst;
  readonly mostMissed: Worst;
  readonly farthestOut: Worst;
  readonly knife: Worst;
  readonly flake: Worst;
}

function survey({ master, lattice, field, input }: MasterCase): Survey {
  const none = (): Worst => ({ value: 0, node: -1 });
  const found: Survey = {
    covered: 0,
    solid: 0,
    air: 0,
    flat: 0,
    missed: 0,
    knives: 0,
    flakes: 0,
    mostAir: none(),
    mostMissed: none(),
    farthestOut: none(),
    knife: none(),
    flake: none(),
  };
  const { bottom, top, solid, depth, nx } = master;
  const left = field && field.missing.left.length > 0 ? field.missing.left : undefined;
  for (let k = 0; k < depth.length; k++) {
    if (depth[k] === 0) continue;
    const node = nodeOf(master, lattice, k % nx, Math.floor(k / nx));
    const thick = top[k] - bottom[k];
    const air = thick - solid[k];
    found.covered++;
    found.solid += solid[k];
    found.air += air;
    found.flat += air + Math.max(0, bottom[k], -top[k]);
    note(found.mostAir, air, k);
    if (field && left && left[node] > smallConflict) {
      const missed = Math.max(bottom[k] - field.heights[node], field.heights[node] - top[k]);
      if (missed > 0) found.missed += missed;
      note(found.mostMissed, missed, k);
    }
    note(found.farthestOut, Math.max(bottom[k] - input.limitUp, -input.limitDown - top[k]), k);
    if (depth[k] <= silhouetteCells) continue;
    if (thick < knifeThickness) {
      found.knives++;
      note(found.knife, knifeThickness - thick, k);
    } else {
      const s = field ? field.heights[node] : 0;
      const skin = Math.min(s - bottom[k], top[k] - s);
      if (skin <= 1e-4 || skin >= flake) continue;
      found.flakes++;
      note(found.flake, flake - skin, k);
    }
  }
  return found;
}

function note(worst: Worst, value: number, node: number): void {
  if (!(value > worst.value)) return;
  worst.value = value;
  worst.node = node;
}

const nodeOf = (master: MasterColumns, lattice: Grid, i: number, j: number): number =>
  (master.j0 + j) * lattice.nx + master.i0 + i;

function placeOf({ master, lattice, field }: MasterCase, { node }: Worst): Vec3 {
  const i = node % master.nx;
  const j = (node - i) / master.nx;
  return [
    lattice.x0 + (master.i0 + i) * lattice.cell,
    lattice.y0 + (master.j0 + j) * lattice.cell,
    field ? field.heights[nodeOf(master, lattice, i, j)] : 0,
  ];
}

/** What a finding is about. */
const about = (given: MasterCase, worst: Worst) => ({
  subject: given.master.id,
  place: placeOf(given, worst),
});

function conflict(given: MasterCase, { mostMissed, missed }: Survey): Finding[] {
  const volume = missed * given.lattice.cell ** 2;
  if (mostMissed.value <= smallConflict || volume < smallUndercut || !given.field) return [];
  const { asked } = given.field.missing;
  const i = mostMissed.node % given.master.nx;
  const j = (mostMissed.node - i) / given.master.nx;
  const room = asked[nodeOf(given.master, given.lattice, i, j)] / Math.tan(given.input.slopeRad);
  return [
    finding('mold.parting-conflict', {
      ...about(given, mostMissed),
      // A single thin tip is worth knowing, no more.
      severity: volume > worthNaming ? 'warn' : 'note',
      values: { measured: mostMissed.value, limit: smallConflict, room, volume },
    }),
  ];
}

function limit(given: MasterCase, { farthestOut }: Survey): Finding[] {
  if (farthestOut.value <= smallConflict) return [];
  const { limitUp, limitDown } = given.input;
  const i = farthestOut.node;
  const up = given.master.bottom[i] > limitUp;
  const bound = up ? limitUp : limitDown;
  const beyond = farthestOut.value;
  return [
    finding('mold.parting-limit', {
      ...about(given, farthestOut),
      values: { measured: beyond + bound, limit: bound, beyond, way: up ? 'rise' : 'fall' },
    }),
  ];
}

function locked(given: MasterCase, { covered, air, flat, solid, mostAir }: Survey): Finding[] {
  const { id, crossed } = given.master;
  const area = given.lattice.cell ** 2;
  if (crossed > mayBeCrossed * covered && crossed > 2) {
    return [finding('mold.crossed-shells', { subject: id, values: { measured: crossed * area } })];
  }
  const within = { measured: air * area, depth: mostAir.value };
  if (air > lockedShare.ofFlat * flat && air > lockedShare.ofMaster * solid) {
    const values = { ...within, limit: lockedShare.ofFlat * flat * area };
    return [finding('mold.undercut-locked', { ...about(given, mostAir), values })];
  }
  if (within.measured <= worthNaming) return [];
  const values = { ...within, limit: worthNaming };
  return [finding('mold.layered-columns', { ...about(given, mostAir), values })];
}

function thin(given: MasterCase, { knives, knife, flakes, flake: thinnest }: Survey): Finding[] {
  const area = given.lattice.cell ** 2;
  const found: Finding[] = [];
  if (knives * area > smallArea) {
    const values = { measured: knifeThickness - knife.value, limit: knifeThickness, area: knives * area };
    found.push(finding('mold.knife-edge', { ...about(given, knife), values }));
  }
  if (flakes * area > smallArea) {
    const values = { measured: flake - thinnest.value, limit: flake, area: flakes * area };
    found.push(finding('mold.parting-grazes', { ...about(given, thinnest), values }));
  }
  return found;
}
