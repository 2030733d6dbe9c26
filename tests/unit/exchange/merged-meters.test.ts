/** Two files of one yard, in each of which meters were met, checked and corrected since. */
import { describe, expect, test } from 'vitest';
import type { Yard } from '../../../electron/store/yard.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { say } from '../app/a-window.ts';
import { handHeld } from '../app/hand-held-meter.ts';
import { aimedSpot, type as typeValue } from '../app/in-round.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { elsewhere } from './elsewhere.ts';

// Real threads on a busy computer.
withYardOfTwo({ forecastAfterMs: 600_000 });

async function bringIn(file: string) {
  const given = { file, fileName: 'theirs.sqlite', others: [], work: null };
  const merged = await yard.command('exchange.merge', { ...given, rest: 'theirs' });
  await yard.query('yard.info', {});
  return merged;
}
const block = { name: 'Block', expected: 12, unit: 'pct', tolerance: 0.5, checkEvery: 'day' } as const;
const tested = async () =>
  (await yard.query('meterChecks.list', {})).map(({ meterName, checks, block: { name } }) => ({
    meterName,
    name,
    checks: checks.map(({ shown, excluded }) => ({ shown, isExcluded: excluded !== null })),
  }));
const meters = async () => (await yard.query('meters.list', {})).map(({ name }) => name);

/** A check of somebody else, an hour from now. */
function checkIn(theirs: Yard, meterId: number, name: string, shown: number): number {
  const blockId = theirs.meterChecks.addBlock({ ...block, name, meterId });
  const at = new Date(Date.parse(yard.now()) + 3_600_000).toISOString();
  return theirs.meterChecks.addCheck({ blockId, right: 12, tolerance: 0.5, shown, tempC: null, at }, meterId);
}

test.each(['mine', 'theirs'] as const)(
  'a check corrects nothing once the other yard excluded it (%s)',
  async (who) => {
    const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
    const { id: blockId } = await yard.command('testBlocks.add', { ...block, meterId });
    const { id: checkId } = await yard.command('meterChecks.add', { blockId, shown: 13, tempC: null });
    yard.later(60_000);
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
    await typeValue(roundId, 14.2);
    const file = await elsewhere((theirs) => {
      if (who === 'mine') {
        theirs.meterChecks.excludeCheck(checkId, { code: 'not-on-block' }, yard.now());
        return;
      }
      theirs.meterChecks.correctBy(checkId, true, yard.now());
      theirs.meters.setOff(meterId, 1, yard.now());
      for (const { id } of theirs.readings.takenOn(yard.boards[0]!.id, roundId))
        theirs.amendments.amendReading(id, 'meterProfileId', theirs.meters.profileIdOf(meterId), yard.now());
    });
    if (who === 'mine') await yard.command('meterChecks.correct', { checkId });
    else await yard.command('meterChecks.exclude', { checkId, why: { code: 'not-on-block' } });
    await bringIn(file);
    const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
    expect(reading!.corrected.steps.map(({ step }) => step)).not.toContain('meter-check');
    const next = await yard.command('meterChecks.add', { blockId, shown: 12, tempC: null });
    expect(next).toMatchObject({ state: 'right', correctedBy: 0 });
  },
);

test('blocks, checks, corrections and exclusions of both come in once, and the readings are corrected', async () => {
  const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
  const file = await elsewhere((theirs) => {
    const checkId = checkIn(theirs, meterId, 'Their block', 16);
    theirs.meterChecks.excludeCheck(checkId, { code: 'not-on-block' }, yard.now());
  });
  const { id: blockId } = await yard.command('testBlocks.add', { ...block, meterId });
  const { id: checkId } = await yard.command('meterChecks.add', { blockId, shown: 13, tempC: null });
  yard.later(60_000);
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
  await typeValue(roundId, 14.2);
  await yard.command('meterChecks.correct', { checkId });
  const both = [
    { meterName: 'Old one', name: 'Block', checks: [{ shown: 13, isExcluded: false }] },
    { meterName: 'Old one', name: 'Their block', checks: [{ shown: 16, isExcluded: true }] },
  ];
  await bringIn(file);
  expect((await tested()).toSorted((a, b) => a.name.localeCompare(b.name))).toEqual(both);
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  expect(reading!.corrected.steps[0]).toMatchObject({ step: 'meter-check', pct: expect.closeTo(13.2, 9) });
  yard.later(2 * 3_600_000);
  expect(await yard.query('meterChecks.ofRound', { roundId })).toEqual([]);
  await expect(bringIn(file)).rejects.toThrow();
  expect(await tested()).toHaveLength(2);
});

test('a correction of the other file is in use here once it came in', async () => {
  const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
  const file = await elsewhere((theirs) => {
    checkIn(theirs, meterId, 'Their block', 13);
    theirs.meters.setOff(meterId, 1, yard.now());
  });
  await yard.command('meters.edit', { id: meterId, basedOn: 1, changed: { name: 'Older one' } });
  await bringIn(file);
  yard.later(2 * 3_600_000);
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
  await typeValue(roundId, 14.2);
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  expect(reading!.corrected.steps[0]).toMatchObject({ step: 'meter-check', pct: expect.closeTo(13.2, 9) });
});

test('a device that both met since is one meter', async () => {
  const met = { kind: 'bluetooth', deviceId: 'hand', name: 'Hand-held', description: handHeld } as const;
  const file = await elsewhere((theirs) => {
    const { id } = theirs.meters.put(met, yard.now());
    checkIn(theirs, id, 'Their block', 13);
  });
  await yard.command('meter.scan', {});
  const { meterId } = await yard.command('meter.connect', { deviceId: 'hand' });
  await yard.command('testBlocks.add', { ...block, meterId: meterId! });
  await yard.command('meter.disconnect', {});
  await bringIn(file);
  expect(await meters()).toEqual(['Hand-held']);
  expect((await tested()).map(({ name }) => name).toSorted()).toEqual(['Block', 'Their block']);
});

test('a meter at an address that another gave up is not taken for that one', async () => {
  const at = (name: string) =>
    ({ kind: 'bluetooth', deviceId: 'hand', name, description: handHeld }) as const;
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  await yard.command('meter.disconnect', {});
  const another = (of: Yard) => {
    of.meters.freeAddress('bluetooth', 'hand');
    return of.meters.put(at('Yard meter'), yard.now()).id;
  };
  const first = await elsewhere((theirs) => checkIn(theirs, another(theirs), 'Their block', 13));
  const second = await elsewhere((theirs) => checkIn(theirs, another(theirs), 'Another block', 12));
  await bringIn(first);
  await bringIn(second);
  expect(await meters()).toEqual(['Hand-held', 'Yard meter']);
  expect((await tested()).map(({ meterName }) => meterName)).toEqual(['Yard meter', 'Yard meter']);
});

test('a meter that was recognized here and met anew there is one, with what was checked there', async () => {
  const met = {
    kind: 'bluetooth',
    deviceId: 'c0ffee00beef',
    name: 'Hand-held',
    description: handHeld,
  } as const;
  await yard.command('meter.scan', {});
  const { meterId } = await yard.command('meter.connect', { deviceId: 'hand' });
  await yard.command('meter.disconnect', {});
  const file = await elsewhere((theirs) =>
    checkIn(theirs, theirs.meters.put(met, yard.now()).id, 'Their block', 13),
  );
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId: met.deviceId, name: met.name, rssiDbm: -60, serviceUuids: [] });
  await yard.command('meter.connect', { deviceId: met.deviceId });
  await yard.command('meters.recognize', { meterId: meterId!, deviceId: met.deviceId });
  await yard.command('meter.disconnect', {});
  await bringIn(file);
  expect(await meters()).toEqual(['Hand-held']);
  expect(await tested()).toMatchObject([{ meterName: 'Hand-held', name: 'Their block' }]);
});

test('a meter that one no longer owns and the other left alone leaves the lists of both', async () => {
  const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
  const file = await elsewhere((theirs) => {
    theirs.meters.edit({ id: meterId, basedOn: 1, changed: { closedAt: yard.now() } });
  });
  await bringIn(file);
  expect(await meters()).toEqual([]);
  expect((await yard.query('meters.closed', {})).map(({ name }) => name)).toEqual(['Old one']);
});

describe('a meter that one no longer owns, and that the other used since, is asked about:', () => {
  const kept = ['Meter Old one', 'Not deleted.'];
  const removed = 'Removed on Jun 1, 2026.';
  /** What each is said to have done with it, where it was removed there and used here. */
  async function askedAfter(use: (meterId: number, blockId: number) => Promise<void>) {
    const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
    const { id: blockId } = await yard.command('testBlocks.add', { ...block, meterId });
    const file = await elsewhere((theirs) => {
      theirs.meters.edit({ id: meterId, basedOn: 1, changed: { closedAt: yard.now() } });
    });
    await use(meterId, blockId);
    const { clashes } = await yard.query('exchange.look', { file, work: null });
    return {
      file,
      asked: clashes.map(({ record, mine, theirs }) => [record, ...mine, ...theirs].map((each) => say(each))),
    };
  }

  test('checked', async () => {
    const { asked, file } = await askedAfter(async (_, blockId) => {
      await yard.command('meterChecks.add', { blockId, shown: 13, tempC: null });
    });
    expect(asked).toEqual([[...kept, 'Since the last common change: 1 other record', removed]]);
    await yard.command('exchange.merge', {
      file,
      fileName: 'theirs.sqlite',
      others: [],
      rest: 'mine',
      work: null,
    });
    await yard.query('yard.info', {});
    expect(await meters()).toEqual(['Old one']);
    expect(await tested()).toMatchObject([{ checks: [{ shown: 13 }] }]);
  });

  test('read with', async () => {
    const { asked, file } = await askedAfter(async (meterId) => {
      const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
      await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 12.4, meterId });
    });
    expect(asked).toEqual([[...kept, 'Since the last common change: 1 reading', removed]]);
    await bringIn(file);
    expect(await meters()).toEqual([]);
  });

  test('removed here, and used there', async () => {
    const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
    const file = await elsewhere((theirs) => {
      checkIn(theirs, meterId, 'Their block', 13);
    });
    await yard.command('meters.close', { meterId });
    await bringIn(file);
    expect(await meters()).toEqual(['Old one']);
    expect(await tested()).toMatchObject([{ name: 'Their block' }]);
  });
});
