import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';
import { type Browser, type BrowserServer, chromium } from 'playwright-core';

// Where a browser with WebGL2 comes from: TEST_BROWSER alone where it is set; else the one among the packages, then
// what the system has. Each is tried until one draws.

interface Candidate {
  readonly name: string;
  readonly executablePath?: string;
  readonly channel?: string;
  readonly env?: Record<string, string>;
}

const flags = [
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

const ownEnv = (): Record<string, string> =>
  Object.fromEntries(
    Object.entries(process.env).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])),
  );

/** The packaged browser, unpacked once beside the packages; a half-written folder never gets the final name. */
function packaged(): Candidate | undefined {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const home = fileURLToPath(new URL('../../node_modules/@sparticuz/chromium', import.meta.url));
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')) as { version: string };
  const cache = join(home, '../../.cache');
  const folder = join(cache, `chromium-${version}`);
  if (!existsSync(folder)) {
    mkdirSync(cache, { recursive: true });
    const fresh = mkdtempSync(join(cache, 'chromium-'));
    try {
      unpack(join(home, 'bin'), fresh);
      renameSync(fresh, folder);
    } catch (error) {
      rmSync(fresh, { recursive: true, force: true });
      // Another test may have been quicker.
      if (!existsSync(folder)) throw error;
    }
  }
  const libraries = hasNss() ? {} : { LD_LIBRARY_PATH: join(folder, 'lib') };
  const env = { ...ownEnv(), ...libraries, FONTCONFIG_FILE: join(folder, 'fonts.conf') };
  return { name: `packaged chromium ${version}`, executablePath: join(folder, 'chromium'), env };
}

function unpack(archives: string, folder: string): void {
  const read = (name: string): Buffer => brotliDecompressSync(readFileSync(join(archives, name)));
  writeFileSync(join(folder, 'chromium'), read('chromium.br'), { mode: 0o755 });
  for (const name of ['swiftshader.tar.br', 'al2023.tar.br', 'fonts.tar.br']) {
    execFileSync('tar', ['-x', '-C', folder, '--no-same-owner'], { input: read(name) });
  }
  const fonts = `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir prefix="relative">fonts</dir><cachedir prefix="relative">font-cache</cachedir></fontconfig>`;
  writeFileSync(join(folder, 'fonts.conf'), fonts);
}

function hasNss(): boolean {
  try {
    return execFileSync('ldconfig', ['-p'], { encoding: 'utf8' }).includes('libnss3.so');
  } catch {
    return false;
  }
}

function* candidates(): Generator<Candidate> {
  const wanted = process.env.TEST_BROWSER;
  if (wanted) {
    yield { name: wanted, executablePath: wanted };
    return;
  }
  const own = packaged();
  if (own) yield own;
  for (const name of ['chromium-headless-shell', 'chromium', 'chromium-browser']) {
    const path = join('/usr/bin', name);
    if (existsSync(path)) yield { name: path, executablePath: path };
  }
  for (const channel of ['chrome', 'msedge']) yield { name: channel, channel };
}

/** Starts a browser that can draw. Throws with what each one tried said where none can. */
export async function startBrowser(): Promise<BrowserServer> {
  const said: string[] = [];
  for (const { name, ...where } of candidates()) {
    let server: BrowserServer | undefined;
    try {
      server = await chromium.launchServer({
        headless: true,
        timeout: 30_000,
        chromiumSandbox: process.platform !== 'linux',
        args: flags,
        ...where,
      });
      if (await draws(server)) return server;
      said.push(`${name}: no WebGL2`);
    } catch (error) {
      said.push(`${name}: ${error instanceof Error ? error.message.split('\n', 1)[0] : String(error)}`);
    }
    await server?.close();
  }
  throw new Error(`no browser for the tests; set TEST_BROWSER. Tried:\n${said.join('\n')}`);
}

/** A browser of one's own, gone when it is closed. */
export async function openBrowser(): Promise<Browser> {
  const server = await startBrowser();
  const browser = await chromium.connect(server.wsEndpoint());
  browser.once('disconnected', () => void server.close());
  return browser;
}

async function draws(server: BrowserServer): Promise<boolean> {
  const browser = await chromium.connect(server.wsEndpoint());
  try {
    const page = await browser.newPage();
    return await page.evaluate(() => document.createElement('canvas').getContext('webgl2') !== null);
  } finally {
    await browser.close();
  }
}
