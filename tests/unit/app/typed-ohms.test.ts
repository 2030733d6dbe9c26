import { describe, expect, test } from 'vitest';
import { type MeterProfile, unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { say } from './a-window.ts';
import { aimedSpot, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const ohms: MeterProfile = { ...unknownProfile, scale: { kind: 'ohms' } };
const SHORT = { lengthMm: 8, insulated: false };

// At 80 °F, where the published resistances need no correction for temperature (James 1988, Table 1).
const begin = async () =>
  (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 26.7 })).id;
const readings = async (index = 0) =>
  (await yard.query('boards.get', { id: yard.boards[index]!.id })).readings;
const add = async (
  profile: MeterProfile,
  more: { name?: string; roundId?: number; isTypedFrom?: boolean } = {},
) => (await yard.command('meters.add', { name: 'Old one', profile, ...more })).meterId;
const typeOhms = async (roundId: number, raw: number) =>
  yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw, unit: 'ohm' });
const shownMeters = () => yard.query('meters.list', {});

describe('a hand meter that shows ohms', () => {
  test('is saved in ohms, and corrected by the resistance of the species', async () => {
    const meterId = await add(ohms);
    expect(await shownMeters()).toMatchObject([{ id: meterId, unit: 'ohm', isTypedFrom: true }]);
    const roundId = await begin();
    // 155 megohm is black walnut of 12 % at 80 °F (James 1988, Table 1, from memory).
    await typeOhms(roundId, 155e6);
    const [reading] = await readings();
    expect(reading).toMatchObject({ raw: 155e6, unit: 'ohm', how: 'typed', meterId });
    expect(reading!.corrected.mcPct).toBeCloseTo(12, 1);
    expect(reading!.corrected.steps[0]).toMatchObject({ step: 'species-curve' });
    // Nor is it at an end of a scale of %.
    expect(reading!.suspicions.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  test('takes no number that was typed in %, nor a meter in % one in ohms; nothing is saved', async () => {
    await add(ohms);
    const roundId = await begin();
    const spot = await aimedSpot(roundId);
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw: 12 })).toBe(
      say(message('refusal.typed-other-unit', { unit: 'pct' })),
    );
    const inPct = await add(unknownProfile, { name: 'New one' });
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw: 12e6, unit: 'ohm', meterId: inPct })).toBe(
      say(message('refusal.typed-other-unit', { unit: 'ohm' })),
    );
    expect(await readings()).toEqual([]);
  });

  test('keeps its unit once something was read with it, and readings stay in theirs', async () => {
    const meterId = await add(ohms);
    const roundId = await begin();
    await typeOhms(roundId, 125e6);
    const [meter] = await shownMeters();
    const edit = { id: meterId, basedOn: meter!.version, changed: { profile: unknownProfile } };
    expect(await yard.refusal('meters.edit', edit)).toBe(
      say(message('refusal.meter-keeps-unit', { meterName: 'Old one', unit: 'ohm' })),
    );
    const readingId = (await readings())[0]!.id;
    const inPct = await add(unknownProfile, { name: 'New one' });
    expect(await yard.refusal('readings.setMeter', { readingId, scope: 'reading', meterId: inPct })).toBe(
      say(message('refusal.meter-other-unit', { meterName: 'New one' })),
    );
    // Nothing was read with this one yet.
    const other = (await shownMeters()).at(-1)!;
    const change = { id: inPct, basedOn: other.version, changed: { profile: ohms } };
    expect(await yard.command('meters.edit', change)).toMatchObject({ unit: 'ohm' });
  });

  test('corrects its earlier readings again once its pins are known', async () => {
    const meterId = await add(ohms);
    await typeOhms(await begin(), 125e6);
    const [meter] = await shownMeters();
    const changed = { profile: { ...ohms, pins: SHORT } };
    await yard.command('meters.edit', { id: meterId, basedOn: meter!.version, changed });
    await yard.command('meters.updateEarlier', { meterId });
    expect(await readings()).toMatchObject([{ raw: 125e6, unit: 'ohm', depthFrom: 'pins' }]);
  });

  test('one that sends % is never one of ohms', async () => {
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    const [meter] = await shownMeters();
    const edit = { id: meter!.id, basedOn: meter!.version, changed: { profile: ohms } };
    expect(await yard.refusal('meters.edit', edit)).toBe(
      say(message('refusal.meter-sends-percent', { meterName: 'Hand-held' })),
    );
  });
});

describe('the first answer in a round', () => {
  test('that it shows ohms makes megohms of the numbers typed before, and undoing it makes them % again', async () => {
    const roundId = await begin();
    await type(roundId, 350);
    expect(await readings()).toMatchObject([{ raw: 350, unit: 'pct', corrected: { mcPct: null } }]);
    const { act, meterId } = await yard.command('meters.add', { name: 'Old one', profile: ohms, roundId });
    const [reading] = await readings();
    expect(reading).toMatchObject({ raw: 350e6, unit: 'ohm', meterId });
    expect(reading!.corrected.mcPct).toBeGreaterThan(8);
    await yard.command('acts.undo', { act });
    expect(await readings()).toMatchObject([{ raw: 350, unit: 'pct', meterId: null }]);
    expect(await shownMeters()).toEqual([]);
  });

  test('is not undone once more was read with the meter', async () => {
    const roundId = await begin();
    await type(roundId, 350);
    const { act, meterId } = await yard.command('meters.add', { name: 'Old one', profile: ohms, roundId });
    await typeOhms(roundId, 300e6);
    expect(await yard.refusal('acts.undo', { act })).toMatch(
      /is used by a later change, so nothing was undone\..* Reading 300 MΩ saved on board/,
    );
    expect(await readings()).toMatchObject([{ meterId }, { meterId }]);
  });

  test('about the pins acts on the board in hand at once, and goes back with the answer', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    const board = async () => (await yard.query('rounds.get', { roundId })).boards[0]!;
    expect((await board()).planBasis.pins).toBeNull();
    const profile = { ...unknownProfile, pins: { lengthMm: 30, insulated: true } };
    const { act } = await yard.command('meters.add', { name: 'Long', profile, roundId });
    expect((await board()).planBasis).toEqual({ faces: 'pairs', core: null, pins: profile.pins });
    // The shell that was read is a spot of that plan, too.
    expect((await board()).finding).toMatchObject({ filledSpots: 1, openSpot: 1 });
    await yard.command('acts.undo', { act });
    expect((await board()).planBasis.pins).toBeNull();
  });
});

describe('another hand meter', () => {
  test('can be added without typing from it', async () => {
    const first = await add(unknownProfile);
    const second = await add(ohms, { name: 'New one', isTypedFrom: false });
    expect(await shownMeters()).toMatchObject([
      { id: first, isTypedFrom: true },
      { id: second, isTypedFrom: false },
    ]);
  });

  test('taken back, values are typed from the one before', async () => {
    const first = await add(unknownProfile);
    const { act } = await yard.command('meters.add', { name: 'New one', profile: ohms });
    await yard.command('acts.undo', { act });
    expect(await shownMeters()).toMatchObject([{ id: first, isTypedFrom: true }]);
  });

  test('shows what a reading would come to with it, before it is moved', async () => {
    await add(unknownProfile);
    const walnut = {
      ...unknownProfile,
      scale: { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 },
      compensatesTemp: true,
    } as const;
    await type(await begin(), 14.2);
    const [reading] = await readings();
    const meterId = await add(walnut, { name: 'New one' });
    const ask = { readingId: reading!.id, meterId };
    const read = await yard.query('readings.asReadWith', ask);
    expect(read).toMatchObject({ raw: 14.2, unit: 'pct', corrected: { mcPct: 14.2 } });
    await yard.command('readings.setMeter', { ...ask, scope: 'reading' });
    expect((await readings())[0]!.corrected).toEqual(read!.corrected);
    expect(
      await yard.query('readings.asReadWith', { ...ask, meterId: await add(ohms, { name: 'In ohms' }) }),
    ).toBeNull();
  });
});
