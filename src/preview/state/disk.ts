import { signal } from '@preact/signals';
import { filesNamed, mergeTexts, readPlan } from '../../plan/index.ts';
import { onDisk, readAgain, wasSaved } from './actions.ts';
import { download } from './download.ts';
import { given } from './given.ts';
import { fault, plan } from './store.ts';

// The page's end of the small server. Without one (a static host, a page from disk) saving is a download.

export interface ServedPlan {
  readonly name: string;
  readonly text: string;
  readonly hash: string;
}

/** Two plans where there should be one: what is open with changes, and what lies on disk now. */
export const conflict = signal<ServedPlan | undefined>(undefined);

/** The word that lets this page write, given to it by the server that sent it. */
export const writeToken = (): string | undefined =>
  document.querySelector<HTMLMetaElement>('meta[name="write-token"]')?.content;

export async function fetchPlan(): Promise<ServedPlan | undefined> {
  try {
    const answer = await fetch('plan');
    return answer.status === 200 ? ((await answer.json()) as ServedPlan) : undefined;
  } catch {
    return undefined;
  }
}

/** When this page wrote last: the server then tells of a change that is none. */
let wroteAt = Number.NEGATIVE_INFINITY;
const echo = 1500;

/** The plan or a file of its changed on disk. Changes not saved yet are never lost: the person is asked. */
export async function followDisk(): Promise<void> {
  const served = await fetchPlan();
  const open = plan.peek();
  if (!served || open?.origin !== 'server') return;
  if (served.hash === open.hash) {
    if (performance.now() - wroteAt > echo) onDisk(open.kept, open.hash, open.text);
    return;
  }
  if (open.text === open.kept || open.text === served.text) onDisk(served.text, served.hash, served.text);
  else conflict.value = served;
}

/** Saves what is open: to the file it came from, or as a download. */
export async function save(): Promise<void> {
  const open = plan.peek();
  if (!open) return;
  if (open.origin !== 'server' || writeToken() === undefined) {
    download(new TextEncoder().encode(open.text), open.name, 'text/yaml');
    wasSaved(open.text);
    return;
  }
  if (await putFiles(open.text)) await putPlan(open.text, open.hash ?? '');
}

/** Sends something to be written; what could not be sent is said. */
export async function send(
  address: string,
  body: BodyInit,
  headers: Record<string, string> = {},
): Promise<Response | undefined> {
  try {
    return await fetch(address, {
      method: 'PUT',
      body,
      headers: { 'x-write-token': writeToken() ?? '', ...headers },
    });
  } catch {
    fault.value = 'Nothing was saved: discwright does not answer; is it still running?';
    return undefined;
  }
}

async function putPlan(text: string, expected: string): Promise<void> {
  wroteAt = performance.now();
  const answer = await send('plan', text, { 'if-match': expected });
  if (!answer) return;
  if (answer.ok || answer.status === 409) {
    const now = (await answer.json()) as ServedPlan;
    wroteAt = performance.now();
    if (answer.status === 409) conflict.value = now;
    else {
      conflict.value = undefined;
      wasSaved(text, now.hash);
    }
  } else fault.value = `Nothing was saved: ${await answer.text()}.`;
}

/** Folder beside the plan that the server puts new masters into. */
export const mastersFolder = 'masters';

/** Masters that were dropped go into the masters' folder first: a plan is not to name files that are not there. */
async function putFiles(text: string): Promise<boolean> {
  const named = filesNamed(readPlan(text, 'plan').plan);
  for (const [name, bytes] of given) {
    if (!named.includes(`${mastersFolder}/${name}`)) continue;
    const answer = await send(`plan/file?path=${encodeURIComponent(name)}`, new Blob([bytes.slice()]));
    if (!answer) return false;
    if (!answer.ok) {
      fault.value = `Nothing was saved: ${await answer.text()}.`;
      return false;
    }
    given.delete(name);
  }
  return true;
}

/** The three ways out of a conflict. */
export async function keepMine(): Promise<void> {
  const now = conflict.peek();
  const open = plan.peek();
  if (now && open) await putPlan(open.text, now.hash);
}

export function acceptTheirs(): void {
  const now = conflict.peek();
  if (now) onDisk(now.text, now.hash, now.text);
  conflict.value = undefined;
}

/** Both sides' changes in one text, not saved yet; undefined where both changed the same lines. */
export function mergedPlan(): string | undefined {
  const now = conflict.value;
  const open = plan.value;
  if (!now || !open) return undefined;
  const merged = mergeTexts(open.kept, open.text, now.text);
  return 'text' in merged ? merged.text : undefined;
}

export function acceptBoth(): void {
  const now = conflict.peek();
  const text = mergedPlan();
  if (now && text !== undefined) onDisk(now.text, now.hash, text);
  conflict.value = undefined;
}

/** Not now: what is open stays, and saving asks again. */
export function decideLater(): void {
  conflict.value = undefined;
  readAgain();
}
