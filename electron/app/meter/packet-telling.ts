import type { EventData } from '../../../shared-core/contract/events.ts';
import { keyOfFrom } from '../../../shared-core/gatt/source.ts';
import type { MeterNotification } from '../../meter/meter-link.ts';
import { monotonicMs } from '../../monotonic.ts';
import type { AppContext } from '../context.ts';
import type { MeterDesk } from './meter-desk.ts';

const EVERY_MS = 200;
/** Of one place, in one batch: 320 a second, which is more than a person can follow. */
const MOST_OF_PLACE = 64;

type Told = EventData<'meter.packets'>['packets'][number];

/** While a meter waits to be described, tells the window that holds it every packet, as it came. */
export function createPacketTelling(context: AppContext, { link, holder }: MeterDesk) {
  const waiting = new Map<string, Told[]>();
  let timer: NodeJS.Timeout | null = null;

  function take({ from, bytes, receivedAtMs }: MeterNotification): void {
    if (link.current().state.phase !== 'needs-description' || bytes.length === 0) return;
    const key = keyOfFrom(from);
    const own = waiting.get(key) ?? [];
    own.push({ from, bytesHex: Buffer.from(bytes).toString('hex'), atMs: receivedAtMs });
    waiting.set(key, own.slice(-MOST_OF_PLACE));
    timer ??= setTimeout(tell, EVERY_MS);
  }

  function tell(): void {
    timer = null;
    const packets = [...waiting.values()].flat();
    waiting.clear();
    const window = holder.window();
    if (window !== null) context.emitTo(window, 'meter.packets', { nowMs: monotonicMs(), packets });
  }

  link.notified.follow(take);
  link.left.follow(() => waiting.clear());
  return {
    close: (): void => {
      if (timer !== null) clearTimeout(timer);
    },
  };
}
