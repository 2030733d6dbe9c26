import { describe, expect, test } from 'vitest';
import { say } from './a-window.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo({ forecastAfterMs: 600_000 });

const DAY = 86_400_000;
const ofPlace = (placeId = yard.place.id) => yard.query('air.ofPlace', { placeId });
const type = (measuredOn: string, rh: number, placeId = yard.place.id) =>
  yard.command('air.type', { placeId, measuredOn, tempC: 20, rh });
const dayBefore = (days: number) => new Date(Date.parse(yard.now()) - days * DAY).toISOString().slice(0, 10);

describe('the air that a person reads from a hygrometer', () => {
  test('is that of its day at its place', async () => {
    await type('2026-05-30', 0.6);
    const { days, usedDays, last, from } = await ofPlace();
    expect(days).toMatchObject([{ values: 1, tempC: 20, rh: 0.6, doubt: null }]);
    // Wood Handbook, Table 4-2: 70 °F and 60 %.
    expect(days[0]!.emcPct).toBeCloseTo(11, 0);
    expect(usedDays).toBe(1);
    expect(last).toMatchObject({ tempC: 20, rh: 0.6, isOfDay: true });
    expect(from).toMatch(/^2026-05-30/);
  });

  test('is refused twice, and of a day to come', async () => {
    await type('2026-05-30', 0.6);
    await expect(type('2026-05-30', 0.6)).rejects.toThrow('already saved');
    await expect(type('2026-06-03', 0.6)).rejects.toThrow('still to come');
  });

  test('is not used where it can only be other air', async () => {
    await yard.command('air.type', {
      placeId: yard.place.id,
      measuredOn: '2026-05-30',
      tempC: 48,
      rh: 0.1,
    });
    expect(await ofPlace()).toMatchObject({ usedDays: 0, shiftPct: 0, days: [{ doubt: 'unlike' }] });
  });

  test('changes nothing shown of a place while none of it is used', async () => {
    await yard.command('air.type', {
      placeId: yard.place.id,
      measuredOn: '2026-05-30',
      tempC: 48,
      rh: 0.1,
    });
    const [place] = await yard.query('places.list', {});
    expect(place!.airOffset?.measuredPct).toBeUndefined();
  });

  test('moves the months of the place, the more the longer it was measured', async () => {
    for (let day = 1; day <= 3; day++) await type(dayBefore(day), 0.6);
    const few = (await ofPlace()).shiftPct;
    for (let day = 4; day <= 60; day++) await type(dayBefore(day), 0.6);
    const many = (await ofPlace()).shiftPct;
    expect(few).toBeGreaterThan(0);
    expect(many).toBeGreaterThan(few);
  });

  test('is what a board there dried in, and the forecast says so', async () => {
    await yard.beginRound();
    const forecast = async () => (await yard.query('boards.forecast', { id: yard.boards[0]!.id })).details!;
    const before = await forecast();
    for (let day = 0; day <= 40; day++) await type(dayBefore(day), 0.75);
    const after = await forecast();
    expect(after.assumptions.map(say).join(' ')).toMatch(
      /Air in Shop: measured since Apr 22, .*All other days: the months you entered, adjusted to what was measured\./,
    );
    expect(before.assumptions.map(say).join(' ')).not.toContain('measured');
    expect(after.forecast.places[0]!.floorPct.median).toBeGreaterThan(
      before.forecast.places[0]!.floorPct.median + 1,
    );
  });
});

test('the air of a place goes with it into another, and back once that is undone', async () => {
  const shed = await yard.command('places.add', {
    name: 'Shed',
    kind: 'shop',
    air: Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5 })),
  });
  await type('2026-05-28', 0.6, shed.id);
  await type('2026-05-29', 0.6, shed.id);
  await type('2026-05-29', 0.6);
  yard.sensors.says = null;
  await yard.command('sensors.add', { name: 'Wall', deviceId: 'a1', kind: 'air', placeId: shed.id });
  const before = await ofPlace();
  expect(before.usedDays).toBe(1);
  await yard.command('places.merge', {
    id: shed.id,
    basedOn: shed.version,
    intoId: yard.place.id,
    air: 'into',
  });
  expect(await ofPlace()).toMatchObject({ usedDays: 2, days: [{ values: 1 }, { values: 1 }] });
  expect(await yard.query('sensors.list', {})).toMatchObject([{ placeId: yard.place.id }]);
  const [merge] = (await yard.query('acts.list', { boardId: null, before: null, limit: 1 })).acts;
  expect(say(merge!.line)).toContain('Shed');
  await yard.command('acts.undo', { act: merge!.id });
  expect(await ofPlace()).toEqual(before);
  expect((await ofPlace(shed.id)).usedDays).toBe(2);
  expect(await yard.query('sensors.list', {})).toMatchObject([{ placeId: shed.id }]);
});

describe('what was typed of the air', () => {
  const typed = async () => (await ofPlace()).typed;
  const newestLine = async () =>
    say((await yard.query('acts.list', { boardId: null, before: null, limit: 1 })).acts[0]!.line);
  const again = (rh: number) => ({ measuredOn: '2026-05-30', tempC: 20, rh });

  test('is asked about before another value of that day replaces it', async () => {
    await type('2026-05-30', 0.45);
    await expect(type('2026-05-30', 0.95)).rejects.toThrow(
      'May 30, 2026 has 20°C, 45% humidity already. Replace it?',
    );
    expect(await ofPlace()).toMatchObject({ days: [{ rh: 0.45, values: 1 }] });
    await yard.command('air.type', { placeId: yard.place.id, ...again(0.6), isReplacing: true });
    expect(await ofPlace()).toMatchObject({ days: [{ rh: 0.6, values: 1 }], last: { rh: 0.6 } });
    expect(await newestLine()).toBe('Air in Shop for May 30, 2026 is now 20°C, 60% humidity.');
  });

  test('can be edited, moved to another day, and deleted', async () => {
    await type('2026-05-30', 0.45);
    await type('2026-05-29', 0.5);
    const [, first] = await typed();
    await yard.command('air.edit', { id: first!.id, ...again(0.46) });
    expect(await typed()).toMatchObject([{ rh: 0.5 }, { rh: 0.46 }]);
    const [, edited] = await typed();
    const toOther = { id: edited!.id, ...again(0.46), measuredOn: '2026-05-29' };
    await expect(yard.command('air.edit', toOther)).rejects.toThrow('Replace it?');
    await yard.command('air.edit', { ...toOther, measuredOn: '2026-05-28' });
    expect((await ofPlace()).days).toMatchObject([{ rh: 0.46 }, { rh: 0.5 }]);
    const [gone] = await typed();
    await yard.command('air.delete', { id: gone!.id });
    expect(await newestLine()).toBe('Air in Shop for May 28, 2026 deleted.');
    expect((await ofPlace()).days).toMatchObject([{ rh: 0.5 }]);
    await expect(yard.command('air.delete', { id: gone!.id })).rejects.toThrow('not in this yard');
    await expect(yard.command('air.edit', { id: gone!.id, ...again(0.5) })).rejects.toThrow(
      'not in this yard',
    );
  });

  test('comes back once its deletion is undone; saving it is undone only after', async () => {
    const { act } = await type('2026-05-30', 0.45);
    const before = await ofPlace();
    const deletion = await yard.command('air.delete', { id: (await typed())[0]!.id });
    await expect(yard.command('acts.undo', { act })).rejects.toThrow('deleted');
    await yard.command('acts.undo', { act: deletion.act });
    expect(await ofPlace()).toEqual(before);
    await yard.command('acts.undo', { act });
    expect((await ofPlace()).days).toEqual([]);
  });

  const values = async () => (await typed()).map(({ rh, isOutdated }) => [rh, isOutdated]);

  test('first and redone after another value of its day does not count beside that one', async () => {
    const { act } = await type('2026-05-30', 0.45);
    await yard.command('acts.undo', { act });
    await type('2026-05-30', 0.6);
    await yard.command('acts.redo', { act });
    expect(await ofPlace()).toMatchObject({ days: [{ rh: 0.6, values: 2 }], usedDays: 1, last: { rh: 0.6 } });
    expect(await values()).toEqual([
      [0.45, true],
      [0.6, false],
    ]);
    await yard.command('air.delete', { id: (await typed())[1]!.id });
    expect((await ofPlace()).days).toMatchObject([{ rh: 0.45, values: 1 }]);
  });

  test('and deleted does not count beside what was typed since, once its deletion is undone', async () => {
    await type('2026-05-30', 0.5);
    const { act } = await yard.command('air.delete', { id: (await typed())[0]!.id });
    await type('2026-05-30', 0.71);
    await yard.command('acts.undo', { act });
    expect((await ofPlace()).days).toMatchObject([{ rh: 0.71, values: 2 }]);
    // Typing it again replaces both.
    await yard.command('air.type', { placeId: yard.place.id, ...again(0.6), isReplacing: true });
    expect(await values()).toEqual([[0.6, false]]);
  });
});

describe('a sensor', () => {
  const add = (name = 'Wall') =>
    yard.command('sensors.add', { name, deviceId: 'a1', kind: 'air', placeId: yard.place.id });
  const remove = ({ id, version }: { id: number; version: number }) =>
    yard.command('sensors.remove', { id, basedOn: version });
  const sensors = () => yard.query('sensors.list', {});

  test('is added once', async () => {
    await add();
    await expect(add()).rejects.toThrow('already added as Wall');
  });

  test('that was moved from a day on is there since then', async () => {
    const { id } = await add();
    const shed = await yard.command('places.add', {
      name: 'Shed',
      kind: 'open-shed',
      air: Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.7 })),
    });
    await yard.command('sensors.move', { id, placeId: shed.id, sinceOn: '2026-05-20' });
    expect(await yard.query('sensors.list', {})).toMatchObject([{ placeId: shed.id }]);
    await yard.command('sensors.move', { id, placeId: null, sinceOn: '2026-05-25' });
    expect(await yard.query('sensors.list', {})).toMatchObject([{ placeId: null }]);
  });

  test('that was removed is not in the list, and cannot be moved, renamed, read or removed', async () => {
    const sensor = await add();
    const { id, version: basedOn } = sensor;
    await remove(sensor);
    expect(await sensors()).toEqual([]);
    const gone = 'not in this yard';
    const sinceOn = '2026-05-20';
    await expect(yard.command('sensors.move', { id, placeId: null, sinceOn })).rejects.toThrow(gone);
    await expect(yard.command('sensors.edit', { id, basedOn, changed: { name: 'A' } })).rejects.toThrow(gone);
    await expect(yard.command('sensors.read', { id })).rejects.toThrow(gone);
    await expect(remove({ id, version: basedOn + 1 })).rejects.toThrow(gone);
  });

  test('that is added again after it was removed is the same one, and its removal is not undone', async () => {
    const sensor = await add();
    const { act } = await remove(sensor);
    const again = await add('North wall');
    expect(again).toMatchObject({ id: sensor.id, name: 'North wall', placeId: yard.place.id });
    const [added] = (await yard.query('acts.list', { boardId: null, before: null, limit: 1 })).acts;
    expect(say(added!.line)).toBe('Sensor North wall added.');
    await expect(yard.command('acts.undo', { act })).rejects.toThrow('Sensor North wall was changed later');
    expect(await sensors()).toHaveLength(1);
    await yard.command('acts.undo', { act: added!.id });
    await yard.command('acts.undo', { act });
    expect(await sensors()).toMatchObject([{ id: sensor.id, name: 'Wall', placeId: yard.place.id }]);
  });

  test('of air has a place, and a probe has none', async () => {
    const probe = { name: 'Probe', deviceId: 'p1', kind: 'probe', placeId: null } as const;
    await expect(yard.command('sensors.add', { ...probe, kind: 'air' })).rejects.toThrow('needs a place');
    const placeId = yard.place.id;
    await expect(yard.command('sensors.add', { ...probe, placeId })).rejects.toThrow('at no place');
    const { id } = await yard.command('sensors.add', probe);
    await expect(yard.command('sensors.move', { id, placeId, sinceOn: '2026-05-20' })).rejects.toThrow(
      'at no place',
    );
  });
});
