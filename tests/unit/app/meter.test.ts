import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

test('meters heard are listed the strongest first, those whose strength the adapter does not tell last', async () => {
  await yard.command('meter.scan', {});
  for (const [deviceId, rssiDbm] of [
    ['untold', null],
    ['far', -90],
    ['near', -40],
  ] as const) {
    yard.meter.emit('found', { deviceId, name: deviceId, rssiDbm, serviceUuids: [] });
  }
  const { devices } = await yard.query('meter.state', {});
  expect(devices.map(({ deviceId, rssiDbm }) => [deviceId, rssiDbm])).toEqual([
    ['near', -40],
    ['hand', -50],
    ['far', -90],
    ['untold', null],
  ]);
});

describe('another basis or range for the scale of a meter', () => {
  /** Two boards read alike, the first with the meter and the second by eye; what is found of them. */
  async function twoBoardsRead() {
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    yard.meter.lift();
    yard.meter.show(11.8, 4);
    await aimAt(roundId, 1);
    await type(roundId, 11.8);
    await yard.command('rounds.finish', { roundId });
    return averages();
  }
  async function found() {
    const { rows } = await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 10 });
    return rows.map((row) => row.latest!);
  }
  const averages = async () => (await found()).map(({ averagePct }) => averagePct);
  const reasons = async () => (await found()).map(({ reason }) => reason);
  async function described() {
    const { description } = await yard.query('meter.state', {});
    return description!;
  }

  test('judges the boards again that were read with it, and only those', async () => {
    const [withMeter, byEye] = await twoBoardsRead();
    // Douglas-fir is what the scale is taken for where it does not say; walnut's own curve is another
    // (FPL-GTR-6, 1988, Table 1).
    await yard.command('meter.describe', {
      ...(await described()),
      basis: { curveId: 'walnut-black', tempC: 20 },
    });
    await expect.poll(averages, { timeout: 9000 }).toEqual([expect.not.closeTo(withMeter!, 1), byEye]);
  });

  test('a range whose end a reading is at makes that reading questionable', async () => {
    await twoBoardsRead();
    const [, byEye] = await reasons();
    await yard.command('meter.describe', { ...(await described()), range: { min: 11.8, max: 60 } });
    await expect
      .poll(reasons, { timeout: 9000 })
      .toEqual([expect.objectContaining({ code: 'call.all-questionable' }), byEye]);
  });

  test('the same description again judges nothing', async () => {
    await twoBoardsRead();
    const other = new Database(join(yard.dataDir, 'yard.sqlite'));
    other.exec("UPDATE finding SET record = json_set(record, '$.reason.code', 'call.none-left')");
    other.close();
    await yard.command('meter.describe', await described());
    await new Promise((resolve) => setTimeout(resolve, 300));
    const asItWas = expect.objectContaining({ code: 'call.none-left' });
    expect(await reasons()).toEqual([asItWas, asItWas]);
  });
});
