import { type Cells, middleOf, sides, wall } from '../../../src/fill/cells.ts';
import { room } from '../../fill/room.ts';
import { type FlowCase, isIn } from './flow-cases.ts';

/** Metal and air of the runs, SI; and how they are run. The air is not pressed together. */
export const settings = {
  solver: 'OpenFOAM 1912 (Debian 1912.200626), interFoam',
  densityKgM3: 7000,
  viscosityM2S: 2.5e-7,
  airDensityKgM3: 1.2,
  airViscosityM2S: 1.5e-5,
  tensionNM: 0.55,
  angleDeg: 145,
  pullMS2: 140,
  streamMS: 2,
  courant: 0.4,
};

/** Cells of the cavity and its feed together, or of the cavity alone (moved out along x). */
export function cellsOfCase({ cell, bounds: [low, high], cavity, feed }: FlowCase, moved?: number): Cells {
  const size = low.map((from, axis) => Math.round((high[axis] - from) / cell)) as [number, number, number];
  const first = low.map((from) => from + cell / 2) as [number, number, number];
  const out = moved ?? 0;
  const inside = (x: number, y: number, z: number): boolean =>
    cavity(x - out, y, z) || (moved === undefined && feed.some((box) => isIn(box, [x, y, z])));
  return room(size, cell, [first[0] + out, first[1], first[2]], inside);
}

/** Metal that is poured in, mm3/s. */
export function streamOf({ feed: [[low, high]] }: FlowCase): number {
  return (settings.streamMS * 1000 * (high[1] - low[1]) * (high[2] - low[2])) / 2;
}

type Patch = 'stream' | 'open' | 'vent' | 'walls';
const patches: readonly Patch[] = ['stream', 'open', 'vent', 'walls'];

/** Which patch the wall on one side (as in `Cells.beside`) of a cell is. */
function patchAt(one: FlowCase, [x, y, z]: readonly [number, number, number], side: number): Patch {
  const [low, high] = one.feed[0];
  if (side === 0 && x - one.cell < low[0]) return y < (low[1] + high[1]) / 2 ? 'stream' : 'open';
  return one.vent && isIn(one.vent, [x, y, z]) ? 'vent' : 'walls';
}

const header = (kind: string, object: string): string =>
  `FoamFile { version 2.0; format ascii; class ${kind}; object ${object}; }\n`;
const listOf = (lines: readonly string[]): string => `${lines.length}\n(\n${lines.join('\n')}\n)\n`;
/** Corners of the face on each side of a cell (in the order of `Cells.beside`), seen so that it looks outward. */
const corners = Array.from({ length: sides }, (_, side) => {
  const [axis, high] = [side >> 1, side % 2];
  const round = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ].map((pair) => [0, 1, 2].map((a) => (a === axis ? high : pair[(a - axis + 2) % 3])));
  return high === 1 ? round : round.reverse();
});

/** The cells as a mesh of the solver: faces between two cells by the lower number, then those of each patch. */
function meshOf(one: FlowCase, cells: Cells): Record<string, string> {
  const [nx, ny] = cells.size;
  const points: string[] = [];
  const numbers = new Map<number, number>();
  const pointAt = (c: number, corner: readonly number[]): number => {
    const [i, j, k] = corner.map((step, axis) => cells.at[3 * c + axis] + step);
    const key = (k * (ny + 1) + j) * (nx + 1) + i;
    const known = numbers.get(key);
    if (known !== undefined) return known;
    const at = [i, j, k].map((n, axis) => ((cells.low[axis] + (n - 0.5) * cells.cell) * 1e-3).toPrecision(9));
    numbers.set(key, points.length);
    return points.push(`(${at.join(' ')})`) - 1;
  };
  const faces: string[] = [];
  const owner: string[] = [];
  const neighbor: string[] = [];
  const outer: Record<Patch, [number, number][]> = { stream: [], open: [], vent: [], walls: [] };
  const add = (c: number, side: number): void => {
    faces.push(`4(${corners[side].map((corner) => pointAt(c, corner)).join(' ')})`);
    owner.push(`${c}`);
  };
  for (let c = 0; c < cells.count; c++)
    for (let side = 0; side < sides; side++) {
      const n = cells.beside[sides * c + side];
      if (n === wall) outer[patchAt(one, middleOf(cells, c), side)].push([c, side]);
      else if (n > c) {
        add(c, side);
        neighbor.push(`${n}`);
      }
    }
  const rows = patches.map((patch) => {
    const start = faces.length;
    for (const [c, side] of outer[patch]) add(c, side);
    const type = patch === 'walls' ? 'wall' : 'patch';
    return `${patch} { type ${type}; nFaces ${outer[patch].length}; startFace ${start}; }`;
  });
  return {
    'constant/polyMesh/points': header('vectorField', 'points') + listOf(points),
    'constant/polyMesh/faces': header('faceList', 'faces') + listOf(faces),
    'constant/polyMesh/owner': header('labelList', 'owner') + listOf(owner),
    'constant/polyMesh/neighbour': header('labelList', 'neighbour') + listOf(neighbor),
    'constant/polyMesh/boundary': header('polyBoundaryMesh', 'boundary') + listOf(rows),
  };
}

const field = (
  name: string,
  kind: string,
  dimensions: string,
  inside: string,
  on: Record<Patch, string>,
): string =>
  `${header(`vol${kind}Field`, name)}dimensions ${dimensions};\ninternalField uniform ${inside};\nboundaryField {\n${patches
    .map((patch) => `  ${patch} { ${on[patch]} }`)
    .join('\n')}\n}\n`;

function fields(): Record<string, string> {
  const { streamMS, angleDeg } = settings;
  const air = 'type inletOutlet; inletValue uniform 0; value uniform 0;';
  const free = 'type pressureInletOutletVelocity; value uniform (0 0 0);';
  const bare = 'type prghTotalPressure; p0 uniform 0; p uniform 0; value uniform 0;';
  const shut = 'type fixedFluxPressure; value uniform 0;';
  return {
    '0/alpha.metal': field('alpha.metal', 'Scalar', '[0 0 0 0 0 0 0]', '0', {
      stream: 'type fixedValue; value uniform 1;',
      open: air,
      vent: air,
      walls: `type constantAlphaContactAngle; theta0 ${angleDeg}; limit gradient; value uniform 0;`,
    }),
    '0/U': field('U', 'Vector', '[0 1 -1 0 0 0 0]', '(0 0 0)', {
      stream: `type fixedValue; value uniform (${streamMS} 0 0);`,
      open: free,
      vent: free,
      walls: 'type noSlip;',
    }),
    '0/p_rgh': field('p_rgh', 'Scalar', '[1 -1 -2 0 0 0 0]', '0', {
      stream: shut,
      open: bare,
      vent: bare,
      walls: shut,
    }),
  };
}

function dictionaries(endS: number): Record<string, string> {
  const s = settings;
  const phase = (nu: number, rho: number): string => `{ transportModel Newtonian; nu ${nu}; rho ${rho}; }`;
  return {
    'constant/g': `${header('uniformDimensionedVectorField', 'g')}dimensions [0 1 -2 0 0 0 0]; value (${s.pullMS2} 0 0);\n`,
    'constant/turbulenceProperties': `${header('dictionary', 'turbulenceProperties')}simulationType laminar;\n`,
    'constant/transportProperties': `${header('dictionary', 'transportProperties')}phases (metal air);
metal ${phase(s.viscosityM2S, s.densityKgM3)}
air ${phase(s.airViscosityM2S, s.airDensityKgM3)}
sigma ${s.tensionNM};\n`,
    'system/controlDict': `${header('dictionary', 'controlDict')}application interFoam;
startFrom latestTime; startTime 0; stopAt endTime; endTime ${endS}; deltaT 1e-6;
writeControl adjustableRunTime; writeInterval 0.002; writeFormat ascii; writePrecision 5; timeFormat general; timePrecision 6;
runTimeModifiable yes; adjustTimeStep yes; maxCo ${s.courant}; maxAlphaCo ${s.courant}; maxDeltaT 1e-4;\n`,
    'system/fvSchemes': `${header('dictionary', 'fvSchemes')}ddtSchemes { default Euler; }
gradSchemes { default Gauss linear; }
divSchemes { div(rhoPhi,U) Gauss linearUpwind grad(U); div(phi,alpha) Gauss vanLeer; div(phirb,alpha) Gauss linear;
  div(((rho*nuEff)*dev2(T(grad(U))))) Gauss linear; }
laplacianSchemes { default Gauss linear orthogonal; }
interpolationSchemes { default linear; }
snGradSchemes { default orthogonal; }\n`,
    'system/fvSolution': `${header('dictionary', 'fvSolution')}solvers {
  "alpha.metal.*" { nAlphaCorr 1; nAlphaSubCycles 1; cAlpha 1; MULESCorr yes; nLimiterIter 3;
    solver smoothSolver; smoother symGaussSeidel; tolerance 1e-8; relTol 0; }
  "pcorr.*" { solver PCG; preconditioner DIC; tolerance 1e-5; relTol 0; }
  p_rgh { solver PCG; preconditioner DIC; tolerance 1e-5; relTol 0.05; }
  p_rghFinal { $p_rgh; tolerance 1e-5; relTol 0.01; }
  "U.*" { solver smoothSolver; smoother symGaussSeidel; tolerance 1e-6; relTol 0; }
}
PIMPLE { momentumPredictor no; nOuterCorrectors 1; nCorrectors 2; nNonOrthogonalCorrectors 0; }
relaxationFactors { equations { ".*" 1; } }\n`,
  };
}

/** Every file of a case, by its path within the folder. */
export const caseFiles = (one: FlowCase): Record<string, string> => ({
  ...meshOf(one, cellsOfCase(one)),
  ...fields(),
  ...dictionaries(one.endS),
});
