/** A saved reading is corrected by hand, through the whole app. */
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { say } from './a-window.ts';
import { aimAt, saveLive, type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const boardId = () => yard.boards[0]!.id;
const readings = async () => (await yard.query('boards.get', { id: boardId() })).readings;
const firstReading = async () => (await readings())[0]!;

/** A round in which the first board was read at all of its spots. */
async function probed(...raws: number[]): Promise<number> {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const [spotIndex, raw] of raws.entries()) {
    await aimAt(roundId, 0, spotIndex);
    await type(roundId, raw);
  }
  return roundId;
}

async function correct(corrected: { raw?: number; woodTempC?: number | null }) {
  const { id: readingId, raw, unit, woodTempC } = await firstReading();
  return yard.command('readings.correct', { readingId, corrected, shown: { raw, unit, woodTempC } });
}
const lines = async () =>
  (await yard.query('acts.list', { before: null, limit: 1, boardId: boardId() })).acts.map(({ line }) =>
    say(line),
  );

describe('the value of a reading that was typed wrong', () => {
  test('is judged anew, and what was saved stays in the file', async () => {
    const roundId = await probed(185, 18, 18.2, 18.4);
    expect(await firstReading()).toMatchObject({
      raw: 185,
      counts: false,
      suspicions: [{ rule: 'typing-slip' }],
    });
    await correct({ raw: 18.5 });
    expect(await firstReading()).toMatchObject({ raw: 18.5, savedRaw: 185, counts: true });
    expect((await firstReading()).suspicions.map(({ rule }) => rule)).not.toContain('typing-slip');
    const { board } = await yard.query('boards.get', { id: boardId() });
    expect(board.latest).toMatchObject({ roundId, spotsRead: null });
    const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
    expect(db.prepare('SELECT raw FROM reading ORDER BY id LIMIT 1').pluck().get()).toBe(185);
    db.close();
    expect(await lines()).toEqual(['Reading of board WAL-01 changed from 185% to 18.5%.']);
  });

  test('is what it was once that is undone, and again as saved once it is corrected back', async () => {
    await probed(12);
    const { act } = await correct({ raw: 14 });
    const { act: second } = await correct({ raw: 15 });
    expect(await lines()).toEqual(['Reading of board WAL-01 changed from 14% to 15%.']);
    await yard.command('acts.undo', { act: second });
    expect(await firstReading()).toMatchObject({ raw: 14, savedRaw: 12 });
    await yard.command('acts.undo', { act });
    expect(await firstReading()).not.toHaveProperty('savedRaw');
    await correct({ raw: 14 });
    expect(await lines()).toEqual(['Reading of board WAL-01 changed from 12% to 14%.']);
    await correct({ raw: 12 });
    expect(await firstReading()).toMatchObject({ raw: 12 });
    expect(await firstReading()).not.toHaveProperty('savedRaw');
  });

  test('is asked about where the decimal point may be lost, and saved as typed once that is meant', async () => {
    await probed(16.2, 16, 16.4);
    const { id: readingId, raw, unit, woodTempC } = await firstReading();
    const correction = { readingId, corrected: { raw: 126 }, shown: { raw, unit, woodTempC } };
    expect(await yard.refusal('readings.correct', correction)).toBe(
      '126% was typed, but 12.6% would fit. Nothing was changed. Which did the meter show?',
    );
    expect(await firstReading()).toMatchObject({ raw: 16.2 });
    await correct({ raw: 12.6 });
    expect(await firstReading()).toMatchObject({ raw: 12.6, counts: true });
    const again = { ...correction, shown: { ...correction.shown, raw: 12.6 } };
    await yard.command('readings.correct', { ...again, isAsMeant: true });
    expect(await firstReading()).toMatchObject({ raw: 126, counts: false });
  });

  test('is asked about though the board read far from what would fit, or where nothing would', async () => {
    await yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: '2026-05-20T10:00:00.000Z',
        depths: ['pins'],
        isDateRight: true,
        lines: [{ boardId: boardId(), raws: [30], above: [0] }],
      }),
    );
    await probed(30);
    const { id: readingId, raw, unit, woodTempC } = await firstReading();
    const refused = (typed: number) =>
      yard.refusal('readings.correct', {
        readingId,
        corrected: { raw: typed },
        shown: { raw, unit, woodTempC },
      });
    expect(await refused(126)).toBe(
      '126% was typed, but 12.6% would fit. Nothing was changed. Which did the meter show?',
    );
    expect(await refused(9000)).toBe(
      '9,000% cannot be the moisture content of this species. It would not be used. Nothing was changed. Is it what the meter showed?',
    );
    expect(await firstReading()).toMatchObject({ raw: 30 });
  });

  test('is not corrected over what another window saved', async () => {
    await probed(12);
    const { id: readingId } = await firstReading();
    await correct({ raw: 14 });
    const given = await yard.answer('readings.correct', {
      readingId,
      corrected: { raw: 13 },
      shown: { raw: 12, unit: 'pct', woodTempC: 20 },
    });
    expect(given).toMatchObject({ ok: false, current: { raw: 14, unit: 'pct', woodTempC: 20 } });
    expect(await firstReading()).toMatchObject({ raw: 14 });
  });

  test('is megohms where the meter shows them', async () => {
    await probed(1.2);
    await yard.command('meters.add', {
      name: 'Ohm meter',
      profile: { ...unknownProfile, scale: { kind: 'ohms' } },
      roundId: (await firstReading()).roundId,
    });
    expect(await firstReading()).toMatchObject({ raw: 1_200_000, unit: 'ohm' });
    await correct({ raw: 12_000_000 });
    expect(await firstReading()).toMatchObject({ raw: 12_000_000, savedRaw: 1_200_000, unit: 'ohm' });
  });

  test('the same page typed again is known by the corrected value', async () => {
    const page = (raw: number) =>
      pastPage({
        startedAt: '2026-05-20T10:00:00.000Z',
        depths: ['pins'],
        isDateRight: true,
        lines: [{ boardId: boardId(), raws: [raw] }],
      });
    await yard.command('pastRounds.save', page(185));
    await correct({ raw: 18.5 });
    expect(await yard.refusal('pastRounds.save', page(18.5))).toMatch(
      /^These readings were already saved on .* for 1 board\./,
    );
  });

  test('is not corrected where the meter sent it', async () => {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    yard.meter.show(11.8, 0.3);
    await saveLive(roundId);
    const { id: readingId } = await firstReading();
    const shown = { raw: 11.8, unit: 'pct', woodTempC: 20 };
    expect(await yard.refusal('readings.correct', { readingId, corrected: { raw: 12 }, shown })).toBe(
      'The meter sent this value, so it cannot be edited. Exclude it if it is wrong.',
    );
    expect(await firstReading()).toMatchObject({ raw: 11.8 });
  });
});

test('the temperature of the wood is corrected for one reading', async () => {
  await probed(12, 12);
  await correct({ woodTempC: 5 });
  expect((await readings()).map(({ woodTempC }) => woodTempC)).toEqual([5, 20]);
  expect(await lines()).toEqual(['Wood temperature of a reading of board WAL-01 changed to 5°C.']);
  await correct({ woodTempC: null });
  expect(await lines()).toEqual(['Wood temperature of a reading of board WAL-01 changed to unknown.']);
});
