/**
 * The forecaster's own thread: one forecast takes some tens of milliseconds, a stack's worth seconds, and the window
 * must not wait for that. Run it with `node:worker_threads`; it is built as `out/main/forecast-worker.js`.
 */
import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import { forecastBoard } from '../../../shared-core/wood/drying/forecast.ts';
import { boardModel, dryingPrior, fitHistory } from '../../../shared-core/wood/drying/history-fit.ts';
import type { Information } from '../../../shared-core/wood/maths/gaussian.ts';
import { answerQuestions } from '../own-thread.ts';
import type { BoardToForecast, ForecastAnswer, ForecastQuestion } from './forecast-messages.ts';

/** Fits kept, so that a stack's boards are not fitted again for each of their siblings. */
const MOST_REMEMBERED = 2000;
const remembered = new Map<string, Information>();

/** What a board's own readings say, for its siblings. */
function learntFrom({ board, readings }: BoardToForecast): Information {
  const key = JSON.stringify([board, readings]);
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const { information } = fitHistory(boardModel(board), readings, dryingPrior(board));
  if (remembered.size >= MOST_REMEMBERED) remembered.delete(remembered.keys().next().value as string);
  remembered.set(key, information);
  return information;
}

function forecastOf(board: BoardToForecast, all: readonly BoardToForecast[]): ForecastAnswer {
  try {
    const siblings = all.filter(
      (other) => other !== board && other.family === board.family && other.readings.length > 0,
    );
    const known = board.family === null ? [] : siblings.flatMap(learntIfSound);
    return {
      boardId: board.boardId,
      forecast: forecastBoard({ ...board, siblings: known }),
      learntFrom: known.length,
    };
  } catch (error) {
    if (error instanceof RangeError) return { boardId: board.boardId, whyNot: error.message };
    throw error;
  }
}

/** A sibling whose own history does not hold together teaches nothing. */
function learntIfSound(sibling: BoardToForecast): Information[] {
  try {
    return [learntFrom(sibling)];
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

async function forecastAll({ boards, wanted }: ForecastQuestion): Promise<ForecastAnswer[]> {
  const answers: ForecastAnswer[] = [];
  for (const boardId of wanted) {
    // A single board asked for meanwhile need not wait for a whole stack.
    await setImmediate();
    const board = boards.find((each) => each.boardId === boardId);
    if (board === undefined) throw new Error(`Board ${boardId} was wanted and not given.`);
    answers.push(forecastOf(board, boards));
  }
  return answers;
}

answerQuestions(parentPort, forecastAll);
