import Database from 'better-sqlite3';
import { picturesBeside, savePicture, wholePicture } from './picture-files.ts';
import { pictureHashesIn } from './picture-table.ts';
import type { Db } from './yard-file.ts';

/** Puts its pictures into a copy of a yard file, so that it is one file wherever it is taken. */
export function packPictures(yardFile: string, copy: string): void {
  const db = new Database(copy, { fileMustExist: true });
  try {
    const add = db.prepare('INSERT OR IGNORE INTO packed_picture (content_hash, content) VALUES (?, ?)');
    for (const hash of pictureHashesIn(db)) {
      const bytes = wholePicture(picturesBeside(yardFile), hash);
      if (bytes !== null) add.run(hash, bytes);
    }
  } finally {
    db.close();
  }
}

/**
 * Takes the pictures out of a copy that has them in it, to a folder.
 * @returns whether it had any
 */
export function unpackPictures(db: Db, folder: string): boolean {
  const hashes = db.prepare('SELECT content_hash FROM packed_picture').pluck().all() as string[];
  const content = db.prepare('SELECT content FROM packed_picture WHERE content_hash = ?').pluck();
  const isIn = new Set(pictureHashesIn(db));
  for (const hash of hashes.filter((each) => isIn.has(each))) {
    savePicture(folder, content.get(hash) as Buffer, hash);
  }
  db.prepare('DELETE FROM packed_picture').run();
  return hashes.length > 0;
}
