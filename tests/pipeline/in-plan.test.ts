import { expect, test } from 'vitest';
import { loadKernel } from '../../src/kernel/index.ts';
import { readMold } from '../../src/pipeline/index.ts';

const kernel = await loadKernel();

const plan = `process: rubber
disc: { diameter: 120, thickness: 14 }
sprue: { puller: { screw: M97 } }
masters:
  button: { length: 10, width: 10, above: 3, below: 1 }
  bar: { length: 60, width: 6, above: 3, below: 1 }
placements:
  - { id: one, master: button, at: { radius: 40, angle: 90 } }
  - { id: high, master: button, at: { radius: 40, angle: 140 }, sink: 20 }
  - { id: long, master: bar, at: { radius: 30, angle: 0 } }
  - master: button
    id: round
    ring: { count: 2, radius: 45, start: 200 }
registration:
  bosses:
    - { kind: cap nut, size: M97, at: { radius: 47, angle: 30 } }
    - { kind: dome, size: 8, at: { radius: 10, angle: 300 } }
tabs: [{ angle: 60, width: 118, inset: 2 }]
notches:
  - { angle: 10 }
gates:
  - placements: [long]
vents: straight
can: { diameter: 121.5, depth: 28 }
closing: { pressure: 1.5 MPa }
machine: { maxSpeed: 1000 }
rubber: { density: 1100 kg/m3 }
alloy: { density: 7000 kg/m3 }
spin: { speed: 400 }
cure: { temperature: 155 }
`;

const read = async (text: string) => {
  const files = () => Promise.reject(new Error('no file is named'));
  const { mold, findings } = await readMold(
    { bytes: new TextEncoder().encode(text), name: 'plan.yaml', files },
    kernel,
  );
  if (!mold) throw new Error(JSON.stringify(findings));
  return { mold, findings };
};

test('a mold has the places of its things apart from them, once', async () => {
  const { mold } = await read(plan);
  const { places, ...things } = mold;
  expect(
    Object.fromEntries(Object.entries(places).map(([id, { line, column }]) => [id, `${line}:${column}`])),
  ).toMatchInlineSnapshot(`
    {
      "alloy": "28:1",
      "bar": "6:3",
      "boss-1": "16:7",
      "boss-2": "17:7",
      "button": "5:3",
      "can": "24:1",
      "closing": "25:1",
      "cure": "30:1",
      "gate-long": "22:5",
      "high": "9:5",
      "long": "10:5",
      "machine": "26:1",
      "notch-1": "20:5",
      "one": "8:5",
      "round-1": "11:5",
      "round-2": "11:5",
      "rubber": "27:1",
      "spin": "29:1",
      "sprue": "3:1",
      "tab-1": "18:8",
      "vent-high": "9:5",
      "vent-long": "10:5",
      "vent-one": "8:5",
      "vent-round-1": "11:5",
      "vent-round-2": "11:5",
    }
  `);
  const ids = [mold.masters, mold.placements, mold.bosses, mold.tabs, mold.notches, mold.channels].flat();
  for (const { id } of ids) if (!id.startsWith('vent-')) expect(places, id).toHaveProperty([id]);
  expect(JSON.stringify(things)).not.toContain('plan.yaml');
});

test('what is found while placing has its exact place: a gate that of its entry, a vent without one that of what it is for', async () => {
  const { findings } = await read(plan);
  expect(
    findings.map(({ code, subject, at }) => `${code} ${subject} ${at?.line}:${at?.column}`),
  ).toMatchInlineSnapshot(`
    [
      "layout.sunk-under high 9:5",
      "layout.unknown-nut boss-1 16:7",
      "layout.no-channel long 22:5",
      "layout.no-channel long 10:5",
      "mold.parting-limit high 9:5",
      "layout.unknown-thread sprue 3:1",
      "layout.outside-disc tab-1 18:8",
      "layout.over-well boss-2 17:7",
    ]
  `);
});
