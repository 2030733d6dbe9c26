import { randomUUID } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { TextDecoder } from 'node:util';
import { Refusal } from '../../shared-core/contract/answer.ts';
import {
  createRecordReader,
  type JsonProblem,
  JsonRefused,
} from '../../shared-core/exchange/json-records.ts';
import {
  PICTURE_FILES,
  type PicturePart,
  picturePartSchema,
} from '../../shared-core/exchange/picture-parts.ts';
import {
  EXPORT_FORMAT,
  EXPORT_VERSION,
  exportHeadSchema,
  recordSchemaOf,
  type YardTableName,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import { builtInEndUses, builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { message } from '../../shared-core/words/message.ts';
import { actWrites } from '../store/act-table.ts';
import { hashOf } from '../store/picture-files.ts';
import { openYard } from '../store/yard.ts';
import { type Db, openYardFile } from '../store/yard-file.ts';
import { RecordMissing, recordWrites } from '../store/yard-records.ts';
import { isMovedInCircle } from './moved-in-circle.ts';

const PART_BYTES = 256 * 1024;
/** Every zip file begins so (APPNOTE, section 4.3.7), and so does every spreadsheet that is one. */
const ZIP = 'PK\x03\x04';

const problems = {
  'no-json': message('refusal.json-other'),
  'cut-off': message('refusal.json-cut-off'),
  'too-large': message('refusal.json-record-too-large'),
} satisfies Record<JsonProblem, unknown>;

/**
 * Makes a yard file of an export of everything.
 * @param file  whatever a person chose; it is read part by part, however large
 * @param target  where the yard file comes, which is not there yet
 * @throws Refusal that says what is wrong with the file
 */
export function makeYardOfJson(
  file: string,
  target: string,
  tell: (done: number, total: number) => void,
): void {
  const yard = openYard(target);
  try {
    yard.species.bringUpToDate(builtInSpecies);
    yard.endUses.bringUpToDate(builtInEndUses);
  } finally {
    yard.close();
  }
  const { db } = openYardFile(target);
  try {
    // Nobody misses this file where the power goes.
    db.pragma('synchronous = OFF');
    db.transaction(() => fill(db, file, tell))();
  } catch (error) {
    if (error instanceof JsonRefused) throw new Refusal(problems[error.problem]);
    throw error;
  } finally {
    db.close();
  }
}

/** As one act, so that where the two differ it is known that all of it came at once. */
function fill(db: Db, file: string, tell: (done: number, total: number) => void): void {
  const acts = actWrites(db);
  const at = new Date().toISOString();
  acts.begin({ id: randomUUID(), request: 'exchange.merge', inputHash: '', at, who: 'exchange' });
  const { add, edit } = recordWrites(db);
  const head: Record<string, unknown> = {};
  const seen = new Map<YardTableName, number>();

  function checkHead(): void {
    if (head.format !== EXPORT_FORMAT) throw new Refusal(message('refusal.json-other'));
    if (typeof head.version === 'number' && head.version > EXPORT_VERSION) {
      throw new Refusal(message('refusal.json-newer'));
    }
    if (!exportHeadSchema.safeParse(head).success) throw new Refusal(message('refusal.json-other'));
  }

  function take(named: YardTableName, given: unknown): void {
    const number = (seen.get(named) ?? 0) + 1;
    seen.set(named, number);
    const misfit = () =>
      new Refusal(message('refusal.json-record', { tableName: named, recordNumber: number }));
    const record = recordSchemaOf(named).safeParse(given);
    if (!record.success) throw misfit();
    try {
      const isCatalog = named === 'species' || named === 'endUses';
      if (!isCatalog || !edit(named, record.data.uuid, record.data)) add(named, record.data);
    } catch (error) {
      const isMisfit = /^SQLITE_(CONSTRAINT|MISMATCH)/.test(String((error as { code?: unknown }).code));
      throw isMisfit || error instanceof RecordMissing ? misfit() : error;
    }
  }

  const pictures = takingPictures(db);
  let pictureParts = 0;
  function takePicture(given: unknown): void {
    pictureParts++;
    const part = picturePartSchema.safeParse(given).data;
    if (part === undefined || !pictures(part)) {
      const facts = { tableName: PICTURE_FILES, recordNumber: pictureParts };
      throw new Refusal(message('refusal.json-record', facts));
    }
  }

  const known = (key: string): YardTableName => {
    const named = yardTableNames.find((each) => each === key);
    if (named === undefined) throw new Refusal(message('refusal.json-newer'));
    return named;
  };
  const reader = createRecordReader({
    onField: (key, value) => {
      head[key] = value;
    },
    onArray: (key) => {
      if (seen.size === 0) checkHead();
      if (key === PICTURE_FILES) return;
      if (seen.has(known(key))) throw new Refusal(message('refusal.json-other'));
      seen.set(known(key), 0);
    },
    onRecord: (key, record) => (key === PICTURE_FILES ? takePicture(record) : take(known(key), record)),
  });
  readText(file, reader.feed, tell);
  reader.end();
  if (yardTableNames.some((named) => !seen.has(named))) throw new Refusal(message('refusal.json-other'));
  if (isMovedInCircle(db)) throw new Refusal(message('refusal.json-moved-in-circle'));
  acts.finish(null);
}

/**
 * Puts pictures into the yard file, as a copy in one file has them; one that is not what its hash says is left out.
 * @returns takes one part after the other; false for one that does not follow the part before
 */
function takingPictures(db: Db): (part: PicturePart) => boolean {
  const add = db.prepare('INSERT OR IGNORE INTO packed_picture (content_hash, content) VALUES (?, ?)');
  let of: { contentHash: string; parts: number; bytes: Buffer[] } | null = null;
  return ({ contentHash, part, parts, base64 }) => {
    of ??= { contentHash, parts, bytes: [] };
    const follows = of.contentHash === contentHash && of.parts === parts && of.bytes.length === part - 1;
    if (!follows || part > parts) return false;
    of.bytes.push(Buffer.from(base64, 'base64'));
    if (part < parts) return true;
    const whole = Buffer.concat(of.bytes);
    of = null;
    if (hashOf(whole) === contentHash) add.run(contentHash, whole);
    return true;
  };
}

/** @throws Refusal where it is no text in UTF-8 */
function readText(
  file: string,
  take: (text: string) => void,
  tell: (done: number, total: number) => void,
): void {
  const opened = openSync(file, 'r');
  try {
    const total = fstatSync(opened).size;
    const bytes = Buffer.alloc(PART_BYTES);
    const decoder = new TextDecoder('utf-8', { fatal: true });
    let done = 0;
    for (;;) {
      const length = readSync(opened, bytes, 0, PART_BYTES, null);
      if (done === 0 && bytes.subarray(0, ZIP.length).toString('latin1') === ZIP) {
        throw new Refusal(message('refusal.json-archive'));
      }
      const part = bytes.subarray(0, length);
      take(textOf(decoder, part, length > 0));
      if (length === 0) return;
      done += length;
      tell(done, total);
    }
  } finally {
    closeSync(opened);
  }
}

function textOf(decoder: TextDecoder, part: Uint8Array, more: boolean): string {
  try {
    return decoder.decode(part, { stream: more });
  } catch {
    throw new Refusal(message('refusal.json-other'));
  }
}
