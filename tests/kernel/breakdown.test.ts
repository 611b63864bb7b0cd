import { expect, it } from 'vitest';
import { KernelExhausted, loadKernel } from '../../src/kernel/index.ts';

/** What the engine throws where compiled code does what it must not, such as using up its memory. */
const trap = (): never => {
  throw new WebAssembly.RuntimeError('table index is out of bounds');
};

const cube = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

it('a kernel that broke down is not used again, and the next one is a fresh one', async () => {
  const broken = await loadKernel();
  expect(await loadKernel()).toBe(broken);
  expect(() => broken.scope(trap)).toThrow(KernelExhausted);
  expect(() => broken.scope((scope) => scope.extrude([cube], 0, 1, 'cube'))).toThrow(/more memory/);
  const fresh = await loadKernel();
  expect(fresh).not.toBe(broken);
  expect(fresh.scope((scope) => scope.extrude([cube], 0, 2, 'cube').volume())).toBeCloseTo(2, 9);
});

it('other errors pass as they are, and break nothing', async () => {
  const kernel = await loadKernel();
  const own = new TypeError('a mistake of ours');
  expect(() =>
    kernel.scope(() => {
      throw own;
    }),
  ).toThrow(own);
  expect(await loadKernel()).toBe(kernel);
});
