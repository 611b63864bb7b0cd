import { basename } from 'node:path';
import type { UnitSystem } from '../../src/findings/index.ts';
import { toDegrees } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { FileUnit } from '../../src/mesh/index.ts';
import {
  type Inspection,
  inspectMesh,
  type InspectOptions as MeshOptions,
} from '../../src/pipeline/index.ts';
import { type KindName, quantityFinding, readQuantity } from '../../src/plan/index.ts';
import { mostFileBytes } from '../../src/preview/server/regular-file.ts';
import { alloyNamed } from '../../src/tables/index.ts';
import { fixed, sayFinding, showQuantity } from '../../src/wording/index.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { readNamed } from '../plan-files.ts';
import { withProgress } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import { strong, type Terminal, table } from '../terminal.ts';

const units: readonly FileUnit[] = ['micron', 'mm', 'cm', 'm', 'in', 'ft'];

export interface InspectOptions {
  readonly unit?: string;
  readonly scale?: string;
  readonly length?: string;
  readonly height?: string;
  readonly alloy?: string;
  readonly lie?: true;
  readonly json?: true;
}

/** Prints what each mesh file holds after mending; exit 2 when one of them cannot be read or holds no usable mesh. */
export async function runInspect(
  paths: readonly string[],
  options: InspectOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const unit = units.find((name) => name === options.unit);
  if (options.unit !== undefined && !unit) {
    throw new Unreadable(`--unit ${options.unit} is not known; use one of ${units.join(', ')}`);
  }
  const size = sizeOf(options);
  const densityKgM3 = densityOf(options.alloy);
  const kernel = await loadKernel();
  let code: ExitCode = exitCode.fine;
  const all: unknown[] = [];
  for (const [done, path] of paths.entries()) {
    const read = await readNamed(path, mostFileBytes);
    if ('fault' in read) {
      // The other files are still worth a look.
      code = exitCode.unreadable;
      if (options.json) all.push({ file: path, fault: read.fault });
      else terminal.err(`discwright: ${read.fault}`);
      continue;
    }
    const inspection = await withProgress(terminal, false, (progress) => {
      progress({ title: path, done, total: paths.length });
      return inspectMesh(read.bytes, basename(path), kernel, {
        ...(unit && { unit }),
        ...size,
        lie: options.lie === true,
      });
    });
    if (!inspection.mesh) code = exitCode.unreadable;
    if (options.json) all.push(asJson(path, inspection, densityKgM3));
    else terminal.out(describe(path, inspection, systemOf(inspection.unit), densityKgM3, terminal.width));
  }
  if (options.json) terminal.out(JSON.stringify(all, undefined, 2));
  return code;
}

/** The size the master is to have: by one of three options at most. */
function sizeOf({ scale, length, height }: InspectOptions): Pick<MeshOptions, 'scale' | 'wanted'> {
  if ([scale, length, height].filter((one) => one !== undefined).length > 1)
    throw new Unreadable('--scale, --length and --height each give the size; use one of them');
  if (scale !== undefined) return { scale: positive(scale, 'share', '--scale') };
  if (length !== undefined) return { wanted: { side: 'length', mm: positive(length, 'length', '--length') } };
  if (height !== undefined) return { wanted: { side: 'height', mm: positive(height, 'length', '--height') } };
  return {};
}

function positive(text: string, kind: KindName, option: string): number {
  const read = readQuantity(text, kind);
  if ('fault' in read) throw new Unreadable(sayFinding(quantityFinding(read.fault, option), 'metric').says);
  if (read.value > 0) return read.value;
  throw new Unreadable(`${option} ${text} is nothing; give more than 0`);
}

/** kg/m3, by the name of an alloy or as given. */
function densityOf(alloy: string | undefined): number | undefined {
  if (alloy === undefined) return undefined;
  const known = alloyNamed(alloy)?.densityKgM3?.value;
  if (known !== undefined) return known;
  const read = readQuantity(alloy, 'density');
  if ('value' in read && read.value > 0) return read.value;
  throw new Unreadable(`no density of ${alloy} is known; give it to --alloy, such as 7.3g/cm3`);
}

const gramsOf = (mm3: number, densityKgM3: number): number => mm3 * densityKgM3 * 1e-6;

const asJson = (path: string, { mesh, findings, ...rest }: Inspection, densityKgM3: number | undefined) => ({
  file: path,
  ...rest,
  ...(rest.measures && densityKgM3 !== undefined && { massG: gramsOf(rest.measures.volume, densityKgM3) }),
  findings: findings.map((one) => ({ ...one, ...sayFinding(one, systemOf(rest.unit)) })),
  ...(mesh && { triangles: mesh.triangles.length / 3, vertices: mesh.positions.length / 3 }),
});

/** About the center of mass, per unit of density; what is only rounding beside the greatest shows as 0. */
function moments(some: readonly number[], all: readonly number[]): string {
  const greatest = Math.max(...all.map(Math.abs));
  return some.map((value) => (Math.abs(value) < 1e-9 * greatest ? '0' : value.toPrecision(6))).join(', ');
}

/** A mesh in inches or feet is read by somebody who works in them. */
const systemOf = (unit: FileUnit | undefined): UnitSystem =>
  unit === 'in' || unit === 'ft' ? 'inch' : 'metric';

function describe(
  path: string,
  inspection: Inspection,
  units: UnitSystem,
  densityKgM3: number | undefined,
  lineWidth: number,
): string {
  const { mesh, measures, unit, reach, widest, findings } = inspection;
  const parts = [strong(path)];
  if (mesh && measures && reach !== undefined && widest !== undefined) {
    const { min, max } = measures.bounds;
    const point = (values: readonly number[]) => values.map((value) => value.toFixed(3)).join(', ');
    parts.push(
      table([
        ['  read as', unit ?? ''],
        ['  triangles', String(mesh.triangles.length / 3)],
        ['  width x', showQuantity(max[0] - min[0], 'mm', units)],
        ['  depth y', showQuantity(max[1] - min[1], 'mm', units)],
        ['  height z', showQuantity(max[2] - min[2], 'mm', units)],
        ['  volume', showQuantity(measures.volume, 'mm3', units)],
        ...(densityKgM3 === undefined
          ? []
          : [['  mass', showQuantity(gramsOf(measures.volume, densityKgM3), 'g', units)]]),
        ['  surface', showQuantity(measures.area, 'mm2', units)],
        ['  center of mass', `${point(measures.centroid)} mm`],
        ['  inertia xx, yy, zz', `${moments(measures.inertia.slice(0, 3), measures.inertia)} mm5`],
        ['  inertia xy, yz, zx', `${moments(measures.inertia.slice(3), measures.inertia)} mm5`],
        ['  circle round it', `${showQuantity(2 * reach, 'mm', units)} across`],
        ['  widest contour', `${showQuantity(widest, 'mm', units)} above its lowest point`],
      ]),
    );
  }
  if (inspection.lies) parts.push(showLies(inspection.lies));
  if (findings.length > 0) parts.push(showFindings(findings, units, lineWidth));
  return `${parts.join('\n')}\n`;
}

/** Ways to lie as lines for the plan, with the undercut a flat plane leaves and what the best surface cannot do away with. */
function showLies(lies: NonNullable<Inspection['lies']>): string {
  if (lies.length === 0) return '  lies: it encloses no volume, so there is nothing to rank';
  const degrees = (angleRad: number): string => fixed(toDegrees(angleRad), 0);
  const rows = lies.map((lie) => [
    `  lie: { turnX: ${degrees(lie.turnXRad)}, turnY: ${degrees(lie.turnYRad)} }`,
    `sink: ${fixed(lie.sink, 2)}`,
    `of ${fixed(lie.height, 1)} mm`,
    `${fixed(lie.flat, 2)} mm3, ${fixed(100 * lie.share, 1)} %`,
    `${fixed(lie.irreducible, 2)} mm3`,
    lie.asInFile ? 'in the file' : '',
  ]);
  const head = ['  ways to lie, best first', '', 'height', 'undercut', 'at best', ''];
  return table([head, ...rows]);
}
