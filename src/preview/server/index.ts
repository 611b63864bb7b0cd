export { mastersOutside } from './plan-folder.ts';
export { type Preview, type PreviewOptions, startPreview } from './server.ts';
