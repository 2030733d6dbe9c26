import { readyOf } from '../../shared-core/probing/calls/judgement.ts';
import { type Outlook, outlookSchema } from '../../shared-core/probing/calls/outlook.ts';
import type { ToldOfPlace } from '../../shared-core/wood/drying/forecast.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson, valueIn } from './read-json.ts';
import type { Db } from './yard-file.ts';

/** A board that is to be forecast again, and how often that was asked for. */
export interface DueOutlook {
  boardId: number;
  touched: number;
}

const outlookOf = parsedOnce((record: string) => readJson(outlookSchema, record) ?? null);

/** What the forecast made of a board says, as it is saved; null where none is, or can be made. */
export function outlookFrom(
  record: string | null,
  boardId: number,
  badCaches: BadCacheCollector,
): Outlook | null {
  if (record === null) return null;
  const outlook = outlookOf(record);
  if (outlook === null) badCaches.add('outlooks', boardId);
  return outlook;
}

/** What the forecast says of each board; a cache. The file itself marks what is due (`migrations/0011-outlooks.ts`). */
export function outlookReads(db: Db) {
  const dueStacks = db.prepare<[], { stackId: number }>(
    `SELECT DISTINCT b.stack_id AS stackId FROM outlook_due d JOIN board b ON b.id = d.board_id
     WHERE b.archived_at IS NULL`,
  );
  const dueIn = db.prepare<[number], DueOutlook>(
    `SELECT d.board_id AS boardId, d.touched FROM outlook_due d JOIN board b ON b.id = d.board_id
     WHERE b.stack_id = ? AND b.archived_at IS NULL`,
  );
  return {
    stacksDue: (): number[] => dueStacks.all().map(({ stackId }) => stackId),
    dueInStack: (stackId: number): DueOutlook[] => dueIn.all(stackId),
  };
}

export function outlookWrites(db: Db) {
  const done = db.prepare('DELETE FROM outlook_due WHERE board_id = ? AND touched = ?');
  const put = db.prepare(
    `INSERT INTO outlook (board_id, made_on, rules_version, record) VALUES (?, ?, ?, ?)
     ON CONFLICT (board_id) DO UPDATE SET made_on = excluded.made_on, rules_version = excluded.rules_version,
       record = excluded.record`,
  );
  // `probe_why` is what the board is due for; a move is in it too.
  const putInBoard = db.prepare(
    `UPDATE board SET ready_on = ?, probe_why = ?, probe_ms = ?, told_offset_pct = ?, told_precision = ?,
       told_surface_log = ?, told_surface_precision = ?, latest_call = coalesce(?,
       (SELECT ${valueIn('record', 'call')} FROM finding WHERE board_id = board.id AND round_id = board.latest_round_id)) WHERE id = ?`,
  );
  const drop = db.prepare('DELETE FROM outlook WHERE board_id IN (SELECT value FROM json_each(?))');
  const renew = db.prepare(
    `INSERT INTO outlook_due SELECT value, 1 FROM json_each(?) WHERE value IN (SELECT id FROM board)
     ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1`,
  );
  const age = db.prepare(
    `INSERT OR IGNORE INTO outlook_due SELECT board_id, 1 FROM outlook
     WHERE made_on < @today OR made_on > @today OR rules_version <> @rules ORDER BY made_on LIMIT @most`,
  );
  return {
    /** Saves a board's outlook, unless it was asked for again meanwhile: whether it did. */
    put: (
      { boardId, touched }: DueOutlook,
      outlook: Outlook | null,
      told: ToldOfPlace | null,
      today: string,
      rulesVersion: number,
    ): boolean => {
      if (done.run(boardId, touched).changes === 0) return false;
      put.run(boardId, today, rulesVersion, outlook && JSON.stringify(outlook));
      const judgement = outlook?.judgement ?? null;
      const readyOn = judgement && readyOf(judgement)?.when.likely;
      putInBoard.run(
        readyOn,
        judgement?.next.due ?? null,
        judgement?.next.step === 'wait' ? judgement.next.probeMs : null,
        told?.air?.offset ?? null,
        told?.air?.precision ?? null,
        told?.surface?.offset ?? null,
        told?.surface?.precision ?? null,
        judgement?.call ?? null,
        boardId,
      );
      return true;
    },
    /** Those of these boards are gone, and due again. */
    renew: db.transaction((boardIds: Iterable<number>): void => {
      const ids = JSON.stringify([...boardIds]);
      drop.run(ids);
      renew.run(ids);
    }),
    /** Those of another day, or by other rules, are due again: the oldest, so many at most. */
    age: (today: string, rulesVersion: number, most: number): void => {
      age.run({ today, rules: rulesVersion, most });
    },
  };
}
