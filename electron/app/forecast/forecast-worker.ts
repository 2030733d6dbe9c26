/**
 * The forecaster's own thread: one forecast takes some tens of milliseconds, a stack's worth seconds, and the window
 * must not wait for that. Run it with `node:worker_threads`; it is built as `out/main/forecast-worker.js`.
 */
import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import { forecastBoard, toldOfPlaceBy } from '../../../shared-core/wood/drying/forecast.ts';
import { boardModel, dryingPrior, fitHistory } from '../../../shared-core/wood/drying/history-fit.ts';
import { historyProblem } from '../../../shared-core/wood/drying/history-problem.ts';
import type { Information } from '../../../shared-core/wood/maths/gaussian.ts';
import { answerQuestions } from '../own-thread.ts';
import {
  type BoardToForecast,
  type ForecastAnswer,
  type ForecastQuestion,
  MOST_SIBLINGS,
} from './forecast-messages.ts';

/** Fits kept, so that a stack's boards are not fitted again for each of their siblings. */
const MOST_REMEMBERED = 2000;
const remembered = new Map<string, Information>();

/** What a board's own readings tell its siblings; null where its history does not hold together. */
function learnedFrom({ board, readings, nowMs }: BoardToForecast): Information | null {
  if (historyProblem(board, readings, nowMs) !== null) return null;
  const key = JSON.stringify([board, readings]);
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const fit = fitHistory(boardModel(board), readings, dryingPrior(board));
  if (!fit.ok) return null;
  const { information } = fit.value;
  if (remembered.size >= MOST_REMEMBERED) remembered.delete(remembered.keys().next().value as string);
  remembered.set(key, information);
  return information;
}

function forecastOf(board: BoardToForecast, all: readonly BoardToForecast[]): ForecastAnswer {
  const siblings = all
    .filter(
      (other) =>
        board.family !== null &&
        other !== board &&
        other.family === board.family &&
        other.readings.length > 0,
    )
    .toSorted((a, b) => a.boardId - b.boardId)
    .slice(0, MOST_SIBLINGS);
  const known = siblings.flatMap((sibling) => learnedFrom(sibling) ?? []);
  const made = forecastBoard({ ...board, siblings: known });
  const { boardId } = board;
  if (!made.ok) return { boardId, made };
  const own = board.readings.length > 0 ? learnedFrom(board) : null;
  const value = { forecast: made.value, learnedFrom: known.length, told: own && toldOfPlaceBy(board, own) };
  return { boardId, made: { ok: true, value } };
}

async function forecastAll({ boards, boardIds }: ForecastQuestion): Promise<ForecastAnswer[]> {
  const answers: ForecastAnswer[] = [];
  for (const boardId of boardIds) {
    // A single board asked for meanwhile need not wait for a whole stack.
    await setImmediate();
    const board = boards.find((each) => each.boardId === boardId);
    if (board === undefined) throw new Error(`Board ${boardId} is to be forecast and was not given.`);
    answers.push(forecastOf(board, boards));
  }
  return answers;
}

answerQuestions(parentPort, forecastAll);
