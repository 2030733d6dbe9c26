import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { find, record, untilPhase, untilTrue } from './link-watch.ts';
import { link, liveMeter, meter, newLink, radio, withMeterInReach } from './meter-in-reach.ts';
import type { GattLibrary } from './meter-server.ts';

withMeterInReach();

/** 1260 hundredths. */
const soundValue = Uint8Array.of(0xec, 0x04);

describe('bytes that are no value', () => {
  test('malformed ones are refused with a reason each, and the stream goes on', async () => {
    await liveMeter();
    meter.tell({ type: 'rate', hz: 0 });
    const received = record(link);
    for (const bytes of [[0x05], [1, 2, 3], []])
      meter.tell({ type: 'notify', bytes: Uint8Array.from(bytes) });
    meter.tell({ type: 'notify', bytes: soundValue });
    await untilTrue(link, 'the sound one', () => received.at(-1)?.value === 12.6);
    expect(received.slice(-4).map((n) => n.problem)).toEqual([
      { code: 'meter.value.bytes-missing', facts: { sent: 1, needed: 2 } },
      { code: 'meter.value.bytes-extra', facts: { sent: 3, needed: 2 } },
      { code: 'meter.value.bytes-missing', facts: { sent: 0, needed: 2 } },
      null,
    ]);
    expect(link.counts.refused).toBe(3);
    expect(link.counts.received).toBe(link.counts.decoded + 3);
    expect(link.state.phase).toBe('live');
  });

  test('an oversized one and a frame cut short are dropped and counted; the link and its process stay', async () => {
    await liveMeter();
    const pid = link.radioPid;
    meter.tell({ type: 'rate', hz: 0 });
    const received = record(link);
    // Opcode 0x1B (notification), the value's handle 0x000C, then the value.
    const oversized = Uint8Array.of(0x1b, 0x0c, 0x00, ...new Uint8Array(600));
    meter.tell({ type: 'att', bytes: oversized });
    const tooLong = () => received.find((n) => n.problem?.code === 'meter.value.bytes-too-many');
    await untilTrue(link, 'the oversized one', () => tooLong() !== undefined);
    expect(tooLong()).toMatchObject({
      value: null,
      bytes: new Uint8Array(0),
      problem: { facts: { sent: 600, allowed: 512 } },
    });
    meter.tell({ type: 'att', bytes: oversized.subarray(0, 2) });
    meter.tell({ type: 'notify', bytes: soundValue });
    await untilTrue(link, 'the sound one', () => received.at(-1)?.value === 12.6);
    expect(link.unreadableFrames).toBe(1);
    expect(link.counts).toMatchObject({
      refused: 2,
      lastRefusal: { code: 'meter.value.frame-invalid' },
    });
    expect(link.state.phase).toBe('live');
    expect(link.radioPid).toBe(pid);
  });
});

describe.each<GattLibrary>(['bleno', 'ble-host'])(
  'a packet in halves, from a meter built on %s',
  (library) => {
    test('is put together; one whose other half never comes takes nothing else with it', async () => {
      const other = await radio.startMeter({ name: `Halves by ${library}`, library });
      const { deviceId } = await find(newLink(), other.name);
      link.connect(deviceId, null);
      await untilPhase(link, 'live');
      other.tell({ type: 'rate', hz: 0 });
      const received = record(link);
      const of = (...value: number[]) => Uint8Array.of(0x1b, 0x0c, 0x00, ...value);
      other.tell({ type: 'att', bytes: of(0xb0, 0x04), how: 'halves' });
      await untilTrue(link, 'both halves', () => received.at(-1)?.value === 12);
      other.tell({ type: 'att', bytes: of(0xb1, 0x04), how: 'first-half' });
      other.tell({ type: 'notify', bytes: soundValue });
      await untilTrue(link, 'the next one', () => received.at(-1)?.value === 12.6);
      expect(received.map(({ value }) => value)).not.toContain(12.01);
      expect(link.state.phase).toBe('live');
      await other.quit();
    });
  },
);

describe('the adapter', () => {
  // noble calls both "powered off"; the system's list of adapters tells them apart.
  const list = '/sys/class/bluetooth';
  const isThereAny = existsSync(list) && readdirSync(list).length > 0;
  const offCode = isThereAny ? 'meter.adapter.off-linux' : 'meter.adapter.missing-hci';

  test('missing or off: a scan shows that, and finds the meter once it is there', async () => {
    radio.setAdapter({ adapter: 'off' });
    newLink().startScan();
    await untilTrue(link, 'the reason', () => link.adapter?.message.code === offCode);
    expect(link.adapter?.usable).toBe(false);
    expect(link.state.message).toEqual({ code: offCode });
    radio.setAdapter({});
    await find(link, meter.name);
  });

  test('permission refused: connecting fails with that reason', async () => {
    radio.setAdapter({ adapter: 'refused' });
    newLink().connect('001122334455', null);
    const failed = await untilPhase(link, 'failed');
    expect(failed.message).toEqual({ code: 'meter.adapter.refused-hci' });
  });

  test('unplugged while live: the link reconnects, and the meter comes back with the adapter', async () => {
    await liveMeter();
    radio.setAdapter({ adapter: 'off' });
    const lost = await untilPhase(link, 'reconnecting');
    expect(lost.message).toEqual({ code: 'meter.state.reconnecting', facts: { trouble: { code: offCode } } });
    radio.setAdapter({});
    await untilPhase(link, 'live');
  });

  test('the library or its native part missing: that is the reason given', async () => {
    const hook = `import { registerHooks } from 'node:module';
      registerHooks({ resolve(s, c, next) {
        if (s === '@abandonware/noble') throw new Error("Cannot find module '@abandonware/noble'");
        return next(s, c);
      } });`;
    const NODE_OPTIONS = `--import data:text/javascript,${encodeURIComponent(hook)}`;
    newLink({ env: { NODE_OPTIONS } }).startScan();
    expect((await untilPhase(link, 'failed')).message).toEqual({ code: 'meter.adapter.module-missing' });
  });
});

describe('the radio process', () => {
  test('killed while live: the app goes on, shows why, and the meter comes back', async () => {
    await liveMeter();
    const killed = link.radioPid!;
    process.kill(killed, 'SIGKILL');
    const why = { code: 'meter.why.bluetooth-stopped' };
    const trouble = { code: 'meter.state.lost', facts: { meterName: meter.name, why } };
    expect((await untilPhase(link, 'reconnecting')).message.facts).toEqual({ trouble });
    await untilPhase(link, 'live');
    expect(link.radioPid).not.toBe(killed);
    const received = record(link);
    await untilTrue(link, 'values', () => received.length > 3);
  });

  test('killed while scanning: the scan goes on', async () => {
    await find(newLink(), meter.name);
    process.kill(link.radioPid!, 'SIGKILL');
    await untilTrue(link, 'the fault', () => link.adapter?.message.code === 'meter.adapter.stopped');
    await find(link, meter.name);
  });

  test('hanging: it is ended and a new one starts', async () => {
    await liveMeter({ timing: { hangMs: 2500 } });
    const hung = link.radioPid!;
    process.kill(hung, 'SIGSTOP');
    await untilPhase(link, 'reconnecting');
    await untilPhase(link, 'live');
    expect(link.radioPid).not.toBe(hung);
  });

  test('that cannot be started at all: connecting fails with that reason', async () => {
    newLink({ radioScript: '/nowhere/radio-process.js' }).connect('001122334455', null);
    const why = { code: 'meter.why.bluetooth-stopped' };
    expect((await untilPhase(link, 'failed')).message).toMatchObject({
      code: 'meter.state.failed',
      facts: { why },
    });
  });
});
