import { type Finding, type FindingCode, finding, type Measured } from '../../findings/index.ts';
import type { TriangleMesh, Vec3 } from '../../kernel/index.ts';
import type { Grid } from '../../mesh/index.ts';
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

function say(
  given: MasterCase,
  code: FindingCode,
  worst: Worst,
  [measured, limit]: readonly [Measured, Measured],
  says: string,
): Finding {
  return finding(code, { subject: given.master.id, place: placeOf(given, worst), measured, limit, says });
}

const mm = (value: number): Measured => ({ value, unit: 'mm' });
const mm2 = (value: number): Measured => ({ value, unit: 'mm2' });
const mm3 = (value: number): Measured => ({ value, unit: 'mm3' });

function conflict(given: MasterCase, { mostMissed, missed }: Survey): Finding[] {
  const volume = missed * given.lattice.cell ** 2;
  if (mostMissed.value <= smallConflict || volume < smallUndercut || !given.field) return [];
  const { asked } = given.field.missing;
  const i = mostMissed.node % given.master.nx;
  const j = (mostMissed.node - i) / given.master.nx;
  const room = asked[nodeOf(given.master, given.lattice, i, j)] / Math.tan(given.input.slopeRad);
  const says = `At ${given.master.id} the parting surface is short of ${room.toFixed(1)} mm of room to change height; it misses the contour by up to ${mostMissed.value.toFixed(2)} mm, which leaves ${volume.toFixed(2)} mm3 of undercut.`;
  // A single thin tip is worth knowing, no more.
  const severity = volume > worthNaming ? 'warn' : 'note';
  const found = say(
    given,
    'mold.parting-conflict',
    mostMissed,
    [mm(mostMissed.value), mm(smallConflict)],
    says,
  );
  return [{ ...found, severity }];
}

function limit(given: MasterCase, { farthestOut }: Survey): Finding[] {
  if (farthestOut.value <= smallConflict) return [];
  const { limitUp, limitDown } = given.input;
  const i = farthestOut.node;
  const up = given.master.bottom[i] > limitUp;
  const bound = up ? limitUp : limitDown;
  const says = `${given.master.id} lies up to ${farthestOut.value.toFixed(2)} mm beyond the ${bound} mm the parting surface may ${up ? 'rise' : 'fall'}.`;
  return [say(given, 'mold.parting-limit', farthestOut, [mm(farthestOut.value + bound), mm(bound)], says)];
}

function locked(given: MasterCase, { covered, air, flat, solid, mostAir }: Survey): Finding[] {
  const { id, crossed } = given.master;
  const area = given.lattice.cell ** 2;
  if (crossed > mayBeCrossed * covered && crossed > 2) {
    const says = `${id} crosses itself over ${(crossed * area).toFixed(2)} mm2, seen from above.`;
    return [finding('mold.crossed-shells', { subject: id, measured: mm2(crossed * area), says })];
  }
  const volume = air * area;
  const deepest = `${volume.toFixed(1)} mm3 of undercut within ${id} stay whatever the parting surface does, ${mostAir.value.toFixed(2)} mm at the deepest`;
  if (air > lockedShare.ofFlat * flat && air > lockedShare.ofMaster * solid) {
    const most = mm3(lockedShare.ofFlat * flat * area);
    return [say(given, 'mold.undercut-locked', mostAir, [mm3(volume), most], `${deepest}.`)];
  }
  if (volume <= worthNaming) return [];
  return [say(given, 'mold.layered-columns', mostAir, [mm3(volume), mm3(worthNaming)], `${deepest}.`)];
}

function thin(given: MasterCase, { knives, knife, flakes, flake: thinnest }: Survey): Finding[] {
  const area = given.lattice.cell ** 2;
  const { id } = given.master;
  const found: Finding[] = [];
  if (knives * area > smallArea) {
    const thickness = knifeThickness - knife.value;
    const says = `${id} is as thin as ${thickness.toFixed(3)} mm over ${(knives * area).toFixed(1)} mm2.`;
    found.push(say(given, 'mold.knife-edge', knife, [mm(thickness), mm(knifeThickness)], says));
  }
  if (flakes * area > smallArea) {
    const skin = flake - thinnest.value;
    const says = `The parting surface runs within ${flake} mm of the skin of ${id} over ${(flakes * area).toFixed(1)} mm2.`;
    found.push(say(given, 'mold.parting-grazes', thinnest, [mm(skin), mm(flake)], says));
  }
  return found;
}
