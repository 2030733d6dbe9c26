import type { MeterOfYard } from '../../shared-core/contract/meter.ts';
import type { ReadingUnit } from '../../shared-core/wood/moisture/corrected.ts';
import { client, queryOf } from '../data/asking.ts';

/** The meter that this window says typed values are read off, null for none; undefined before it knows. */
function typingMeter(): MeterOfYard | null | undefined {
  const meters = client.getQueryData(queryOf('meters.list', {}).queryKey);
  return meters && (meters.find(({ isTypedFrom }) => isTypedFrom) ?? null);
}

export function typingMeterId(): number | null | undefined {
  const meter = typingMeter();
  return meter === null ? null : meter?.id;
}

/** The unit in which a value is typed now; undefined before the window knows the meter. */
export function typingUnit(): ReadingUnit | undefined {
  const meter = typingMeter();
  return meter === undefined ? undefined : (meter?.unit ?? 'pct');
}
