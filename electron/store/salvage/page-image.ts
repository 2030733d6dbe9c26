import { closeSync, existsSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { readWal } from '../wal-frames.ts';

/** How every SQLite file begins: its format's name, in ASCII. */
const MAGIC = Buffer.from('53514c69746520666f726d6174203300', 'hex');

/**
 * The pages of a yard file as its newest commits left them, those after a bad place in its WAL included. Nothing is
 * written. Close it only while SQLite does not have the file open in this process.
 *
 * Source: "Database File Format", sections 1.3 and 1.5, https://www.sqlite.org/fileformat2.html
 */
export function openPages(file: string) {
  const fd = openSync(file, 'r');
  const header = Buffer.alloc(100);
  readSync(fd, header, 0, 100, 0);
  const wal = existsSync(`${file}-wal`) ? readWal(readFileSync(`${file}-wal`)) : null;
  const isWhole = header.subarray(0, 16).equals(MAGIC);
  const stored = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  const isPageSize = stored >= 512 && (stored & (stored - 1)) === 0;
  // Where neither can be read: what SQLite gives a new file.
  const pageSize = wal?.pageSize ?? (isWhole && isPageSize ? stored : 4096);

  const inWal = new Map<number, number>();
  if (wal !== null) {
    const used = wal.later.length > 0 ? [...wal.frames, ...wal.later] : wal.frames.slice(0, wal.committed);
    for (const { pageNumber, offset } of used) inWal.set(pageNumber, offset);
  }
  const inFile = Math.ceil(fstatSync(fd).size / pageSize);
  const count = Math.min(Math.max(inFile, ...inWal.keys()), inFile + inWal.size + 1_000_000);

  function page(number: number): Buffer {
    const offset = inWal.get(number);
    if (offset !== undefined && wal !== null) return wal.bytes.subarray(offset, offset + pageSize);
    const bytes = Buffer.alloc(pageSize);
    readSync(fd, bytes, 0, pageSize, (number - 1) * pageSize);
    return bytes;
  }

  const first = page(1);
  const isFirstWhole = first.subarray(0, 16).equals(MAGIC);
  return {
    count,
    page,
    /** Bytes of a page that are used. */
    usable: pageSize - (isFirstWhole ? first.readUInt8(20) : 0),
    /** The layout's number; null where the header cannot be read. */
    layout: isFirstWhole ? first.readUInt32BE(60) : null,
    /** Pages with nothing in them but rows that were deleted. */
    free: (): Set<number> => {
      const free = new Set<number>();
      let trunk = isFirstWhole ? first.readUInt32BE(32) : 0;
      while (trunk > 0 && trunk <= count && !free.has(trunk)) {
        free.add(trunk);
        const bytes = page(trunk);
        const leaves = Math.min(bytes.readUInt32BE(4), pageSize / 4 - 2);
        for (let n = 0; n < leaves; n++) free.add(bytes.readUInt32BE(8 + 4 * n));
        trunk = bytes.readUInt32BE(0);
      }
      return free;
    },
    close: (): void => closeSync(fd),
  };
}
export type Pages = ReturnType<typeof openPages>;
