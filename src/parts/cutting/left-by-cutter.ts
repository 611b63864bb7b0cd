import { type Finding, finding } from '../../findings/index.ts';
import {
  inverse,
  moveMesh,
  movePoint,
  type TriangleMesh,
  toDegrees,
  toRadians,
} from '../../geometry/index.ts';
import type { Scope } from '../../kernel/index.ts';
import {
  closedByMill,
  type Fields,
  heightMap,
  knifeEdges,
  meshBetween,
  type Patch,
  patchesBetween,
} from '../../mesh/index.ts';
import { type Cutter, type Part, type PartOutput, type Solid, task } from '../../mold/index.ts';
import { type HalvesInput, halfSolids, halvesInput, subjectsOf } from '../halves/index.ts';
import { asSolid, type HalfName, halfNames, halfToPrint } from '../making/index.ts';
import { sayInnerEdges } from './inner-edges.ts';
import { subjectAt } from './subject-at.ts';

/** Nodes of the height field in the mill's radius, where the disc is not too large for that. */
const nodesInRadius = 8;
/** Nodes across the disc at most. */
const mostNodes = 1000;
/** What stands less over the true surface is no more than a finish, mm. */
const leastHeight = 0.05;
/** An edge sharper than this chips. Common practice, no published source. */
const knifeRad = toRadians(40);
/** Less of such edges than this in a half is not worth a word, mm. */
const leastEdge = 2;

interface CutInput {
  readonly halves: HalvesInput;
  readonly cutter?: Cutter;
}

/**
 * Of rigid halves that are machined: their tightest inner edges, their knife edges, and what the end mill named in the
 * plan leaves, milled upright from the parting face: a solid for each half, and for each placement or fixture where it
 * is. What a mill leaves on the outer faces is not looked at.
 */
export const leftByCutter: Part = task({
  id: 'left-by-cutter',
  title: 'what the cutter leaves',
  processes: ['rigid'],
  units: (mold) => {
    const { cutter, making } = mold.fixture;
    if (!cutter && making?.process !== 'machined') return [];
    return [{ subject: 'mold', about: [], input: { halves: halvesInput(mold), ...(cutter && { cutter }) } }];
  },
  run: ({ halves, cutter }, tools) => {
    const made = halfSolids(halves, tools).solids;
    const found = halfNames.map((half, i) => {
      const { mesh } = made[i];
      const left = cutter && tools.kernel.scope((scope) => leftInHalf(scope, half, mesh, { halves, cutter }));
      const edges = [
        ...sayInnerEdges(half, mesh, halves),
        ...sayEdges(half, mesh, halfToPrint(half, halves.disc)),
      ];
      return { solids: left?.solids ?? [], findings: [...(left?.findings ?? []), ...edges] };
    });
    return {
      solids: found.flatMap(({ solids }) => solids),
      findings: found.flatMap(({ findings }) => findings),
    };
  },
});

function leftInHalf(
  scope: Scope,
  half: HalfName,
  mesh: TriangleMesh,
  { halves, cutter }: Required<CutInput>,
): PartOutput {
  const { radius } = halves.disc;
  const cell = Math.max(cutter.diameter / 2 / nodesInRadius, (2 * radius) / mostNodes);
  const map = heightMap(mesh, { cell });
  const { bottom: _, top, ...grid } = map;
  const end = { radius: cutter.diameter / 2, kind: cutter.kind };
  const fields: Fields = { grid, lower: top, upper: closedByMill(map, end) };
  const patches = patchesBetween(fields, leastHeight);
  return {
    solids: patches.length === 0 ? [] : [asLeft(scope, half, meshBetween(fields, patches), halves)],
    findings: bySubject(patches, half, halves).map(([subject, there]) =>
      sayLeft(half, subject, there, { cutter, cell, halves }),
    ),
  };
}

/** In the half's own printing orientation, where in the half it is left. */
function asLeft(scope: Scope, half: HalfName, mesh: TriangleMesh, halves: HalvesInput): Solid {
  const toPrint = halfToPrint(half, halves.disc);
  const title = `left by the cutter in the ${half} half`;
  const body = scope.fromExactMesh(moveMesh(mesh, inverse(toPrint)), title);
  return asSolid(scope, body, toPrint, {
    id: `left-by-cutter-${half}`,
    title,
    role: 'left by the cutter',
    subjects: subjectsOf(halves),
    estimated: halves.placements.some(({ estimated }) => estimated),
  });
}

/** Spots by the placement or boss they lie at, else by the half; in the plan's order. */
function bySubject(patches: readonly Patch[], half: HalfName, halves: HalvesInput) {
  const toMold = inverse(halfToPrint(half, halves.disc));
  const subjects = subjectAt(halves);
  const halfId = `${half}-half`;
  const groups = new Map<string, Patch[]>([...subjects.ids, halfId].map((id) => [id, []]));
  for (const patch of patches) groups.get(subjects.at(movePoint(toMold, patch.place)) ?? halfId)?.push(patch);
  return [...groups].filter(([, there]) => there.length > 0);
}

interface Milled {
  readonly cutter: Cutter;
  readonly cell: number;
  readonly halves: HalvesInput;
}

function sayLeft(
  half: HalfName,
  subject: string,
  patches: readonly Patch[],
  { cutter, cell, halves }: Milled,
): Finding {
  const total = (of: (patch: Patch) => number): number => patches.reduce((sum, patch) => sum + of(patch), 0);
  return finding('cutter.left', {
    subject,
    place: movePoint(inverse(halfToPrint(half, halves.disc)), patches[0].place),
    values: {
      which: subject === `${half}-half` ? 'half' : 'thing',
      measured: total((patch) => patch.volume),
      half,
      mill: cutter.kind,
      diameter: cutter.diameter,
      area: total((patch) => patch.area),
      spots: patches.length,
      height: Math.max(...patches.map((patch) => patch.deepest)),
      cell,
    },
  });
}

function sayEdges(half: HalfName, mesh: TriangleMesh, toPrint: readonly number[]): Finding[] {
  const found = knifeEdges(mesh, knifeRad);
  if (!found || found.length < leastEdge) return [];
  return [
    finding('cutter.knife-edge', {
      subject: `${half}-half`,
      place: movePoint(inverse([...toPrint]), found.place),
      values: {
        measured: found.length,
        half,
        sharper: toDegrees(knifeRad),
        sharpest: toDegrees(found.sharpestRad),
      },
    }),
  ];
}
