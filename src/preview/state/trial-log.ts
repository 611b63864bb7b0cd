import { computed, signal } from '@preact/signals';
import type { Finding } from '../../findings/index.ts';
import { type Edited, type Plan, readPlan } from '../../plan/index.ts';
import {
  type LogReading,
  type PourWritten,
  readLog,
  summarize,
  type TrialSummary,
  takeInPlan,
  withoutLast,
  withPour,
} from '../../trials/index.ts';
import { changePlan } from './actions.ts';
import { send, writeToken } from './disk.ts';
import { download } from './download.ts';
import { said } from './show.ts';
import { fault, forecasts, mold, plan } from './store.ts';

// The log of trials beside the plan, as the server has it; of a plan that no server has, one kept in the page.

interface LogText {
  readonly text?: string;
  /** Of the file on disk. */
  readonly hash?: string;
}

const served = signal<LogText>({});
const kept = signal<LogText & { readonly of?: string }>({});

const isServed = (): boolean => plan.value?.origin === 'server' && writeToken() !== undefined;

const logNow = computed<LogText>(() => {
  if (isServed()) return served.value;
  return kept.value.of === plan.value?.name ? kept.value : {};
});

export const logName = computed(() => (plan.value?.name ?? '').replace(/(\.ya?ml)?$/i, '.trials.yaml'));

/** The plan as the text now has it; undefined where it cannot be read. */
export const readNow = computed<Plan | undefined>(() =>
  plan.value ? readPlan(plan.value.text, plan.value.name).plan : undefined,
);

export const logReading = computed<LogReading>(() => {
  const { text } = logNow.value;
  return text !== undefined && readNow.value ? readLog(text, logName.value, readNow.value) : { findings: [] };
});

/** Whether there is a log that cannot be read: then nothing is added to it. */
export const isBroken = computed(() => logNow.value.text !== undefined && !logReading.value.log);

export const nextPour = computed(
  () => 1 + Math.max(0, ...(logReading.value.log?.pours ?? []).map(({ pour }) => pour)),
);

/** What all pours came to; undefined without a log or a mold that is laid out. */
export const trials = computed<TrialSummary | undefined>(() => {
  const { log } = logReading.value;
  if (!log || log.pours.length === 0 || !readNow.value || !mold.value) return undefined;
  const cavities = mold.value.placements.map(({ id, master, x, y }) => ({ id, master, x, y }));
  return summarize(log, readNow.value, cavities, forecasts.value);
});

export async function fetchLog(): Promise<void> {
  try {
    const answer = await fetch('trials');
    if (answer.ok) served.value = (await answer.json()) as LogText;
  } catch {
    // That nobody answers is said when something is to be saved.
  }
}

/** Writes the log; false where it is not written: then why is said, and what is there now is shown. */
async function put(text: string): Promise<boolean> {
  if (!isServed()) {
    kept.value = { text, of: plan.peek()?.name ?? '' };
    return true;
  }
  const { hash } = served.peek();
  const answer = await send(
    'trials',
    text,
    hash === undefined ? { 'if-none-match': '*' } : { 'if-match': hash },
  );
  if (!answer) return false;
  if (!answer.ok && answer.status !== 409) {
    fault.value = `Nothing was saved: ${await answer.text()}.`;
    return false;
  }
  served.value = (await answer.json()) as LogText;
  if (answer.ok) return true;
  fault.value =
    'Somebody else wrote into the log meanwhile; it is shown as it is now. Nothing of yours is lost: save it again.';
  return false;
}

/** Adds a pour; the same writer and the same rules as the command's. Tells whether it was written. */
export async function addPour(pour: PourWritten): Promise<boolean> {
  const now = readNow.peek();
  if (!now || isBroken.peek()) return false;
  const text = withPour(logNow.peek().text, pour, now);
  const { log, findings } = readLog(text, logName.peek(), now);
  if (log) return put(text);
  const [first] = findings;
  fault.value = first ? said(first).says : 'This cannot be noted.';
  return false;
}

/** Takes the last pour out of the log again. */
export async function takeBackPour(): Promise<boolean> {
  const { text } = logNow.peek();
  const without = text === undefined ? undefined : withoutLast(text);
  return without !== undefined && put(without);
}

/** For a plan that no server has: the log as a file. Nothing where the server keeps it. */
export const logToDownload = computed(() => (isServed() ? undefined : logNow.value.text));

export const downloadLog = (): void =>
  download(new TextEncoder().encode(logNow.peek().text ?? ''), logName.peek(), 'text/yaml');

/** Writes a proposal into the plan, which can be undone there; or says why that is not for the plan. */
export function takeProposal(one: Finding): string | undefined {
  const edited = proposed(one);
  if (!edited) return undefined;
  if ('text' in edited) {
    changePlan(edited.text);
    return undefined;
  }
  return typeof edited.fault === 'string' ? edited.fault : said(edited.fault).says;
}

/** The plan with a proposal, or why it is none of the plan's. */
function proposed(one: Finding): Edited | undefined {
  const now = readNow.peek();
  const open = plan.peek();
  return now && open ? takeInPlan(open.text, now, one) : undefined;
}
