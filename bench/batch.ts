/**
 * A batch of 24 diameters on 2 workers against 1, and the peak of resident memory with 10 and with 200 variants, each in
 * a process of its own. Run with `npm run compile && npx tsx bench/batch.ts`; on two idle cores, or it says little.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const aims = { faster: 1.7, growth: 0.1 };
const program = join(import.meta.dirname, '..', 'dist', 'cli', 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'bench-batch-'));

/** Stand-ins on a ring: work enough for a worker, and no file to read. */
const plan = join(folder, 'rings.yaml');
writeFileSync(
  plan,
  `title: Rings
process: rubber
disc: { diameter: 230, thickness: 19 }
sprue: { hole: 14 %, draft: 3, well: { diameter: 21 %, depth: 3 % } }
masters: { blank: { width: 24, length: 32, above: 4, below: 3 } }
placements: [{ master: blank, ring: { spacing: 45, radius: { fromRim: 40 } } }]
registration: { bosses: [{ kind: cap nut, size: M8, at: { radius: { fromRim: 14 }, angle: 0 } }] }
`,
);

interface Ran {
  readonly seconds: number;
  /** User and system time of all its threads together. */
  readonly cpuSeconds: number;
  readonly peakMb: number;
}

/** One run of the compiled program, which tells its own peak as it ends. */
function batch(count: number, workers: number): Ran {
  const out = join(folder, `out-${count}-${workers}`);
  const diameters = Array.from({ length: count }, (_, i) => (200 + (i * 150) / count).toFixed(3));
  const tell =
    'data:text/javascript,process.on("exit",()=>{const u=process.resourceUsage();' +
    'console.error("peak",u.maxRSS,u.userCPUTime+u.systemCPUTime)})';
  const args = ['--import', tell, program, 'batch', plan, '--vary', `disc.diameter=${diameters.join(',')}`];
  const start = performance.now();
  const said = execFileSync(
    'sh',
    ['-c', 'exec "$0" "$@" 2>&1', process.execPath, ...args, '--out', out, '--workers', String(workers)],
    { encoding: 'utf8' },
  );
  const seconds = (performance.now() - start) / 1000;
  rmSync(out, { recursive: true });
  const told = [...said.matchAll(/^peak (\d+) (\d+)$/gm)];
  const most = (which: number): number => Math.max(...told.map((one) => Number(one[which])));
  return { seconds, cpuSeconds: most(2) / 1e6, peakMb: most(1) / 1024 };
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

try {
  const rounds = Array.from({ length: 3 }, () => ({ one: batch(24, 1), two: batch(24, 2) }));
  const ratio = median(rounds.map(({ one, two }) => one.seconds / two.seconds));
  for (const { one, two } of rounds)
    console.log(
      `  24 diameters: ${one.seconds.toFixed(1)} s on 1 worker, ${two.seconds.toFixed(1)} s on 2; ` +
        `of processor ${one.cpuSeconds.toFixed(1)} s and ${two.cpuSeconds.toFixed(1)} s`,
    );
  console.log(
    `2 workers against 1: ${ratio.toFixed(2)} times faster, aim ${aims.faster}: ${ratio >= aims.faster ? 'met' : 'MISSED'}`,
  );
  const onIdle = median(rounds.map(({ one, two }) => (2 * one.cpuSeconds) / two.cpuSeconds));
  console.log(
    `  by what the processor worked, two idle cores can be at most ${onIdle.toFixed(2)} times faster`,
  );
  const [few, many] = [batch(10, 2), batch(200, 2)];
  const growth = many.peakMb / few.peakMb - 1;
  console.log(
    `peak memory: ${few.peakMb.toFixed(0)} MB with 10 variants, ${many.peakMb.toFixed(0)} MB with 200: ` +
      `${(100 * growth).toFixed(1)} % more, aim under ${100 * aims.growth} %: ${growth < aims.growth ? 'met' : 'MISSED'}`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
