/**
 * Gates and vents of the demo's masters: air before and after, CPU, and by how much vents at places taken by chance (median of 20
 * seeds, as many, each let off its way) leave more.
 */
import { openPlan } from '../cli/plan-files.ts';
import { proposeChannels } from '../src/fill/index.ts';
import { leastPocket } from '../src/fill/pockets.ts';
import { loadKernel } from '../src/kernel/index.ts';
import { drawAnew } from '../src/mold/index.ts';
import { readMold } from '../src/pipeline/index.ts';
import { airWithRandomVents } from './random-vents.ts';

const seeds = 20;

const { plan, mold } = await readMold(await openPlan('presets/hedgerow'), await loadKernel(), {});
if (!plan || !mold) throw new Error('the demo cannot be read');
const begun = process.cpuUsage().user;
const proposed = proposeChannels(plan, mold);
const seconds = (process.cpuUsage().user - begun) / 1e6;
if ('missing' in proposed) throw new Error(proposed.missing.join());
const anew = drawAnew(plan, mold);
const air = (places: readonly { readonly volumes: readonly number[] }[] = []): number =>
  places.reduce((sum, { volumes }) => sum + volumes[0], 0);
for (const one of proposed.proposals) {
  const [before, after] = [air(one.before?.places), air(one.after?.places)];
  const counts = [one.before, one.after].map((forecast) => forecast?.places.length ?? 0);
  const vents = one.ways.length;
  const random = vents > 0 ? airWithRandomVents(mold, anew, one, seeds) : undefined;
  const factor =
    random === undefined
      ? 'no vents'
      : `by chance ${random.toFixed(1)}, ${(random / Math.max(after, leastPocket)).toFixed(1)} times`;
  console.log(
    `${one.placements[0]}: ${before.toFixed(1)} -> ${after.toFixed(1)} mm3, places in the range ${counts.join(' -> ')}, ${vents} ways out; ${factor}`,
  );
}
console.log(`proposed in ${seconds.toFixed(1)} s of CPU`);
