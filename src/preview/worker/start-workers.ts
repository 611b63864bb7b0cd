/** The two workers, from their own files beside the page. */
export const startTable = (): Worker =>
  new Worker(new URL('./table.worker.ts', import.meta.url), { type: 'module', name: 'table' });

export const startOven = (): Worker =>
  new Worker(new URL('./oven.worker.ts', import.meta.url), { type: 'module', name: 'oven' });
