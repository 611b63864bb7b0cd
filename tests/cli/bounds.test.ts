import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { binaryStl, type Face, meshXml, modelXml, package3mf } from '../mesh/mesh-files.ts';
import { doubling, item } from '../mesh/read/models-3mf.ts';
import { compiledProgram, runInTurn } from './compiled.ts';
import { workbench } from './workbench.ts';

/** What a hostile plan may cost: each case is held to both. */
const mostCpuSeconds = 20;
const mostMegabytes = 1000;

const bench = workbench();

const tells = 3;
const measure = `data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>writeSync(${tells},JSON.stringify(process.resourceUsage())))`;

interface Cost {
  readonly code: number | null;
  readonly out: string;
  readonly cpuSeconds: number;
  readonly megabytes: number;
}

/** One run of the compiled program in a process of its own, ended where it takes far too long on a busy machine. */
function cost(...args: readonly string[]): Promise<Cost> {
  const child = spawn(
    process.execPath,
    ['--max-old-space-size=1500', '--import', measure, compiledProgram, ...args],
    { stdio: ['ignore', 'pipe', 'pipe', 'pipe'], timeout: 240_000, killSignal: 'SIGKILL' },
  );
  const texts = [1, 2, tells].map((fd) => {
    const pieces: Buffer[] = [];
    child.stdio[fd]?.on('data', (piece: Buffer) => pieces.push(piece));
    return () => Buffer.concat(pieces).toString();
  });
  return new Promise((resolve) =>
    child.on('close', (code) => {
      const [out, err, told] = texts.map((text) => text());
      const used = told === '' ? undefined : (JSON.parse(told) as NodeJS.ResourceUsage);
      resolve({
        code,
        out: out + err,
        cpuSeconds: used ? (used.userCPUTime + used.systemCPUTime) / 1e6 : Number.POSITIVE_INFINITY,
        megabytes: used ? used.maxRSS / 1024 : Number.POSITIVE_INFINITY,
      });
    }),
  );
}

const disc = 'process: rubber\ndisc: { diameter: 9 in }\n';
const pin = 'masters:\n  pin: { width: 2, length: 3, above: 1, below: 1 }\n';
const times = (n: number, line: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => line(i)).join('');

const bosses = (entries: number, each: number): string =>
  `${disc}registration:\n  bosses:\n${times(entries, (i) => `    - { kind: dome, size: 3, ring: { count: ${each}, radius: ${30 + i} } }\n`)}`;

const rings = (entries: number, each: number): string =>
  `${disc}${pin}placements:\n${times(entries, (i) => `  - { id: r${i}, master: pin, ring: { count: ${each}, radius: ${30 + (70 * i) / entries} } }\n`)}`;

/** As many bosses as there may be, nowhere alike: what takes the search for false seats longest. */
const scattered = `${disc}registration:\n  bosses:\n${times(24, (i) => `    - { kind: dome, size: 3, at: { radius: ${30 + ((i * 37.7) % 75)}, angle: ${(i * 137.51) % 360} } }\n`)}`;

const outlined = (file: string): string =>
  `${disc}masters:\n  pin: { outline: ${file}, above: 2, below: 2 }\nplacements:\n  - { master: pin, at: { radius: 60, angle: 0 } }\n`;
const drawing = (inner: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${inner}</svg>`;
const onCircle = (i: number, n: number): string =>
  [Math.cos, Math.sin].map((f) => (50 + 40 * f((2 * Math.PI * i) / n)).toFixed(2)).join();
const lines = (n: number): string =>
  drawing(times(n, (i) => `<path d="M${onCircle(i, n)}L${onCircle(i + 1, n)}" stroke="red"/>`));
const corners = (n: number): string =>
  drawing(`<polygon points="${times(n, (i) => `${onCircle(i, n)} `)}"/>`);
/** An outline of so many corners, with teeth as long as the drawing: lying, every side stands beside every other. */
const comb = (n: number): string => {
  const teeth = (n - 2) / 4;
  const tooth = (i: number): string => {
    const [from, middle, to] = [0, 0.5, 1].map((part) => (1 + (90 * (i + part)) / teeth).toFixed(5));
    return `90,${from} 90,${middle} 10,${middle} 10,${to} `;
  };
  return drawing(`<polygon points="${times(teeth, tooth)}5,91 5,1"/>`);
};
/** Entities of 2 points each, as a converter of pictures writes them. */
const dxf = (n: number): string =>
  `0\nSECTION\n2\nENTITIES\n${times(n, (i) => {
    const [x, y] = onCircle(i, n).split(',');
    const [u, v] = onCircle(i + 1, n).split(',');
    return `0\nLINE\n10\n${x}\n20\n${y}\n11\n${u}\n21\n${v}\n`;
  })}0\nENDSEC\n0\nEOF\n`;

/** Each: a name, the plan, a file beside it, and the code that must be found. */
type Case = [name: string, plan: string, file?: readonly [string, string] | undefined, code?: string];

const plans: readonly Case[] = [
  ['30 000 bosses', bosses(60, 500), undefined, 'plan.too-many'],
  ['25 bosses', bosses(1, 25), undefined, 'plan.too-many'],
  ['24 scattered bosses', scattered],
  ['rings of 50 000', rings(100, 500), undefined, 'plan.too-many'],
  ['rings of 250 000', rings(500, 500), undefined, 'plan.too-many'],
  [
    '300 masters with gate, vent and build-up',
    `${rings(1, 300)}sprue: {}\ngates: straight\nvents: straight\nsupports: auto\n`,
  ],
  [
    'gates for all five hundred times',
    `${rings(1, 300)}sprue: {}\ngates:\n${times(500, () => '  - { placements: all }\n')}`,
    undefined,
    'plan.too-many',
  ],
  ['a drawing of 300 000 lines', outlined('a.svg'), ['a.svg', lines(300_000)], 'outline.'],
  [
    'an outline of 300 000 corners',
    outlined('a.svg'),
    ['a.svg', corners(300_000)],
    'outline.too-many-points',
  ],
  ['a comb of 19 002 corners', outlined('a.svg'), ['a.svg', comb(19_002)], 'outline.too-many-points'],
  ['a comb of 9 998 corners', outlined('a.svg'), ['a.svg', comb(9_998)]],
  ['a DXF of 300 000 lines', outlined('a.dxf'), ['a.dxf', dxf(300_000)], 'outline.too-many-points'],
  ['ten thousand lines not in order', outlined('a.dxf'), ['a.dxf', dxf(9_999)]],
];

test.each<Case>([...plans])(
  '%s: judged within the time and memory stated',
  async (name, plan, file, code) => {
    const folder = name.replaceAll(' ', '-');
    mkdirSync(bench.path(folder));
    if (file) bench.put(`${folder}/${file[0]}`, file[1]);
    const met = await cost('check', bench.put(`${folder}/plan.yaml`, plan));
    const said = `${name}: ${met.cpuSeconds.toFixed(1)} s of CPU, ${met.megabytes.toFixed(0)} MB\n${met.out.slice(0, 600)}`;
    expect([0, 1, 2], said).toContain(met.code);
    expect(met.cpuSeconds, said).toBeLessThan(mostCpuSeconds);
    expect(met.megabytes, said).toBeLessThan(mostMegabytes);
    if (code !== undefined) expect(met.out, said).toContain(code);
  },
);

test('a thousand triangles without an inside: judged within the time and memory stated', async () => {
  const turns = [
    0.5545497, 0.308517, 0.3294158, 0.7548777, 0.5698403, 0.2451223, 0.4142136, 0.7320508, 0.236068,
  ];
  const heap = Array.from({ length: 1000 }, (_, i): Face => {
    const at = (k: number): number => 30 * ((i * turns[k]) % 1);
    return [
      [at(0), at(1), at(2)],
      [at(3), at(4), at(5)],
      [at(6), at(7), at(8)],
    ];
  });
  const met = await cost('inspect', bench.put('heap.stl', binaryStl(heap)));
  const said = `${met.cpuSeconds.toFixed(1)} s of CPU, ${met.megabytes.toFixed(0)} MB\n${met.out}`;
  expect(met.code, said).toBe(2);
  expect(met.out, said).toContain('repair.remesh-too-long');
  expect(met.cpuSeconds, said).toBeLessThan(mostCpuSeconds);
  expect(met.megabytes, said).toBeLessThan(mostMegabytes);
});

test('a 3MF of a few kilobytes that stands for 49 million points: refused before they are laid out', async () => {
  const heavy = meshXml.replace(
    /<vertices>(.*)<\/vertices>/,
    (_, list) => `<vertices>${list.repeat(750)}</vertices>`,
  );
  const bytes = package3mf(modelXml(doubling(14, heavy), item(15)));
  expect(bytes.length).toBeLessThan(33_000);
  const met = await cost('inspect', bench.put('heavy.3mf', bytes));
  const said = `${met.cpuSeconds.toFixed(1)} s of CPU, ${met.megabytes.toFixed(0)} MB\n${met.out}`;
  expect(met.code, said).toBe(2);
  expect(met.out, said).toContain('mesh.too-many-triangles');
  expect(met.cpuSeconds, said).toBeLessThan(mostCpuSeconds);
  expect(met.megabytes, said).toBeLessThan(mostMegabytes);
});

const onUnix = test.runIf(process.platform === 'linux');
const master = (file: string): string =>
  `${disc}masters:\n  leaf: { file: ${file} }\nplacements:\n  - { master: leaf, at: { radius: 60, angle: 0 } }\n`;

onUnix.each<[string, (path: string) => void, RegExp]>([
  ['an endless device', (path) => symlinkSync('/dev/zero', path), /is a device, not a file/],
  ['a pipe', (path) => execFileSync('mkfifo', [path]), /is a pipe, not a file/],
  [
    'what the system makes up',
    (path) => symlinkSync('/proc/self/maps', path),
    /holds more than its size tells/,
  ],
  [
    'a file larger than any mesh',
    (path) => {
      writeFileSync(path, '');
      truncateSync(path, 2 ** 40);
    },
    /has 1099512 MB; at most 1074 MB are read/,
  ],
])('%s is told of and not read, by every command', async (name, make, says) => {
  const folder = bench.path(name.replaceAll(' ', '-'));
  mkdirSync(folder);
  const file = `${folder}/leaf.stl`;
  make(file);
  writeFileSync(`${folder}/plan.yaml`, master('leaf.stl'));
  const commands = [
    ['check', `${folder}/plan.yaml`],
    ['build', `${folder}/plan.yaml`, '--out', `${folder}/out`],
    ['inspect', file],
    ['check', file],
    ['preview', file],
    ['batch', `${folder}/plan.yaml`, '--table', file, '--out', `${folder}/out`],
  ];
  const costs = await runInTurn(commands, ['--max-old-space-size=1500']);
  expect(costs.length).toBe(commands.length);
  for (const [i, args] of commands.entries()) {
    const met = costs[i];
    const said = `${args[0]}: ${met.out}`;
    expect([1, 2], said).toContain(met.code);
    const own = args.at(1) === file || args[0] === 'batch';
    if (!own || name !== 'a file larger than any mesh' || args[0] === 'inspect')
      expect(met.out.replaceAll(/\s+/g, ' '), said).toMatch(says);
    expect(met.megabytes, said).toBeLessThan(mostMegabytes);
    expect(met.cpuSeconds, said).toBeLessThan(mostCpuSeconds);
  }
});
