export {
  type BuildOptions,
  type BuildOutcome,
  buildMold,
  type CheckOptions,
  checkMold,
  unreadReport,
} from './build.ts';
export { Cache } from './cache.ts';
export type { FileAccess, FileRead } from './files.ts';
export { type Inspection, inspectMesh } from './inspect.ts';
export type { Progress } from './progress.ts';
export { type MoldOutcome, type PlanSource, readMold } from './read-mold.ts';
