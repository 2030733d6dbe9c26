import type { Outcome } from '../../../shared-core/outcome.ts';
import type { Forecast, ForecastInput, ToldOfPlace } from '../../../shared-core/wood/drying/forecast.ts';
import type { OwnThread } from '../own-thread.ts';

/**
 * Of a stack of any size, of those that were probed. More would teach no more of a board's pace: what is left is how boards
 * of one log differ among themselves. What else they seem to teach is not to be had: one meter errs alike in all of them,
 * and the fits of siblings count as if each had its own.
 */
export const MOST_SIBLINGS = 40;

/** A board as the forecaster gets it; `siblings` it works out by itself. */
export type BoardToForecast = Omit<ForecastInput, 'siblings'> & {
  boardId: number;
  /** Boards with the same name here share what their readings teach; null shares with none. */
  family: string | null;
};

/** What the app asks its forecaster. */
export interface ForecastQuestion {
  /** The boards to forecast, and all that they learn from. */
  boards: BoardToForecast[];
  /** Of these. */
  boardIds: number[];
}

/** One board's answer; each of `boardIds` gets one, in their order. */
export interface ForecastAnswer {
  boardId: number;
  /** With how many boards it learned from, and what its readings tell of the place where it is. */
  made: Outcome<{ forecast: Forecast; learnedFrom: number; told: ToldOfPlace | null }>;
}

/** The thread that works forecasts out (`forecast-worker.ts`). */
export type Forecaster = OwnThread<ForecastQuestion, ForecastAnswer[]>;
