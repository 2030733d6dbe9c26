import { keptRecord } from './lineage.ts';
import { hasEffect } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** An ID that a board had before it was given another. */
interface EarlierCode {
  code: string;
  /** The record that stayed, where the board was merged. */
  boardId: number;
}

/** What the acts tell of IDs that boards had, the latest change last; not of a change that was undone. */
export function earlierCodes(db: Db) {
  const changes = db.prepare<[], EarlierCode>(
    `SELECT c.old_values ->> 'code' AS code, ${keptRecord('b.id')} AS boardId
     FROM act_change c JOIN act a ON a.id = c.act_id JOIN board b ON b.uuid = c.row_uuid
     WHERE c.in_table = 'board' AND c.new_values IS NOT NULL AND c.old_values ->> 'code' IS NOT NULL
       AND ${hasEffect('a')}
     ORDER BY c.id`,
  );
  return (): EarlierCode[] => changes.all();
}
