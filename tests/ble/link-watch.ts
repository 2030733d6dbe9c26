import type { BluetoothTiming } from '../../electron/meter/bluetooth-timing.ts';
import type { FoundMeter, LinkState, MeterLink, MeterNotification } from '../../electron/meter/meter-link.ts';
import { plainDescription } from '../../shared-core/gatt/meter-description.ts';
import type { Source } from '../../shared-core/gatt/source.ts';

/** Shorter waits for the meter than a person's gets, so that the tests of time limits end soon. The machine may be slow. */
export const shortTiming: Partial<BluetoothTiming> = {
  searchMs: 3000,
  connectMs: 3000,
  discoverMs: 6000,
  subscribeMs: 6000,
  silenceMs: 1500,
  proofMs: 3000,
  unheardMs: 3000,
  goodbyeMs: 2500,
  quitMs: 800,
  backOffMs: [200, 400, 800],
};

/** What a person says of the hundredths that the meters of these tests send. */
export const describing = (source: Source) =>
  plainDescription({
    source,
    value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
    unit: 'pct',
    range: { min: 0, max: 60 },
    origin: 'mapped-by-hand',
  });

/** Resolves at once when the condition holds, else at the event that makes it hold. */
function until<T>(link: MeterLink, what: string, limitMs: number, look: () => T | null): Promise<T> {
  return new Promise((resolve, reject) => {
    const check = () => {
      const seen = look();
      if (seen === null) return;
      end();
      resolve(seen);
    };
    const timer = setTimeout(() => {
      end();
      reject(
        new Error(
          `not within ${limitMs} ms: ${what}; now ${link.state.phase}: ${JSON.stringify(link.state.message)}`,
        ),
      );
    }, limitMs);
    const end = () => {
      clearTimeout(timer);
      link
        .off('state', check)
        .off('adapter', check)
        .off('notification', check)
        .off('described', check)
        .off('battery', check);
    };
    link
      .on('state', check)
      .on('adapter', check)
      .on('notification', check)
      .on('described', check)
      .on('battery', check);
    check();
  });
}

export const untilPhase = (
  link: MeterLink,
  phase: LinkState['phase'],
  limitMs = 25_000,
): Promise<LinkState> => until(link, phase, limitMs, () => (link.state.phase === phase ? link.state : null));

export const untilTrue = (
  link: MeterLink,
  what: string,
  holds: () => boolean,
  limitMs = 25_000,
): Promise<true> => until(link, what, limitMs, () => (holds() ? true : null));

/** Scans until a meter of this name is heard. */
export async function find(link: MeterLink, name: string, limitMs = 25_000): Promise<FoundMeter> {
  const heard = new Promise<FoundMeter>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`${name} was not heard in ${limitMs} ms`)), limitMs);
    const listen = (found: FoundMeter) => {
      if (found.name !== name) return;
      clearTimeout(timer);
      link.off('found', listen);
      resolve(found);
    };
    link.on('found', listen);
  });
  link.startScan();
  return heard;
}

/** Everything that a link receives from now on, as it comes. */
export function record(link: MeterLink): MeterNotification[] {
  const notifications: MeterNotification[] = [];
  link.on('notification', (notification) => notifications.push(notification));
  return notifications;
}
