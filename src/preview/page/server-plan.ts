import { openPlan, replacePlan } from '../state/actions.ts';
import { changed, fault, plan } from '../state/store.ts';

// The page's end of the small server. Without one (a static host, a page from disk) none of this does anything.

/** The word that lets this page write, given to it by the server that sent it. */
export const writeToken = (): string | undefined =>
  document.querySelector<HTMLMetaElement>('meta[name="write-token"]')?.content;

interface ServedPlan {
  readonly name: string;
  readonly text: string;
  readonly hash: string;
}

async function fetchPlan(): Promise<ServedPlan | undefined> {
  const answer = await fetch('plan');
  return answer.ok ? ((await answer.json()) as ServedPlan) : undefined;
}

/** Opens the plan the server was started with, and follows its changes on disk. */
export async function openFromServer(): Promise<void> {
  if (writeToken() === undefined) return;
  const served = await fetchPlan();
  if (!served) return;
  const filesAt = new URL('plan/file?path=', location.href).href;
  openPlan({ ...served, origin: 'server', filesAt });
  const changes = new EventSource('plan/changes');
  changes.addEventListener('change', () => void follow());
}

/** The plan or a file of its changed on disk. Changes not saved yet are kept: saving will say that there are two. */
async function follow(): Promise<void> {
  const open = plan.peek();
  const served = await fetchPlan();
  if (!served || open?.origin !== 'server') return;
  if (changed.peek())
    fault.value = 'The plan changed on disk while you changed it here; saving will ask what to do.';
  else replacePlan(served.text, served.hash);
}
