import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { readMold } from '../../src/pipeline/index.ts';
import { checkText } from '../faults/check-text.ts';
import { saysOf } from '../said.ts';

/** The mold of a plan that names no file. */
export async function moldOfText(text: string): Promise<Mold> {
  const files = async (): Promise<never> => {
    throw new Error('the plan names no file');
  };
  const bytes = new TextEncoder().encode(text);
  const { mold, findings } = await readMold({ bytes, name: 'plan.yaml', files }, await loadKernel());
  if (!mold) throw new Error(findings.map(saysOf).join(' '));
  return mold;
}

/** What is found about a plan, of the codes asked for: code, severity, subject and place in the text. */
export async function foundIn(text: string, codes: RegExp): Promise<string[]> {
  const { findings } = await checkText(text, 'plan.yaml');
  return findings
    .filter(({ code }) => codes.test(code))
    .map(({ code, severity, subject, at }) => `${code} ${severity} ${subject} ${at?.line}:${at?.column}`);
}
