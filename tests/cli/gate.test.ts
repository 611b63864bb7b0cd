import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run, stackTrace, workbench } from './workbench.ts';

const { put, folder } = workbench();

/** A bar along the radius, 4 mm thick, with a blind arm toward the axis on each side: air stays in both. */
put(
  'hook.svg',
  '<svg xmlns="http://www.w3.org/2000/svg" width="24mm" height="18mm" viewBox="0 0 24 18">' +
    '<path d="M0 6H10V3H4V0H14V6H24V12H14V18H4V15H10V12H0Z"/></svg>',
);

const planOf = (diameter: string, more: string): string => `process: rubber
disc: { diameter: ${diameter} }
sprue: {}
masters:
  hook: { outline: hook.svg, above: 2, below: 2 }
placements:
  - { master: hook, ring: { count: 1, radius: 70 } }
alloy: { name: tin }
${more}
`;

const whole = `spin: { speed: 480 }
# Cut with the knife.
gates:
  - { placements: [hook], width: 4, depth: 2 } # with the wide blade
# The end.`;

const once = new Map<string, ReturnType<typeof run>>();
/** Each plan is proposed for once. */
function proposedFor(name: string, text: string, ...options: readonly string[]): ReturnType<typeof run> {
  const key = [name, ...options].join(' ');
  const ran = once.get(key) ?? run('gate', put(name, text), '--no-cache', ...options);
  once.set(key, ran);
  return ran;
}

describe('gate', () => {
  it('says in the plan’s units what is proposed, why, and what stays', async () => {
    const { code, out, err } = await proposedFor('mm.yaml', planOf('250', whole));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^hook-1\n {2}gate at the inner side: /);
    expect(out.match(/vent: \w+ side fills last: [\d.]+ mm3 \([\d.]+ in3\) of air stay/g)).toHaveLength(2);
    expect(out).toMatch(/air that stays: [1-9][\d.]+ mm3 .* before, 0\.00 mm3/);
    expect(readFileSync(`${folder}/mm.yaml`, 'utf8')).toBe(planOf('250', whole));
  });

  it('writes it into the plan with comments kept and its mode, and changes nothing the second time', async () => {
    const { code, out } = await proposedFor('inch.yaml', planOf('10 in', whole), '--write');
    expect({ code, written: out.includes('Written into') }).toEqual({ code: 0, written: true });
    expect(out).toMatch(/side fills last: [\d.]+ in3 \([\d.]+ mm3\) of air stay/);
    const path = `${folder}/inch.yaml`;
    const text = readFileSync(path, 'utf8');
    for (const said of ['# Cut with the knife.', '# The end.', 'fills last']) expect(text).toContain(said);
    const { mode } = statSync(path);
    const again = await run('gate', path, '--no-cache', '--write', '--json');
    expect(again.code).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect(statSync(path).mode).toBe(mode);
    const [{ gate, ways, left, after }] = JSON.parse(again.out);
    expect({ gate, ways, left, after }).toEqual({ gate: undefined, ways: [], left: [], after: [] });
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it.each([
    ['no-spin.yaml', planOf('250', 'gates: straight'), /^[^\n]*spin\.speed[^\n]*$/],
    [
      'none.yaml',
      'process: rubber\ndisc: { diameter: 250 }\nsprue: {}\nalloy: { name: tin }\nspin: { speed: 480 }\n',
      /^[^\n]*there is nothing to gate[^\n]*$/,
    ],
    ['unknown.yaml', planOf('250', 'gates: [{ placements: [hok] }]'), /unknown\.yaml:9:\d+[\s\S]*hok/],
  ])('says of %s in one place what keeps it, exit 2', async (name, text, says) => {
    const { code, out, err } = await run('gate', put(name, text), '--no-cache');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err).not.toMatch(stackTrace);
  });
});
