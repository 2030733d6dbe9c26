import { expect, test } from 'vitest';
import { NO_FIELDS } from '../../../shared-core/gatt/meter-description.ts';
import { openWindow } from './a-window.ts';
import { handHeld } from './hand-held-meter.ts';
import { aimedSpot, saveLive } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** A meter of our own invention: hundredths of a percent, then a byte whose lowest bit is set while it holds. */
const withButton = {
  ...handHeld,
  origin: 'mapped-by-hand' as const,
  fields: {
    ...NO_FIELDS,
    hold: {
      layout: {
        kind: 'bits' as const,
        firstBit: 16,
        bits: 1,
        signed: false,
        exponent: 0,
        scale: 1,
        offset: 0,
      },
      equals: 1,
    },
  },
};

function send(pct: number, isHeld: boolean, times = 1): void {
  for (let n = 0; n < times; n++)
    yard.meter.sendRubbish(Uint8Array.of((pct * 100) & 0xff, (pct * 100) >> 8, isHeld ? 1 : 0));
}
const presses = () => yard.heard('meter.pressed').length;

/** In a round, with the setting, and the meter connected. */
async function inRound(saveWhenSettled: boolean): Promise<number> {
  await yard.command('settings.edit', { saveWhenSettled });
  const { id } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  yard.meter.describe(withButton);
  return id;
}
const readings = async (roundId: number) => {
  const { probed } = await yard.query('rounds.get', { roundId });
  return (probed?.assessment?.readings ?? []).filter(({ excluded }) => excluded === null);
};

test('a button held down counts as one press', async () => {
  await inRound(false);
  send(12.6, false, 3);
  send(12.6, true, 20);
  expect(presses()).toBe(1);
  send(12.6, false, 15);
  send(12.6, true);
  expect(presses()).toBe(2);
});

test('a worn button that lets go for a packet is pressed once, until the pins were out', async () => {
  await inRound(false);
  send(0, false, 10);
  send(12.6, false, 3);
  for (let n = 0; n < 20; n++) send(12.6, n % 2 === 0);
  expect(presses()).toBe(1);
  send(0, false, 5);
  send(12.8, false, 3);
  send(12.8, true);
  expect(presses()).toBe(2);
});

test('a meter that says it holds and sends another value is read as it sends', async () => {
  const roundId = await inRound(false);
  send(0, false, 10);
  send(12.6, false, 30);
  send(12.6, true, 5);
  await saveLive(roundId);
  send(0, true, 10);
  await expect(saveLive(roundId)).rejects.toThrow();
  send(17.7, true, 30);
  await saveLive(roundId);
  expect(await readings(roundId)).toMatchObject([{ raw: 12.6 }, { raw: 17.7 }]);
  const { remarks } = await yard.query('meter.state', {});
  expect(remarks.map(({ code }) => code)).toEqual(['meter.self.holds-nothing']);
});

test('one damaged packet amid what a meter holds is no other push', async () => {
  const roundId = await inRound(false);
  send(12.6, false, 30);
  send(12.6, true, 5);
  await saveLive(roundId);
  send(0, true);
  send(12.6, true, 30);
  await expect(saveLive(roundId)).rejects.toThrow('WAL-01');
  expect((await yard.query('meter.state', {})).remarks).toEqual([]);
});

test('a button already down at connecting is no press', async () => {
  await inRound(false);
  send(12.6, true, 3);
  expect(presses()).toBe(0);
  send(12.6, false);
  yard.meter.state = { ...yard.meter.state, phase: 'reconnecting' };
  yard.meter.emit('state', yard.meter.state);
  send(12.6, true);
  expect(presses()).toBe(0);
});

test('what is saved before it settled is questionable, as by a key', async () => {
  const roundId = await inRound(true);
  send(0, false, 10);
  send(12.6, false);
  send(12.8, true);
  await saveLive(roundId);
  const [reading, ...others] = await readings(roundId);
  expect(others).toEqual([]);
  expect(reading).toMatchObject({ raw: 12.8, how: 'at-once', settled: false });
  expect(reading?.suspicions.map(({ rule }) => rule)).toContain('not-settled');
});

test('a held value that stays the same does not settle, and nothing is saved by itself', async () => {
  const roundId = await inRound(true);
  send(12.6, true, 100);
  expect(await readings(roundId)).toEqual([]);
  expect(yard.heard('round.notSaved')).toEqual([]);
});

test('pressed again, the same number is another reading at the next spot', async () => {
  const roundId = await inRound(false);
  send(12.6, false, 30);
  send(12.6, true);
  await saveLive(roundId);
  const second = await aimedSpot(roundId);
  send(12.6, true, 30);
  send(12.6, false, 30);
  send(12.6, true);
  await saveLive(roundId);
  expect(await readings(roundId)).toMatchObject([{ raw: 12.6 }, { raw: 12.6, spotIndex: second.spotIndex }]);
});

test('values that come between the press and its reading do not make the next press the same one', async () => {
  const roundId = await inRound(false);
  send(12.6, false, 30);
  send(12.6, true, 5);
  await saveLive(roundId);
  send(12.6, true, 25);
  send(12.6, false, 30);
  send(12.6, true);
  await saveLive(roundId);
  expect(await readings(roundId)).toHaveLength(2);
});

test('a button pressed twice, with nobody sure of the first, saves the same pins once', async () => {
  const roundId = await inRound(false);
  send(0, false, 10);
  send(12.6, false, 30);
  send(12.6, true, 3);
  await saveLive(roundId);
  for (let n = 0; n < 3; n++) {
    send(12.6, false, 15);
    send(12.6, true, 3);
    await expect(saveLive(roundId)).rejects.toThrow('WAL-01');
  }
  expect(await readings(roundId)).toHaveLength(1);
  send(12.6, false, 15);
  send(0, false, 10);
  send(13.1, false, 30);
  send(13.1, true, 3);
  await saveLive(roundId);
  expect(await readings(roundId)).toMatchObject([{ raw: 12.6 }, { raw: 13.1 }]);
});

test('after a reading that saved itself, a press is not another one', async () => {
  const roundId = await inRound(true);
  send(0, false, 10);
  send(12.6, false, 60);
  await expect.poll(() => readings(roundId)).toHaveLength(1);
  send(12.6, true);
  expect(presses()).toBe(1);
  await expect(saveLive(roundId)).rejects.toThrow('WAL-01');
});

test('only the window that holds the meter hears of it', async () => {
  await inRound(false);
  const other = openWindow(yard.app, 'window-2');
  send(12.6, false);
  send(12.6, true);
  expect(other.heard('meter.pressed')).toEqual([]);
  expect(presses()).toBe(1);
});
