import { THIN_MM } from '../../../shared-core/probing/calls/decide.ts';
import { type CoreHistory, reaches } from '../../../shared-core/probing/readings/core-history.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { Forecast } from '../../../shared-core/wood/drying/forecast.ts';
import type { YardReader } from '../../store/yard.ts';
import type { AppContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import type { Judging } from '../judging/judging.ts';
import { boardToForecast, type PreparedBoard } from './board-to-forecast.ts';
import { type BoardToForecast, type Forecaster, MOST_SIBLINGS } from './forecast-messages.ts';

/** A round may take some days. */
const LONGEST_ROUND_DAYS = 30;
/** No history reaches further. */
const LONGEST_DAYS = 730;

/** What a forecast says of a board's core on the days to come; nothing where that is no history. */
export function coreHistoryOf(prepared: PreparedBoard | null, forecast: Forecast | null): CoreHistory {
  if (!prepared?.tellsCore) return [];
  return (forecast?.places[0]?.coreAhead ?? []).map(({ atMs, differencePct, sdPct }) => ({
    atMs: Math.round(atMs),
    differencePct: Math.round(1000 * differencePct) / 1000,
    sdPct: Math.round(1000 * sdPct) / 1000,
  }));
}

/** Of boards up to this the core goes unjudged. */
export const needsCoreHistory = ({ thicknessMm }: { thicknessMm: number }): boolean => thicknessMm > THIN_MM;

/** A board's newest round, and the one before it, which its history ends with. */
export function newestRoundOf(
  yard: YardReader,
  boardId: number,
): { roundId: number; afterRoundId: number | null } | null {
  const roundId = yard.readings.roundsOfBoard(boardId).at(-1);
  if (roundId === undefined) return null;
  return { roundId, afterRoundId: yard.readings.roundBefore(boardId, roundId) ?? null };
}

/**
 * Makes again what a board's history told of its core before its newest round, where that is missing, and has the round
 * judged by it. Usually the forecast made before the round has told it.
 */
export async function makeCoreHistory(
  context: AppContext,
  assessing: Assessing,
  judging: Judging,
  forecaster: Forecaster,
  boardId: number,
): Promise<void> {
  const yard = context.yard();
  const row = yard.boards.get(boardId);
  const newest = newestRoundOf(yard, boardId);
  if (row === undefined || newest === null || !needsCoreHistory(row)) return;
  const { roundId, afterRoundId } = newest;
  const [first] = yard.readings.ofBoard(boardId, roundId);
  // Rounds whose readings were all undone are listed, too (`lineage.ts`).
  if (first === undefined) return;
  const atMs = Date.parse(first.takenAt);
  const known = yard.coreHistories.of({ boardId, afterRoundId });
  if (known && reaches(known, atMs)) return;
  const rounds = yard.readings.roundsOfBoard(boardId).slice(0, -1);
  const thenMs = lastKnownMs(rounds, atMs);
  const then = { ...context, now: () => new Date(thenMs).toISOString() };
  const prepare = (): PreparedBoard | null => {
    const current = yard.boards.get(boardId);
    const its = current && boardToForecast(then, assessing, current, rounds, context.now());
    return its?.ok && its.value.tellsCore ? its.value : null;
  };
  const prepared = prepare();
  const made = coreHistoryOf(prepared, prepared && (await forecastThen(prepared.board)));
  const history = reaches(made, atMs) ? made : [];
  if (context.yard() !== yard) return;
  // Something that it is made from changed meanwhile: the board is due again.
  if (JSON.stringify(prepare()) !== JSON.stringify(prepared)) return;
  yard.transaction(() => {
    yard.coreHistories.put({ boardId, afterRoundId }, history);
    if (history.length > 0) judging.judgeThese([boardId]);
  });

  /** Its last reading before, or its last move: from then on the forecast doubts all that it doubts of days to come. */
  function lastKnownMs(before: readonly number[], untilMs: number): number {
    const moved = yard.moves.ofBoard(boardId).map(({ since }) => Date.parse(since));
    const read = before.flatMap((id) =>
      yard.readings.ofBoard(boardId, id).map(({ takenAt }) => Date.parse(takenAt)),
    );
    const known = [...moved, ...read].filter((ms) => ms <= untilMs);
    return known.length === 0 ? untilMs : Math.max(...known);
  }

  async function forecastThen(board: BoardToForecast): Promise<Forecast | null> {
    const siblings = yard.boards.probedSiblings(boardId, MOST_SIBLINGS).flatMap((id) => {
      const sibling = yard.boards.get(id);
      const its = sibling && boardToForecast(context, assessing, sibling);
      return its?.ok ? [its.value.board] : [];
    });
    const days = Math.ceil((atMs - thenMs) / DAY_MS) + LONGEST_ROUND_DAYS;
    const alone = { ...board, elsewhere: [], horizonDays: Math.min(LONGEST_DAYS, days) };
    const [answer] = await forecaster.ask({ boards: [alone, ...siblings], boardIds: [boardId] });
    return answer?.made.ok ? answer.made.value.forecast : null;
  }
}
