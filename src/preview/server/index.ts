export { type Preview, type PreviewOptions, startPreview } from './server.ts';
