import { describe, expect, test } from 'vitest';
import type { EmulatedMeter } from './emulated-radio.ts';
import { describing, find, record, untilPhase, untilTrue } from './link-watch.ts';
import { link, newLink, radio, withMeterInReach } from './meter-in-reach.ts';
import {
  advertCompanyId,
  advertServiceUuid,
  type GattLibrary,
  type MeterServerOptions,
  meterServiceUuid,
  meterStartUuid,
  meterValueUuid,
} from './meter-server.ts';

// Every way in which a meter gives its values, over two GATT servers that share no code.

const ofMeter = { serviceUuid: meterServiceUuid, characteristicUuid: meterValueUuid };

/** A meter of this kind beside the usual one, which nobody has described. */
async function withUnknown(
  options: Partial<MeterServerOptions>,
  walk: (meter: EmulatedMeter, deviceId: string) => Promise<void>,
): Promise<void> {
  const meter = await radio.startMeter({
    name: 'Unknown',
    selfDescribed: false,
    batteryPct: null,
    ...options,
  });
  try {
    meter.press(14);
    const { deviceId } = await find(newLink(), meter.name);
    await walk(meter, deviceId);
  } finally {
    await link.close();
    await meter.quit();
  }
}
const nearly14 = (value: number | null | undefined) => Math.abs((value ?? 0) - 14) < 0.1;

describe.each<GattLibrary>(['bleno', 'ble-host'])('a meter built on %s', (library) => {
  withMeterInReach({ library });

  test('that wants an answer to each value is heard, value after value', () =>
    withUnknown({ library, gives: 'indicate' }, async (_, deviceId) => {
      const received = record(link);
      link.connect(deviceId, null);
      await untilPhase(link, 'needs-description');
      await untilTrue(link, 'bytes', () => received.length > 2);
      link.describe(describing({ kind: 'sent', ...ofMeter }));
      await untilPhase(link, 'live');
      await untilTrue(link, 'values', () => nearly14(received.at(-1)?.value));
    }));

  test('that is only read shows its bytes, and is read as often as described', () =>
    withUnknown({ library, gives: 'read' }, async (_, deviceId) => {
      const received = record(link);
      link.connect(deviceId, null);
      await untilPhase(link, 'needs-description');
      await untilTrue(link, 'bytes', () => received.length > 1);
      expect(received[0]!.from).toEqual({ kind: 'characteristic', ...ofMeter });
      link.describe(describing({ kind: 'read', ...ofMeter, everyMs: 200 }));
      await untilPhase(link, 'live');
      await untilTrue(link, 'values', () => nearly14(received.at(-1)?.value));
      const { receivedAtMs } = received.at(-1)!;
      const read = received.length;
      await untilTrue(link, 'five more', () => received.length >= read + 5);
      // Never more often than asked for, however fast the machine.
      expect(received.at(-1)!.receivedAtMs - receivedAtMs).toBeGreaterThanOrEqual(5 * 200);
    }));

  test('that begins at a write sends nothing before, keeps its link where that is refused, and begins each time', () =>
    withUnknown({ library, startHex: '0105' }, async (meter, deviceId) => {
      const received = record(link);
      link.connect(deviceId, null);
      await untilPhase(link, 'needs-description');
      const start = { serviceUuid: meterServiceUuid, characteristicUuid: meterStartUuid, withResponse: true };
      link.tryStart({ ...start, bytesHex: 'ffff' });
      await untilTrue(link, 'that it is refused', () => link.described?.remarks.length === 1);
      expect(link.described!.remarks[0]).toEqual({
        code: 'meter.self.start-refused',
        facts: { meterName: meter.name },
      });
      expect(received).toHaveLength(0);
      link.tryStart({ ...start, bytesHex: '0105' });
      await untilTrue(link, 'bytes', () => received.length > 2);
      expect(link.described!.remarks).toEqual([]);

      const description = {
        ...describing({ kind: 'sent', ...ofMeter }),
        start: { ...start, bytesHex: '0105' },
      };
      link.describe(description);
      await untilPhase(link, 'live');
      // To be described again, it sends on, and nothing of it is a value.
      link.undescribe();
      await untilPhase(link, 'needs-description');
      await untilTrue(link, 'no value', () => received.at(-1)!.value === null);
      link.describe(description);
      await untilPhase(link, 'live');
      meter.tell({ type: 'drop-link' });
      await untilPhase(link, 'reconnecting');
      await untilPhase(link, 'live');
      const before = received.length;
      await untilTrue(link, 'values again', () => received.length > before + 2);
    }));

  test('that can be connected to but advertises its value is listened to, and never connected', () =>
    withUnknown({ library, gives: 'manufacturer-data' }, async (meter, deviceId) => {
      const received = record(link);
      link.listen(deviceId);
      const asking = await untilPhase(link, 'needs-description');
      expect(asking.message.code).toBe('meter.state.heard-needs-setup');
      await untilTrue(link, 'adverts', () => received.length > 2);
      const from = { kind: 'manufacturer-data', companyId: advertCompanyId } as const;
      expect(received.at(-1)).toMatchObject({ from, bytes: { length: 2 }, value: null });
      link.describe(describing({ kind: 'sent', ...ofMeter }));
      expect(link.described!.remarks.map(({ code }) => code)).toEqual(['meter.self.not-offered']);

      link.describe(describing(from));
      await untilPhase(link, 'live');
      await untilTrue(link, 'values', () => nearly14(received.at(-1)?.value));
      meter.tell({ type: 'advertise', on: false });
      const lost = await untilPhase(link, 'reconnecting');
      expect(lost.message).toMatchObject({ facts: { trouble: { code: 'meter.state.unheard' } } });
      meter.tell({ type: 'advertise', on: true });
      await untilPhase(link, 'live');
      expect(meter.links).toBe(0);
    }));
});

describe('a meter that lets nobody connect', () => {
  withMeterInReach();

  test('is listened to by itself, and again when it is known', () =>
    withUnknown({ library: 'ble-host', gives: 'service-data', isConnectable: false }, async (_, deviceId) => {
      const received = record(link);
      link.connect(deviceId, null);
      await untilPhase(link, 'needs-description');
      await untilTrue(link, 'adverts', () => received.length > 2);
      const from = { kind: 'service-data', serviceUuid: advertServiceUuid } as const;
      expect(received.at(-1)!.from).toEqual(from);
      await link.disconnect();
      link.connect(deviceId, describing(from));
      expect((await untilPhase(link, 'live')).message.code).toBe('meter.state.heard');
      await untilTrue(link, 'values', () => nearly14(received.at(-1)?.value));
    }));
});
