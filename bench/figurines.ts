/**
 * Random discs of figurines as others sculpt them (tests/mesh/figurines.ts), built, and every STL judged by admesh and
 * gtscheck. `npx tsx bench/figurines.ts [count] [first seed]`; 500 by hand before a release, 20 where nothing is said.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadKernel } from '../src/kernel/index.ts';
import { figurineDisc, judgeDisc } from '../tests/figurine-discs.ts';

const count = Number(process.argv[2] ?? 20);
const first = Number(process.argv[3] ?? 1);
const folder = mkdtempSync(join(tmpdir(), 'figurines-'));
const cpu = process.cpuUsage();
const sum = { files: 0, faults: 0, stopped: 0 };
try {
  for (let seed = first; seed < first + count; seed++) {
    const { files, faults, findings } = await judgeDisc(
      figurineDisc(seed),
      await loadKernel(),
      (name, bytes) => {
        const path = join(folder, name);
        writeFileSync(path, bytes);
        return path;
      },
    );
    sum.files += files;
    sum.faults += faults.length;
    if (findings.some(({ severity }) => severity === 'stop')) sum.stopped++;
    for (const fault of faults) console.log(`disc ${seed}: ${fault}`);
    const told = findings.filter(({ code, severity }) => severity === 'stop' || code.includes('cross'));
    for (const { code, subject, values } of told)
      console.log(`disc ${seed}: ${subject} ${code} ${JSON.stringify(values)}`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const { user, system } = process.cpuUsage(cpu);
console.log(
  `${count} discs, ${sum.files} STL, ${sum.faults} faults, ${sum.stopped} discs with a stop; ${((user + system) / 1e6).toFixed(0)} s of CPU`,
);
if (sum.faults > 0) process.exitCode = 1;
