import Oven from './oven.worker.ts?worker&inline';
import Table from './table.worker.ts?worker&inline';

// In place of start-workers.ts where the page is one file opened from disk.

export const startTable = (): Worker => new Table({ name: 'table' });

export const startOven = (): Worker => new Oven({ name: 'oven' });
