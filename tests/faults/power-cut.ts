import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { oneOf, type Random, wholeBetween } from './random.ts';
import type { Change } from './write-log.ts';

/**
 * What a disk may hold after the power went. The model, of a journaling file system as ext4 with ordered metadata:
 * - Bytes that were synced (`fsync` or `fdatasync` of their file) are there.
 * - Of those that were not, each 512-byte sector may be there or not, whatever the order. Where a later one is there,
 *   an earlier one of the same file may be missing, and zeros are in its place.
 * - Names and lengths (create, rename, remove, cut) reach the disk in their order: those up to some moment are there,
 *   and none after it. An `fsync` brings all before it. An `fdatasync` brings what came before the last of them that
 *   its file needs, and no more.
 * A file whose name is there may so be shorter than it was, or hold zeros: the trick with which ext4 saves programs
 * that rename without a sync is not counted on.
 */
export interface Disk {
  /** By path inside the folder. */
  files: Map<string, Buffer>;
  folders: Set<string>;
}

const SECTOR = 512;

/** A file while the write record is played: what is surely there, and what may be. */
interface Node {
  durable: Bytes;
  /** In order; writes and cuts since the last sync. */
  pending: Pending[];
}
type Pending = { offset: number; bytes: Buffer } | { size: number };

/** Bytes that grow as they are written. */
class Bytes {
  #room: Buffer;
  #length: number;

  constructor(bytes: Buffer) {
    this.#room = Buffer.from(bytes);
    this.#length = bytes.length;
  }

  apply(change: Pending): void {
    if ('size' in change) {
      this.#grow(change.size);
      this.#room.fill(0, Math.min(change.size, this.#length));
      this.#length = change.size;
      return;
    }
    const end = change.offset + change.bytes.length;
    this.#grow(end);
    change.bytes.copy(this.#room, change.offset);
    this.#length = Math.max(this.#length, end);
  }

  read(): Buffer {
    return this.#room.subarray(0, this.#length);
  }

  #grow(size: number): void {
    if (size <= this.#room.length) return;
    const larger = Buffer.alloc(Math.max(size, this.#room.length * 2));
    this.#room.copy(larger, 0, 0, this.#length);
    this.#room = larger;
  }
}

/** How a cut treats what was not synced. */
type Luck = 'all' | 'none' | 'some';

/** The folder's files as they are, before a process begins. */
export function diskIn(folder: string): Disk & { numbers: Map<number, string> } {
  const disk = {
    files: new Map<string, Buffer>(),
    folders: new Set<string>(),
    numbers: new Map<number, string>(),
  };
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const name = join(entry.parentPath, entry.name).slice(folder.length + 1);
    if (entry.isDirectory()) disk.folders.add(name);
    else if (!name.endsWith('-shm')) {
      disk.files.set(name, readFileSync(join(folder, name)));
      disk.numbers.set(statSync(join(folder, name)).ino, name);
    }
  }
  return disk;
}

export function writeDisk(disk: Disk, folder: string): void {
  mkdirSync(folder, { recursive: true });
  for (const name of disk.folders) mkdirSync(join(folder, name), { recursive: true });
  for (const [name, bytes] of disk.files) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), bytes);
  }
}

/**
 * What is on the disk when the power goes after so many changes.
 *
 * @param before  what was there before the first of them, with the numbers of its files
 */
export function cutPower(
  before: ReturnType<typeof diskIn>,
  changes: readonly Change[],
  cut: number,
  random: Random,
): Disk {
  const luck = oneOf<Luck>(random, ['all', 'none', 'some', 'some']);
  const namesUntil = namesOnDisk(changes, cut, random, luck);

  const byNumber = new Map<number, Node>();
  const byName = new Map<string, Node>();
  const folders = new Set(before.folders);
  for (const [name, bytes] of before.files) byName.set(name, { durable: new Bytes(bytes), pending: [] });
  for (const [number, name] of before.numbers) byNumber.set(number, byName.get(name) as Node);

  for (const [index, change] of changes.slice(0, cut).entries()) {
    const isNamed = index <= namesUntil;
    switch (change.op) {
      case 'create': {
        const node: Node = { durable: new Bytes(Buffer.alloc(0)), pending: [] };
        byNumber.set(change.file, node);
        if (isNamed) byName.set(change.name, node);
        break;
      }
      case 'write':
        byNumber.get(change.file)?.pending.push(change);
        break;
      case 'truncate':
        // A length that did not reach the disk is the one before.
        if (isNamed) byNumber.get(change.file)?.pending.push(change);
        break;
      case 'sync':
      case 'datasync': {
        const node = byNumber.get(change.file);
        if (node) {
          for (const pending of node.pending) node.durable.apply(pending);
          node.pending = [];
        }
        break;
      }
      case 'rename':
      case 'link': {
        const node = byName.get(change.from);
        if (!isNamed || node === undefined) break;
        byName.set(change.to, node);
        if (change.op === 'rename') byName.delete(change.from);
        break;
      }
      case 'unlink':
        if (!isNamed) break;
        byName.delete(change.name);
        folders.delete(change.name);
        break;
      case 'mkdir':
        if (isNamed) folders.add(change.name);
        break;
    }
  }
  const files = new Map<string, Buffer>();
  const shown = new Map<Node, Buffer>();
  for (const [name, node] of byName) {
    const bytes = shown.get(node) ?? afterCut(node, random, luck);
    shown.set(node, bytes);
    files.set(name, bytes);
  }
  return { files, folders };
}

/** @returns the index of the last change of names and lengths that is on the disk */
function namesOnDisk(changes: readonly Change[], cut: number, random: Random, luck: Luck): number {
  let least = -1;
  const lastOfFile = new Map<number, number>();
  const sizes = new Map<number, number>();
  const fileOfName = new Map<string, number>();
  for (const [index, change] of changes.slice(0, cut).entries()) {
    switch (change.op) {
      case 'create':
      case 'opened':
        fileOfName.set(change.name, change.file);
        if (change.op === 'create') {
          lastOfFile.set(change.file, index);
          sizes.set(change.file, 0);
        }
        break;
      case 'write': {
        const end = change.offset + change.bytes.length;
        if (end <= (sizes.get(change.file) ?? 0)) break;
        sizes.set(change.file, end);
        lastOfFile.set(change.file, index);
        break;
      }
      case 'truncate':
        sizes.set(change.file, change.size);
        lastOfFile.set(change.file, index);
        break;
      case 'rename': {
        const file = fileOfName.get(change.from);
        if (file === undefined) break;
        fileOfName.set(change.to, file);
        lastOfFile.set(file, index);
        break;
      }
      case 'sync':
        least = index;
        break;
      case 'datasync':
        least = Math.max(least, lastOfFile.get(change.file) ?? -1);
        break;
    }
  }
  if (luck === 'all') return cut;
  return luck === 'none' ? least : wholeBetween(random, least, cut + 1);
}

function afterCut({ durable, pending }: Node, random: Random, luck: Luck): Buffer {
  for (const change of pending) {
    // Which lengths are on the disk was decided before.
    if ('size' in change || luck === 'all') durable.apply(change);
    else if (luck === 'some') {
      for (const sector of sectorsOf(change)) if (random() < 0.5) durable.apply(sector);
    }
  }
  return durable.read();
}

function sectorsOf({
  offset,
  bytes,
}: {
  offset: number;
  bytes: Buffer;
}): { offset: number; bytes: Buffer }[] {
  const parts: { offset: number; bytes: Buffer }[] = [];
  for (let at = 0; at < bytes.length; ) {
    const until = Math.min(bytes.length, at + SECTOR - ((offset + at) % SECTOR));
    parts.push({ offset: offset + at, bytes: bytes.subarray(at, until) });
    at = until;
  }
  return parts;
}
