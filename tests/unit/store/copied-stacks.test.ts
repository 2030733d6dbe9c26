import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { damagedReadings } from '../../../electron/store/damaged-readings.ts';
import { schemaFaults } from '../../../electron/store/schema-repair.ts';
import { BOARDS_A_STACK, fillYard } from '../../bench/filled-yard.ts';

test('stacks that a bench copies are as sound as those that the app wrote', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-copied-'));
  const file = join(folder, 'yard.sqlite');
  try {
    fillYard(file, 2 * BOARDS_A_STACK, 1, null, 1);
    const db = new Database(file, { readonly: true });
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(schemaFaults(db)).toEqual([]);
    expect(damagedReadings(file)).toEqual([]);
    const lastOf = (stackId: number): unknown =>
      db
        .prepare(
          `SELECT b.code, s.name, b.latest_average_pct, b.place_id, m.since, g.raw, g.taken_at, f.record ->> 'call' AS call,
             f.record ->> 'roundId' - r.id AS off, r.compared_by_rules, d.touched
           FROM board b JOIN stack s ON s.id = b.stack_id JOIN move m ON m.board_id = b.id
             JOIN reading g ON g.board_id = b.id JOIN round r ON r.id = g.round_id
             JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id AND f.round_id = r.id
             JOIN outlook_due d ON d.board_id = b.id
           WHERE s.id = ? ORDER BY g.id DESC LIMIT 1`,
        )
        .get(stackId);
    const first = lastOf(1);
    expect(first).toMatchObject({ code: 'B00-0999', name: 'Stack 0', off: 0 });
    expect(lastOf(2)).toEqual({ ...(first as object), code: 'B01-0999', name: 'Stack 1' });
    db.close();
  } finally {
    rmSync(folder, { recursive: true });
  }
});
