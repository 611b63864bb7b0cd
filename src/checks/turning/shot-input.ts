import type { Matrix4, TriangleMesh } from '../../geometry/index.ts';
import {
  alloyDensity,
  alloyTension,
  type Channel,
  channelVolume,
  legsOf,
  liquidAlloyDensity,
  type Mold,
  masterOf,
  openRun,
  type Placement,
  type Sprue,
} from '../../mold/index.ts';
import { type PressedArea, stripPressed } from '../../physics/index.ts';
import { imprintOf, leftOut } from '../from-mold/index.ts';

/** One cavity to be filled. */
export interface Cavity {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  /** mm3. */
  readonly volume: number;
  readonly castingMm3: number;
  readonly castingG?: number;
  readonly estimated: boolean;
}

/** What is poured, into what, and how it turns; left out is what the plan leaves out. */
export interface ShotInput {
  readonly missing: readonly string[];
  readonly cavities: readonly Cavity[];
  /** With runners and slowing pockets. */
  readonly gates: readonly { readonly volume: number; readonly pressed: PressedArea }[];
  /** Of the metal as it is poured; where only the solid's is known, that, which is told. */
  readonly densityKgM3?: number;
  /** Of the castings. */
  readonly solidKgM3?: number;
  readonly solidEstimated: boolean;
  readonly tensionNM?: number;
  readonly estimated: boolean;
  readonly sprue?: Sprue;
  readonly upper: number;
  readonly speedRpm?: number;
  readonly shotKg?: number;
  /** Instead of its mass: how far it lies from the least shot toward the largest. */
  readonly shotShare?: number;
  readonly detail?: number;
  readonly closingForceN?: number;
  readonly maxSpeedRpm?: number;
}

export function shotInput(mold: Mold): ShotInput {
  const { bench, sprue, placements, channels, disc } = mold;
  const { spin, machine } = bench;
  const [solid, liquid, tension] = [alloyDensity(mold), liquidAlloyDensity(mold), alloyTension(mold)];
  const density = liquid ?? solid;
  return {
    missing: leftOut([
      ['alloy.density', solid],
      ['alloy.liquidDensity', liquid],
      ['sprue', sprue],
      ['spin.speed', spin?.speedRpm],
      ['spin.shot', spin?.shotKg ?? spin?.shotShare],
      ['machine.closingForce', machine?.closingForceN],
    ]),
    cavities: placements.map((one) => cavityOf(mold, one)),
    gates: channels
      .filter(({ kind }) => kind !== 'vent')
      .map((gate) => ({ volume: channelVolume(gate), pressed: pressedAlong(gate) })),
    ...(density && { densityKgM3: density.value }),
    ...(solid && { solidKgM3: solid.value }),
    solidEstimated: (solid?.estimated ?? false) || placements.some((one) => one.estimated),
    ...(tension && { tensionNM: tension.value }),
    estimated: (density?.estimated ?? false) || !liquid || placements.some((one) => one.estimated),
    ...(sprue && { sprue }),
    upper: disc.upper,
    ...(spin?.speedRpm !== undefined && { speedRpm: spin.speedRpm }),
    ...(spin?.shotKg !== undefined && { shotKg: spin.shotKg }),
    ...(spin?.shotShare !== undefined && { shotShare: spin.shotShare }),
    ...(spin?.detail !== undefined && { detail: spin.detail }),
    ...(machine?.closingForceN !== undefined && { closingForceN: machine.closingForceN }),
    ...(machine?.maxSpeedRpm !== undefined && { maxSpeedRpm: machine.maxSpeedRpm }),
  };
}

const pressedAlong = (gate: Channel): PressedArea =>
  legsOf(openRun(gate))
    .map(({ from, to }) => stripPressed(from, to))
    .reduce(
      (sum, strip) => ({
        area: sum.area + strip.area,
        secondMoment: sum.secondMoment + strip.secondMoment,
      }),
      { area: 0, secondMoment: 0 },
    );

function cavityOf(mold: Mold, placement: Placement): Cavity {
  const { id, master, matrix, scale, estimated } = placement;
  const { mesh, massG } = masterOf(mold, { id, master });
  const { volume } = imprintOf(mold, placement);
  return {
    id,
    mesh,
    matrix,
    volume,
    // Shrink takes back what the allowance added to the master.
    castingMm3: volume / scale ** 3,
    ...(massG !== undefined && { castingG: massG }),
    estimated,
  };
}
