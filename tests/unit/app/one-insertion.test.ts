import { beforeEach, describe, expect, test } from 'vitest';
import { openWindow } from './a-window.ts';
import { handHeld } from './hand-held-meter.ts';
import { aimAt, aimedSpot, aimOf, saveLive, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

let roundId: number;

beforeEach(async () => {
  roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
});

const readings = async () => (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];
const rawBySpot = async () =>
  (await readings())
    .filter(({ excluded }) => excluded === null)
    .map(({ spotIndex, raw }) => [spotIndex, raw]);
const insertion = () => yard.heard('meter.insertion').at(-1)?.reading ?? null;

describe('one insertion is one reading', () => {
  test('Space with the pins still in after the value saved itself is refused, and says so', async () => {
    yard.meter.show(11.8, 4);
    yard.meter.show(11.9, 1);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(
      /pins are still in.*WAL-01.*Nothing more was saved.*Pull the pins/s,
    );
    expect(await rawBySpot()).toEqual([[0, 11.8]]);
  });

  test('Space twice is one reading', async () => {
    yard.meter.show(11.8, 0.3);
    await saveLive(roundId);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/pins are still in/);
    expect(await rawBySpot()).toEqual([[0, 11.8]]);
  });

  test('the window hears which reading the pins were saved as, until they go in again', async () => {
    yard.meter.show(11.8, 4);
    const [saved] = await readings();
    expect(insertion()).toEqual({ readingId: saved?.id, roundId, boardId: yard.boards[0]?.id, spotIndex: 0 });
    yard.meter.lift();
    expect(insertion()).toBeNull();
    yard.meter.show(12.4, 0.3);
    await saveLive(roundId);
    expect(await rawBySpot()).toEqual([
      [0, 11.8],
      [1, 12.4],
    ]);
  });

  test('the new value replaces the reading at its spot; that one stays on record with the reason', async () => {
    yard.meter.show(11.8, 4);
    yard.meter.show(12.3, 3);
    const { readingId, boardId, spotIndex } = insertion()!;
    await yard.command('rounds.saveLive', {
      roundId,
      boardId,
      spotIndex,
      newestReadingId: readingId,
      replaces: readingId,
    });
    expect((await readings()).map(({ spotIndex, raw, excluded }) => ({ spotIndex, raw, excluded }))).toEqual([
      { spotIndex: 0, raw: 11.8, excluded: { code: 'replaced' } },
      { spotIndex: 0, raw: expect.closeTo(12.3, 1), excluded: null },
    ]);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 1 });
    expect(insertion()?.readingId).toBeGreaterThan(readingId);
  });

  test('a reading replaces only one that is at its spot and not excluded', async () => {
    yard.meter.show(11.8, 4);
    const { readingId, boardId } = insertion()!;
    const at = { roundId, boardId, newestReadingId: readingId, replaces: readingId };
    expect(await yard.refusal('rounds.saveLive', { ...at, spotIndex: 2 })).toMatch(/Nothing was saved/);
    await yard.command('readings.exclude', { readingId, why: { code: 'knot' } });
    expect(await yard.refusal('rounds.saveTyped', { ...at, spotIndex: 0, raw: 12 })).toMatch(
      /Nothing was saved/,
    );
    expect((await readings()).map(({ excluded }) => excluded)).toEqual([{ code: 'knot' }]);
  });

  test('once the reading is undone, the same insertion can be saved again', async () => {
    yard.meter.show(11.8, 4);
    await yard.command('rounds.undo', { readingId: insertion()!.readingId });
    expect(insertion()).toBeNull();
    await saveLive(roundId);
    expect(await rawBySpot()).toEqual([[0, 11.8]]);
  });
});

describe('the meter away with the pins in, after their reading was saved', () => {
  const wasAway = () => yard.heard('meter.insertion').at(-1)?.wasAway;

  test('nothing saves itself at the next spot before the meter has shown the pins out', async () => {
    yard.meter.show(12.6, 4);
    yard.meter.leaveReach(20);
    yard.meter.show(12.6, 6);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
    expect(wasAway()).toBe(true);
    yard.meter.lift();
    expect(wasAway()).toBe(false);
    yard.meter.show(12.6, 6);
    expect(await rawBySpot()).toEqual([
      [0, 12.6],
      [1, 12.6],
    ]);
  });

  test('away twice, still nothing saves itself; Space is asked about, and saves where the person says so', async () => {
    yard.meter.show(12.6, 4);
    yard.meter.leaveReach(20);
    yard.meter.show(12.6, 1);
    yard.meter.leaveReach(20);
    yard.meter.show(12.6, 6);
    const at = await aimedSpot(roundId);
    expect(await yard.refusal('rounds.saveLive', at)).toMatch(/may be the reading.*WAL-01.*Nothing more/);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
    await yard.command('rounds.saveLive', { ...at, isOtherPush: true });
    expect(await rawBySpot()).toEqual([
      [0, 12.6],
      [1, 12.6],
    ]);
    expect(wasAway()).toBe(false);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/pins are still in/);
  });

  test('Space on another board is asked about, too', async () => {
    yard.meter.show(12.6, 4);
    yard.meter.leaveReach(4);
    yard.meter.show(12.6, 4);
    await aimAt(roundId, 1, 0);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/WAL-01/);
  });

  test('disconnected and connected again, Space asks, too', async () => {
    yard.meter.show(12.6, 4);
    await yard.command('meter.disconnect', {});
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    yard.meter.show(12.6, 6);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/may be the reading/);
  });

  test('clearly another value does not save itself, but Space saves it without a question', async () => {
    yard.meter.show(12.6, 4);
    yard.meter.leaveReach(4);
    yard.meter.show(16, 6);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
    expect(insertion()).toBeNull();
    await saveLive(roundId);
    expect(await rawBySpot()).toEqual([
      [0, 12.6],
      [1, 16],
    ]);
  });

  test('what was typed meanwhile may be these pins as well', async () => {
    yard.meter.show(12.6, 0.5);
    yard.meter.state = { ...yard.meter.state, phase: 'reconnecting' };
    yard.meter.emit('state', yard.meter.state);
    await type(roundId, 12.6);
    yard.meter.leaveReach(1);
    yard.meter.show(12.6, 6);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/may be the reading/);
  });

  test('away before anything was saved of the push, it saves itself once', async () => {
    yard.meter.show(12.6, 0.5);
    yard.meter.leaveReach(20);
    yard.meter.show(12.6, 6);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
  });
});

test('read otherwise with the pins in, the meter saves their value no second time', async () => {
  yard.meter.show(12.6, 4);
  await yard.command('meter.describe', { ...handHeld, range: { min: 4, max: 61 } });
  yard.meter.show(12.6, 6);
  expect(await rawBySpot()).toEqual([[0, 12.6]]);
  expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/pins are still in/);
  yard.meter.lift();
  yard.meter.show(12.8, 6);
  expect(await rawBySpot()).toHaveLength(2);
});

test('disconnected and connected anew with the pins in, the meter saves their value no second time', async () => {
  yard.meter.show(12.6, 4);
  await yard.command('meter.disconnect', {});
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  yard.meter.show(12.6, 6);
  expect(await rawBySpot()).toEqual([[0, 12.6]]);
  yard.meter.lift();
  yard.meter.show(12.8, 6);
  expect(await rawBySpot()).toHaveLength(2);
});

test('a value that was read in another way than now cannot be saved', async () => {
  yard.meter.show(12.6, 0.5);
  await yard.command('meter.describe', { ...handHeld, range: { min: 4, max: 61 } });
  expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/shows no value/);
});

describe('pins that went in on another board, and nothing was saved of them', () => {
  test('Space asks; asked and answered, it saves once', async () => {
    yard.meter.show(12.6, 0.5);
    await aimAt(roundId, 1, 0);
    const at = await aimedSpot(roundId);
    expect(await yard.refusal('rounds.saveLive', at)).toMatch(/pins went in on WAL-01\. Nothing was saved/);
    await yard.command('rounds.saveLive', { ...at, isOtherPush: true });
    expect(insertion()).toMatchObject({ boardId: yard.boards[1]?.id });
  });

  test('out and in again on the board in hand, nothing is asked', async () => {
    yard.meter.show(12.6, 0.5);
    await aimAt(roundId, 1, 0);
    yard.meter.lift();
    yard.meter.show(12.6, 0.5);
    await saveLive(roundId);
    expect(insertion()).toMatchObject({ boardId: yard.boards[1]?.id });
  });
});

describe('a push that settles while the window is loaded again', () => {
  const isMissed = (window: typeof again) => window.heard('meter.insertion').at(-1)?.isMissed;
  let again: ReturnType<typeof openWindow>;

  beforeEach(async () => {
    yard.meter.show(12.6, 0.7);
    yard.close();
    yard.meter.show(12.6, 6);
    again = openWindow(yard.app);
    await again.command('rounds.open', { roundId });
  });

  test('is not saved unseen: the window says so, and Space saves it once where it was aimed', async () => {
    expect(await rawBySpot()).toEqual([]);
    expect(isMissed(again)).toBe(true);
    await saveLive(roundId, again);
    expect(isMissed(again)).toBe(false);
    yard.meter.show(12.6, 6);
    expect(await rawBySpot()).toEqual([[0, 12.6]]);
  });

  test('with the pins out, nothing is said any more, and the next push saves itself', async () => {
    yard.meter.lift();
    expect(isMissed(again)).toBe(false);
    yard.meter.show(13.1, 6);
    expect(await rawBySpot()).toEqual([[0, 13.1]]);
  });
});

describe('a value typed while the meter saves its own', () => {
  test('does not land one spot on: the spot it was typed for has another reading now', async () => {
    const typedFor = await aimedSpot(roundId);
    yard.meter.show(11.8, 4);
    expect(await yard.refusal('rounds.saveTyped', { ...typedFor, raw: 12.4 })).toMatch(
      /WAL-01 has another reading.*Nothing was saved/,
    );
    expect(await rawBySpot()).toEqual([[0, 11.8]]);
  });

  test('replaces it, or goes to the next spot, as the person says', async () => {
    yard.meter.show(11.8, 4);
    const { readingId, boardId } = insertion()!;
    const at = { roundId, boardId, spotIndex: 0, newestReadingId: readingId, replaces: readingId };
    await yard.command('rounds.saveTyped', { ...at, raw: 12.4 });
    await type(roundId, 12.6);
    expect(await rawBySpot()).toEqual([
      [0, 12.4],
      [1, 12.6],
    ]);
  });
});
