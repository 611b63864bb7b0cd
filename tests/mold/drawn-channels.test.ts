import { describe, expect, test } from 'vitest';
import { checkText } from '../faults/check-text.ts';
import { moldOfText } from './mold-of-text.ts';

const moldOf = async (text: string) => ({ mold: await moldOfText(text) });

const head = `process: rigid
disc: { diameter: 160, thickness: 20 }
sprue: { hole: 20, draft: 3, well: { diameter: 30, depth: 7 }, dome: { diameter: 12, height: 3 }, fillet: 1, grip: 0 }
parting: { surface: flat }
masters:
  tile: { length: 12, width: 12, above: 2, below: 2, entry: { corner: { x: -6, y: -6 } } }
placements:
  - { id: one, master: tile, at: { radius: 55, angle: 0 } }
  - { id: two, master: tile, at: { radius: 33, angle: 0 } }
  - { id: three, master: tile, at: { radius: 45, angle: 150 } }
`;

/** What is found of channels, with line and column. */
async function said(text: string) {
  const { findings } = await checkText(`${head}${text}`, 'plan.yaml');
  return findings
    .filter(
      ({ code }) =>
        code.startsWith('channels.') || code.startsWith('walls.channel') || code.startsWith('plan.'),
    )
    .map(({ code, severity, subject, at }) => `${code} ${severity} ${subject} ${at?.line}:${at?.column}`);
}

describe('gates and vents with an entry and a path of their own', () => {
  test('a straight gate behind another cavity runs through it; a routed one goes round it', async () => {
    expect(await said('gates:\n  - { placements: one }\n')).toEqual(['walls.channel warn two 9:5']);
    expect(await said('gates:\n  - { placements: one, path: routed }\n')).toEqual([]);
  });
  test('with an arc, through way points, and to a named corner', async () => {
    expect(await said('gates:\n  - { placements: three, path: { arc: 40 } }\n')).toEqual([]);
    expect(
      await said(
        'gates:\n  - { placements: three, entry: corner, path: { through: [{ radius: 30, angle: -20 }] }, width: 2 }\n',
      ),
    ).toEqual([]);
  });
  test('an entry off the outline', async () => {
    expect(await said('gates:\n  - { placements: three, entry: { x: -12, y: 0 } }\n')).toEqual([
      'channels.entry-off warn gate-three 12:5',
    ]);
  });
  test('a way point outside the disc', async () => {
    expect(
      await said('gates:\n  - { placements: three, path: { through: [{ radius: 90, angle: 0 }] } }\n'),
    ).toEqual(['channels.way-outside stop gate-three 12:5']);
  });
  test('a bend without room for its width', async () => {
    expect(
      await said(
        'gates:\n  - { placements: three, path: { through: [{ radius: 30, angle: 0 }, { radius: 30, angle: 4 }] } }\n',
      ),
    ).toEqual(['channels.tight warn gate-three 12:5']);
  });
  test('a gate to the outer end that goes straight through its own cavity', async () => {
    expect(await said('gates:\n  - { placements: three, entry: outer }\n')).toEqual([
      'channels.through-own warn gate-three 12:5',
    ]);
    expect(await said('gates:\n  - { placements: three, entry: outer, path: routed }\n')).toEqual([]);
  });
  test('no way where the walls wanted are too thick', async () => {
    expect(await said('limits: { wall: 14 }\ngates:\n  - { placements: one, path: routed }\n')).toContain(
      'channels.no-way warn gate-one 13:5',
    );
  });
  test('a name that the master does not give', async () => {
    expect(await said('vents:\n  - { placements: one, entry: cornr }\n')).toEqual([
      'plan.unknown-id stop vents#1.entry 12:31',
    ]);
  });
  test('a gate out of another one, whichever is listed first; one out of each other has none', async () => {
    const first = '  - { placements: two }\n';
    const second = '  - { placements: one, entry: left, from: two, path: routed }\n';
    expect(await said(`gates:\n${first}${second}`)).toEqual([]);
    expect(await said(`gates:\n${second}${first}`)).toEqual([]);
    expect(
      await said('gates:\n  - { placements: one, from: two }\n  - { placements: two, from: one }\n'),
    ).toEqual(['channels.no-parent warn gate-one 12:5', 'channels.no-parent warn gate-two 13:5']);
  });
  test('a vent into a blind pocket, and one into another vent', async () => {
    expect(
      await said('vents:\n  - { placements: three, entry: { angle: 30 }, to: { pocket: 6 } }\n'),
    ).toEqual([]);
    expect(
      await said(
        'vents:\n  - { placements: one }\n  - { placements: two, entry: left, to: one, path: routed }\n',
      ),
    ).toEqual([]);
  });
  test('an entry or a path that says too little, or two things', async () => {
    expect(await said('gates:\n  - { placements: one, entry: { x: 3 } }\n')).toEqual([
      'plan.missing stop gates#1.entry 12:24',
    ]);
    expect(await said('gates:\n  - { placements: one, entry: { angle: 3, x: 3, y: 1 } }\n')).toEqual([
      'plan.choose-one stop gates#1.entry.angle 12:33',
    ]);
    expect(await said('gates:\n  - { placements: one, path: {} }\n')).toEqual([
      'plan.missing stop gates#1.path 12:24',
    ]);
    expect(
      await said('gates:\n  - { placements: one, path: { arc: 3, through: [{ radius: 20, angle: 0 }] } }\n'),
    ).toEqual(['plan.choose-one stop gates#1.path.arc 12:32']);
    expect(await said('gates:\n  - { placements: one, from: tow }\n')).toEqual([
      'plan.unknown-id stop gates#1.from 12:30',
    ]);
  });
  test('a slant that passes the well by, one that has no end to aim at, and a blind one that would be looked for', async () => {
    // At 39 mm, half a width within the cavity, 40 degrees pass the axis at 26 mm.
    expect(await said('gates:\n  - { placements: three, path: { slant: 40 } }\n')).toEqual([
      'channels.slant warn gate-three 12:5',
    ]);
    expect(await said('gates:\n  - { placements: three, path: { slant: 15 } }\n')).toEqual([]);
    expect(await said('gates:\n  - { placements: three, from: two, path: { slant: 15 } }\n')).toEqual([
      'plan.choose-one stop gates#1.path 12:43',
    ]);
    expect(await said('vents:\n  - { placements: three, to: { pocket: 5 }, path: routed }\n')).toEqual([
      'plan.choose-one stop vents#1.path 12:51',
    ]);
  });
  test('a slanted gate falls behind outward, whichever way the disc turns', async () => {
    for (const [direction, sign] of [
      ['clockwise', -1],
      ['counter-clockwise', 1],
    ] as const) {
      const text = `${head}machine: { direction: ${direction} }\ngates:\n  - { placements: two, path: { slant: 20 } }\n`;
      const { mold } = await moldOf(text);
      const [begin, end] = mold.channels[0].run.map(({ at }) => at);
      // The cavity lies on +x: the gate begins ahead of it, where the disc turns to.
      expect(Math.sign(begin[1])).toBe(sign);
      const lean = Math.atan2(Math.abs(end[1] - begin[1]), end[0] - begin[0]);
      expect((lean * 180) / Math.PI).toBeCloseTo(20, 6);
      expect(Math.hypot(...begin)).toBeCloseTo(15 - 1.5, 9);
    }
  });
});
