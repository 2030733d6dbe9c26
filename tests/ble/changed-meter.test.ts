import { afterEach, expect, test } from 'vitest';
import { record, untilPhase, untilTrue } from './link-watch.ts';
import { link, liveMeter, meter, newLink, withMeterInReach } from './meter-in-reach.ts';

// A real GATT server whose Presentation Format (0x2904; Core Specification, Vol 3 Part G 3.3.3.5) changes.

withMeterInReach();
afterEach(() => meter.tell({ type: 'exponent', exponent: -2 }));

/** 124, low byte first. */
const bytes = Uint8Array.of(0x7c, 0x00);

test('a meter that comes back counting in tenths is to be confirmed, and then read as the person says', async () => {
  await liveMeter();
  expect(link.described?.toConfirm).toBeUndefined();
  const before = link.described?.description;
  meter.tell({ type: 'exponent', exponent: -1 });
  meter.tell({ type: 'drop-link' });
  await untilPhase(link, 'reconnecting');
  await untilPhase(link, 'live');
  expect(link.described?.description?.value.exponent).toBe(-1);
  expect(link.described?.toConfirm?.before).toMatchObject({ value: before?.value });

  const received = record(link);
  meter.tell({ type: 'rate', hz: 0 });
  meter.tell({ type: 'notify', bytes });
  await untilTrue(link, 'the value as the meter describes it now', () => received.at(-1)?.value === 12.4);

  link.describe(link.described!.toConfirm!.before!);
  expect(link.described?.toConfirm).toBeUndefined();
  meter.tell({ type: 'notify', bytes });
  await untilTrue(link, 'the value as it was read before', () => received.at(-1)?.value === 1.24);

  meter.tell({ type: 'drop-link' });
  await untilPhase(link, 'reconnecting');
  await untilPhase(link, 'live');
  expect(link.described).toMatchObject({ description: { value: before!.value } });
  expect(link.described?.toConfirm).toBeUndefined();
});

test('a meter that another Pintally knew is to be confirmed at the first connection', async () => {
  const deviceId = await liveMeter();
  const known = link.described!.description!;
  await link.close();
  meter.tell({ type: 'exponent', exponent: -1 });
  newLink().connect(deviceId, known);
  await untilPhase(link, 'live');
  expect(link.described?.toConfirm?.before?.value.exponent).toBe(-2);
});
