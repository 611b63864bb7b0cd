import type { ExportFile } from '../../src/export/index.ts';

/** Twelve files and their manifest; those of turn 0 and turn 1 differ in every byte. */
export function turnOf(turn: number): ExportFile[] {
  const files = Array.from({ length: 12 }, (_, i) => ({
    path: i % 3 === 0 ? `drawings/file-${i}.bin` : `file-${i}.bin`,
    bytes: new Uint8Array(20_000).fill(2 * i + turn),
  }));
  const manifest = { program: { name: 'discwright' }, turn, files: files.map(({ path }) => ({ path })) };
  return [...files, { path: 'manifest.json', bytes: new TextEncoder().encode(JSON.stringify(manifest)) }];
}
