import type { Cut } from '../../shared-core/contract/archive.ts';
import { type Origin, originHowSchema } from '../../shared-core/contract/origin.ts';
import { recordAdder } from './columns.ts';
import type { Db } from './yard-file.ts';

/**
 * SQL for the boards whose readings of a round are of a board's wood: its own, and those of what it came from before the cut.
 * @param board  SQL for its id
 * @param round  SQL for the round's id
 */
export const sameWood = (board: string, round: string): string =>
  `(SELECT ${board} UNION ALL SELECT ancestor_id FROM lineage
    WHERE board_id = ${board} AND until > (SELECT started_at FROM round WHERE id = ${round}))`;

/** SQL for the rounds with readings of a board's wood, undone ones too. @param board  SQL for its id */
export const roundsOfWood = (board: string): string =>
  `(SELECT round_id FROM reading WHERE board_id = ${board}
    UNION SELECT g.round_id FROM lineage l JOIN reading g ON g.board_id = l.ancestor_id JOIN round r ON r.id = g.round_id
      WHERE l.board_id = ${board} AND r.started_at < l.until)`;

/** SQL for whether a row of `lineage` is of another record of the same board, whose readings are its own at all times. */
const isSameBoard = (row: string): string => `${row}.until = '9999'`;

/** SQL for a board and the other records of it that were merged with it. @param board  SQL for its id */
export const sameBoard = (board: string): string =>
  `(SELECT ${board} UNION ALL SELECT ancestor_id FROM lineage WHERE board_id = ${board} AND ${isSameBoard('lineage')})`;

/** SQL for the record that a board was merged into, or else for itself. @param board  SQL for its id */
export const keptRecord = (board: string): string =>
  `(SELECT coalesce((SELECT l.board_id FROM lineage l WHERE l.ancestor_id = ${board} AND ${isSameBoard('l')}
     AND NOT EXISTS (SELECT 1 FROM lineage n WHERE n.ancestor_id = l.board_id AND ${isSameBoard('n')})), ${board}))`;

interface OriginRecord {
  childId: number;
  parentId: number;
  how: Cut | 'merged';
  /** UTC, ISO 8601. */
  at: string;
}

/** Which board was made of which: ripped, crosscut, or entered twice and merged. `lineage` has what follows from it. */
export function originReads(db: Db) {
  const named = (of: 'child' | 'parent') =>
    `SELECT b.id AS boardId, b.code, o.how, o.at FROM board_origin o JOIN board b ON b.id = o.${of}_id
     WHERE coalesce(b.archived_why ->> 'code', '') NOT IN ('undone', 'deleted')`;
  const parents = db.prepare<[number], Origin>(`${named('parent')} AND o.child_id = ? ORDER BY o.at, o.id`);
  const children = db.prepare<[number], Origin>(`${named('child')} AND o.parent_id = ? ORDER BY o.at, o.id`);
  const ancestors = db.prepare<
    [number],
    { boardId: number; code: string; lengthMm: number | null; isSame: 0 | 1 }
  >(
    `SELECT b.id AS boardId, b.code, b.length_mm AS lengthMm, ${isSameBoard('l')} AS isSame
     FROM lineage l JOIN board b ON b.id = l.ancestor_id WHERE l.board_id = ? ORDER BY b.id`,
  );
  const kept = db.prepare<{ id: number }, number>(`SELECT ${keptRecord('@id')}`).pluck();
  const records = db.prepare<{ id: number }, number>(`SELECT * FROM ${sameBoard('@id')}`).pluck();
  const below = db
    .prepare<[number], number>('SELECT board_id FROM lineage WHERE ancestor_id = ? ORDER BY board_id')
    .pluck();
  const known = ({ how, ...origin }: Origin): Origin => ({ ...origin, how: originHowSchema.parse(how) });
  return {
    /** The boards that it was cut from, or that were merged with it, the earliest first. */
    parents: (boardId: number): Origin[] => parents.all(boardId).map(known),
    /** What a board was cut from; undefined for a whole one. */
    cutFrom: (boardId: number): Origin | undefined =>
      parents
        .all(boardId)
        .map(known)
        .find(({ how }) => how !== 'merged'),
    /** What was cut from it, or the one that it was merged into. */
    children: (boardId: number): Origin[] => children.all(boardId).map(known),
    /** All that it came from, however far back. */
    ancestors: (boardId: number) =>
      ancestors.all(boardId).map(({ isSame, ...board }) => ({ ...board, isSame: isSame === 1 })),
    /** It, and the other records of it that were merged with it. */
    records: (boardId: number): number[] => records.all({ id: boardId }),
    /** The record that it was merged into; itself where it was not. */
    kept: (boardId: number): number => kept.get({ id: boardId }) ?? boardId,
    /** All that came from it. */
    below: (boardId: number): number[] => below.all(boardId),
  };
}

export function originWrites(db: Db) {
  return {
    add: recordAdder<OriginRecord>(db, 'board_origin', {
      childId: 'child_id',
      parentId: 'parent_id',
      how: 'how',
      at: 'at',
    }),
  };
}
