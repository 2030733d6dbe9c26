import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { find, record, untilPhase, untilTrue } from './link-watch.ts';
import { link, liveMeter, meter, newLink, radio, withMeterInReach } from './meter-in-reach.ts';

withMeterInReach();

/** 1260 hundredths. */
const soundValue = Uint8Array.of(0xec, 0x04);

describe('bytes that are no value', () => {
  test('malformed ones are refused with a sentence each, and the stream goes on', async () => {
    await liveMeter();
    meter.tell({ type: 'rate', hz: 0 });
    const received = record(link);
    for (const bytes of [[0x05], [1, 2, 3], []])
      meter.tell({ type: 'notify', bytes: Uint8Array.from(bytes) });
    meter.tell({ type: 'notify', bytes: soundValue });
    await untilTrue(link, 'the sound one', () => received.at(-1)?.value === 12.6);
    expect(received.slice(-4).map((n) => n.why)).toEqual([
      'The meter sent 1 byte; its value needs 2.',
      'The meter sent 3 bytes; its value has exactly 2.',
      'The meter sent 0 bytes; its value needs 2.',
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
    await untilTrue(link, 'the oversized one', () => received.some((n) => n.why?.includes('600') ?? false));
    expect(received.find((n) => n.why?.includes('600'))).toMatchObject({
      value: null,
      bytes: new Uint8Array(0),
      why: 'The meter sent 600 bytes at once; Bluetooth allows 512. They were dropped.',
    });
    meter.tell({ type: 'att', bytes: oversized.subarray(0, 2) });
    meter.tell({ type: 'notify', bytes: soundValue });
    await untilTrue(link, 'the sound one', () => received.at(-1)?.value === 12.6);
    expect(link.unreadableFrames).toBe(1);
    expect(link.counts).toMatchObject({
      refused: 2,
      lastRefusal: expect.stringMatching(/not valid Bluetooth/),
    });
    expect(link.state.phase).toBe('live');
    expect(link.radioPid).toBe(pid);
  });
});

describe('the adapter', () => {
  test('none, or switched off: a scan says so, and finds the meter once it is there', async () => {
    radio.setAdapter({ adapter: 'off' });
    newLink().startScan();
    // noble calls both "powered off"; the system's list of adapters tells them apart.
    const list = '/sys/class/bluetooth';
    const any = existsSync(list) && readdirSync(list).length > 0;
    const sentence = any ? /Bluetooth is switched off/ : /This computer has no Bluetooth adapter/;
    await untilTrue(link, 'the reason', () => sentence.test(link.adapter.sentence));
    expect(link.adapter.usable).toBe(false);
    expect(link.state.sentence).toMatch(sentence);
    expect(link.state.sentence).toMatch(/Typed readings .* work without it\.$/);
    radio.setAdapter({});
    await find(link, meter.name);
  });

  test('permission refused: connecting says what to do', async () => {
    radio.setAdapter({ adapter: 'refused' });
    newLink().connect('001122334455', null);
    const failed = await untilPhase(link, 'failed');
    expect(failed.sentence).toMatch(/^The system does not let Pintally use Bluetooth\. Allow it/);
  });

  test('pulled out while live: it is said, and the meter comes back with the adapter', async () => {
    await liveMeter();
    radio.setAdapter({ adapter: 'off' });
    expect((await untilPhase(link, 'reconnecting')).sentence).toMatch(/Readings kept so far are safe/);
    radio.setAdapter({});
    await untilPhase(link, 'live');
  });

  test('the library or its native part missing: a sentence that says how to get it', async () => {
    const hook = `import { registerHooks } from 'node:module';
      registerHooks({ resolve(s, c, next) {
        if (s === '@abandonware/noble') throw new Error("Cannot find module '@abandonware/noble'");
        return next(s, c);
      } });`;
    const NODE_OPTIONS = `--import data:text/javascript,${encodeURIComponent(hook)}`;
    newLink({ env: { NODE_OPTIONS } }).startScan();
    expect((await untilPhase(link, 'failed')).sentence).toMatch(
      /npx node electron\/meter\/native-socket\.ts/,
    );
  });
});

describe('the radio process', () => {
  test('killed while live: the app goes on, says so, and the meter comes back', async () => {
    await liveMeter();
    const killed = link.radioPid!;
    process.kill(killed, 'SIGKILL');
    expect((await untilPhase(link, 'reconnecting')).sentence).toMatch(/stopped by a fault of its own/);
    await untilPhase(link, 'live');
    expect(link.radioPid).not.toBe(killed);
    const received = record(link);
    await untilTrue(link, 'values', () => received.length > 3);
  });

  test('killed while scanning: the scan goes on', async () => {
    await find(newLink(), meter.name);
    process.kill(link.radioPid!, 'SIGKILL');
    await untilTrue(link, 'the fault', () => /fault of its own/.test(link.adapter.sentence));
    await find(link, meter.name);
  });

  test('hanging: it is ended and started anew', async () => {
    await liveMeter({ timing: { hangMs: 2500 } });
    const hung = link.radioPid!;
    process.kill(hung, 'SIGSTOP');
    await untilPhase(link, 'reconnecting');
    await untilPhase(link, 'live');
    expect(link.radioPid).not.toBe(hung);
  });

  test('that cannot be started at all: connecting says so', async () => {
    newLink({ radioScript: '/nowhere/radio-process.js' }).connect('001122334455', null);
    expect((await untilPhase(link, 'failed')).sentence).toMatch(/stopped by a fault of its own/);
  });
});
