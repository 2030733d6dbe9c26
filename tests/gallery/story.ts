import type { ReactNode } from 'react';

/** A part of the window in each state that a person can meet it in. */
export interface Story {
  /** As its file is named. */
  part: string;
  /** Whether each state needs the whole width. */
  isWide?: boolean;
  /** By name; each is drawn in a frame. */
  states: Record<string, () => ReactNode>;
}
