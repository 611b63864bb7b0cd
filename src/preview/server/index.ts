export { mastersOutside } from './plan-folder.ts';
export { type Preview, startPreview } from './server.ts';
