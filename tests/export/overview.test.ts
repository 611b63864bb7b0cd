import { expect, test } from 'vitest';
import type { Build } from '../../src/export/index.ts';
import { overviewFiles } from '../../src/export/overview.ts';
import type { SolidRole } from '../../src/kinds/index.ts';
import type { Solid } from '../../src/mold/index.ts';
import { box, single } from '../revolved-solids.ts';

const solid = (role: SolidRole, low: number, high: number): { solid: Solid } => ({
  solid: {
    id: role,
    title: role,
    role,
    subjects: [],
    mesh: single(box([-20, -20, low], [20, 20, high])),
    toMold: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1],
    estimated: false,
  },
});

/** The picture as text, which is quick to compare. */
const pictureOf = (...solids: readonly { solid: Solid }[]): string | undefined => {
  const [file] = overviewFiles({ solids } as unknown as Build);
  return file && Buffer.from(file.bytes).toString('base64');
};

test('shows the open mold, and nothing that lies over its cavities', () => {
  const lower = solid('half', -10, 0);
  const open = pictureOf(lower);
  expect(open?.length).toBeGreaterThan(100);
  const over = (['jig', 'layout plate', 'nest', 'can part', 'blank', 'plug'] as const).map((role) =>
    solid(role, 0, 5),
  );
  expect(pictureOf(lower, solid('half', 0, 10), ...over)).toEqual(open);
  expect(pictureOf(lower, solid('build-up', 0, 5))).not.toEqual(open);
});

test('without a mold it shows what there is', () => {
  expect(pictureOf(solid('jig', 0, 5))?.length).toBeGreaterThan(100);
  expect(pictureOf(solid('half', 0, 10))?.length).toBeGreaterThan(100);
  expect(pictureOf()).toBeUndefined();
});
