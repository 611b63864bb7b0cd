import BuildWorker from './build.worker.ts?worker&inline';
import LayoutWorker from './layout.worker.ts?worker&inline';

// In place of start-workers.ts where the page is one file opened from disk.

export const startLayoutWorker = (): Worker => new LayoutWorker({ name: 'layout' });

export const startBuildWorker = (): Worker => new BuildWorker({ name: 'build' });
