import { beforeEach, expect, test } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { openWindow } from './a-window.ts';
import { aimedSpot, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

let roundId: number;
let meterId: number;

const setToWalnut = {
  ...unknownProfile,
  scale: { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 },
  compensatesTemp: true,
} as const;

/** A meter that is set to walnut, was found off by a point on a block of 12%, and is out of reach in mid-push. */
beforeEach(async () => {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  const meter = (await yard.query('meters.list', {}))[0]!;
  meterId = meter.id;
  await yard.command('meters.edit', {
    id: meterId,
    basedOn: meter.version,
    changed: { profile: setToWalnut },
  });
  const block = await yard.command('testBlocks.add', {
    meterId,
    name: 'Block',
    expected: 12,
    unit: 'pct',
    tolerance: 0.5,
    checkEvery: 'never',
  });
  yard.later(60_000);
  const { id: checkId } = await yard.command('meterChecks.add', {
    blockId: block.id,
    shown: 13,
    tempC: null,
  });
  await yard.command('meterChecks.correct', { checkId });
  yard.later(60_000);
  roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 })).id;
  yard.meter.lift();
  yard.meter.show(14, 4.5);
  yard.meter.lift();
  yard.meter.show(14, 0.5);
  yard.meter.state = { ...yard.meter.state, phase: 'reconnecting' };
  yard.meter.emit('state', yard.meter.state);
});

const readings = async () => (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

test('a value typed while the meter is lost comes to what the meter would have saved', async () => {
  await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 14, meterId });
  const [live, typed] = await readings();
  expect(typed).toMatchObject({ how: 'typed', meterId });
  expect(typed?.corrected).toEqual(live?.corrected);
  expect(typed?.corrected.mcPct).toBeCloseTo(13, 6);
});

test('it is of that meter also where a window does not know the meters yet', async () => {
  await type(roundId, 14);
  expect((await readings())[1]).toMatchObject({ how: 'typed', meterId });
});

test('what another window types is not of it', async () => {
  const other = openWindow(yard.app, 'window-2');
  await other.command('rounds.open', { roundId });
  await type(roundId, 14, other);
  expect((await readings())[1]).toMatchObject({ how: 'typed', meterId: null });
});

test('a round says which meter it was last read with', async () => {
  expect((await yard.query('rounds.get', { roundId })).lastMeterId).toBe(meterId);
});
