import type { NewStack, Stack, StackRow } from '../../shared-core/contract/yard.ts';
import type { Call } from '../../shared-core/probing/calls/assessment.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import type { Db } from './yard-file.ts';

const columns: Columns<NewStack> = {
  name: 'name',
  placeId: 'place_id',
  endUseId: 'end_use_id',
  topCover: 'top_cover',
  note: 'note',
};
const recordColumns: Columns<Stack & { version: number }> = { id: 'id', version: 'version', ...columns };

type StackFields = Omit<StackRow, 'calls' | 'probed'>;

export function stackReads(db: Db) {
  const select = `
    SELECT ${selected(recordColumns, 's')}, p.name AS placeName, u.record ->> 'name' AS endUseName,
      (SELECT count(*) FROM board b WHERE b.stack_id = s.id AND b.archived_at IS NULL) AS boards,
      (SELECT max(r.started_at) FROM round r
        WHERE r.stack_id = s.id AND EXISTS (SELECT 1 FROM reading g WHERE g.round_id = r.id)) AS lastProbedAt,
      (SELECT max(r.id) FROM round r WHERE r.stack_id = s.id AND r.finished_at IS NULL) AS openRoundId
    FROM stack s JOIN place p ON p.id = s.place_id JOIN end_use u ON u.id = s.end_use_id`;
  const list = db.prepare<[], StackFields>(`${select} WHERE s.closed_at IS NULL ORDER BY s.name`);
  const one = db.prepare<[number], StackFields>(`${select} WHERE s.id = ?`);
  const calls = db.prepare<[number], { call: Call; n: number }>(
    `SELECT latest_call AS call, count(*) AS n FROM board
     WHERE stack_id = ? AND archived_at IS NULL AND latest_call IS NOT NULL GROUP BY latest_call`,
  );

  function withCalls(row: StackFields): StackRow {
    const counts: StackRow['calls'] = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'probe-again': 0 };
    for (const { call, n } of calls.all(row.id)) counts[call] = n;
    return { ...row, calls: counts, probed: Object.values(counts).reduce((sum, n) => sum + n, 0) };
  }

  return {
    list: (): StackRow[] => list.all().map(withCalls),
    get: (id: number): StackRow | undefined => {
      const row = one.get(id);
      return row && withCalls(row);
    },
  };
}

export function stackWrites(db: Db, { get }: ReturnType<typeof stackReads>) {
  return {
    add: recordAdder(db, 'stack', columns),
    edit: recordEditor(db, 'stack', columns, get),
  };
}
