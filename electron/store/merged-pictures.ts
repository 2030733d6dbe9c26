import { basename, dirname } from 'node:path';
import { readBackupName } from './backup-name.ts';
import {
  hashOf,
  hasPicture,
  picturesBeside,
  picturesOfBackups,
  savePicture,
  wholePicture,
} from './picture-files.ts';
import type { Db } from './yard-file.ts';

/** Where pictures of another yard are looked for, and where they go. */
export interface PictureWays {
  /** The own yard file: what it has need not come. */
  own: string;
  /** The other one, as it was chosen: its pictures are in it, beside it, or beside the backups that it is one of. */
  file: string;
  /** The folder that they are copied to; null to see which are missing. */
  to: string | null;
}

/** What became of the pictures that came with another yard. */
export interface PicturesCame {
  /** Found nowhere, or damaged. */
  missing: number;
  /** That the own yard lacks. */
  found: number;
  /** Not copied: the disk is full. */
  noRoom: number;
}

/**
 * Brings the pictures that another yard has and the own one lacks, with their small ones.
 * @param db  the merged yard, to which the other one is attached as `theirs`
 */
export function bringTheirPictures(
  db: Db,
  { own, file, to }: PictureWays,
  tell: (done: number, total: number) => void,
): PicturesCame {
  db.exec(`INSERT OR IGNORE INTO main.thumbnail SELECT * FROM theirs.thumbnail
    WHERE content_hash IN (SELECT content_hash FROM main.picture)`);
  const hashes = db
    .prepare<[], string>(
      'SELECT content_hash FROM main.picture INTERSECT SELECT content_hash FROM theirs.picture',
    )
    .pluck()
    .all();
  const packed = db
    .prepare<[string], Buffer>('SELECT content FROM theirs.packed_picture WHERE content_hash = ?')
    .pluck();
  const yardId = readBackupName(basename(file))?.yardId;
  const folders = [picturesBeside(file)];
  if (yardId !== undefined) folders.push(picturesOfBackups(dirname(file), yardId));

  const find = (hash: string): Buffer | null => {
    const bytes = packed.get(hash);
    if (bytes !== undefined && hashOf(bytes) === hash) return bytes;
    return folders.map((folder) => wholePicture(folder, hash)).find((whole) => whole !== null) ?? null;
  };
  const came: PicturesCame = { missing: 0, found: 0, noRoom: 0 };
  for (const [index, hash] of hashes.entries()) {
    tell(index, hashes.length);
    if (hasPicture(picturesBeside(own), hash)) continue;
    const bytes = find(hash);
    if (bytes === null) {
      came.missing++;
      continue;
    }
    came.found++;
    if (to !== null && !savePicture(to, bytes, hash)) came.noRoom++;
  }
  return came;
}
