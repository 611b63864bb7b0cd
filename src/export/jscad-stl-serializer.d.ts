/** The package carries no types. Only what is used here, as its source has it (2.1.23). */
declare module '@jscad/stl-serializer/CSGToStlb.js' {
  import type { geometries } from '@jscad/modeling';

  /** [80 header bytes, facet count, 50 bytes per facet] */
  export function serializeBinary(
    objects: readonly geometries.geom3.Geom3[],
    options: { readonly statusCallback?: (step: { readonly progress: number }) => void },
  ): [ArrayBuffer, ArrayBuffer, ArrayBuffer];
}

declare module '@jscad/stl-serializer' {
  import type { geometries } from '@jscad/modeling';

  interface Serializer {
    serialize(
      options: { readonly binary: true },
      ...objects: readonly geometries.geom3.Geom3[]
    ): [ArrayBuffer, ArrayBuffer, ArrayBuffer];
  }
  const serializer: Serializer;
  export default serializer;
}
