import { describe, expect, test } from 'vitest';
import { plainDescription } from '../../shared-core/gatt/meter-description.ts';
import { find, record, untilPhase, untilTrue } from './link-watch.ts';
import { link, liveMeter, meter, newLink, radio, withMeterInReach } from './meter-in-reach.ts';
import { type GattLibrary, meterServiceUuid, meterValueUuid } from './meter-server.ts';

describe.each<GattLibrary>(['bleno', 'ble-host'])('a meter built on %s', (library) => {
  withMeterInReach({ library });

  describe('finding and connecting', () => {
    test('a scan lists the meter with its name, signal strength and services', async () => {
      const found = await find(newLink(), meter.name);
      expect(found).toEqual({
        deviceId: expect.stringMatching(/^[0-9a-f]{12}$/),
        name: meter.name,
        rssiDbm: -58,
        serviceUuids: [meterServiceUuid],
      });
      expect(link.state.phase).toBe('scanning');
      link.stopScan();
      expect(link.state).toMatchObject({ phase: 'idle', message: { code: 'meter.state.none' } });
    });

    test('the meter describes itself, and its battery level is read', async () => {
      const deviceId = await liveMeter();
      expect(link.state).toMatchObject({
        deviceId,
        deviceName: meter.name,
        message: { code: 'meter.state.live', facts: { meterName: meter.name } },
      });
      expect(link.described).toMatchObject({
        description: {
          source: { kind: 'sent', serviceUuid: meterServiceUuid, characteristicUuid: meterValueUuid },
          value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
          unit: 'pct',
          origin: 'self-described',
        },
        remarks: [],
      });
      await untilTrue(link, 'battery level', () => link.batteryPct === 76);
    });

    test('the newest order wins when two come at once', async () => {
      const second = await radio.startMeter({ library, name: 'Second meter' });
      const one = await find(newLink(), meter.name);
      const other = await find(link, second.name);
      link.connect(one.deviceId, null);
      link.connect(other.deviceId, null);
      expect((await untilPhase(link, 'live')).deviceName).toBe(second.name);
      expect(meter.links).toBe(0);
      await second.quit();
    });
  });

  describe('notifications', () => {
    test('50 a second for four seconds: every one is received once, in order, and decoded', async () => {
      await liveMeter();
      meter.tell({ type: 'rate', hz: 0 });
      const before = link.counts.received;
      const received = record(link);
      meter.tell({ type: 'stream', count: 200, hz: 50 });
      await meter.until('streamed');
      // Not the 200th to come in: a last tick of the ten a second may be ahead of the stream.
      await untilTrue(link, 'all 200', () => received.at(-1)?.value === 1.99, 3000);

      const stream = received.slice(-200);
      expect(stream.map((n) => n.value)).toEqual(Array.from({ length: 200 }, (_, i) => i / 100));
      expect(received.map((n) => n.sequence)).toEqual(received.map((_, i) => before + 1 + i));
      expect(link.counts).toEqual({
        received: before + received.length,
        decoded: before + received.length,
        noReading: 0,
        other: 0,
        refused: 0,
        lastRefusal: null,
      });
    });

    test('500 a second while the app is busy: none is lost', async () => {
      await liveMeter();
      const received = record(link);
      meter.tell({ type: 'stream', count: 1000, hz: 500 });
      const until = Date.now() + 1500;
      while (Date.now() < until);
      await untilTrue(link, 'all 1000', () => received.at(-1)?.value === 9.99, 8000);
      expect(received.slice(-1000).map((n) => n.value)).toEqual(
        Array.from({ length: 1000 }, (_, i) => i / 100),
      );
    });

    test('pins pushed in: the value drifts and comes to rest at what the wood holds', async () => {
      await liveMeter();
      const received = record(link);
      meter.press(12.6);
      await untilTrue(link, 'pins in', () => (received.at(-1)?.value ?? 0) > 13);
      await untilTrue(
        link,
        'rest',
        () => received.slice(-5).every((n) => Math.abs(n.value! - 12.6) < 0.06),
        5000,
      );
    });
  });

  describe('a dropout', () => {
    test('is shown, and the meter is connected again automatically with nothing counted twice', async () => {
      await liveMeter();
      meter.tell({ type: 'rate', hz: 0 });
      meter.tell({ type: 'drop-link' });
      const lost = await untilPhase(link, 'reconnecting');
      const why = { code: 'meter.why.dropped' };
      const trouble = { code: 'meter.state.lost', facts: { meterName: meter.name, why } };
      expect(lost.message).toEqual({ code: 'meter.state.reconnecting', facts: { trouble } });
      await untilPhase(link, 'live');
      expect(meter.links).toBe(2);

      const received = record(link);
      meter.tell({ type: 'stream', count: 50, hz: 100 });
      await meter.until('streamed');
      await untilTrue(link, 'all 50', () => received.length >= 50, 3000);
      expect(received.map((n) => n.value)).toEqual(Array.from({ length: 50 }, (_, i) => i / 100));
    });

    test('a meter switched off and on again some seconds later is live again', async () => {
      await liveMeter();
      meter.tell({ type: 'advertise', on: false });
      meter.tell({ type: 'drop-link' });
      await untilPhase(link, 'reconnecting');
      await new Promise((resolve) => setTimeout(resolve, 4000));
      expect(link.state.phase).toBe('reconnecting');
      meter.tell({ type: 'advertise', on: true });
      await untilPhase(link, 'live');
    });
  });

  describe('leaving', () => {
    test('disconnect unsubscribes, then ends the link, then shows that', async () => {
      await liveMeter();
      // What the server says of it comes by another way than the values.
      await untilTrue(link, 'the subscription', () => meter.subscribed);
      const order: string[] = [];
      const unsubscribed = meter.until('subscribed').then(({ on }) => order.push(`subscribed ${on}`));
      const down = meter.until('link').then(({ up }) => order.push(`link ${up}`));
      await link.disconnect();
      expect(link.state).toMatchObject({
        phase: 'idle',
        deviceId: null,
        message: { code: 'meter.state.none' },
      });
      await Promise.all([unsubscribed, down]);
      expect(order).toEqual(['subscribed false', 'link false']);
    });

    test('close leaves the meter and ends the radio process; the meter can be connected by another', async () => {
      const deviceId = await liveMeter();
      const pid = link.radioPid!;
      const down = meter.until('link');
      await link.close();
      await down;
      expect(() => process.kill(pid, 0)).toThrow('ESRCH');
      expect(meter.linked).toBe(false);
      newLink().connect(deviceId, null);
      await untilPhase(link, 'live');
    });
  });

  describe('a meter that does not describe itself', () => {
    const source = {
      kind: 'sent',
      serviceUuid: meterServiceUuid,
      characteristicUuid: meterValueUuid,
    } as const;
    const mapped = plainDescription({
      source,
      value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
      unit: 'pct',
      range: { min: 5, max: 60 },
      origin: 'mapped-by-hand',
    });

    test('shows its live bytes, is set up on them, and is read that way the next time', async () => {
      const mute = await radio.startMeter({ library, name: 'Mute meter', selfDescribed: false });
      const { deviceId } = await find(newLink(), mute.name);
      const received = record(link);
      mute.press(18);
      link.connect(deviceId, null);
      const asking = await untilPhase(link, 'needs-description');
      expect(asking.message).toEqual({ code: 'meter.state.needs-setup', facts: { meterName: mute.name } });
      await untilTrue(link, 'bytes', () => received.length > 2);
      expect(received.at(-1)).toMatchObject({
        from: { kind: 'characteristic', characteristicUuid: meterValueUuid },
        value: null,
        problem: { code: 'meter.value.undescribed' },
      });
      expect(received.at(-1)!.bytes).toHaveLength(2);

      link.describe({ ...mapped, source: { ...source, characteristicUuid: '2a6f' } });
      expect(link.described!.remarks).toEqual([
        { code: 'meter.self.not-offered', facts: { meterName: mute.name } },
      ]);
      link.describe(mapped);
      await untilPhase(link, 'live');
      await untilTrue(link, 'a value', () => Math.abs((received.at(-1)?.value ?? 0) - 18) < 1.5);

      await link.disconnect();
      link.connect(deviceId, mapped);
      await untilPhase(link, 'live');
      expect(link.described!.description).toEqual({ ...mapped, identity: expect.any(Object) });
      await mute.quit();
    });
  });
});
