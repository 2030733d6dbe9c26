import type { Subject } from '../../shared-core/contract/notes.ts';
import { amended, amendmentsOf, amendmentWrites } from './amendment-table.ts';
import type { Db } from './yard-file.ts';

/** Tables with a note of their own; a reading's is an amendment. */
const tables = ['board', 'stack', 'round'] as const;
type InTable = (typeof tables)[number];

const each = <T>(make: (table: InTable) => T): Record<InTable, T> => ({
  board: make('board'),
  stack: make('stack'),
  round: make('round'),
});

export function noteReads(db: Db) {
  const notes = each((table) =>
    db.prepare<[number], string>(`SELECT note FROM ${table} WHERE id = ?`).pluck(),
  );
  const amendments = db
    .prepare<[number], string>(`SELECT ${amended('reading', 'g')} FROM reading g WHERE g.id = ?`)
    .pluck();
  return {
    /** Empty where nobody wrote one; undefined where there is no such record. */
    of: ({ kind, id }: Subject): string | undefined => {
      if (kind !== 'reading') return notes[kind].get(id);
      const found = amendments.get(id);
      return found === undefined ? undefined : (amendmentsOf(found).note ?? '');
    },
  };
}

export function noteWrites(db: Db) {
  const updates = each((table) =>
    db.prepare(`UPDATE ${table} SET note = ?, version = version + 1 WHERE id = ?`),
  );
  const { amendReading } = amendmentWrites(db);
  return {
    set: ({ kind, id }: Subject, note: string, at: string): void => {
      if (kind === 'reading') amendReading(id, 'note', note, at);
      else updates[kind].run(note, id);
    },
  };
}
