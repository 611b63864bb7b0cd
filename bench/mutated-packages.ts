/**
 * Memory and time that changed 3MF files of our own take until `inspect` has judged them, each in a process of its own:
 * `npm run compile`, then `npx tsx bench/mutated-packages.ts [how many] [seed] FILE...`, FILE being 3MF files of builds.
 * What passes 1000 MB or 20 s of CPU is named, kept in the folder that is printed, and the run exits 1.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

const [mostMegabytes, mostSeconds] = [1000, 20];
/** Wall time after which a child is ended, ms: a busy machine must not make a mutant slow. */
const most = 600_000;
const program = fileURLToPath(new URL('../dist/cli/main.js', import.meta.url));
const tell = `data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>writeSync(3,JSON.stringify(process.resourceUsage())))`;

/** mulberry32: the same mutants for the same seed. */
function random(seed: number): (n: number) => number {
  let state = seed >>> 0;
  return (n) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 2 ** 32) * n);
  };
}

type Draw = (n: number) => number;
const pick = <T>(list: readonly T[], draw: Draw): T => list[draw(list.length)];
const numbers = ['0', '-1', '1e-9', '1e6', '1e30', '1e308', '4294967295', '0.001', '-1000', 'nan'];

/** Changes the text of one of the matches. */
function change(text: string, what: RegExp, draw: Draw, to: (found: string) => string): string {
  const found = [...text.matchAll(what)];
  if (found.length === 0) return text;
  const { index, 0: piece } = pick(found, draw);
  return text.slice(0, index) + to(piece) + text.slice(index + piece.length);
}

const everyNumber = (text: string, what: RegExp, to: (value: number) => number): string =>
  text.replaceAll(what, (_, head, value, tail) => `${head}${to(Number(value))}${tail}`);

/** What is done to a model part: each leaves most of it as it was, so that it is read far. */
const changes: Readonly<Record<string, (text: string, draw: Draw) => string>> = {
  'a number': (text, draw) => change(text, /"-?\d[\d.e-]*"/g, draw, () => `"${pick(numbers, draw)}"`),
  'many numbers': (text, draw) => {
    let out = text;
    for (let i = 0; i < 20; i++) out = change(out, /"-?\d[\d.e-]*"/g, draw, () => `"${pick(numbers, draw)}"`);
    return out;
  },
  'corners mixed up': (text, draw) => {
    const share = 1 + draw(20);
    const points = [...text.matchAll(/<vertex /g)].length;
    return everyNumber(text, /(v[123]=")(\d+)(")/g, (v) =>
      draw(share) === 0 ? draw(Math.min(points, 200)) : v,
    );
  },
  'points moved at random': (text, draw) => {
    const far = pick([0.01, 1, 30, 1e4], draw);
    return everyNumber(text, /([xyz]=")(-?[\d.e-]+)(")/g, (x) => x + far * (draw(1000) / 500 - 1));
  },
  'triangles left out': (text, draw) => {
    const share = 2 + draw(30);
    return text.replaceAll(/<triangle [^>]*\/>/g, (one) => (draw(share) === 0 ? '' : one));
  },
  'triangles turned over': (text, draw) => {
    const share = 2 + draw(10);
    return text.replaceAll(/v1="(\d+)" v2="(\d+)"/g, (one, a, b) =>
      draw(share) === 0 ? `v1="${b}" v2="${a}"` : one,
    );
  },
  'items again and again': (text, draw) => {
    const times = pick([2, 20, 200, 5000], draw);
    return change(text, /<item [^>]*\/>/g, draw, (one) => one.repeat(times));
  },
  'items of one place': (text) => text.replaceAll(/(<item [^>]*?) transform="[^"]*"/g, '$1'),
  'a transform': (text, draw) =>
    change(text, /transform="[^"]*"/g, draw, (one) => {
      const words = one.slice(11, -1).split(' ');
      words[draw(12)] = pick(numbers, draw);
      return `transform="${words.join(' ')}"`;
    }),
  'a unit': (text, draw) =>
    text.replace(/unit="\w+"/, `unit="${pick(['micron', 'meter', 'foot', 'inch'], draw)}"`),
  'a piece twice': (text, draw) => {
    const [at, length] = [draw(text.length), draw(pick([100, 5000, 100_000], draw))];
    return text.slice(0, at) + text.slice(at, at + length).repeat(pick([2, 10, 100], draw)) + text.slice(at);
  },
  'a piece left out': (text, draw) => {
    const [at, length] = [draw(text.length), draw(pick([20, 500, 50_000], draw))];
    return text.slice(0, at) + text.slice(at + length);
  },
  'metadata by the thousand': (text, draw) =>
    text.replace(
      '<resources>',
      `${'<metadata name="a b">a</metadata>'.repeat(pick([100, 100_000], draw))}<resources>`,
    ),
};

function mutant(bytes: Uint8Array, draw: Draw): { readonly bytes: Uint8Array; readonly what: string } {
  const parts = unzipSync(bytes);
  const name = Object.keys(parts).find((part) => part.endsWith('.model'));
  if (name === undefined) throw new Error('no model part');
  const what = [pick(Object.keys(changes), draw), ...(draw(2) ? [pick(Object.keys(changes), draw)] : [])];
  const text = what.reduce((before, one) => changes[one](before, draw), strFromU8(parts[name]));
  const packed = zipSync({ ...parts, [name]: strToU8(text) }, { level: 6, mtime: '1980-01-02' });
  // Now and then the package itself is damaged too.
  if (draw(10) === 0) for (let i = 0; i < 5; i++) packed[draw(packed.length)] = draw(256);
  return { bytes: packed, what: what.join(', ') };
}

interface Cost {
  readonly code: number | null;
  readonly seconds: number;
  readonly megabytes: number;
}

function inspect(path: string): Promise<Cost> {
  const child = spawn(process.execPath, ['--import', tell, program, 'inspect', path], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    timeout: most,
    killSignal: 'SIGKILL',
  });
  let told = '';
  child.stdio[3]?.on('data', (piece: Buffer) => {
    told += piece;
  });
  return new Promise((resolve) =>
    child.on('close', (code) => {
      const used = told === '' ? undefined : (JSON.parse(told) as NodeJS.ResourceUsage);
      const seconds = used ? (used.userCPUTime + used.systemCPUTime) / 1e6 : Number.POSITIVE_INFINITY;
      resolve({ code, seconds, megabytes: used ? used.maxRSS / 1024 : Number.POSITIVE_INFINITY });
    }),
  );
}

const [count = '100', seed = '1', ...files] = process.argv.slice(2);
const draw = random(Number(seed));
const folder = mkdtempSync(join(tmpdir(), 'mutants-'));
const [codes, costs] = [new Map<number | null, number>(), [] as (Cost & { what: string })[]];
let passed = 0;
for (let i = 0; i < Number(count); i++) {
  const file = files[i % files.length];
  const { bytes, what } = mutant(readFileSync(file), draw);
  const path = join(folder, `${i}.3mf`);
  writeFileSync(path, bytes);
  const cost = await inspect(path);
  costs.push({ ...cost, what: `${i} of ${basename(file)}: ${what}` });
  codes.set(cost.code, (codes.get(cost.code) ?? 0) + 1);
  const over = cost.megabytes > mostMegabytes || cost.seconds > mostSeconds || (cost.code ?? 3) > 2;
  if (over) console.log(`${path}: ${JSON.stringify(costs.at(-1))}`);
  else rmSync(path);
  if (over) passed++;
}
const worst = (of: 'seconds' | 'megabytes') => costs.toSorted((a, b) => b[of] - a[of]).slice(0, 3);
console.log(
  `${costs.length} mutants, seed ${seed}; exit codes ${JSON.stringify([...codes])}; ${passed} past a limit`,
);
for (const of of ['seconds', 'megabytes'] as const)
  for (const { what, seconds, megabytes } of worst(of))
    console.log(`most ${of}: ${seconds.toFixed(1)} s, ${megabytes.toFixed(0)} MB: ${what}`);
if (passed === 0) rmSync(folder, { recursive: true });
else process.exitCode = 1;
