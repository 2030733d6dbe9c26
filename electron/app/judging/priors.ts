import type { Move } from '../../../shared-core/contract/yard.ts';
import type { PriorNow } from '../../../shared-core/probing/readings/prior-now.ts';
import { priorNow, type SinceSawn } from '../../../shared-core/probing/suspicions/first-round.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { QueryContext } from '../context.ts';

/** Air is taken as the same for so long, days. */
const STEP_DAYS = 15;
/** Boards of which the last one is remembered: those of a round. */
const MOST_REMEMBERED = 200;

interface Sawn {
  boardId: number;
  thicknessMm: number;
  sawnOn: string | null;
  basicSpecificGravity: number | null;
  moves: readonly Move[];
}

/**
 * What boards can be expected to have before their first readings. A board's is made once a day and remembered, so that no
 * further reading waits for the drying model.
 */
export function createPriors(context: QueryContext) {
  const remembered = new Map<string, PriorNow | null>();

  /** @param at  of the readings, UTC, ISO 8601 */
  return function priorOf(board: Sawn, at: string): PriorNow | null {
    if (board.sawnOn === null) return null;
    const since = sinceSawn(board.sawnOn, board.moves, at);
    if (since === null) return null;
    const key = JSON.stringify([board.boardId, board.thicknessMm, board.basicSpecificGravity, since]);
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const prior = priorNow(board.thicknessMm, board.basicSpecificGravity, since);
    if (remembered.size >= MOST_REMEMBERED) remembered.delete(remembered.keys().next().value as string);
    remembered.set(key, prior);
    return prior;
  };

  /** Null where the air of one of its places is not known, or it was not sawn by then. */
  function sinceSawn(sawnOn: string, moves: readonly Move[], at: string): SinceSawn | null {
    const fromMs = Date.parse(sawnOn);
    const days = Math.floor((Date.parse(at) - fromMs) / DAY_MS);
    if (!(days >= 0) || moves.length === 0) return null;
    const airs: { days: number; emcPct: number; tempC: number }[] = [];
    for (let day = 0; day < Math.max(1, days); day += STEP_DAYS) {
      const now = fromMs + day * DAY_MS;
      const move = moves.findLast(({ since }) => Date.parse(since) <= now) ?? moves[0]!;
      const air = context.yard().places.get(move.placeId)?.air;
      const month = new Date(now).getMonth();
      const emcPct = air && emcOfYear(air).monthlyEmcPct[month];
      const tempC = air?.[month]?.tempC;
      if (emcPct == null || tempC == null) return null;
      airs.push({ days: Math.min(STEP_DAYS, Math.max(1, days - day)), emcPct, tempC });
    }
    return { days, airs };
  }
}
