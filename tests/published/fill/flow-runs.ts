/**
 * Two-phase flow runs of the cases, by hand: `npx tsx tests/published/fill/flow-runs.ts write FOLDER` writes a folder for each
 * case, `WM_PROJECT_DIR=/usr/share/openfoam interFoam -case FOLDER/NAME > FOLDER/NAME/log` runs one (Debian's package
 * openfoam), and the same with `read` for `write` prints what `flow-figures.json` holds.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { middleOf } from '../../../src/fill/cells.ts';
import { type FlowCase, flowCases } from './flow-cases.ts';
import { caseFiles, cellsOfCase, settings, streamOf } from './openfoam.ts';

function write(one: FlowCase, folder: string): void {
  for (const [path, text] of Object.entries(caseFiles(one))) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  console.log(`${one.name}: ${cellsOfCase(one).count} cells`);
}

/** Share of metal in each cell at each time that was written. */
function alphas(folder: string): { time: number; alpha: number[] }[] {
  return readdirSync(folder)
    .filter((name) => Number(name) > 0 && existsSync(join(folder, name, 'alpha.metal')))
    .sort((a, b) => Number(a) - Number(b))
    .map((name) => {
      const text = readFileSync(join(folder, name, 'alpha.metal'), 'utf8');
      const from = text.indexOf('(', text.indexOf('nonuniform')) + 1;
      const alpha = text.slice(from, text.indexOf(')', from)).trim().split(/\s+/).map(Number);
      return { time: Number(name), alpha };
    });
}

const rounded = (value: number): number => Number(value.toFixed(3));

function read(one: FlowCase, folder: string) {
  const cells = cellsOfCase(one);
  const middles = Array.from({ length: cells.count }, (_, c) => middleOf(cells, c));
  const cavity = middles.map((at) => one.cavity(...at));
  const shareIn = (alpha: readonly number[], inside: (c: number) => boolean): number => {
    let [air, count] = [0, 0];
    alpha.forEach((metal, c) => {
      if (!cavity[c] || !inside(c)) return;
      air += 1 - metal;
      count++;
    });
    return air / count;
  };
  const times = alphas(folder);
  const last = times[times.length - 1];
  const pieces = Object.entries(one.pieces).map(([name, isInPiece]) => {
    const inside = (c: number): boolean => isInPiece(...middles[c]);
    const half = times.find(({ alpha }) => shareIn(alpha, inside) < 0.5);
    return [name, { air: rounded(shareIn(last.alpha, inside)), ...(half && { halfFullS: half.time }) }];
  });
  const volume = cavity.filter(Boolean).length * one.cell ** 3;
  return {
    name: one.name,
    about: one.about,
    cellMm: one.cell,
    cells: cells.count,
    volumeMm3: rounded(volume),
    flowMm3S: Math.round(streamOf(one)),
    endS: last.time,
    air: rounded(shareIn(last.alpha, () => true)),
    airEach10Ms: times.filter((_, k) => k % 5 === 4).map(({ alpha }) => rounded(shareIn(alpha, () => true))),
    pieces: Object.fromEntries(pieces),
  };
}

const coarse =
  'coarse: 3 to 12 cells across, walls in steps, even pull, air not pressed together, poured tens of times faster than a shop does; shares hold to a tenth at best';

const [command, home, ...names] = process.argv.slice(2);
const chosen = flowCases().filter(({ name }) => names.length === 0 || names.includes(name));
if (!home || !['write', 'read'].includes(command)) throw new Error('write or read, and a folder');
if (command === 'write') for (const one of chosen) write(one, join(home, one.name));
else {
  const runs = chosen.filter(({ name }) => existsSync(join(home, name, '0.002')));
  console.log(
    JSON.stringify({ coarse, settings, runs: runs.map((one) => read(one, join(home, one.name))) }, null, 2),
  );
}
