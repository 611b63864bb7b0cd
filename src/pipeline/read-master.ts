import { type Finding, finding, type TextPlace } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import { measureMesh, readOutline, type StandInShape, standIn } from '../mesh/index.ts';
import type { Master } from '../mold/index.ts';
import type { PlanMaster } from '../plan/index.ts';
import type { Cache } from './cache.ts';
import type { FileAccess } from './files.ts';
import { loadKey, loadMesh, type MeshOutcome, meshToLoad } from './load-mesh.ts';

export interface MasterOutcome {
  /** Left out when there is no usable mesh; the findings then hold a stop. */
  readonly master?: Master;
  readonly findings: readonly Finding[];
}

/** One master of the plan, from its file or as a stand-in, ready to be placed. */
export async function readMaster(
  id: string,
  spec: PlanMaster,
  files: FileAccess,
  kernel: Kernel,
  cache: Cache | undefined,
): Promise<MasterOutcome> {
  const { mesh, findings, fileScale } =
    spec.kind === 'mesh'
      ? await meshMaster(id, spec, files, kernel, cache)
      : await standInMaster(id, spec, files, kernel);
  const named = findings.map((one) => ({ ...one, subject: id, ...(spec.at && !one.at && { at: spec.at }) }));
  if (!mesh) return { findings: named };
  const master: Master = {
    id,
    kind: spec.kind,
    mesh,
    measures: measureMesh(mesh),
    ...(fileScale !== undefined && { fileScale }),
    ...(spec.massKg !== undefined && { massG: spec.massKg * 1000 }),
    ...(spec.material !== undefined && { material: spec.material }),
    estimated: spec.kind === 'stand-in',
  };
  return { master, findings: named };
}

async function meshMaster(
  id: string,
  spec: PlanMaster & { kind: 'mesh' },
  files: FileAccess,
  kernel: Kernel,
  cache: Cache | undefined,
): Promise<MeshOutcome> {
  const file = await openFile(id, spec.file, files, spec.at);
  if (!file.bytes) return { findings: file.findings };
  const source = meshToLoad(id, spec, file.bytes);
  const make = () => loadMesh(source, kernel);
  const outcome = cache ? cache.memoize(loadKey(source), make) : make();
  return { ...outcome, findings: [...file.findings, ...outcome.findings] };
}

async function standInMaster(
  id: string,
  spec: PlanMaster & { kind: 'stand-in' },
  files: FileAccess,
  kernel: Kernel,
): Promise<MeshOutcome> {
  const { above, below, shape } = spec;
  if (!('outline' in shape)) return { mesh: standIn({ ...shape, above, below }, kernel), findings: [] };
  const file = await openFile(id, shape.outline, files, spec.at);
  if (!file.bytes) return { findings: file.findings };
  const read = readOutline(file.bytes, shape.outline);
  const findings = [...file.findings, ...read.findings];
  if (!read.paths) return { findings };
  const solid: StandInShape = { outline: read.paths, above, below };
  return { mesh: standIn(solid, kernel), findings };
}

async function openFile(id: string, path: string, files: FileAccess, at: TextPlace | undefined) {
  const read = await files(path);
  const place = { subject: id, ...(at && { at }) };
  if ('fault' in read) {
    return { findings: [finding('layout.no-file', { ...place, values: { fault: read.fault } })] };
  }
  const findings = read.outside
    ? [finding('layout.outside-folder', { ...place, values: { file: path } })]
    : [];
  return { bytes: read.bytes, findings };
}
