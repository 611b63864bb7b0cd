import loadLib3mf, { type Library } from '@3mfconsortium/lib3mf';

/** What lib3mf, the reference reader of the format's publishers, finds in a 3MF file when it reads strictly. */
export interface Judged3mf {
  readonly warnings: number;
  readonly partNumbers: readonly string[];
  readonly objects: readonly {
    readonly name: string;
    readonly vertices: number;
    readonly triangles: number;
    readonly manifoldAndOriented: boolean;
  }[];
}

let library: Promise<Library> | undefined;

/** Throws, with lib3mf's own words, where the strict reader refuses the file. */
export async function judge3mf(bytes: Uint8Array): Promise<Judged3mf> {
  library ??= loadLib3mf();
  const { CWrapper, FS } = await library;
  FS.writeFile('/judged.3mf', bytes);
  const owned: { delete(): void }[] = [];
  const keep = <T extends { delete(): void }>(thing: T): T => {
    owned.push(thing);
    return thing;
  };
  const model = keep(keep(new CWrapper()).CreateModel());
  const reader = keep(model.QueryReader('3mf'));
  reader.SetStrictModeActive(true);
  reader.ReadFromFile('/judged.3mf');
  FS.unlink('/judged.3mf');
  const objects = [];
  const meshes = keep(model.GetMeshObjects());
  while (meshes.MoveNext()) {
    const mesh = keep(meshes.GetCurrentMeshObject());
    objects.push({
      name: mesh.GetName(),
      vertices: mesh.GetVertexCount(),
      triangles: mesh.GetTriangleCount(),
      manifoldAndOriented: mesh.IsManifoldAndOriented(),
    });
  }
  const partNumbers = [];
  const items = keep(model.GetBuildItems());
  while (items.MoveNext()) partNumbers.push(keep(items.GetCurrent()).GetPartNumber());
  const warnings = reader.GetWarningCount();
  for (const thing of owned.reverse()) thing.delete();
  return { warnings, partNumbers, objects };
}
