import type { UnitSystem } from '../findings/index.ts';
import { kindOfRole } from '../kinds/index.ts';
import { type Drawing, type Mold, sizeOf } from '../mold/index.ts';
import { saysOfAll } from '../wording/index.ts';
import type { Build, Withheld } from './build.ts';
import { drawingPath, solidPath } from './folders.ts';
import { type Json, jsonBytes } from './json-text.ts';
import { materialOf } from './material-of.ts';
import type { CheckedSolid, ExportFile } from './solid-file.ts';

/** Of the manifest and of how the folder it tells of is laid out: 2 is by use, 1 was flat. */
export const folderSchema = 2;

/** SHA-256 (FIPS 180-4) as 64 hex digits, by the platform: Node and browsers have the same, ten times as quick as a program. */
export async function sha256Hex(bytes: Uint8Array): Promise<string> {
  // Nothing of ours is in memory that threads share.
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * manifest.json: what each file of the build is, so that a file taken from the folder can be told and checked.
 * A solid's file also says its role, material and use, facets, volume (mm3), box (mm) and the matrix from the file's frame to the mold
 * frame (column-major, 16 numbers). No dates, no machine paths; the manifest does not list itself.
 */
export async function manifestFile(build: Build, files: readonly ExportFile[]): Promise<ExportFile> {
  const solids = new Map(build.solids.map((checked) => [solidPath(checked.solid, build.mold), checked]));
  const { mold, origin } = build;
  return manifestOf({
    version: build.version,
    plan: {
      title: mold.title,
      revision: mold.revision,
      process: mold.process,
      file: origin?.file,
      sha256: build.planHash,
      inputs: origin?.inputs,
    },
    only: origin?.only,
    files: (await filesJson(files)).map((file) => ({
      ...file,
      solid: solidJson(solids.get(file.path), mold),
      drawing: drawingJson(
        build.drawings.find((drawing) =>
          [drawingPath(drawing, 'svg'), drawingPath(drawing, 'dxf')].includes(file.path),
        ),
        mold,
      ),
    })),
    withheld: build.withheld.map((one) => withheldJson(one, mold.units)),
  });
}

/** manifest.json where no mold came of the plan: only its hash and the files that say why. */
export const bareManifest = async (
  { planHash, version, origin }: Pick<Build, 'planHash' | 'version' | 'origin'>,
  files: readonly ExportFile[],
): Promise<ExportFile> =>
  manifestOf({
    version,
    plan: { file: origin?.file, sha256: planHash, inputs: origin?.inputs },
    files: await filesJson(files),
    withheld: [],
  });

interface Manifest {
  readonly version: string;
  readonly plan: Json;
  /** Names asked for, where not all was made. */
  readonly only?: readonly string[] | undefined;
  readonly files: Json;
  readonly withheld: Json;
}

function manifestOf({ version, plan, only, files, withheld }: Manifest): ExportFile {
  const json: Json = {
    schema: folderSchema,
    program: { name: 'discwright', version },
    plan,
    only,
    files,
    withheld,
  };
  return { path: 'manifest.json', bytes: jsonBytes(json) };
}

const filesJson = (files: readonly ExportFile[]) =>
  Promise.all(
    files.map(async ({ path, bytes }) => ({ path, sha256: await sha256Hex(bytes), bytes: bytes.length })),
  );

function solidJson(checked: CheckedSolid | undefined, mold: Mold): Json | undefined {
  if (!checked) return undefined;
  const { solid, audit } = checked;
  return {
    id: solid.id,
    title: solid.title,
    role: solid.role,
    material: materialOf(solid, mold),
    use: kindOfRole(solid.role).use,
    estimated: solid.estimated,
    subjects: solid.subjects,
    triangles: audit.triangles,
    shells: audit.shells,
    eulerCharacteristic: audit.euler,
    volumeMm3: audit.volume,
    boundsMm: { min: audit.bounds.min, max: audit.bounds.max },
    toMold: solid.toMold,
  };
}

function drawingJson(drawing: Drawing | undefined, { fixture }: Mold): Json | undefined {
  if (!drawing) return undefined;
  const { id, title, subjects, thickness, estimated, material = fixture.material } = drawing;
  const { min, max } = sizeOf(drawing);
  return { id, title, subjects, material, thicknessMm: thickness, estimated, boundsMm: { min, max } };
}

const withheldJson = ({ id, title, subjects, reasons }: Withheld, units: UnitSystem): Json => ({
  id,
  title,
  subjects,
  reasons: saysOfAll(reasons, units),
});
