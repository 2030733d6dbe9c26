import { otherSide } from '../../shared-core/contract/exchange.ts';
import type { YardRecord, YardTableName } from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import type { RecordWrites } from '../store/yard-records.ts';
import type { Difference, Side } from './differences.ts';

/** That a record of a board was merged into another one. */
interface Merged {
  /** Of the origin that says so. */
  uuid: string;
  /** The UUIDs of the two boards. */
  record: string;
  into: string;
  /** The ID of the one that it was merged into. */
  intoCode: string;
  /** Why both left the lists; blank where they did not. */
  recordWhy: string;
  intoWhy: string;
}

const mergedIn = (db: Db, side: Side): Merged[] =>
  db
    .prepare<[], Merged>(
      `SELECT o.uuid, p.uuid AS record, c.uuid AS "into", c.code AS intoCode,
         coalesce(p.archived_why ->> 'code', '') AS recordWhy, coalesce(c.archived_why ->> 'code', '') AS intoWhy
       FROM ${side}.board_origin o JOIN ${side}.board p ON p.id = o.parent_id
         JOIN ${side}.board c ON c.id = o.child_id WHERE o.how = 'merged' ORDER BY o.uuid`,
    )
    .all();

const byRecord = (all: readonly Merged[]) => new Map(all.map((each) => [each.record, each]));
/** For what was entered by mistake: nothing of it is in the yard. */
const isLetGo = (why: string): boolean => why === 'deleted' || why === 'undone';
const isCut = (why: string): boolean => why === 'ripped' || why === 'crosscut';

/**
 * Which record of a board each file merged into which, where two yards are brought together. Each record ends in one other at
 * most, none in a circle, and none in one that the other file deleted without knowing of it.
 */
export function mergedRecords(db: Db) {
  const into = { mine: byRecord(mergedIn(db, 'main')), theirs: byRecord(mergedIn(db, 'theirs')) };
  const rings = ringsOf(into.mine, into.theirs);
  const isIn = (who: 'mine' | 'theirs', { record, into: one }: Merged): boolean =>
    into[who].get(record)?.into === one;

  /** In the file that merged the two, the one that stays was there; in the other it is let go, and the two are two boards. */
  const isLostWith = (merged: Merged): boolean => {
    const who = isIn('mine', merged) ? 'mine' : 'theirs';
    const thereWhy = into[who].get(merged.record)?.intoWhy ?? '';
    return isLetGo(merged.intoWhy) && !isLetGo(thereWhy) && !isIn(otherSide(who), merged);
  };

  return {
    /** The ID of the board that one of the files merged a record into. */
    intoCode: (who: 'mine' | 'theirs', record: string): string | undefined => into[who].get(record)?.intoCode,
    /** Boards that are asked about as one, because the files merged them into each other; null for one that is not of these. */
    ringOf: (named: YardTableName, uuid: string): readonly string[] | null =>
      (named === 'boards' && rings.get(uuid)) || null,
    /** What both did alike at another time is no question: the earlier holds. */
    withoutAlike: (
      named: YardTableName,
      own: YardRecord,
      their: YardRecord,
      { theirs, clashing }: Difference,
    ): Difference => {
      const mine = into.mine.get(own.uuid);
      const isAlike =
        named === 'boardOrigins' || (mine !== undefined && mine.into === into.theirs.get(own.uuid)?.into);
      const at = named === 'boardOrigins' ? 'at' : 'archivedAt';
      if (!isAlike || !clashing.includes(at)) return { theirs, clashing };
      const isTheirs = String(their[at]) < String(own[at]);
      return {
        theirs: isTheirs ? [...theirs, at] : theirs,
        clashing: clashing.filter((field) => field !== at),
      };
    },
    /**
     * Takes out the origins that say otherwise than what was chosen.
     * @param back  brings a record into the lists again
     * @returns boards in the lists of which the other file cut a record
     */
    part: (
      writes: RecordWrites,
      isTheirs: (record: string) => boolean,
      back: (record: string) => void,
    ): string[] => {
      const alsoCut: string[] = [];
      const now = mergedIn(db, 'main');
      const last = byRecord(now);
      const isTwice = new Set(
        now.filter((each) => last.get(each.record) !== each).map(({ record }) => record),
      );
      for (const merged of now) {
        const { uuid, record, recordWhy, intoCode, intoWhy } = merged;
        const isOther = isTwice.has(record) && !isIn(isTheirs(record) ? 'theirs' : 'mine', merged);
        const isStaying = recordWhy !== 'merged';
        const isLost = !isOther && !isStaying && isLostWith(merged);
        if (!isOther && !isStaying && !isLost) continue;
        writes.remove('boardOrigins', uuid);
        if (isLost) back(record);
        if (isCut(recordWhy) && intoWhy === '') alsoCut.push(intoCode);
      }
      return alsoCut;
    },
  };
}
export type MergedRecords = ReturnType<typeof mergedRecords>;

/** Records that the two files merged into each other, in a circle: each with all of its circle, in one order. */
function ringsOf(
  mine: ReadonlyMap<string, Merged>,
  theirs: ReadonlyMap<string, Merged>,
): Map<string, string[]> {
  const rings = new Map<string, string[]>();
  const next = (uuid: string): string[] =>
    [mine.get(uuid)?.into, theirs.get(uuid)?.into].filter((each) => each !== undefined);
  const reached = (from: string): Set<string> => {
    const found = new Set<string>();
    const todo = [...next(from)];
    for (let uuid = todo.pop(); uuid !== undefined; uuid = todo.pop()) {
      if (found.has(uuid)) continue;
      found.add(uuid);
      todo.push(...next(uuid));
    }
    return found;
  };
  // Each circle has what only one of the two merged.
  for (const { record, into } of theirs.values()) {
    if (mine.get(record)?.into === into || rings.has(record)) continue;
    const ring = [...reached(record)].filter((uuid) => reached(uuid).has(record)).sort();
    for (const uuid of ring) rings.set(uuid, ring);
  }
  return rings;
}
