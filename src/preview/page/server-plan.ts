import { signal } from '@preact/signals';
import { openPlan } from '../state/actions.ts';
import { fetchPlan, followDisk, writeToken } from '../state/disk.ts';
import { fetchLog } from '../state/trial-log.ts';

/** Whether there may still come a plan from the server: until that is known nothing else is offered. */
export const isOpening = signal(writeToken() !== undefined);

/** Opens the plan the server was started with, and follows its changes on disk. Without a server, nothing. */
export async function openFromServer(): Promise<void> {
  if (writeToken() === undefined) return;
  const served = await fetchPlan();
  isOpening.value = false;
  if (!served) return;
  const filesAt = new URL('plan/file?path=', location.href).href;
  openPlan({ ...served, origin: 'server', filesAt });
  void fetchLog();
  const changes = new EventSource('plan/changes');
  changes.addEventListener('change', () => void followDisk());
  changes.addEventListener('trials', () => void fetchLog());
}
