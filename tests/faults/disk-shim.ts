import { execFileSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** The library that is loaded into a host process, built by gcc where its source is newer. */
export function compiledShim(): string {
  const source = join(import.meta.dirname, 'disk-shim.c');
  const shim = join(root, 'artifacts/disk-shim.so');
  if (!existsSync(shim) || statSync(shim).mtimeMs < statSync(source).mtimeMs) {
    mkdirSync(join(root, 'artifacts'), { recursive: true });
    // Under another name first: another run may be doing the same.
    const half = `${shim}.${process.pid}`;
    execFileSync('gcc', ['-shared', '-fPIC', '-O1', '-o', half, source, '-ldl']);
    renameSync(half, shim);
  }
  return shim;
}

/** The numbers of `struct control` in `disk-shim.c`, in its order. */
const numbers = ['killIn', 'kinds', 'passFirst', 'failFor', 'error', 'clockMs', 'changes', 'failed'] as const;
type NumberName = (typeof numbers)[number];

/** Kinds of changes that can fail, as in `disk-shim.c`; they add up. */
export const kinds = { writes: 1, grows: 2, syncs: 4, creates: 8, names: 16, opens: 32, reads: 64 } as const;

/** Numbers of errors, as Linux has them. */
export const errno = { EIO: 5, EACCES: 13, ENOSPC: 28, EROFS: 30 } as const;

/** Without end, as far as a test goes. */
export const FOREVER = 1e12;

/** What happens between a host process and its disk, changed while it runs. */
export class DiskControl {
  readonly file: string;

  constructor(file: string) {
    this.file = file;
    const fd = openSync(file, 'w');
    writeSync(fd, Buffer.alloc(numbers.length * 8));
    closeSync(fd);
  }

  set(values: Partial<Record<NumberName, number>>): void {
    const fd = openSync(this.file, 'r+');
    for (const [index, name] of numbers.entries()) {
      const value = values[name];
      if (value === undefined) continue;
      const bytes = Buffer.alloc(8);
      bytes.writeBigInt64LE(BigInt(Math.round(value)));
      writeSync(fd, bytes, 0, 8, index * 8);
    }
    closeSync(fd);
  }

  get(name: NumberName): number {
    const fd = openSync(this.file, 'r');
    const bytes = Buffer.alloc(8);
    readSync(fd, bytes, 0, 8, numbers.indexOf(name) * 8);
    closeSync(fd);
    return Number(bytes.readBigInt64LE());
  }
}
