import { createHash, randomUUID } from 'node:crypto';
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { DefaultDeserializer, serialize } from 'node:v8';
import type { ResultStore } from '../../src/pipeline/index.ts';

/** All results together take no more room than this, bytes: some twenty molds like the demo. */
const mostBytes = 2 ** 30;
/** The folder is looked through again after this share of the room has been written. */
const lookShare = 1 / 16;
const hashBytes = 32;
const ending = '.result';
/** A file begun longer ago than this (ms) was left by a program that was killed. */
const abandoned = 60 * 60 * 1000;

/**
 * Results kept for later runs, a file for each, named by the hash of its key and of the program that made it (`stamp`). A file
 * is written whole under another name and then renamed, so any number of programs may use the folder at once, and
 * be killed. What is not there, not whole or not readable is a result that has to be made. Room is taken from those not used for longest.
 */
export class ResultsOnDisk implements ResultStore {
  private written = Number.POSITIVE_INFINITY;

  constructor(
    private readonly folder: string,
    private readonly stamp: string,
    private readonly most = mostBytes,
  ) {}

  read(key: string): unknown {
    const name = this.nameOf(key);
    const path = join(this.folder, name);
    const file = attempt(() => readFileSync(path));
    if (!file) return undefined;
    const content = file.subarray(hashBytes);
    if (!hashOf(name, content).equals(file.subarray(0, hashBytes))) {
      attempt(() => rmSync(path, { force: true }));
      return undefined;
    }
    const now = new Date();
    attempt(() => utimesSync(path, now, now));
    const reader = new OwnArrays(content);
    reader.readHeader();
    return reader.readValue();
  }

  write(key: string, value: unknown): void {
    const name = this.nameOf(key);
    const content = serialize(value);
    const size = content.length + hashBytes;
    if (size > this.most) return;
    const begun = join(this.folder, `${randomUUID()}.begun`);
    const kept = attempt(() => {
      mkdirSync(this.folder, { recursive: true });
      writeFileSync(begun, Buffer.concat([hashOf(name, content), content]), { flag: 'wx', mode: 0o600 });
      renameSync(begun, join(this.folder, name));
      return true;
    });
    if (!kept) attempt(() => rmSync(begun, { force: true }));
    this.written += size;
    if (this.written < this.most * lookShare) return;
    this.makeRoom();
    this.written = 0;
  }

  private nameOf(key: string): string {
    return createHash('sha256').update(`${this.stamp} ${key}`).digest('hex') + ending;
  }

  private makeRoom(): void {
    const files = (attempt(() => readdirSync(this.folder)) ?? []).flatMap((name) => {
      const path = join(this.folder, name);
      const found = attempt(() => statSync(path));
      return found ? [{ path, isWhole: name.endsWith(ending), size: found.size, used: found.mtimeMs }] : [];
    });
    const remove = (path: string): void => void attempt(() => rmSync(path, { force: true }));
    for (const { path, isWhole, used } of files) if (!isWhole && used < Date.now() - abandoned) remove(path);
    const whole = files.filter(({ isWhole }) => isWhole).sort((a, b) => b.used - a.used);
    let room = this.most * (1 - lookShare);
    for (const { path, size } of whole) {
      room -= size;
      if (room < 0) remove(path);
    }
  }
}

/** Typed arrays each in memory of their own, as they were: not windows into the file. */
class OwnArrays extends DefaultDeserializer {
  override _readHostObject(): NodeJS.TypedArray {
    return super._readHostObject().slice();
  }
}

const hashOf = (name: string, content: Uint8Array): Buffer =>
  createHash('sha256').update(name).update(content).digest();

/** A cache that cannot be read or written, whatever the reason, is none. */
function attempt<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch {
    return undefined;
  }
}
