/** Air and sensors of two files of one yard. Values are invented. */
import { beforeEach, describe, expect, test } from 'vitest';
import { instantOfAir } from '../../../electron/app/air/place-air.ts';
import type { Yard } from '../../../electron/store/yard.ts';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import { say } from '../app/a-window.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { elsewhere } from './elsewhere.ts';
import { asAct, forked, merged, recordsOf } from './two-files.ts';

// Real threads on a busy computer.
withYardOfTwo();

const day = '2026-05-30';
const what = (file: string, rest: Side) => ({
  file,
  fileName: 'theirs.sqlite',
  rest,
  others: [],
  work: null,
});
const look = (file: string) => yard.query('exchange.look', { file, work: null });
async function bringIn(file: string, rest: Side): Promise<void> {
  await yard.command('exchange.merge', what(file, rest));
  await yard.query('yard.info', {});
  // Nothing of it is new any more.
  expect(await look(file)).toMatchObject({ added: {}, edited: 0, clashCount: 0 });
}

describe('air that two typed for one day', () => {
  const typeHere = (rh: number) =>
    yard.command('air.type', { placeId: yard.place.id, measuredOn: day, tempC: 20, rh });
  const at = instantOfAir({ day, minutes: null });
  const typeThere = (theirs: Yard, rh: number) =>
    theirs.airLogs.add({ placeId: yard.place.id, sensorId: null, at, tempC: 20, rh });
  const ofPlace = () => yard.query('air.ofPlace', { placeId: yard.place.id });

  test.each<[Side, number]>([
    ['mine', 0.6],
    ['theirs', 0.4],
  ])('is a question, and %s is the air of that day', async (rest, rh) => {
    const file = await elsewhere((theirs) => typeThere(theirs, 0.4));
    await typeHere(0.6);
    const { clashes } = await look(file);
    expect(clashes.map(({ record }) => say(record))).toEqual(['Air in Shop on May 30, 2026']);
    expect(
      clashes[0]!.fields.map(({ mine, theirs }) => [mine, theirs].map((each) => say(each as never))),
    ).toEqual([['20°C, 60% humidity', '20°C, 40% humidity']]);
    await bringIn(file, rest);
    expect(await ofPlace()).toMatchObject({ days: [{ rh, values: 1 }], typed: [{ rh, isOutdated: false }] });
  });

  test('is none where one of the two deleted theirs, or both typed the same', async () => {
    const deleted = await elsewhere((theirs) => {
      typeThere(theirs, 0.4);
      theirs.airLogs.drop(yard.place.id, theirs.airLogs.typedAt(yard.place.id, '')[0]!.id);
    });
    const same = await elsewhere((theirs) => typeThere(theirs, 0.6));
    await typeHere(0.6);
    expect(await look(deleted)).toMatchObject({ clashCount: 0 });
    expect(await look(same)).toMatchObject({ clashCount: 0 });
    await bringIn(same, 'mine');
    expect((await ofPlace()).days).toMatchObject([{ rh: 0.6 }]);
  });
});

describe('a sensor that two added', () => {
  let otherId = 0;
  beforeEach(async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.7 }));
    otherId = (await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air })).id;
  });
  const addThere = (theirs: Yard, placeId: number, since: string) => {
    const sensorId = theirs.airSensors.add({ name: 'Wall', deviceId: 'a1', kind: 'air', closedAt: null });
    theirs.airSensors.addStay({ sensorId, placeId, since });
  };
  const addHere = () =>
    yard.command('sensors.add', { name: 'Wall', deviceId: 'a1', kind: 'air', placeId: yard.place.id });

  test('at one place is one sensor', async () => {
    const file = await elsewhere((theirs) => addThere(theirs, yard.place.id, '2026-05-01T05:00:00.000Z'));
    await addHere();
    expect(await look(file)).toMatchObject({ clashCount: 0 });
    await bringIn(file, 'mine');
    expect(await yard.query('sensors.list', {})).toMatchObject([{ name: 'Wall', placeId: yard.place.id }]);
  });

  test.each<[Side, 'earlier' | 'later']>([
    ['mine', 'earlier'],
    ['mine', 'later'],
    ['theirs', 'earlier'],
    ['theirs', 'later'],
  ])('at two places is a question: %s holds, where they put it there %s', async (rest, when) => {
    const since = when === 'earlier' ? '2026-05-01T05:00:00.000Z' : '2027-05-01T05:00:00.000Z';
    const file = await elsewhere((theirs) => addThere(theirs, otherId, since));
    await addHere();
    const { clashes } = await look(file);
    expect(clashes.map(({ record }) => say(record))).toEqual(['Sensor Wall']);
    expect(clashes[0]!.fields).toMatchObject([{ mine: 'Shop', theirs: 'Shed' }]);
    await bringIn(file, rest);
    const placeId = rest === 'mine' ? yard.place.id : otherId;
    expect(await yard.query('sensors.list', {})).toMatchObject([{ name: 'Wall', placeId }]);
  });
});

test('the same comes of it, whichever file takes the other in', async () => {
  const { mine, theirs } = forked([]);
  const enter = (file: Yard, name: string, rh: number, since: string): void =>
    asAct(file, since, () => {
      const { id: placeId } = file.places.list()[0]!;
      const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh }));
      const own = file.places.add({ name, kind: 'shop', air, airSource: null, airMovement: null });
      const sensorId = file.airSensors.add({ name: 'Wall', deviceId: 'a1', kind: 'air', closedAt: null });
      file.airSensors.addStay({ sensorId, placeId: own, since });
      file.airLogs.add({ placeId, sensorId: null, at: '2026-05-30T17:00:00.000Z', tempC: 20, rh });
    });
  enter(mine, 'Loft', 0.6, '2026-05-01T05:00:00.000Z');
  enter(theirs, 'Barn', 0.4, '2026-05-02T05:00:00.000Z');
  mine.close();
  theirs.close();
  for (const rest of ['mine', 'theirs'] as const) {
    const one = await merged(mine.file, theirs.file, rest);
    const other = await merged(theirs.file, mine.file, rest === 'mine' ? 'theirs' : 'mine');
    expect(one.merged.clashCount).toBe(2);
    expect(recordsOf(other.file)).toEqual(recordsOf(one.file));
  }
});
