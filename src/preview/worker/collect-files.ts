import { type Build, type ExportFile, usualFormats, writeBuild } from '../../export/index.ts';
import { readFonts } from './fonts.ts';
import type { BuiltRequest } from './messages.ts';

type Step = (title: string, done: number, total: number) => Promise<void>;

/** What is handed to the person: one file as it is, several as a zip. The same bytes as the command writes. */
export async function collectFiles(
  build: Build,
  { formats = usualFormats, file }: Extract<BuiltRequest, { kind: 'files' }>,
  step: Step,
): Promise<{ bytes: Uint8Array; name: string }> {
  let done = 0;
  const files = await writeBuild(build, { fonts: readFonts }, formats, [], ({ title }) =>
    step(title, done++, formats.length + 1),
  );
  const isWhole = formats === usualFormats;
  // The manifest tells of a whole build.
  const wanted = isWhole
    ? files
    : files.filter(({ path }) => path !== 'manifest.json' && (file === undefined || nameOf(path) === file));
  if (wanted.length === 0) throw new Error('there is nothing of that kind in this mold');
  if (wanted.length === 1) return { bytes: wanted[0].bytes, name: nameOf(wanted[0].path) };
  await step('Zip', done, formats.length + 1);
  const ending = isWhole ? '' : ` ${formats.join(' ')}`;
  return { bytes: await zip(wanted), name: `${build.mold.title}${ending}.zip` };
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

async function zip(files: readonly ExportFile[]): Promise<Uint8Array> {
  const { zipSync } = await import('fflate');
  const entries = Object.fromEntries(files.map(({ path, bytes }) => [path, bytes]));
  // A fixed time, so that the same plan gives the same bytes: the earliest a zip can hold.
  return zipSync(entries, { mtime: new Date(1980, 0, 1), level: 6 });
}
