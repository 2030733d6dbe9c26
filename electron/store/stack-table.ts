import type { Stack, StackRow } from '../../shared-core/contract/yard.ts';
import type { Call } from '../../shared-core/probing/calls/assessment.ts';
import type { Db } from './yard-file.ts';

type StackFields = Omit<StackRow, 'calls' | 'probed'>;

const fields = `
  s.id, s.name, s.place_id AS placeId, s.use_id AS endUseId, s.top_cover AS topCover, s.note,
  p.name AS placeName, u.record ->> 'name' AS endUseName,
  (SELECT count(*) FROM board b WHERE b.stack_id = s.id) AS boards,
  (SELECT max(r.started_at) FROM round r
    WHERE r.stack_id = s.id AND EXISTS (SELECT 1 FROM reading g WHERE g.round_id = r.id)) AS lastProbedAt,
  (SELECT max(r.id) FROM round r WHERE r.stack_id = s.id AND r.finished_at IS NULL) AS openRoundId
  FROM stack s JOIN place p ON p.id = s.place_id JOIN use u ON u.id = s.use_id`;

export function stackTable(db: Db) {
  const list = db.prepare<[], StackFields>(`SELECT ${fields} ORDER BY s.name`);
  const one = db.prepare<[number], StackFields>(`SELECT ${fields} WHERE s.id = ?`);
  const calls = db.prepare<[number], { call: Call; n: number }>(
    `SELECT latest_verdict AS call, count(*) AS n FROM board
     WHERE stack_id = ? AND latest_verdict IS NOT NULL GROUP BY latest_verdict`,
  );
  const add = db.prepare(
    'INSERT INTO stack (name, place_id, use_id, top_cover, note) VALUES (?, ?, ?, ?, ?)',
  );
  const change = db.prepare(
    'UPDATE stack SET name = ?, place_id = ?, use_id = ?, top_cover = ?, note = ? WHERE id = ?',
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
    add: (stack: Omit<Stack, 'id'>): number =>
      Number(add.run(stack.name, stack.placeId, stack.endUseId, stack.topCover, stack.note).lastInsertRowid),
    change: (stack: Stack): void => {
      change.run(stack.name, stack.placeId, stack.endUseId, stack.topCover, stack.note, stack.id);
    },
  };
}
