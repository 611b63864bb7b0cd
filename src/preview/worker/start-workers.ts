/** The two workers, from their own files beside the page. */
export const startLayoutWorker = (): Worker =>
  new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module', name: 'layout' });

export const startBuildWorker = (): Worker =>
  new Worker(new URL('./build.worker.ts', import.meta.url), { type: 'module', name: 'build' });
