import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A page as a gray picture: `at(column, row)` is 0 black to 255 white. */
export interface RenderedPage {
  readonly width: number;
  readonly height: number;
  at(column: number, row: number): number;
}

/** True where Poppler's programs are installed (Debian: poppler-utils). With CI=true their lack is an error. */
export function hasPoppler(ci = process.env.CI): boolean {
  const there = spawnSync('pdftoppm', ['-v'], { stdio: 'ignore' }).error === undefined;
  if (!there && ci === 'true')
    throw new Error('CI must have pdftoppm to measure the sheet (apt: poppler-utils)');
  return there;
}

/** One page of a PDF, drawn by Poppler at a resolution in dots per inch, without smoothing. */
export function renderPage(pdf: Uint8Array, page: number, dpi: number): RenderedPage {
  return inFolder(pdf, (folder, file) => {
    const args = [
      '-r',
      String(dpi),
      '-f',
      String(page),
      '-l',
      String(page),
      '-gray',
      '-aa',
      'no',
      '-aaVector',
      'no',
    ];
    const done = spawnSync('pdftoppm', [...args, '-singlefile', file, join(folder, 'page')]);
    if (done.status !== 0) throw new Error(`pdftoppm ended with ${done.status}: ${done.stderr}`);
    return readPgm(readFileSync(join(folder, 'page.pgm')));
  });
}

/** The words of a PDF, page by page. */
export function pageTexts(pdf: Uint8Array): string[] {
  return inFolder(pdf, (_, file) => {
    const done = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    if (done.status !== 0) throw new Error(`pdftotext ended with ${done.status}: ${done.stderr}`);
    return done.stdout.split('\f').slice(0, -1);
  });
}

function inFolder<T>(pdf: Uint8Array, use: (folder: string, file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    return use(folder, file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Binary portable graymap (netpbm P5) of 8 bits. */
function readPgm(bytes: Buffer): RenderedPage {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error('not a graymap of 8 bits');
  const [width, height] = [Number(head[1]), Number(head[2])];
  const from = head[0].length;
  return { width, height, at: (column, row) => bytes[from + row * width + column] };
}
