import type { RawMesh, ReadOutcome } from '../raw.ts';
import { MeshFault, MeshFile, mostFileBytes } from './mesh-file.ts';
import { kindByName, type MeshKind, sniff } from './mesh-kind.ts';
import { read3mf } from './read-3mf.ts';
import { readObj } from './read-obj.ts';
import { readAsciiStl, readBinaryStl } from './read-stl.ts';

const readers: Readonly<Record<MeshKind, (file: MeshFile) => RawMesh>> = {
  'binary STL': readBinaryStl,
  'ASCII STL': readAsciiStl,
  OBJ: readObj,
  '3MF': read3mf,
};

/**
 * Reads a mesh from the bytes of an STL (binary, ASCII), OBJ or 3MF file, told apart by what they hold and only
 * then by the name. Coordinates are the file's own, in its own unit; STL comes as a soup of triangles. Points are
 * finite and faces name points that are there. Never throws on bad input: what is wrong comes as findings with
 * `fileName` as subject, and at least one stop where there is no mesh.
 */
export function readMesh(bytes: Uint8Array, fileName: string): ReadOutcome {
  const file = new MeshFile(fileName, bytes);
  try {
    const mesh = readers[kindOf(file)](file);
    return { mesh, findings: file.findings };
  } catch (fault) {
    if (!(fault instanceof MeshFault)) throw fault;
    return { findings: [...file.findings, fault.finding] };
  }
}

function kindOf(file: MeshFile): MeshKind {
  const { bytes, name } = file;
  if (bytes.length === 0) file.stop('mesh.file-empty', {});
  if (bytes.length > mostFileBytes)
    file.stop('mesh.file-too-large', { measured: bytes.length, limit: mostFileBytes });
  const promised = kindByName(name);
  const found = sniff(bytes);
  if ('utf16' in found) return file.stop('mesh.utf16', {});
  if ('locked' in found) return file.stop('mesh.encrypted', { which: 'package', promised });
  if ('foreign' in found)
    return file.stop('mesh.unknown-kind', { which: 'foreign', holds: found.foreign, promised });
  if ('kind' in found) {
    if (promised && !found.kind.endsWith(promised))
      file.say('mesh.kind-differs', { holds: found.kind, promised });
    return found.kind;
  }
  return kindByNameAlone(file, promised);
}

/** For content that tells nothing: what the name says decides which reader explains what is wrong. */
function kindByNameAlone(file: MeshFile, promised: 'STL' | 'OBJ' | '3MF' | undefined): MeshKind {
  if (promised === 'OBJ') return 'OBJ';
  if (promised === '3MF') return file.stop('mesh.unreadable', { which: 'not-zip' });
  if (promised === undefined) return file.stop('mesh.unknown-kind', { which: 'unknown' });
  // Text without a zero byte and without "solid" is no STL of either kind.
  if (!file.bytes.includes(0)) return file.stop('mesh.unreadable', { which: 'not-solid' });
  return 'binary STL';
}
