import { isAbsolute, normalize, sep } from 'node:path';
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { filesNamed, leadsOut, readPlan } from '../../src/plan/index.ts';

it('names the files of meshes and outlines, each once', () => {
  const { plan } = readPlan(
    `process: rubber
disc: { diameter: 200, thickness: 20 }
masters:
  leaf: { file: masters/leaf.stl }
  leaf-again: { file: masters/leaf.stl }
  key: { outline: key.svg, above: 2, below: 1 }
  box: { width: 10, length: 10, above: 2, below: 1 }
`,
    'plan.yaml',
  );
  expect(filesNamed(plan)).toEqual(['masters/leaf.stl', 'key.svg']);
  expect(filesNamed(undefined)).toEqual([]);
});

test.each([
  '/etc/x.stl',
  '\\x.stl',
  'C:x.stl',
  'c:/x.stl',
  '..',
  '../x.stl',
  'a/../../x.stl',
  'a\\..\\..\\x.stl',
])('%s leads out of its folder', (path) => expect(leadsOut(path)).toBe(true));

test.each(['x.stl', 'a/x.stl', './x.stl', 'a/../x.stl', 'a/./..//x.stl', '...', '..x/y.stl'])(
  '%s does not',
  (path) => expect(leadsOut(path)).toBe(false),
);

// On a relative path that never turns back too early, Node's own normalize says the same.
test('agrees with the path library of Node', () => {
  const step = fc.constantFrom('a', 'b', '..', '.', '');
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 7 }), (steps) => {
      const path = steps.join('/');
      const whole = normalize(path);
      const isOut = isAbsolute(path) || whole === '..' || whole.startsWith(`..${sep}`);
      // Leaving and coming back by name is leaving all the same.
      if (isOut) expect(leadsOut(path)).toBe(true);
    }),
  );
});
