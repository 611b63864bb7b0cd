import { type Finding, finding, type UnitSystem } from '../../findings/index.ts';
import {
  type Matrix4,
  moveMesh,
  type Point2,
  pointsOf,
  polygon,
  radPerDegree,
  reversed,
  type TriangleMesh,
} from '../../geometry/index.ts';
import type { Profile, Scope } from '../../kernel/index.ts';
import { depthText } from '../../lettering/index.ts';
import { sectionOf } from '../../mesh/index.ts';
import {
  heightAt,
  type Mold,
  masterOf,
  type Part,
  type PartingSurface,
  type Tip,
  task,
  tipsOf,
} from '../../mold/index.ts';
import { holeFit } from '../making/index.ts';
import {
  bossHoles,
  drawnTo,
  engravedPlate,
  freeSpace,
  indexCut,
  type LabelWish,
  letterPlate,
  outerRings,
  overlapsAmong,
  type PlanNames,
  planWords,
  plateThickness,
  rimTrack,
  roomBehind,
  type Standing,
  shaftHole,
  standingOn,
  wider,
} from '../plate/index.ts';
import { graduations, insideGraduation } from './graduations.ts';
import { partingPaper } from './parting-paper.ts';

const id = 'layout-plate';
const name = 'layout plate';
/** Size (mm) of the openings whose clearance is taken: that of a usual charm. */
const usualSize = 30;

interface PlateMaster {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly lowest: number;
  readonly turnRad: number;
  readonly tips: readonly Tip[];
}

interface PlateInput extends Standing, PlanNames {
  readonly radius: number;
  readonly thickness: number;
  readonly masters: readonly PlateMaster[];
  readonly surface: PartingSurface;
  readonly units: UnitSystem;
  readonly estimated: boolean;
}

/**
 * A plate as large as the disc that shows where everything goes: openings in the outline each master has at the
 * parting surface, with clearance, so that it drops into its place; holes for the heads of the bosses and the sprue
 * form's shaft; round the rim a graduation in degrees, along +x one in mm and along +y one in inches from the axis;
 * beside each opening its name, sink, turn and lie. With it the template for the parting paper: the same outlines without
 * clearance.
 */
export const layoutPlate: Part = task({
  id,
  title: name,
  processes: ['rubber'],
  units: (mold) => (mold.placements.length > 0 ? [{ subject: id, about: [], input: inputFor(mold) }] : []),
  run: (input, { kernel }) =>
    kernel.scope((scope) => {
      const { masters, fixture, thickness, estimated } = input;
      const exact = masters.map((master) => partingProfile(scope, master, input.surface));
      const gap = holeFit(fixture, usualSize) / 2;
      const windows = exact.map((profile) => wider(scope, profile, gap, fixture.footChamfer));
      const openings = windows.map((profile) => outerRings(scope, profile));
      const { outline, engraved, lettered, findings } = drawn(input, openings);
      const subjects = masters.map((master) => master.id);
      const naming = { id, title: name, role: 'layout plate', subjects, lettered, estimated } as const;
      const { solid, drawing } = engravedPlate(scope, { outline, thickness, engraved }, fixture, naming);
      const papers = exact.flatMap((profile) => outerRings(scope, scope.inset(profile, 0, drawnTo)));
      return {
        solids: [solid],
        drawings: [drawing, partingPaper(input, papers)],
        findings: [...overlaps(scope, input, windows), ...findings],
      };
    }),
});

function inputFor(mold: Mold): PlateInput {
  const { disc, revision, placements, parting, fixture, units } = mold;
  return {
    ...standingOn(mold),
    radius: disc.radius,
    label: disc.label,
    revision,
    thickness: plateThickness(fixture),
    masters: placements.map((placed) => {
      const { id: placement, matrix, lowest, turnRad } = placed;
      const { mesh } = masterOf(mold, placed);
      return { id: placement, mesh, matrix, lowest, turnRad, tips: tipsOf(placed) };
    }),
    surface: parting,
    units,
    estimated: placements.some((one) => one.estimated),
  };
}

/**
 * Where a master meets the parting surface, seen from above: heights are counted from the surface, which bends the
 * master but keeps it closed, and the section at 0 is taken. Its shadow where it does not reach the surface.
 */
function partingProfile(
  scope: Scope,
  { id: placement, mesh, matrix }: PlateMaster,
  surface: PartingSurface,
): Profile {
  const { positions, triangles } = moveMesh(mesh, matrix);
  const level = positions.slice();
  for (let i = 0; i < level.length; i += 3) level[i + 2] -= heightAt(surface, level[i], level[i + 1]);
  const rings = sectionOf({ positions: level, triangles });
  return rings.length > 0
    ? scope.profileOf(rings)
    : scope.shadow(scope.fromExactMesh({ positions: level, triangles }, placement));
}

/** The plate's edge and openings, and what is engraved between them. */
function drawn(input: PlateInput, openings: readonly (readonly Point2[][])[]) {
  const { radius } = input;
  const [shaft, bosses] = [shaftHole(input), bossHoles(input)];
  const open = [...openings.flat(), ...[...bosses, ...shaft].map((path) => pointsOf(path))];
  const index = indexCut(roomBehind([radius, 0], open));
  const notch: Point2[] = [
    [radius, index.width / 2],
    [radius - index.depth, 0],
    [radius, -index.width / 2],
  ];
  const outline = [
    rimTrack(radius, [index]),
    ...shaft,
    ...bosses,
    ...openings.flat().map((ring) => reversed(polygon(ring))),
  ];
  const foot = shaft.flatMap((path) => pointsOf(path).map(([x]) => x));
  const scales = graduations(radius, Math.max(0, ...foot), [...open, notch]);
  const words = planWords(input);
  const lettering = letterPlate({ id, title: name, words, radius }, wishes(input, openings), () =>
    freeSpace(insideGraduation(radius), open, scales),
  );
  return { ...lettering, outline, engraved: [...scales, ...lettering.engraved] };
}

/** Beside each opening its name, sink, turn and lie, or, where there is no room for the whole, less of it. */
const wishes = ({ masters, units }: PlateInput, openings: readonly (readonly Point2[][])[]): LabelWish[] =>
  masters.map(({ id: placement, lowest, turnRad, tips }, i) => {
    const deep = depthText(Math.max(0, -lowest), units);
    const turn = String(Math.round(turnRad / radPerDegree));
    const lie = tips.map(({ axis, degrees }) => `TIP ${axis.toUpperCase()} ${Math.round(degrees)}`);
    return {
      id: placement,
      rings: openings[i],
      texts: [
        [placement, `${deep} DEEP`, `TURN ${turn}`, ...(lie.length > 0 ? lie : ['NOT TIPPED'])],
        [placement, `${deep} DEEP`, `TURN ${turn}`, ...lie],
        [placement, [deep, turn, ...lie].join(', ')],
        [placement],
      ],
    };
  });

const overlaps = (scope: Scope, { masters }: PlateInput, profiles: readonly Profile[]): Finding[] =>
  overlapsAmong(scope, profiles).map(({ one, other, area }) =>
    finding('layout-plate.overlap', {
      subject: id,
      values: { measured: area, limit: 0, one: masters[other].id, other: masters[one].id },
    }),
  );
