/**
 * SQLite's write-ahead log, read by ourselves: which frames are sound, which one bit makes sound, and which come after
 * a bad one. SQLite stops at the first bad frame without a word, and later overwrites what follows it.
 *
 * Source: "Database File Format", sections 4.1 to 4.3, https://www.sqlite.org/fileformat2.html#walformat
 */

export const WAL_HEADER_BYTES = 32;
const FRAME_HEADER_BYTES = 24;
/** The last bit tells the byte order of the sums: 0 little-endian, 1 big-endian. */
const MAGIC = 0x377f0682;
/** Of a frame's header, only these bytes are part of its sum. */
const SUMMED_HEADER_BYTES = 8;

type Sum = readonly [number, number];

/** A page as one commit left it. */
interface WalFrame {
  /** Whether its sum fits. Where it does not, some of its bytes are wrong. */
  isSound: boolean;
  pageNumber: number;
  /** The file's size in pages where this frame ends a commit, else 0. */
  pagesAfterCommit: number;
  /** One bit is wrong, and it is not known which: nothing but a flip leaves that. */
  isFlipped: boolean;
  /** Of the page's bytes in the WAL. */
  offset: number;
}

/** One bit of the WAL that is not as it was written: `bytes[offset] ^ mask` is. */
interface FlippedBit {
  offset: number;
  mask: number;
}

export interface Wal {
  /** The WAL's bytes, with flipped bits repaired. */
  bytes: Buffer;
  pageSize: number;
  /** The first counts how often the WAL began again, the second is random. */
  salts: Sum;
  flipped: FlippedBit[];
  /** Up to the first frame that cannot be read, or to the end. */
  frames: WalFrame[];
  /** How many of `frames` belong to a commit that is whole. */
  committed: number;
  /** From a frame with a wrong bit on: what SQLite would never look at. */
  later: WalFrame[];
  /** Commits that end in `later`. */
  laterCommits: number;
}

/**
 * Reads a WAL. A frame's sum is carried on from the frame before, so each is checked against the sum stored there: a bad
 * frame does not hide those after it. Where only one bit can have been wrong, it is repaired: 64 bits of sum tell that
 * from anything else that could have happened. The sum is weak in the highest bits of a word: a flip in about 1 of 4 fits
 * several places, and such a frame stays as it is.
 *
 * A last commit with more than one bit wrong cannot be told from one that was being written when the power failed: such
 * a tail counts as never committed, as it does for SQLite.
 * @returns null where this is no WAL, or where its header has more than one bit wrong
 */
export function readWal(written: Buffer): Wal | null {
  if (written.length < WAL_HEADER_BYTES) return null;
  const bytes = Buffer.from(written);
  const flipped: FlippedBit[] = [];
  if (!isMagic(bytes) && !flipMagic(bytes, flipped)) return null;
  const isBig = (bytes.readUInt32BE(0) & 1) === 1;
  const headerFlip = flipOf(bytes, [[0, 24]], [0, 0], 24, isBig);
  if (headerFlip === 'bad' || headerFlip === 'one-of-several') return null;
  if (headerFlip !== 'sound') put(bytes, headerFlip, flipped);
  const pageSize = bytes.readUInt32BE(8);
  const isPageSize = pageSize >= 512 && pageSize <= 65_536 && (pageSize & (pageSize - 1)) === 0;
  if (!isPageSize) return null;

  const salts = sumAt(bytes, 16);
  const found: Wal = {
    bytes,
    pageSize,
    salts,
    flipped,
    frames: [],
    committed: 0,
    later: [],
    laterCommits: 0,
  };
  const frameBytes = FRAME_HEADER_BYTES + pageSize;
  let before = sumAt(bytes, 24);
  /** Frames with many wrong bits that nothing has followed yet: the WAL may just end there. */
  let bad: WalFrame[] = [];
  for (let at = WAL_HEADER_BYTES; at + frameBytes <= bytes.length; at += frameBytes) {
    const isOurs = saltBitsOff(bytes, at, salts) <= 1;
    const flip = isOurs ? flipOfFrame(bytes, at, frameBytes, before, isBig) : 'bad';
    if (typeof flip === 'object') put(bytes, flip, flipped);
    const isSound = flip === 'sound' || typeof flip === 'object';
    if (isSound) putSalts(bytes, at, salts, flipped);
    before = sumAt(bytes, at + 16);
    const frame: WalFrame = {
      isSound,
      pageNumber: bytes.readUInt32BE(at),
      // What is not of this WAL was there before it.
      pagesAfterCommit: isOurs ? bytes.readUInt32BE(at + 4) : 0,
      isFlipped: flip === 'one-of-several',
      offset: at + FRAME_HEADER_BYTES,
    };
    if (flip === 'bad') {
      bad.push(frame);
    } else if (frame.isFlipped || bad.length > 0 || found.later.length > 0) {
      found.later.push(...bad, frame);
      bad = [];
    } else {
      found.frames.push(frame);
      if (frame.pagesAfterCommit > 0) found.committed = found.frames.length;
    }
  }
  if (isOneUnfinished(found.later)) found.later = [];
  found.laterCommits = found.later.filter(({ pagesAfterCommit }) => pagesAfterCommit > 0).length;
  return found;
}

/**
 * Whether all that follows the last good frame may be one commit that was being written when the power failed: a disk
 * writes its sectors in any order, so later frames of it may be whole where an earlier one is not.
 */
function isOneUnfinished(later: readonly WalFrame[]): boolean {
  return !later.slice(0, -1).some(({ isFlipped, pagesAfterCommit }) => isFlipped || pagesAfterCommit > 0);
}

function flipOfFrame(bytes: Buffer, at: number, frameBytes: number, before: Sum, isBig: boolean) {
  return flipOf(bytes, summedIn(at, frameBytes), before, at + 16, isBig);
}

const isMagic = (bytes: Buffer): boolean => (bytes.readUInt32BE(0) & ~1) === MAGIC;

/** The byte order is not known before the magic number is right. */
function flipMagic(bytes: Buffer, flipped: FlippedBit[]): boolean {
  const off = (bytes.readUInt32BE(0) ^ MAGIC) & ~1;
  if (bitsOf(off) !== 1) return false;
  put(bytes, bitIn(0, off), flipped);
  return true;
}

/**
 * Which single bit makes the bytes fit the sum stored for them; `bad` where none does.
 *
 * Both halves of the sum are linear in every word: adding d to one changes the sum by d times a vector that depends only
 * on how far the word is from the end.
 */
function flipOf(
  bytes: Buffer,
  ranges: readonly (readonly [number, number])[],
  start: Sum,
  sumOffset: number,
  isBig: boolean,
): 'sound' | 'bad' | 'one-of-several' | FlippedBit {
  const [wanted0, wanted1] = sumAt(bytes, sumOffset);
  const word = (at: number): number => wordAt(bytes, at, isBig);
  const [s0, s1] = carriedOn(bytes, ranges, start, isBig);
  if (s0 === wanted0 && s1 === wanted1) return 'sound';
  const off0 = (s0 ^ wanted0) >>> 0;
  const off1 = (s1 ^ wanted1) >>> 0;
  const missing0 = (wanted0 - s0) >>> 0;
  const missing1 = (wanted1 - s1) >>> 0;
  /** What one more in the first and in the second word of a pair adds to the sum. */
  let first: Sum = [1, 1];
  let second: Sum = [0, 1];
  let found: FlippedBit | null = null;
  // The stored sum may be what was flipped.
  if (bitsOf(off0) + bitsOf(off1) === 1) {
    found = off0 !== 0 ? bitIn(sumOffset, off0) : bitIn(sumOffset + 4, off1);
  }
  for (const [from, to] of [...ranges].reverse()) {
    for (let at = to - 8; at >= from; at -= 8) {
      for (const [offset, vector] of [
        [at, first],
        [at + 4, second],
      ] as const) {
        const bit = bitOf(word(offset), vector, missing0, missing1);
        if (bit === null) continue;
        if (found !== null) return 'one-of-several';
        found = { offset: offset + (isBig ? 3 - (bit >> 3) : bit >> 3), mask: 1 << (bit & 7) };
      }
      first = onward(first);
      second = onward(second);
    }
  }
  return found ?? 'bad';
}

const wordAt = (bytes: Buffer, at: number, isBig: boolean): number =>
  isBig ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at);

function carriedOn(
  bytes: Buffer,
  ranges: readonly (readonly [number, number])[],
  start: Sum,
  isBig: boolean,
): Sum {
  // Each commit's pages pass through here: a view of whole words is several times as quick as reading each of the buffer.
  const words = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let [s0, s1] = start;
  for (const [from, to] of ranges) {
    for (let at = from; at < to; at += 8) {
      s0 = (s0 + words.getInt32(at, !isBig) + s1) | 0;
      s1 = (s1 + words.getInt32(at + 4, !isBig) + s0) | 0;
    }
  }
  return [s0 >>> 0, s1 >>> 0];
}

/**
 * How far a WAL reaches that is committed and sound, going on where it was read before.
 * @param from  where its last commit known ended; 0 for a WAL that was never read
 * @returns     bytes; 0 where this is no WAL
 */
export function committedEnd(wal: Buffer, from: number): number {
  if (wal.length < WAL_HEADER_BYTES || !isMagic(wal)) return 0;
  const isBig = (wal.readUInt32BE(0) & 1) === 1;
  const frameBytes = FRAME_HEADER_BYTES + wal.readUInt32BE(8);
  let end = Math.max(from, WAL_HEADER_BYTES);
  let sum = sumAt(wal, end === WAL_HEADER_BYTES ? 24 : end - frameBytes + 16);
  for (let at = end; at + frameBytes <= wal.length; at += frameBytes) {
    if (saltBitsOff(wal, at, sumAt(wal, 16)) > 0) break;
    const [s0, s1] = carriedOn(wal, summedIn(at, frameBytes), sum, isBig);
    sum = sumAt(wal, at + 16);
    if (s0 !== sum[0] || s1 !== sum[1]) break;
    if (wal.readUInt32BE(at + 4) > 0) end = at + frameBytes;
  }
  return end;
}

/** The pages of a WAL all of which is committed, as its last commit left them, by number. */
export function pagesOf(wal: Buffer): Map<number, Buffer> {
  const pages = new Map<number, Buffer>();
  if (wal.length <= WAL_HEADER_BYTES) return pages;
  const pageSize = wal.readUInt32BE(8);
  for (let at = WAL_HEADER_BYTES; at < wal.length; at += FRAME_HEADER_BYTES + pageSize) {
    const offset = at + FRAME_HEADER_BYTES;
    pages.set(wal.readUInt32BE(at), wal.subarray(offset, offset + pageSize));
  }
  return pages;
}

/** Which bytes of a frame its sum is of. */
const summedIn = (at: number, frameBytes: number): [number, number][] => [
  [at, at + SUMMED_HEADER_BYTES],
  [at + FRAME_HEADER_BYTES, at + frameBytes],
];

/** Which bit of a word has to change for the sum to grow by what is missing. */
function bitOf(word: number, vector: Sum, missing0: number, missing1: number): number | null {
  for (let bit = 0; bit < 32; bit++) {
    const change = (word >>> bit) & 1 ? -(2 ** bit) : 2 ** bit;
    if (Math.imul(change, vector[0]) >>> 0 === missing0 && Math.imul(change, vector[1]) >>> 0 === missing1) {
      return bit;
    }
  }
  return null;
}

/** One pair of words later. */
const onward = ([s0, s1]: Sum): Sum => [(s0 + s1) >>> 0, (s0 + 2 * s1) >>> 0];

const sumAt = (bytes: Buffer, at: number): Sum => [bytes.readUInt32BE(at), bytes.readUInt32BE(at + 4)];

function bitsOf(word: number): number {
  let bits = 0;
  for (let rest = word >>> 0; rest !== 0; rest >>>= 1) bits += rest & 1;
  return bits;
}

/** The bit that is set in a big-endian word at that offset. */
function bitIn(offset: number, word: number): FlippedBit {
  const bit = 31 - Math.clz32(word);
  return { offset: offset + 3 - (bit >> 3), mask: 1 << (bit & 7) };
}

const saltBitsOff = (bytes: Buffer, at: number, salts: Sum): number =>
  bitsOf(bytes.readUInt32BE(at + 8) ^ salts[0]) + bitsOf(bytes.readUInt32BE(at + 12) ^ salts[1]);

/** The salts are no part of a frame's sum, but the sum began with them. */
function putSalts(bytes: Buffer, at: number, salts: Sum, flipped: FlippedBit[]): void {
  for (const [offset, salt] of [
    [at + 8, salts[0]],
    [at + 12, salts[1]],
  ] as const) {
    const off = bytes.readUInt32BE(offset) ^ salt;
    if (off !== 0) put(bytes, bitIn(offset, off), flipped);
  }
}

function put(bytes: Buffer, bit: FlippedBit, flipped: FlippedBit[]): void {
  bytes.writeUInt8(bytes.readUInt8(bit.offset) ^ bit.mask, bit.offset);
  flipped.push(bit);
}
