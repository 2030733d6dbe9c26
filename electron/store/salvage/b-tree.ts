import type { Pages } from './page-image.ts';

/**
 * Rows of b-trees, read page by page: a page that cannot be read costs only what is on it.
 *
 * Source: "Database File Format", sections 1.6 and 2.1, https://www.sqlite.org/fileformat2.html
 */

export type Value = string | number | null | Buffer;
export interface Row {
  /** 0 in an index. */
  rowid: number;
  values: Value[];
}

const TABLE_LEAF = 13;
const TABLE_INTERIOR = 5;
const INDEX_LEAF = 10;
const INDEX_INTERIOR = 2;

/** What is on one page. `bad`: cells that cannot be read. */
interface PageContent {
  children: number[];
  rows: Row[];
  bad: number;
}

/** Whether the page says that it holds rows of a table. */
export const isTableLeaf = (pages: Pages, number: number): boolean =>
  pages.page(number).readUInt8(headerAt(number)) === TABLE_LEAF;

const headerAt = (number: number): number => (number === 1 ? 100 : 0);

/** @returns null where it is no page of a b-tree */
export function readPage(pages: Pages, number: number): PageContent | null {
  const page = pages.page(number);
  const header = headerAt(number);
  const kind = page.readUInt8(header);
  const isInterior = kind === TABLE_INTERIOR || kind === INDEX_INTERIOR;
  if (!isInterior && kind !== TABLE_LEAF && kind !== INDEX_LEAF) return null;
  const pointers = header + (isInterior ? 12 : 8);
  const content: PageContent = { children: [], rows: [], bad: 0 };
  const cells = Math.min(page.readUInt16BE(header + 3), (page.length - pointers) >> 1);
  for (let cell = 0; cell < cells; cell++) {
    try {
      readCell(pages, page, kind, page.readUInt16BE(pointers + 2 * cell), content);
    } catch {
      content.bad++;
    }
  }
  if (isInterior) content.children.push(page.readUInt32BE(header + 8));
  return content;
}

function readCell(pages: Pages, page: Buffer, kind: number, start: number, content: PageContent): void {
  let at = start;
  if (at < 8) throw new RangeError('A cell lies in the header.');
  if (kind === TABLE_INTERIOR || kind === INDEX_INTERIOR) {
    content.children.push(page.readUInt32BE(at));
    if (kind === TABLE_INTERIOR) return;
    at += 4;
  }
  const size = varint(page, at);
  at = size.next;
  let rowid = 0;
  if (kind === TABLE_LEAF) {
    const id = varint(page, at);
    rowid = id.value;
    at = id.next;
  }
  content.rows.push({ rowid, values: record(payload(pages, page, kind, at, size.value)) });
}

/** The bytes of a record, those on overflow pages included. */
function payload(pages: Pages, page: Buffer, kind: number, at: number, size: number): Buffer {
  const { usable } = pages;
  const most = kind === TABLE_LEAF ? usable - 35 : Math.floor(((usable - 12) * 64) / 255) - 23;
  const least = Math.floor(((usable - 12) * 32) / 255) - 23;
  const overflow = least + ((size - least) % (usable - 4));
  const local = size <= most ? size : overflow <= most ? overflow : least;
  if (size > pages.count * usable || at + local > page.length) throw new RangeError('A cell is too long.');
  const parts = [page.subarray(at, at + local)];
  let missing = size - local;
  let next = missing > 0 ? page.readUInt32BE(at + local) : 0;
  while (missing > 0) {
    if (next < 1 || next > pages.count) throw new RangeError('A cell goes on nowhere.');
    const more = pages.page(next);
    if (isEmpty(more)) throw new RangeError('A cell goes on where nothing is.');
    parts.push(more.subarray(4, 4 + Math.min(missing, usable - 4)));
    missing -= usable - 4;
    next = more.readUInt32BE(0);
  }
  return Buffer.concat(parts);
}

/** As a page is that was never written, or whose part of the file is gone. */
export const isEmpty = (page: Buffer): boolean => page.equals(Buffer.alloc(page.length));

function record(bytes: Buffer): Value[] {
  const header = varint(bytes, 0);
  if (header.value > bytes.length) throw new RangeError('A record is too short.');
  const values: Value[] = [];
  let body = header.value;
  for (let at = header.next; at < header.value; ) {
    const type = varint(bytes, at);
    at = type.next;
    const { value, length } = decoded(bytes, body, type.value);
    values.push(value);
    body += length;
  }
  if (body !== bytes.length) throw new RangeError('A record has another length.');
  return values;
}

const INTEGER_BYTES = [0, 1, 2, 3, 4, 6, 8];

function decoded(bytes: Buffer, at: number, type: number): { value: Value; length: number } {
  const integerBytes = INTEGER_BYTES[type];
  if (type === 0) return { value: null, length: 0 };
  if (type === 8 || type === 9) return { value: type - 8, length: 0 };
  if (type === 7) return { value: bytes.readDoubleBE(at), length: 8 };
  if (type === 6) return { value: Number(bytes.readBigInt64BE(at)), length: 8 };
  if (integerBytes !== undefined) {
    return { value: bytes.readIntBE(at, integerBytes), length: integerBytes };
  }
  const length = (type - (type % 2 === 0 ? 12 : 13)) / 2;
  if (type < 12 || at + length > bytes.length) throw new RangeError('A value has no such type.');
  const part = bytes.subarray(at, at + length);
  return { value: type % 2 === 0 ? Buffer.from(part) : part.toString('utf8'), length };
}

/** Exact up to 2^53; a larger one is no number that a yard file has. */
function varint(bytes: Buffer, start: number): { value: number; next: number } {
  let value = 0;
  for (let at = start; at < start + 8; at++) {
    const byte = bytes.readUInt8(at);
    value = value * 128 + (byte & 0x7f);
    if (byte < 0x80) return { value, next: at + 1 };
  }
  return { value: value * 256 + bytes.readUInt8(start + 8), next: start + 9 };
}
