import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { aimAt, type } from './in-round.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

// Forecasts are made by a thread, and the machine may be busy.

withYardOfTwo();

/** A board in the shop, whose air dries wood to 7.7 % MC, and a hand meter whose pins reach no core. */
async function thickBoard(sawnOn: string | null): Promise<void> {
  const profile = { ...unknownProfile, pins: { lengthMm: 8, insulated: false } };
  await yard.command('meters.add', { name: 'Short pins', profile, roundId: null });
  const board = { ...yard.board('THICK-1'), thicknessMm: 34, thicknessQuarters: null, sawnOn };
  await yard.command('boards.add', [board]);
  await outlooksMade();
}

/** Reads every spot of the board alike: its call as the last reading left it. */
async function probe(raw: number) {
  const { id: roundId, boards } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
  });
  const index = boards.findIndex(({ code }) => code === 'THICK-1');
  for (const spotIndex of planSpots(boards[index]!).plan.keys()) {
    await aimAt(roundId, index, spotIndex);
    await type(roundId, raw);
  }
  const { call, reasons } = (await yard.query('rounds.get', { roundId })).probed!.assessment!;
  await yard.command('rounds.finish', { roundId });
  expectWhole(reasons);
  return { roundId, call, reasons: reasons.map(inEnglish) };
}

const callOf = async (roundId: number) => {
  const { boards } = await yard.query('rounds.get', { roundId });
  return boards.flatMap(({ finding }) => finding?.call ?? []);
};

function inFile(sql: string): unknown[] {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'));
  const rows = db.prepare(sql).all();
  db.close();
  return rows;
}

describe('a thick board whose core no pin reached', () => {
  test('is ready at once where its history tells the core, and says how sure that is', async () => {
    await thickBoard('2026-05-31');
    yard.later(150 * DAY_MS);
    expect((await probe(6.5)).call).toBe('probe-again');
    await outlooksMade();
    yard.later(150 * DAY_MS);
    const { call, reasons } = await probe(6);
    expect(call).toBe('ready');
    expect(reasons).toContain(
      'Core not read. Forecast difference: likely 0.0–1.4 points. 2.0 points allowed.',
    );
  });

  test('is judged by a history that knows nothing of the readings judged', async () => {
    await thickBoard('2026-05-31');
    yard.later(150 * DAY_MS);
    await probe(6.5);
    await outlooksMade();
    yard.later(150 * DAY_MS);
    const told = inFile('SELECT * FROM core_history');
    expect(told).toHaveLength(2);
    const { roundId } = await probe(6);
    await outlooksMade();
    expect(inFile('SELECT * FROM core_history')).toEqual([
      ...told,
      expect.objectContaining({ after_round_id: roundId }),
    ]);
  });

  test('is judged once its history is made, where that was missing', async () => {
    await thickBoard('2026-05-31');
    yard.later(150 * DAY_MS);
    await probe(6.5);
    await outlooksMade();
    yard.later(150 * DAY_MS);
    inFile('DELETE FROM core_history RETURNING 1');
    const { roundId, call, reasons } = await probe(6);
    expect(call).toBe('probe-again');
    expect(reasons.join(' ')).toMatch(/Core not read\. Read it in a fresh crosscut/);
    await expect.poll(() => callOf(roundId), { timeout: 20_000 }).toEqual(['ready']);
  });

  test('has no history before its first readings', async () => {
    await thickBoard('2026-05-31');
    yard.later(300 * DAY_MS);
    const { roundId, call } = await probe(6);
    expect(call).toBe('probe-again');
    await outlooksMade();
    expect(await callOf(roundId)).toEqual(['probe-again']);
  });

  test('has none where nobody knows when it was sawn, and its first round did not reach the core either', async () => {
    await thickBoard(null);
    await probe(6);
    await outlooksMade();
    yard.later(150 * DAY_MS);
    const { roundId, call } = await probe(6);
    expect(call).toBe('probe-again');
    await outlooksMade();
    expect(await callOf(roundId)).toEqual(['probe-again']);
  });
});
