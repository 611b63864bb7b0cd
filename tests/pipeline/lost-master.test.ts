import { describe, expect, test } from 'vitest';
import { checks, fieldChecks } from '../../src/checks/index.ts';
import { translation } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Mold, Process } from '../../src/mold/index.ts';
import { parts } from '../../src/parts/index.ts';
import { runTasks } from '../../src/pipeline/run-task.ts';
import { emptyMold, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

const kernel = await loadKernel();
const brick = single(box([-4, -3, -2], [4, 3, 2]));
const whole = withMaster(emptyMold, 'brick', brick, translation(60, 0, 0), translation(-60, 0, 0));

// No finding, no failure of the kernel, no figure of a master that is not there.
describe.each<Process>(['rubber', 'rigid', 'poured'])('a placement whose master is lost, %s', (process) => {
  const lost: Mold = { ...whole, process, masters: [] };
  const tasks = [...checks, ...fieldChecks, ...parts].filter((one) => one.processes.includes(process));
  const faultOf = (task: (typeof tasks)[number]): string | undefined => {
    try {
      const { failures } = runTasks<unknown>([task], lost, { kernel });
      return failures.map(({ finding }) => finding.code).join();
    } catch (error) {
      return `${error}`;
    }
  };

  test('is one kind of fault wherever it is missed', () => {
    const faults = new Map(tasks.map((task) => [task.id, faultOf(task)]));
    const told = [...faults].filter(([, fault]) => fault !== '');
    expect(new Set(told.map(([, fault]) => fault))).toEqual(
      new Set(['Error: placement brick-1 is of the master brick, which the mold does not hold']),
    );
    expect(told.map(([id]) => id)).toEqual(expect.arrayContaining(['cover', 'walls-rim', 'release']));
  });
});
