import { constants } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';

/** Largest file read unless less is asked for, bytes: the reader of meshes takes no more. */
export const mostFileBytes = 2 ** 30;

/** Largest plan, table or manifest read, bytes: far more than is taken, so that what is too long is told where it is judged. */
export const mostTextBytes = 2 ** 26;

/** Bytes of a file, or as a predicate why there are none: `is a folder, not a file`. */
export type RegularFile = { readonly bytes: Uint8Array } | { readonly fault: string };

/**
 * Reads a regular file whose size is known before, and within `most` bytes. A device or pipe would be read without
 * end or waited for, and a file the system makes up while it is read (/proc) does not tell how long it is: these are
 * refused before a byte is read. What open and read throw (no such file, not allowed) is thrown.
 */
export async function readRegularFile(path: string, most: number = mostFileBytes): Promise<RegularFile> {
  // Looked at first, since opening a device may do something, and again once open: it may be another by then.
  const before = kindFault(await stat(path));
  if (before !== undefined) return { fault: before };
  // Opening a pipe would wait for its other end.
  const file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const what = await file.stat();
    const fault = kindFault(what) ?? sizeFault(what.size, most);
    return fault === undefined ? await readWhole(file, what.size) : { fault };
  } finally {
    await file.close();
  }
}

type What = Awaited<ReturnType<typeof stat>>;

function kindFault(what: What): string | undefined {
  if (what.isFile()) return undefined;
  if (what.isDirectory()) return 'is a folder, not a file';
  if (what.isFIFO()) return 'is a pipe, not a file';
  if (what.isSocket()) return 'is a socket, not a file';
  return 'is a device, not a file';
}

const sizeFault = (size: number, most: number): string | undefined =>
  size > most ? `has ${megabytes(size)} MB; at most ${megabytes(most)} MB are read` : undefined;

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(bytes < 1e7 ? 2 : 0);

/** One byte more than the size is asked for: a file that has it grows, or never told how long it is. */
async function readWhole(file: FileHandle, size: number): Promise<RegularFile> {
  const bytes = new Uint8Array(size + 1);
  let length = 0;
  while (length <= size) {
    const { bytesRead } = await file.read(bytes, length, size + 1 - length, length);
    if (bytesRead === 0) return { bytes: bytes.slice(0, length) };
    length += bytesRead;
  }
  return { fault: 'holds more than its size tells; copy it to a plain file first' };
}
