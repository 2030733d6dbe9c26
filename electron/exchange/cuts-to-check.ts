import { type Message, message } from '../../shared-core/words/message.ts';
import { keptRecord } from '../store/lineage.ts';
import type { Db } from '../store/yard-file.ts';
import { firstNames } from './merge-words.ts';

const FROM_PIECES = `FROM board_origin o JOIN board p ON p.id = o.parent_id AND o.how <> 'merged'
  JOIN board c ON c.id = o.child_id AND c.archived_at IS NULL`;

/**
 * Boards of which more wood is in the lists than there can be: only a person knows what lies there.
 * @param alsoCut  IDs of boards in the lists of which one file cut what the other took for another record of them
 */
export function cutsToCheck(db: Db, alsoCut: readonly string[]): Message[] {
  const whole = db
    .prepare<[], string>(
      `SELECT DISTINCT k.code ${FROM_PIECES}
       JOIN board k ON k.id = ${keptRecord('p.id')} AND k.archived_at IS NULL`,
    )
    .pluck()
    .all();
  const twice = db
    .prepare<[], string>(
      `SELECT p.code ${FROM_PIECES} WHERE p.archived_at IS NOT NULL
       GROUP BY p.id HAVING count(DISTINCT o.how || o.at) > 1`,
    )
    .pluck()
    .all();
  return [
    ...told('merge.cuts.whole', [...new Set([...whole, ...alsoCut])]),
    ...told('merge.cuts.twice', twice),
  ];
}

function told(code: 'merge.cuts.whole' | 'merge.cuts.twice', boards: readonly string[]): Message[] {
  if (boards.length === 0) return [];
  return [message(code, { count: boards.length, names: firstNames(boards.toSorted()) })];
}
