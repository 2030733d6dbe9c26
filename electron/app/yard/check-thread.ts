import type { OwnThread } from '../own-thread.ts';

/** Which yard file to check, and how. */
export interface CheckQuestion {
  file: string;
  /** Whether its indexes and all readings are verified, too. */
  isThorough: boolean;
}

/** What a check found in a yard file. */
export interface Checked {
  /** What is damaged in it, in SQLite's words; null where it is sound. */
  damage: string | null;
  /** The ids of readings that the disk changed, in a file that is sound otherwise. */
  damagedReadings: number[];
}

/** The thread that checks a file (`check-worker.ts`). */
export type CheckThread = OwnThread<CheckQuestion, Checked>;
