import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import type { Yard } from '../../store/yard.ts';

/** @param isAbove  the meter showed only that it is more than `raw` */
export function saveReading(
  { readings, amendments }: Pick<Yard, 'readings' | 'amendments'>,
  { isAbove, ...reading }: Parameters<Yard['readings']['save']>[0] & Pick<Reading, 'isAbove'>,
  savedAt: string,
): number {
  const id = readings.save(reading);
  if (isAbove) amendments.amendReading(id, 'isAbove', true, savedAt);
  return id;
}
