import {
  tableOf,
  type YardRecord,
  type YardTableName,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import type { RecordReads, RecordWrites } from '../store/yard-records.ts';
import type { Edits } from './differences.ts';

/** What a board cannot be without: it stays deleted as long as the board, and goes with it. */
const OWNER: Partial<Record<YardTableName, string>> = { moves: 'board', boardOrigins: 'child' };

const ownerOf = (named: YardTableName, record: YardRecord): string | undefined => {
  const field = OWNER[named];
  return field && String(record[field]);
};

/**
 * Whether a record that came from before and was deleted here stays deleted: they did not touch it, and nothing that comes
 * in needs it.
 * @param isNeeded  by its table, and its UUID or its id in a catalog
 */
export function deletedHere(
  mine: RecordReads,
  { ofMine, ofTheirs }: Edits,
  isNeeded: (table: string, name: string) => boolean,
) {
  const comesBack = (table: string, uuid: string, name = uuid): boolean =>
    ofTheirs.has(table, uuid) || isNeeded(table, name);
  return (named: YardTableName, their: YardRecord): boolean => {
    const { table } = tableOf(named);
    if (!ofMine.wasDeleted(table, their.uuid)) return false;
    const isCatalog = named === 'species' || named === 'endUses';
    if (comesBack(table, their.uuid, isCatalog ? String(their.id) : their.uuid)) return false;
    const owner = ownerOf(named, their);
    return owner === undefined || mine.one('boards', owner) !== undefined || !comesBack('board', owner);
  };
}

/** What they deleted and nobody here touched since goes, unless something here names it; those that name others first. */
export function removeDeleted(
  db: Db,
  mine: RecordReads,
  writes: RecordWrites,
  { ofMine, ofTheirs }: Edits,
  /** If they deleted a record and made the same one again, finds the new one. It is added here. */
  madeAgain: (named: YardTableName) => (record: YardRecord) => YardRecord | undefined,
  /** Called of each that went. */
  goes: (named: YardTableName, record: YardRecord) => void,
): void {
  const deleted = ofTheirs.deleted();
  const gone = (named: YardTableName): YardRecord[] => {
    const { table } = tableOf(named);
    const isTheirs = db.prepare(`SELECT 1 FROM theirs.${table} WHERE uuid = ?`);
    return (deleted.get(table) ?? []).flatMap((uuid) => {
      const isGone =
        isTheirs.get(uuid) === undefined && ofTheirs.has(table, uuid) && !ofMine.has(table, uuid);
      return (isGone && mine.one(named, uuid)) || [];
    });
  };
  const boards = new Map(gone('boards').map((board) => [board.uuid, board]));
  const isBoardTheirs = db.prepare('SELECT 1 FROM theirs.board WHERE uuid = ?');
  /** By the boards that they go with, or stay with. */
  const owned = new Map<string, [YardTableName, YardRecord][]>();
  for (const named of yardTableNames.toReversed()) {
    if (tableOf(named).way !== 'edited') continue;
    if (named === 'boards') removeBoards();
    else
      for (const record of gone(named)) {
        const owner = ownerOf(named, record);
        if (owner === undefined || isBoardTheirs.get(owner) !== undefined) {
          if (!writes.remove(named, record.uuid)) continue;
          const again = madeAgain(named)(record);
          if (again) writes.add(named, again);
          else goes(named, record);
        } else owned.set(owner, [...(owned.get(owner) ?? []), [named, record]]);
      }
  }

  /** Pieces go before what they were cut from. */
  function removeBoards(): void {
    let before = -1;
    while (boards.size !== before) {
      before = boards.size;
      for (const board of boards.values()) if (removeWhole(board)) boards.delete(board.uuid);
    }
  }
  function removeWhole(board: YardRecord): boolean {
    const all = [...(owned.get(board.uuid) ?? []), ['boards', board] as const];
    try {
      db.transaction(() => {
        for (const [named, { uuid }] of all)
          if (!writes.remove(named, uuid) && named === 'boards') throw new Stays();
      })();
    } catch (error) {
      if (error instanceof Stays) return false;
      throw error;
    }
    for (const [named, record] of all) goes(named, record);
    return true;
  }
}

/** A board that something here names. */
class Stays extends Error {
  override name = 'Stays';
}
