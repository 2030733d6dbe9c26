/**
 * What a test of the link begins with: an emulated radio for its file, a meter in reach that sends ten values a second,
 * and a link that is closed after it. The names below are those of the test under way.
 */
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { BluetoothLink, type BluetoothLinkOptions } from '../../electron/meter/bluetooth-link.ts';
import { type EmulatedMeter, type EmulatedRadio, radioScript, startMeterServer } from './emulated-radio.ts';
import { find, shortTiming, untilPhase } from './link-watch.ts';
import type { MeterServerOptions } from './meter-server.ts';

export let radio: EmulatedRadio;
export let meter: EmulatedMeter;
export let link: BluetoothLink;

export function withMeterInReach(options: Partial<MeterServerOptions> = {}): void {
  beforeAll(async () => {
    ({ radio, meter } = await startMeterServer(options));
  });
  afterAll(() => radio.stop());
  beforeEach(() => {
    radio.setAdapter({});
    meter.tell({ type: 'rate', hz: 10 });
    meter.lift();
    meter.links = 0;
  });
  afterEach(() => link.close());
}

/** A link as the app makes it, but for its shorter waits and for what the test sets otherwise. */
export function newLink({ timing, ...options }: Partial<BluetoothLinkOptions> = {}): BluetoothLink {
  link = new BluetoothLink({
    radioScript,
    env: radio.env,
    timing: { ...shortTiming, ...timing },
    ...options,
  });
  return link;
}

/** Finds the meter and connects to it; resolves with its id when values come in. */
export async function liveMeter(options: Partial<BluetoothLinkOptions> = {}): Promise<string> {
  const { deviceId } = await find(newLink(options), meter.name);
  link.connect(deviceId, null);
  await untilPhase(link, 'live');
  return deviceId;
}
