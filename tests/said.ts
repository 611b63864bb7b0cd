import type { Finding } from '../src/findings/index.ts';
import { sayFinding } from '../src/wording/index.ts';

/** What a finding says is wrong, in metric, where a test is about the words. */
export const saysOf = (one: Finding): string => sayFinding(one, 'metric').says;
