import { expect, test } from 'vitest';
import { NO_FIELDS } from '../../../shared-core/gatt/meter-description.ts';
import { handHeld } from './hand-held-meter.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const byte = (byteOffset: number) => ({
  kind: 'number' as const,
  format: 4,
  byteOffset,
  exponent: 0,
  scale: 1,
  offset: 0,
});
/** Of our own invention: hundredths of a percent, the kind of the packet, the battery, and what it is set to. */
const described = {
  ...handHeld,
  origin: 'mapped-by-hand' as const,
  match: { layout: byte(2), equals: 1 },
  fields: { ...NO_FIELDS, batteryPct: byte(3), tempC: byte(4), species: { at: byte(5), expected: '7' } },
};

test('what comes with the value is shown, and a packet of another kind is counted and says nothing of the pins', async () => {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  yard.meter.describe(described);
  for (let n = 0; n < 40; n++) {
    yard.meter.sendRubbish(Uint8Array.of(0xec, 0x04, 1, 64, 18, 12));
    yard.meter.sendRubbish(Uint8Array.of(0, 0, 2, 99, 99, 99));
  }
  expect(await yard.query('meter.state', {})).toMatchObject({
    batteryPct: 64,
    speciesSetting: '12',
    counts: { received: 80, decoded: 40, other: 40, refused: 0 },
  });
  await expect
    .poll(() => yard.heard('meter.live').at(-1))
    .toMatchObject({ raw: 12.6, phase: 'settled', tempC: 18 });
});
