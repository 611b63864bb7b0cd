import type { Build } from './build.ts';
import { solidPath } from './folders.ts';
import { manifestFile } from './manifest.ts';
import { reportJson } from './report-json.ts';
import type { FontFiles } from './shop-sheet/fonts.ts';
import type { ExportFile } from './solid-file.ts';

/** What formats need besides the build; the shell fetches it, for the core reads no files. */
export interface Supplies {
  fonts(): Promise<FontFiles>;
}

/** A kind of file a build leaves. */
export interface Format {
  readonly id: string;
  readonly title: string;
  /** Written only where it is asked for by name. */
  readonly onRequest?: true;
  write(build: Build, supplies: Supplies): readonly ExportFile[] | Promise<readonly ExportFile[]>;
}

/** One line for each format, in the order the manifest lists their files. A heavy one loads itself when it writes. */
export const exporters: readonly Format[] = [
  { id: 'stl', title: 'Binary STL, one for each solid', write: stlFiles },
  { id: '3mf', title: '3MF of all solids to make, laid out on beds', write: threeMfFile },
  { id: 'svg', title: 'SVG of each flat thing at true size', write: svgFile },
  { id: 'dxf', title: 'DXF of each flat thing at true size', write: dxfFile },
  { id: 'sheet', title: 'Shop sheet, as PDF', write: sheetFile },
  { id: 'overview', title: 'A small picture, as PNG', onRequest: true, write: overviewFile },
  { id: 'report', title: 'Report as JSON', write: reportFile },
];

/** Ids of the formats that a build leaves when nobody says which. */
export const usualFormats: readonly string[] = exporters
  .filter(({ onRequest }) => !onRequest)
  .map(({ id }) => id);

/**
 * All files of a build, the manifest last. `only`: ids of formats; a name that is none of them throws RangeError, and
 * so do two files of one name (one would silently take the other's place). `added` are files of the shell's own.
 * `before` is awaited ahead of each format: a shell says there what comes, or leaves off by throwing.
 */
export async function writeBuild(
  build: Build,
  supplies: Supplies,
  only: readonly string[] = usualFormats,
  added: readonly ExportFile[] = [],
  before: (format: Format) => void | Promise<void> = () => {},
): Promise<ExportFile[]> {
  const unknown = only.find((id) => !exporters.some((format) => format.id === id));
  if (unknown !== undefined) throw new RangeError(`writeBuild: no format is called ${unknown}`);
  const files: ExportFile[] = [];
  for (const format of exporters) {
    if (!only.includes(format.id)) continue;
    await before(format);
    files.push(...(await format.write(build, supplies)));
  }
  files.push(...added);
  const all = [...files, await manifestFile(build, files)];
  const twice = all.find(({ path }, i) => all.findIndex((other) => other.path === path) !== i);
  if (twice) throw new RangeError(`writeBuild: two files are called ${twice.path}`);
  return all;
}

async function threeMfFile(build: Build): Promise<ExportFile[]> {
  // Loaded here, with the compressor, which commands that write no file need not wait for.
  return (await import('./three-mf.ts')).threeMfFiles(build);
}

async function svgFile(build: Build): Promise<ExportFile[]> {
  // Loaded here, and below, with the alphabet of strokes, which is JSCAD's.
  return (await import('./svg.ts')).svgFiles(build);
}

async function dxfFile(build: Build): Promise<ExportFile[]> {
  return (await import('./dxf.ts')).dxfFiles(build);
}

function stlFiles({ solids, mold }: Build): ExportFile[] {
  return solids.map(({ solid, bytes }) => ({ path: solidPath(solid, mold), bytes }));
}

function reportFile({ report }: Build): ExportFile[] {
  return [{ path: 'report.json', bytes: reportJson(report) }];
}

async function sheetFile(build: Build, { fonts }: Supplies): Promise<ExportFile[]> {
  // Loaded here: the PDF library is large, and most commands write no paper.
  const [{ shopSheet }, files] = await Promise.all([import('./shop-sheet/sheet.ts'), fonts()]);
  return [{ path: 'shop-sheet.pdf', bytes: await shopSheet(build, files) }];
}

async function overviewFile(build: Build): Promise<readonly ExportFile[]> {
  return (await import('./overview.ts')).overviewFiles(build);
}
