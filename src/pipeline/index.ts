export {
  buildMold,
  checkMold,
  sketchSolids,
  stepChecks,
  stepFields,
  unreadReport,
} from './build.ts';
export { Cache, type ResultStore } from './cache.ts';
export { checkNear, type Near } from './check-near.ts';
export type { FileAccess, FileRead } from './files.ts';
export { type Inspection, type InspectOptions, inspectMesh } from './inspect.ts';
export { loadKey, loadMesh, type MeshOutcome, type MeshToLoad, meshToLoad } from './load-mesh.ts';
export { memoizeIn } from './memoize-in.ts';
export {
  type FirstPlan,
  type MeshFile,
  mastersNamed,
  type PlanWish,
  planFromMeshes,
} from './plan-from-meshes.ts';
export type { Progress } from './progress.ts';
export {
  type MastersOutcome,
  type PlanSource,
  placeMold,
  readMasters,
  readMold,
} from './read-mold.ts';
export { roughError, roughMold } from './rough-mold.ts';
