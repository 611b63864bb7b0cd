import { expect, test } from 'vitest';
import { Remarks } from '../../../src/mesh/repair/remarks.ts';
import { sayFinding } from '../../../src/wording/index.ts';

const empty = { positions: new Float32Array(), triangles: new Uint32Array() };
const nothing = { count: 0, size: 0 } as const;
const mend = (count: number, closed: number) => ({
  joined: { count, size: 0.1 },
  collapsed: { count, size: 0 },
  doubled: nothing,
  reoriented: { count, size: 0 },
  nonManifold: { count, size: 0 },
  slivers: { count, size: 0 },
  openBefore: 3 * closed,
  holes: {
    mesh: empty,
    left: 0,
    closed,
    added: closed,
    area: 2,
    widest: 1,
    farthest: 0.5,
    place: [0, 0, 0] as const,
  },
});

test.each([
  ['one of each', 1, /^1 (point on an open edge was|face was|face looked|edge joined|face with|hole )/],
  [
    'several of each',
    2,
    /^2 (points on open edges were|faces were|faces looked|edges joined|faces with|holes )/,
  ],
] as const)('counts %s in plain grammar', (_, count, opening) => {
  const remarks = new Remarks('leaf');
  remarks.closed(mend(count, count));
  expect(remarks.findings).toHaveLength(6);
  for (const one of remarks.findings) {
    const { says } = sayFinding(one, 'metric');
    expect(says).toMatch(opening);
    expect(says).not.toMatch(/\b1 (points|faces|edges|holes|bodies|shells|triangles)\b/);
  }
});
