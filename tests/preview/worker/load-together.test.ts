import { beforeAll, expect, test, vi } from 'vitest';
import { type Kernel, loadKernel } from '../../../src/kernel/index.ts';
import { Cache, loadMesh, readMasters } from '../../../src/pipeline/index.ts';
import { type Plan, readPlan } from '../../../src/plan/index.ts';
import { Helper, loadTogether } from '../../../src/preview/worker/load-together.ts';
import type { Loaded, LoadRequest } from '../../../src/preview/worker/messages.ts';
import { bumpyMesh } from '../../browser/bumpy-mesh.ts';

// In a worker this goes to the page; the kernel's WASM comes from beside the page.
vi.mock('../../../src/preview/worker/send.ts', async () => ({
  send: () => undefined,
  yieldToEvents: () => new Promise((resolve) => setImmediate(resolve)),
  Outdated: class Outdated extends Error {},
}));

const names = ['ash', 'beech', 'elder', 'hazel', 'oak'];
const text = `process: rubber
disc: { diameter: 160, thickness: 14 }
parting: { surface: flat }
masters:
${names.map((name) => `  ${name}: { file: ${name}.stl, unit: mm }`).join('\n')}
placements:
${names.map((name, k) => `  - { master: ${name}, at: { radius: 40, angle: ${72 * k} } }`).join('\n')}
`;
const bytes = new TextEncoder().encode(text);
const files = async (name: string) => ({
  bytes: meshes.get(name) ?? new Uint8Array(),
  name,
  outside: false,
});
const meshes = new Map(names.map((name, k) => [`${name}.stl`, bumpyMesh(20 + k, 12, 6 + k / 4)]));

let kernel: Kernel;
let plan: Plan;
beforeAll(async () => {
  kernel = await loadKernel();
  const read = readPlan(bytes, 'plan.yaml');
  if (!read.plan) throw new Error(JSON.stringify(read.findings[0]));
  plan = read.plan;
});

/** The other worker's end of the line: it does what it is asked, and after `limit` masters it is ended. */
function other(limit: number): { helper: Helper; loaded: string[] } {
  const { port1, port2 } = new MessageChannel();
  const helper = new Helper();
  const loaded: string[] = [];
  port2.onmessage = ({ data }: MessageEvent<LoadRequest>) => {
    if (loaded.length === limit) {
      helper.connect(new MessageChannel().port1);
      port1.close();
      return;
    }
    loaded.push(data.id);
    port2.postMessage({ ask: data.ask, outcome: loadMesh(data.source, kernel) } satisfies Loaded);
  };
  helper.connect(port1);
  return { helper, loaded };
}

async function together(helper: Helper): Promise<Cache> {
  const cache = new Cache();
  await loadTogether(plan, {
    edit: 1,
    files,
    cache,
    helper,
    kernel,
    isLatest: () => true,
    first: new Promise((resolve) => setTimeout(resolve, 50)),
    shown: () => undefined,
  });
  return cache;
}

test.each([0, 1, 3, 5])(
  'where the other worker loads %d and is ended, all are there, and the core’s own',
  async (limit) => {
    const { helper, loaded } = other(limit);
    const cache = await together(helper);
    expect(loaded.length).toBeLessThanOrEqual(limit);
    const { masters } = await readMasters({ bytes, name: 'plan.yaml', files }, kernel, { cache });
    expect(cache.hits).toBe(names.length);
    const plain = await readMasters({ bytes, name: 'plan.yaml', files }, kernel);
    expect(masters).toEqual(plain.masters);
  },
);

test('the other worker takes a share', async () => {
  const { helper, loaded } = other(99);
  await together(helper);
  expect(loaded.length).toBeGreaterThan(0);
});

test('without another worker this one does all', async () => {
  const cache = await together(new Helper());
  expect((await readMasters({ bytes, name: 'plan.yaml', files }, kernel, { cache })).masters).toHaveLength(5);
  expect(cache.hits).toBe(names.length);
});
