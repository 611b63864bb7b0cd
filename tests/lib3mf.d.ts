/** What the tests use of lib3mf's WebAssembly build, by its own documentation; the package brings no types. */
declare module '@3mfconsortium/lib3mf' {
  /** Lives in the library's own memory until it is deleted. */
  interface Owned {
    delete(): void;
  }
  interface Iterator extends Owned {
    MoveNext(): boolean;
  }
  export interface MeshObject extends Owned {
    GetName(): string;
    GetVertexCount(): number;
    GetTriangleCount(): number;
    IsManifoldAndOriented(): boolean;
  }
  export interface Model extends Owned {
    QueryReader(format: string): Owned & {
      SetStrictModeActive(active: boolean): void;
      ReadFromFile(path: string): void;
      GetWarningCount(): number;
    };
    GetMeshObjects(): Iterator & { GetCurrentMeshObject(): MeshObject };
    GetBuildItems(): Iterator & { GetCurrent(): Owned & { GetPartNumber(): string } };
  }
  export interface Library {
    readonly CWrapper: new () => Owned & { CreateModel(): Model };
    readonly FS: { writeFile(path: string, bytes: Uint8Array): void; unlink(path: string): void };
  }
  const load: () => Promise<Library>;
  export default load;
}
