/**
 * What 66,000 made-up devices within radio reach take of memory, as they are heard and as noble would remember them.
 * Run with --expose-gc.
 */
import { HeardDevices } from '../../electron/meter/heard-devices.ts';
import { trimNoble } from '../../electron/meter/radio/noble-memory.ts';

const FLOOD = 66_000;
/** As often as `sendFound` trims it, at 1,000 new devices a second. */
const TRIM_EVERY = 250;

const advertisement = () => ({
  localName: 'x'.repeat(29),
  manufacturerData: Buffer.alloc(64),
  serviceUuids: ['180f'],
});

function inUseBytes(): number {
  globalThis.gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

function megabytesOf(work: () => object): string {
  const before = inUseBytes();
  const remembered = work();
  const megabytes = (inUseBytes() - before) / 1e6;
  return `${megabytes.toFixed(1)} MB in ${Object.keys(remembered).length} maps`;
}

function heardByNoble(isTrimmed: boolean) {
  const noble = {
    _peripherals: {} as Record<string, unknown>,
    _services: {},
    _characteristics: {},
    _descriptors: {},
  };
  const heard = new HeardDevices<{ rssiDbm: number; atMs: number }>();
  for (let number = 0; number < FLOOD; number++) {
    const id = number.toString(16).padStart(12, '0');
    noble._peripherals[id] = { id, advertisement: advertisement() };
    heard.hear(id, { rssiDbm: -80, atMs: number });
    if (isTrimmed && number % TRIM_EVERY === 0) trimNoble(noble, (each) => heard.has(each));
  }
  return noble;
}

console.log(`${FLOOD} devices, bounded: ${megabytesOf(() => heardByNoble(true))}`);
console.log(`${FLOOD} devices, as noble remembers them: ${megabytesOf(() => heardByNoble(false))}`);
