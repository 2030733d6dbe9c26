import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { BluetoothLink } from '../../../electron/meter/bluetooth-link.ts';
import type { LinkState } from '../../../electron/meter/meter-link.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';

let link: BluetoothLink;
afterEach(() => link.close());

function linkTo(scenario: string): BluetoothLink {
  link = new BluetoothLink({
    radioScript: fileURLToPath(new URL('fake-radio.ts', import.meta.url)),
    env: { FAKE_RADIO: scenario },
  });
  return link;
}

/** Waits for a state of this phase and, where one is given, with this message. */
async function untilState(phase: LinkState['phase'], code?: Code): Promise<void> {
  while (link.state.phase !== phase || (code !== undefined && link.state.message.code !== code)) {
    await once(link, 'state');
  }
}

describe('messages of the radio process are believed only as far as they make sense', () => {
  test('invalid messages are dropped and logged, and those after them are heard', async () => {
    linkTo('garbage').startScan();
    const [heard] = await once(link, 'found');
    expect(heard).toEqual({
      deviceId: 'aabbccddeeff',
      name: 'Fake',
      rssiDbm: null,
      serviceUuids: [expect.any(String)],
    });
    expect(link.radioLog).toMatch(/unreadable: /);
    expect(link.counts.received).toBe(0);
  });

  test('values of an earlier attempt are not taken for the present meter’s, and those dropped on the way are counted', async () => {
    linkTo('overrun').connect('aabbccddeeff', null);
    const values: (number | null)[] = [];
    const sequences: number[] = [];
    link.on('notification', ({ value, sequence }) => {
      values.push(value);
      sequences.push(sequence);
    });
    while (values.length < 3) await once(link, 'notification');
    expect(values).toEqual([12.6, 12.61, 12.62]);
    expect(sequences).toEqual([1, 2, 8]);
    expect(link.counts).toEqual({
      received: 8,
      decoded: 3,
      noReading: 0,
      other: 0,
      refused: 5,
      lastRefusal: { code: 'meter.value.too-fast', facts: { missed: 5 } },
    });
  });
});

describe('the adapter', () => {
  test('a scan begun with Bluetooth off shows that, and goes on when it is turned on', async () => {
    linkTo('off-then-on').startScan();
    await untilState('scanning', 'meter.adapter.off-linux');
    await untilState('scanning', 'meter.state.looking');
    expect(link.adapter).toEqual({ usable: true, message: { code: 'meter.adapter.on' }, way: 'bluez' });
  });

  test('connecting with Bluetooth off fails with that reason', async () => {
    linkTo('off-then-on').connect('aabbccddeeff', null);
    await untilState('failed', 'meter.adapter.off-linux');
    expect(link.state.deviceId).toBe('aabbccddeeff');
  });
});

describe('orders', () => {
  test('a closed link does nothing any more', async () => {
    linkTo('overrun').connect('aabbccddeeff', null);
    await untilState('live');
    await link.close();
    link.connect('aabbccddeeff', null);
    link.startScan();
    expect(link.state.phase).toBe('idle');
    expect(link.radioPid).toBeNull();
  });

  test('what was known of one meter is forgotten with it', async () => {
    linkTo('overrun').connect('aabbccddeeff', null);
    await untilState('live');
    expect(link.described?.description?.unit).toBe('pct');
    await link.disconnect();
    expect(link.described).toBeNull();
    expect(link.counts).toMatchObject({ received: 0, decoded: 0, refused: 0, lastRefusal: null });
  });
});
