import { createBadCaches } from './bad-caches.ts';
import { migrations } from './migrations.ts';
import { readsOf } from './yard.ts';
import { type Db, damageOf, layoutOf } from './yard-file.ts';

/**
 * Whether a copy of a yard can be opened as a yard: SQLite finds no damage, no record refers to one that is gone, and the
 * app's own queries read it. One of an earlier layout is read once it was migrated.
 */
export function isWhole(db: Db): boolean {
  if (damageOf(db, true) !== null || (db.pragma('foreign_key_check') as unknown[]).length > 0) return false;
  return layoutOf(db) < migrations.length || canBeRead(db);
}

function canBeRead(db: Db): boolean {
  try {
    const { places, stacks, boards, species, endUses, meters } = readsOf(db, createBadCaches());
    for (const read of [places.list, stacks.list, boards.total, species.list, endUses.list, meters.damaged])
      read();
    return db.prepare('SELECT uuid FROM yard').get() !== undefined;
  } catch (error) {
    if (String((error as { code?: unknown }).code).startsWith('SQLITE_ERROR')) return false;
    throw error;
  }
}
