import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';

/** The props of a dialog about one reading. */
export interface OfReading {
  reading: JudgedReading;
  recordName: string;
  onClose: () => void;
}
