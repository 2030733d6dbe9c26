import {
  PICTURE_FILES,
  PICTURE_PART_BYTES,
  type PicturePart,
} from '../../shared-core/exchange/picture-parts.ts';
import {
  EXPORT_FORMAT,
  EXPORT_VERSION,
  type ExportHead,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import { wholePicture } from '../store/picture-files.ts';
import { pictureHashesIn } from '../store/picture-table.ts';
import type { Db } from '../store/yard-file.ts';
import { recordReads } from '../store/yard-records.ts';

const TELL_EVERY_RECORDS = 500;

/**
 * Writes everything that a person entered, one record a line, and behind that the pictures.
 * @param pictures  the folder of their files; one that is missing or damaged there is left out
 * @param nowAt  UTC instant
 * @returns how many were left out
 */
export function writeJson(
  db: Db,
  { pictures, nowAt }: { pictures: string; nowAt: string },
  put: (text: string) => void,
  tell: (done: number, total: number) => void,
): number {
  const { count, all } = recordReads(db);
  const hashes = pictureHashesIn(db).toSorted();
  const total = yardTableNames.reduce((sum, named) => sum + count(named), hashes.length);
  let done = 0;
  const head: ExportHead = { format: EXPORT_FORMAT, version: EXPORT_VERSION, exportedAt: nowAt };
  put(JSON.stringify(head).slice(0, -1));
  for (const named of yardTableNames) {
    put(`,\n${JSON.stringify(named)}:[`);
    let isFirst = true;
    for (const record of all(named)) {
      put(`${isFirst ? '' : ','}\n${JSON.stringify(record)}`);
      isFirst = false;
      if (++done % TELL_EVERY_RECORDS === 0) tell(done, total);
    }
    put(']');
  }
  put(`,\n${JSON.stringify(PICTURE_FILES)}:[`);
  let isFirst = true;
  let missing = 0;
  for (const hash of hashes) {
    const picture = wholePicture(pictures, hash);
    if (picture === null) missing += 1;
    for (const part of partsOf(hash, picture)) {
      put(`${isFirst ? '' : ','}\n${JSON.stringify(part)}`);
      isFirst = false;
    }
    tell(++done, total);
  }
  put(']}\n');
  return missing;
}

function* partsOf(contentHash: string, bytes: Buffer | null): Generator<PicturePart> {
  if (bytes === null) return;
  const parts = Math.ceil(bytes.length / PICTURE_PART_BYTES);
  for (let part = 1; part <= parts; part++) {
    const of = bytes.subarray((part - 1) * PICTURE_PART_BYTES, part * PICTURE_PART_BYTES);
    yield { contentHash, part, parts, base64: of.toString('base64') };
  }
}
