/**
 * How soon the demo is seen in a real browser, against what the command takes to build it. Needs the compiled program and
 * the page (`npm run compile`, `npm run page`). Run with `npx tsx bench/open-page.ts`.
 */
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBrowser } from '../tests/browser/browser.ts';

const aim = 3;
const program = 'dist/cli/main.js';
const demo = 'presets/hedgerow';

/** Until as many triangles as only the masters bring are on the screen, s, three times in fresh contexts. */
async function opened(): Promise<number[]> {
  const server = spawn(process.execPath, [program, 'preview', demo], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await new Promise<string>((resolve) => {
    server.stdout.on('data', (part: Buffer) => {
      const found = /http:\/\/\S+/.exec(part.toString());
      if (found) resolve(found[0]);
    });
  });
  const browser = await openBrowser();
  const times: number[] = [];
  for (let k = 0; k < 3; k++) {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 720 } })).newPage();
    await page.goto(url);
    await page.waitForFunction(
      () => Number(document.querySelector('canvas')?.dataset.triangles) > 20_000,
      undefined,
      { polling: 50, timeout: 120_000 },
    );
    times.push((await page.evaluate(() => performance.now())) / 1000);
    await page.context().close();
  }
  await browser.close();
  server.kill();
  return times;
}

function built(): number {
  const out = mkdtempSync(join(tmpdir(), 'open-page-'));
  const start = performance.now();
  execFileSync(process.execPath, [program, 'build', demo, '--out', out, '--quiet'], { stdio: 'ignore' });
  const seconds = (performance.now() - start) / 1000;
  rmSync(out, { recursive: true, force: true });
  return seconds;
}

const times = await opened();
const middle = [...times].sort((a, b) => a - b)[1];
const build = built();
console.log(
  `the demo is seen ${times.map((time) => time.toFixed(1)).join(', ')} s after the page was asked for`,
);
console.log(`  middle ${middle.toFixed(1)} s, aim at most ${aim}: ${middle <= aim ? 'met' : 'MISSED'}`);
console.log(`  discwright build ${build.toFixed(1)} s: seen after ${(middle / build).toFixed(3)} of it`);
