import type { Forecast, ForecastInput } from '../../../shared-core/wood/drying/forecast.ts';
import type { OwnThread } from '../own-thread.ts';

/** A board as the forecaster is told of it; `siblings` it works out by itself. */
export type BoardToForecast = Omit<ForecastInput, 'siblings'> & {
  boardId: number;
  /** Boards with the same name here share what their readings teach; null shares with none. */
  family: string | null;
};

/** What the app asks its forecaster. */
export interface ForecastQuestion {
  /** The boards to foresee, and all that they learn from. */
  boards: BoardToForecast[];
  /** Of these. */
  wanted: number[];
}

/** One board's answer; each wanted board gets one, in their order. */
export type ForecastAnswer =
  | { boardId: number; forecast: Forecast; learntFrom: number }
  /** Its history does not hold together; the sentence says what to set right. */
  | { boardId: number; whyNot: string };

/** The thread that works forecasts out (`forecast-worker.ts`). */
export type Forecaster = OwnThread<ForecastQuestion, ForecastAnswer[]>;
