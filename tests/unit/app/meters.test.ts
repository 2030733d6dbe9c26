import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { spotAt, spotName } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { say } from './a-window.ts';
import { aimAt, aimedSpot, type } from './in-round.ts';
import { doing } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** More than are done at a time. */
const MANY = 300;

/** A meter that is set to black walnut and corrects for temperature itself. */
const setToWalnut = {
  ...unknownProfile,
  scale: { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 },
  compensatesTemp: true,
} as const;

const begin = async () => (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 10 })).id;
const readings = async (index = 0) =>
  (await yard.query('boards.get', { id: yard.boards[index]!.id })).readings;
const mcPct = async () => (await readings())[0]!.corrected.mcPct!;

async function addMeter(
  profile: typeof unknownProfile = setToWalnut,
  roundId: number | null = null,
  name = 'Old one',
) {
  await yard.command('meters.add', { name, profile, roundId });
  return (await yard.query('meters.list', {})).at(-1)!;
}

describe('a hand meter', () => {
  test('and is set to black walnut: 14.2 typed on black walnut stays 14.2', { tags: 'core' }, async () => {
    await addMeter();
    await type(await begin(), 14.2);
    expect(await mcPct()).toBe(14.2);
  });

  test('where nobody knows what it is set to, its default is assumed, as before there were profiles', async () => {
    const roundId = await begin();
    await type(roundId, 14.2);
    const before = (await readings())[0]!;
    expect(before).toMatchObject({ meterId: null, meterProfileId: null });
    await addMeter(unknownProfile);
    await aimAt(roundId, 0, 1);
    await type(roundId, 14.2);
    const [after] = (await readings()).filter(({ meterId }) => meterId !== null);
    expect(after!.corrected).toEqual(before.corrected);
  });

  test('is typed from once it is added, until another one is chosen', async () => {
    const first = await addMeter();
    const second = await addMeter(setToWalnut, null, 'Second one');
    expect((await yard.query('meters.list', {})).map(({ isTypedFrom }) => isTypedFrom)).toEqual([
      false,
      true,
    ]);
    const roundId = await begin();
    await type(roundId, 12);
    await yard.command('meters.typeFrom', { meterId: first.id });
    await aimAt(roundId, 0, 1);
    await type(roundId, 12);
    expect(new Set((await readings()).map(({ meterId }) => meterId))).toEqual(new Set([first.id, second.id]));
  });

  test('a value is of the meter that its window shows, whatever another window chose meanwhile', async () => {
    const shown = await addMeter();
    await addMeter(setToWalnut, null, 'Second one');
    const roundId = await begin();
    await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 12, meterId: shown.id });
    expect((await readings())[0]!.meterId).toBe(shown.id);
  });

  test('answered after the first values of a round: they are of this meter, too, and what was saved stays', async () => {
    const roundId = await begin();
    await type(roundId, 14.2);
    expect(await mcPct()).not.toBeCloseTo(14.2, 1);
    const meter = await addMeter(setToWalnut, roundId);
    expect((await readings())[0]).toMatchObject({ raw: 14.2, meterId: meter.id });
    expect(await mcPct()).toBe(14.2);
    const { probed } = await yard.query('rounds.get', { roundId });
    expect(probed?.assessment?.readings[0]?.corrected.mcPct).toBe(14.2);
  });

  test('answered between the readings of a thick board: they stay at their spots, and its core comes next', async () => {
    const { id, version: basedOn } = yard.boards[0]!;
    await yard.command('boards.edit', { id, basedOn, changed: { thicknessMm: 52 } });
    const roundId = await begin();
    for (const raw of [14.2, 14.6]) await type(roundId, raw);
    const spots = async () => {
      const board = (await yard.query('rounds.get', { roundId })).probed!;
      return board.assessment!.readings.map((reading) => say(spotName(spotAt(board, reading.spotIndex!)!)));
    };
    const before = await spots();
    expect(before).toEqual([expect.stringContaining('left'), expect.stringContaining('right')]);
    const pins = { lengthMm: 26, insulated: null };
    await addMeter({ ...unknownProfile, pins }, roundId);
    expect(await spots()).toEqual(before);
    const { aim, probed } = await yard.query('rounds.get', { roundId });
    expect(spotAt(probed!, aim!.spotIndex!)).toMatchObject({ spot: { depth: 'core' } });
    await aimAt(roundId, 1);
    await aimAt(roundId, 0);
    for (const raw of [16.1, 16.3]) await type(roundId, raw);
    expect((await yard.query('boards.get', { id })).findings[0]).toMatchObject({ call: expect.any(String) });
  });

  test('keeps its readings as they are when its profile is edited, until they are moved to the new one', async () => {
    const meter = await addMeter(unknownProfile);
    await type(await begin(), 14.2);
    const before = await mcPct();
    await yard.command('meters.edit', {
      id: meter.id,
      basedOn: meter.version,
      changed: { profile: setToWalnut },
    });
    expect(await mcPct()).toBe(before);
    expect(await yard.query('meters.use', { meterId: meter.id })).toEqual({
      earlierReadings: 1,
      isUsed: true,
    });

    const { act } = await yard.command('meters.updateEarlier', { meterId: meter.id });
    expect(await mcPct()).toBe(14.2);
    expect(await yard.query('meters.use', { meterId: meter.id })).toEqual({
      earlierReadings: 0,
      isUsed: true,
    });

    await yard.command('acts.undo', { act });
    expect(await mcPct()).toBe(before);
  });

  test('moves many readings some at a time, says how far it is, and moves none where it is stopped', async () => {
    const meter = await addMeter(unknownProfile);
    const named = Array.from({ length: MANY / 3 - 2 }, (_, index) => yard.board(`MANY-${index}`));
    await yard.command('boards.add', named);
    const { id: roundId, boards } = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 10,
    });
    for (const { boardId } of boards)
      for (const spotIndex of [0, 1, 2]) {
        const here = { roundId, boardId, spotIndex, newestReadingId: null };
        await yard.command('rounds.saveTyped', { ...here, raw: 14.2 });
      }
    const changed = { profile: setToWalnut };
    await yard.command('meters.edit', { id: meter.id, basedOn: meter.version, changed });
    const earlier = async () => (await yard.query('meters.use', { meterId: meter.id })).earlierReadings;

    const work = randomUUID();
    const stopped = yard.command('meters.updateEarlier', { meterId: meter.id, work });
    await yard.command('work.cancel', { work });
    await expect(stopped).rejects.toThrow('Stopped. Nothing was changed.');
    expect(await earlier()).toBe(MANY);

    const again = randomUUID();
    const { act } = await yard.command('meters.updateEarlier', { meterId: meter.id, work: again });
    expect(yard.heard('work.progress')).toContainEqual(expect.objectContaining({ work: again, total: MANY }));
    expect(await earlier()).toBe(0);
    await yard.command('acts.undo', { act });
    expect(await earlier()).toBe(MANY);
    // Typing 300 readings takes long on a busy machine.
  });

  test('that another window edited meanwhile is not overwritten', async () => {
    const meter = await addMeter();
    const edit = { id: meter.id, basedOn: meter.version, changed: { name: 'New one' } };
    await yard.command('meters.edit', edit);
    await expect(yard.command('meters.edit', edit)).rejects.toThrow(/edited in another window/);
  });

  test('set to a curve that there is not is refused', async () => {
    const scale = { kind: 'species', speciesId: null, curveId: 'no-such', tempC: 21 } as const;
    const undone = message('refusal.meter-as-before');
    expect(await yard.refusal('meters.add', { name: 'Old one', profile: { ...unknownProfile, scale } })).toBe(
      say(message('refusal.curve-unknown', { curveId: 'no-such', undone })),
    );
  });
});

describe('readings moved to another meter', () => {
  /** A round with two typed readings of one meter on the first board and one of another on the second. */
  async function readWithTwo() {
    const [one, other] = [await addMeter(unknownProfile), await addMeter(setToWalnut, null, 'Second one')];
    const roundId = await begin();
    const typed = async (index: number, spot: number, meterId: number) => {
      await aimAt(roundId, index, spot);
      await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 14.2, meterId });
    };
    await typed(0, 0, one.id);
    await typed(0, 1, one.id);
    await typed(1, 0, one.id);
    await typed(1, 1, other.id);
    const metersRead = async () =>
      [...(await readings(0)), ...(await readings(1))]
        .toSorted((a, b) => a.id - b.id)
        .map(({ meterId }) => (meterId === one.id ? 'one' : 'other'));
    const [first] = (await readings()).toSorted((a, b) => a.id - b.id);
    return { roundId, readingId: first!.id, to: other.id, metersRead };
  }

  test('one reading alone', async () => {
    const { readingId, to, metersRead } = await readWithTwo();
    await yard.command('readings.setMeter', { readingId, scope: 'reading', meterId: to });
    expect(await metersRead()).toEqual(['other', 'one', 'one', 'other']);
  });

  test('all of its round that were read alike, and back', async () => {
    const { readingId, to, metersRead } = await readWithTwo();
    const moved = await yard.command('readings.setMeter', { readingId, scope: 'round', meterId: to });
    expect(moved).toMatchObject({ readings: 3, boardIds: yard.boards.map(({ id }) => id) });
    expect(await metersRead()).toEqual(['other', 'other', 'other', 'other']);
    await yard.command('acts.undo', { act: moved.act });
    expect(await metersRead()).toEqual(['one', 'one', 'one', 'other']);
    // Once is enough.
    expect(await yard.refusal('acts.undo', { act: moved.act })).toBe(say(message('refusal.undone-already')));
  });

  test('only the boards concerned are judged again', async () => {
    const { readingId, to } = await readWithTwo();
    const { boardIds } = await yard.command('readings.setMeter', {
      readingId,
      scope: 'reading',
      meterId: to,
    });
    expect(boardIds).toEqual([yard.boards[0]!.id]);
    const averages = async () => {
      const { rows } = await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 10 });
      return rows.map(({ latest }) => latest?.averagePct);
    };
    const [, untouched] = await averages();
    await expect.poll(async () => (await averages())[1]).toBe(untouched);
  });

  test('a hand meter is not one whose pins only touch the wood', async () => {
    const pins = { lengthMm: 0.5, insulated: null };
    expect(await yard.refusal('meters.add', { name: 'Odd', profile: { ...unknownProfile, pins } })).toBe(
      'Those pins read the surface only. Check their length and its unit. Nothing was saved.',
    );
  });

  test('a meter of ohms takes no readings in %', async () => {
    const { readingId } = await readWithTwo();
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    const { description, meterId } = await yard.query('meter.state', {});
    await yard.command('meter.describe', { ...description!, unit: 'ohm', range: { min: 100, max: 1e12 } });
    const move = { readingId, scope: 'reading', meterId: meterId! } as const;
    expect(await yard.refusal('readings.setMeter', move)).toBe(
      say(message('refusal.meter-other-unit', { meterName: 'Hand-held' })),
    );
  });
});

describe('a meter that sends its values', () => {
  async function connect() {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    return (await yard.query('meters.list', {}))[0]!;
  }

  test('has no profile before somebody is asked, and keeps the answer when it is read otherwise', async () => {
    const meter = await connect();
    expect(meter).toMatchObject({ kind: 'bluetooth', name: 'Hand-held', profile: null });
    await yard.command('meters.edit', {
      id: meter.id,
      basedOn: meter.version,
      changed: { profile: setToWalnut },
    });
    const { description } = await yard.query('meter.state', {});
    await yard.command('meter.describe', { ...description!, range: { min: 5, max: 50 } });
    expect((await connect()).profile).toEqual(setToWalnut);
    await begin();
    yard.meter.lift();
    yard.meter.show(14.2, 4);
    expect(await mcPct()).toBe(14.2);
    await expect.poll(() => yard.heard('meter.live').at(-1)?.corrected?.mcPct).toBeCloseTo(14.2, 6);
  });
});

describe('a hand meter that was added by mistake', () => {
  const names = async () => (await yard.query('meters.list', {})).map(({ name }) => name);

  test('is deleted, no value is typed from it, and undoing that brings both back', async () => {
    const { id: meterId } = await addMeter();
    expect(await yard.query('meters.use', { meterId })).toEqual({ earlierReadings: 0, isUsed: false });
    const { act } = await doing('meters.delete', { meterId });
    expect(await names()).toEqual([]);
    await type(await begin(), 12);
    expect((await readings())[0]!.meterId).toBeNull();
    await yard.command('acts.undo', { act });
    expect(await yard.query('meters.list', {})).toMatchObject([{ id: meterId, isTypedFrom: true }]);
    expect(await yard.refusal('acts.undo', { act })).toMatch(/Already undone/);
  });

  test('stays where a reading was taken with it, even one moved away since, and it is said why', async () => {
    const first = await addMeter();
    await type(await begin(), 12);
    const second = await addMeter(setToWalnut, null, 'Second one');
    const [reading] = await readings();
    await yard.command('readings.setMeter', { readingId: reading!.id, scope: 'reading', meterId: second.id });
    for (const { id: meterId, name } of [first, second])
      expect(await yard.refusal('meters.delete', { meterId })).toBe(
        `${name} was not deleted: readings or checks were taken with it. You can stop using it for typed readings.`,
      );
    expect(await names()).toHaveLength(2);
  });

  test('whose profile is put back leaves no reading with an earlier one', async () => {
    const { id, version } = await addMeter();
    await type(await begin(), 12);
    const edited = await yard.command('meters.edit', {
      id,
      basedOn: version,
      changed: { profile: unknownProfile },
    });
    const earlier = async () => (await yard.query('meters.use', { meterId: id })).earlierReadings;
    expect(await earlier()).toBe(1);
    await yard.command('meters.edit', { id, basedOn: edited.version, changed: { profile: setToWalnut } });
    expect(await earlier()).toBe(0);
  });
});

test('no two meters have one name, until one is deleted', async () => {
  const add = { name: 'Mine', profile: unknownProfile };
  const taken = /already a meter called .*Mine.*Nothing was saved/;
  const { meterId } = await yard.command('meters.add', add);
  expect(await yard.refusal('meters.add', { ...add, name: ' mine ' })).toMatch(taken);
  const { meterId: id } = await yard.command('meters.add', { ...add, name: 'Yours' });
  const basedOn = (await yard.query('meters.list', {})).find((each) => each.id === id)!.version;
  expect(await yard.refusal('meters.edit', { id, basedOn, changed: { name: 'Mine' } })).toMatch(taken);
  await yard.command('meters.edit', { id, basedOn, changed: { name: 'Yours' } });
  const { act } = await doing('meters.delete', { meterId });
  await yard.command('meters.add', add);
  expect(await yard.refusal('acts.undo', { act })).toMatch(
    /Meter Mine cannot come back: its ID or name is in use/,
  );
  expect((await yard.query('meters.list', {})).map(({ name }) => name)).toEqual(['Yours', 'Mine']);
});
