import { toRadians } from '../geometry/index.ts';
import {
  discDefaults,
  fixtureDefaults,
  limitDefaults,
  type Plan,
  resolveSize,
  type Size,
  sprueDefaults,
} from '../plan/index.ts';
import { insertPockets, type MakingProcess, makingProcess, tapDrill, thread } from '../tables/index.ts';
import type { Bed, Disc, Fixture, Limits, Puller, Sprue } from './mold.ts';

/** The disc with defaults filled in; the schema has seen to it that thicknesses do not contradict each other. */
export function resolveDisc({ disc, title }: Plan): Disc {
  const thickness = disc.thickness ?? discDefaults.thickness;
  return {
    radius: disc.diameter / 2,
    lower: disc.lower ?? thickness,
    upper: disc.upper ?? thickness,
    rimChamfer: disc.rimChamfer ?? discDefaults.rimChamfer,
    label: disc.label ?? title ?? discDefaults.label,
  };
}

/** The sprue form, sized after the disc where the plan leaves sizes open; undefined where the plan has none. */
export function resolveSprue({ sprue, disc }: Plan): Sprue | undefined {
  if (!sprue) return undefined;
  const usual = sprueDefaults(disc.diameter);
  const puller = sprue.puller && resolvePuller(sprue.puller);
  const spread = (size: Size | undefined): number | undefined => resolveSize(size, disc.diameter);
  const hole = spread(sprue.hole);
  const wide = hole === undefined ? usual.wellDiameter : 1.5 * hole;
  return {
    holeRadius: (hole ?? usual.holeDiameter) / 2,
    draftRad: sprue.draftRad ?? usual.draftRad,
    wellRadius: (spread(sprue.well?.diameter) ?? wide) / 2,
    wellDepth: spread(sprue.well?.depth) ?? usual.wellDepth,
    domeRadius: (spread(sprue.dome?.diameter) ?? usual.domeDiameter) / 2,
    domeHeight: spread(sprue.dome?.height) ?? usual.domeHeight,
    fillet: sprue.fillet ?? usual.fillet,
    grip: sprue.grip ?? usual.grip,
    ...(puller && { puller }),
    ...(sprue.flats !== undefined && { flats: sprue.flats }),
    ...(sprue.vent !== undefined && { vent: sprue.vent }),
    ...(sprue.pieces && { pieces: sprue.pieces }),
  };
}

type PlanPuller = NonNullable<NonNullable<Plan['sprue']>['puller']>;

/** A drilled or insert hole; undefined where the tables hold no such thread, which judge-sprue says. */
function resolvePuller({ screw, hole, depth }: PlanPuller): Puller | undefined {
  const row = thread(screw);
  if (!row) return undefined;
  if (hole !== 'insert')
    return { screw: row.name, diameter: tapDrill(row), depth: depth ?? 2 * row.diameter };
  const pocket = insertPockets.find(({ size }) => size === row.name);
  return pocket && { screw: row.name, diameter: pocket.diameter, depth: depth ?? pocket.depth, insert: true };
}

type PlanFixture = NonNullable<Plan['fixture']>;

/** As the plan says, else by the process; none where neither is named. */
const holeCompensation = (fixture: PlanFixture | undefined): number =>
  fixture?.holeCompensation ?? (fixture?.process ? makingProcess(fixture.process).holeLoss.value : 0);

const footChamfer = (fixture: PlanFixture | undefined): number =>
  fixture?.footChamfer ?? (fixture?.process ? makingProcess(fixture.process).footChamfer.value : 0);

export function resolveFixture({ fixture }: Plan): Fixture {
  const holes = holeCompensation(fixture);
  const foot = footChamfer(fixture);
  return {
    material: fixture?.material ?? fixtureDefaults.material,
    ...(fixture?.material === undefined && { assumed: true }),
    clearance: fixture?.clearance ?? fixtureDefaults.clearance,
    chordError: fixture?.chordError ?? fixtureDefaults.chordError,
    relieve: fixture?.relieve ?? fixtureDefaults.relieve,
    ...(fixture?.compensation !== undefined && { compensation: fixture.compensation }),
    ...(holes > 0 && { holeCompensation: holes }),
    ...(foot > 0 && { footChamfer: foot }),
    ...(fixture?.jig?.width !== undefined && { jigWidth: fixture.jig.width }),
    ...(fixture?.jig?.thickness !== undefined && { jigThickness: fixture.jig.thickness }),
    ...(fixture?.plate?.thickness !== undefined && { plateThickness: fixture.plate.thickness }),
    ...(fixture?.make && { make: fixture.make }),
    ...(fixture?.cutter && { cutter: fixture.cutter }),
    ...(fixture?.bed && { bed: resolveBed(fixture.bed, fixture) }),
    ...(fixture?.process && { making: resolveMaking(fixture.process, fixture) }),
  };
}

const resolveBed = (bed: NonNullable<PlanFixture['bed']>, fixture: PlanFixture): Bed => ({
  ...bed,
  joint: jointClearance(fixture),
  margin: bed.margin ?? fixtureDefaults.bedMargin,
});

/** As the plan says, else by the process; a printer that lays filament where the plan names none. */
const jointClearance = ({ jointClearance: given, process = 'FDM' }: PlanFixture): number =>
  given ?? makingProcess(process).clearance.value;

function resolveMaking(process: MakingProcess['name'], given: PlanFixture) {
  const { overhangDeg, leastFeature } = makingProcess(process);
  const usual = overhangDeg && toRadians(overhangDeg.value);
  const overhangRad = given.overhang ?? usual;
  return {
    process,
    ...(overhangRad !== undefined && { overhangRad }),
    leastFeature: given.leastFeature ?? leastFeature.value,
  };
}

export function resolveLimits({ limits }: Plan): Limits {
  return {
    cover: limits?.cover ?? limitDefaults.cover,
    wall: limits?.wall ?? limitDefaults.wall,
    web: limits?.web ?? limitDefaults.web,
    cavityToWell: limits?.cavityToWell ?? limitDefaults.cavityToWell,
    cavityToBoss: limits?.cavityToBoss ?? limitDefaults.cavityToBoss,
    cavityToRim: limits?.cavityToRim ?? limitDefaults.cavityToRim,
    bossToRim: limits?.bossToRim ?? limitDefaults.bossToRim,
    falseSeat: limits?.falseSeat ?? limitDefaults.falseSeat,
    mismatch: limits?.mismatch ?? limitDefaults.mismatch,
    undercutShare: limits?.undercut ?? limitDefaults.undercutShare,
    slenderness: limits?.slenderness ?? limitDefaults.slenderness,
  };
}
