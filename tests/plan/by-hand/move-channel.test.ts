import { describe, expect, test } from 'vitest';
import { toRadians } from '../../../src/geometry/index.ts';
import { moveChannel, readPlan, removeChannel, withMovedChannel } from '../../../src/plan/index.ts';

const head = `process: rigid
disc: { diameter: 200, thickness: 20 }
sprue: {}
masters:
  charm: { length: 20, width: 10, above: 3, below: 1 }
placements:
  - { master: charm, ring: { count: 3, radius: 60 } }
`;
const listed = `${head}gates:
  # The three of the ring.
  - { placements: charm, width: 3, entry: { x: -10, y: 0.2 in } } # as cut
  - placements: [charm-2]
    path:
      through:
        - { radius: { fromRim: 60 }, angle: 20 } # round the boss
vents: straight
`;
const gate = (placement: string, number = 1) => ({ kind: 'gate', placement, number }) as const;
const vent = { kind: 'vent', placement: 'charm-1', number: 1 } as const;

function lines(before: string, edited: ReturnType<typeof moveChannel>): string[] {
  if ('fault' in edited) throw new Error(JSON.stringify(edited.fault));
  expect(readPlan(edited.text, 'plan').plan).toBeDefined();
  const [a, b] = [before.split('\n'), edited.text.split('\n')];
  return [
    ...a.filter((line) => !b.includes(line)).map((line) => `-${line}`),
    ...b.filter((line) => !a.includes(line)).map((line) => `+${line}`),
  ];
}

describe('a gate or vent moved by hand', () => {
  test('together: the values alone change, in their unit, and comments stay', () => {
    expect(
      lines(listed, moveChannel(listed, gate('charm-2'), { entry: { x: -9.5, y: 2.54 } }, 'together')),
    ).toEqual([
      '-  - { placements: charm, width: 3, entry: { x: -10, y: 0.2 in } } # as cut',
      '+  - { placements: charm, width: 3, entry: { x: -9.5, y: 0.1 in } } # as cut',
    ]);
  });

  test('alone: it gets an entry behind that of the others, with all that one says', () => {
    expect(lines(listed, moveChannel(listed, gate('charm-2'), { entry: { x: 0, y: 5 } }, 'alone'))).toEqual([
      '-  - { placements: charm, width: 3, entry: { x: -10, y: 0.2 in } } # as cut',
      '+  - { placements: [charm-1, charm-3], width: 3, entry: { x: -10, y: 0.2 in } } # as cut',
      '+  - { placements: [charm-2], width: 3, entry: { x: 0, y: 0.1969 in } }',
    ]);
  });

  test('a way point keeps its form; one more makes a list of two; none is straight', () => {
    const second = gate('charm-2', 2);
    const at = { radius: 45, angleRad: toRadians(25), was: 0 };
    expect(lines(listed, moveChannel(listed, second, { through: [at] }, 'alone'))).toEqual([
      '-        - { radius: { fromRim: 60 }, angle: 20 } # round the boss',
      '+        - { radius: { fromRim: 55 }, angle: 25 } # round the boss',
    ]);
    const two = moveChannel(listed, second, { through: [at, { radius: 50, angleRad: 0 }] }, 'alone');
    expect(lines(listed, two)).toContain(
      '+    path: { through: [{ radius: 45, angle: 25 }, { radius: 50, angle: 0 }] } # round the boss',
    );
    expect(lines(listed, moveChannel(listed, second, { through: [] }, 'alone'))).toContain(
      '+    path: straight # round the boss',
    );
  });

  test('out of a word that stands for all, one leaves alone', () => {
    expect(lines(listed, moveChannel(listed, vent, { entry: { x: 10, y: 1 } }, 'alone'))).toEqual([
      '-vents: straight',
      '+vents:',
      '+  - { placements: [charm-2, charm-3] }',
      '+  - { placements: [charm-1], entry: { x: 10, y: 1 } } # by hand',
    ]);
  });

  test('is taken away alone or with all of its entry', () => {
    expect(lines(listed, removeChannel(listed, vent, 'alone'))).toEqual([
      '-vents: straight',
      '+vents:',
      '+  - { placements: [charm-2, charm-3] } # by hand',
    ]);
    expect(lines(listed, removeChannel(listed, vent, 'together'))).toEqual([
      '-vents: straight',
      '+vents: []',
    ]);
    expect(lines(listed, removeChannel(listed, gate('charm-1'), 'together'))).toContain(
      '-  - { placements: charm, width: 3, entry: { x: -10, y: 0.2 in } } # as cut',
    );
  });

  test('what is not there is told', () => {
    expect(moveChannel(listed, gate('charm-1', 2), { through: [] }, 'alone')).toEqual({
      fault: 'The plan has no gate of charm-1.',
    });
  });
});

test('the plan of a moved channel says what the written text says', () => {
  const { plan } = readPlan(listed, 'plan');
  const move = { entry: { x: -9.5, y: 2.54 }, through: [{ radius: 45, angleRad: toRadians(25) }] };
  const edited = moveChannel(listed, gate('charm-2'), move, 'alone');
  if (!plan || 'fault' in edited) throw new Error('no plan');
  const bare = (list: unknown) =>
    JSON.parse(JSON.stringify(list, (key, one) => (key === 'at' ? undefined : one)));
  const written = readPlan(edited.text, 'plan').plan;
  expect(bare(withMovedChannel(plan, gate('charm-2'), move).gates)[1]).toEqual(bare(written?.gates)[1]);
});
