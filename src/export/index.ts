export { type Audit, auditStl, faultsOf, isClosed } from './audit.ts';
export type { Build, Withheld } from './build.ts';
export { exporters, type Format, type Supplies, usualFormats, writeBuild } from './exporters.ts';
export { manifestFile, sha256Hex } from './manifest.ts';
export { cornerNormals } from './picture/corner-normals.ts';
export { reportJson } from './report-json.ts';
export type { FontFiles } from './shop-sheet/fonts.ts';
export { type CheckedSolid, type ExportFile, exportSolid, smallSolidFacets } from './solid-file.ts';
export { writeStl } from './stl.ts';
