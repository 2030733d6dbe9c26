import type { Move } from '../../../shared-core/contract/yard.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { DriestAir, PriorNow } from '../../../shared-core/probing/readings/prior-now.ts';
import { driestMet, priorNow, type SinceSawn } from '../../../shared-core/probing/suspicions/first-round.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { airSdPct, type MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { type BarkSide, hasBarkOn } from '../../../shared-core/wood/drying/faces-of-board.ts';
import { dryingClassOf } from '../../../shared-core/wood/species/drying-class.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { QueryContext } from '../context.ts';

/** Air is taken as the same for so long, days. */
const STEP_DAYS = 15;
/** Boards of which the last one is remembered: those of a round. */
const MOST_REMEMBERED = 200;

interface ToCheck {
  boardId: number;
  thicknessMm: number;
  sawnOn: string | null;
  species: Species;
  barkSide: BarkSide;
  barkOffOn: string | null;
  moves: readonly Move[];
}

/** What a board's readings are checked by until a round of it was believed. */
type Checks = Required<Pick<BoardEvidence, 'prior' | 'driestAir'>>;

/**
 * What boards can be expected to have before their first readings. A board's is made once a day and remembered, so that no
 * further reading waits for the drying model.
 */
export function createPriors(context: QueryContext) {
  const remembered = new Map<string, PriorNow | null>();

  /** @param at  of the readings, UTC, ISO 8601 */
  return function checksOf(board: ToCheck, at: string): Checks {
    const { sawnOn, moves } = board;
    const since = sawnOn === null ? null : sinceSawn(sawnOn, moves, at);
    return {
      prior: since && priorOf(board, since),
      driestAir:
        since === null ? driestOfYears(moves, at) : driestMet(board.thicknessMm, board.species, since.airs),
    };
  };

  function priorOf(board: ToCheck, since: SinceSawn): PriorNow | null {
    const { boardId, thicknessMm, species, barkSide, barkOffOn } = board;
    const mayBeWetter = hasBarkOn(barkSide) || barkOffOn !== null;
    const { basicSpecificGravity } = species;
    const wood = { basicSpecificGravity, dryingClass: dryingClassOf(species) };
    const key = JSON.stringify([boardId, thicknessMm, wood, mayBeWetter, since]);
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const byOpenFaces = priorNow(thicknessMm, wood, since);
    const prior = byOpenFaces && { ...byOpenFaces, mayBeWetter };
    if (remembered.size >= MOST_REMEMBERED) remembered.delete(remembered.keys().next().value as string);
    remembered.set(key, prior);
    return prior;
  }

  function airOf({ placeId }: Move): MonthlyAir | undefined {
    return context.yard().places.get(placeId)?.air;
  }

  /** Where nobody knows since when it is there: the driest month of each of its places. Null where the air of one is not known. */
  function driestOfYears(moves: readonly Move[], at: string): DriestAir | null {
    const until = moves.filter(({ since }) => Date.parse(since) <= Date.parse(at));
    const airs = (until.length > 0 ? until : moves.slice(0, 1)).map(airOf);
    if (airs.includes(undefined)) return null;
    const [lowest] = airs
      .flatMap((air) => monthsOf(air as MonthlyAir))
      .toSorted((a, b) => a.emcPct - b.emcPct);
    return lowest === undefined ? null : { emcPct: lowest.emcPct, sdPct: lowest.sdPct };
  }

  /** Null where the air of one of its places is not known, or it was not sawn by then. */
  function sinceSawn(sawnOn: string, moves: readonly Move[], at: string) {
    const fromMs = Date.parse(sawnOn);
    const days = Math.floor((Date.parse(at) - fromMs) / DAY_MS);
    if (!(days >= 0) || moves.length === 0) return null;
    const enteredMs = Date.parse(moves[0]!.since);
    const airs: SinceSawn['airs'][number][] = [];
    for (let day = 0; day < Math.max(1, days); day += STEP_DAYS) {
      const now = fromMs + day * DAY_MS;
      const move = moves.findLast(({ since }) => Date.parse(since) <= now) ?? moves[0]!;
      const air = airOf(move);
      if (air === undefined) return null;
      const month = monthsOf(air)[new Date(now).getMonth()]!;
      const stepDays = Math.min(STEP_DAYS, Math.max(1, days - day));
      airs.push({ days: stepDays, ...month, isKnown: now + STEP_DAYS * DAY_MS > enteredMs });
    }
    return { days, airs };
  }
}

/** What the air of each month does to wood, and how far that may be off, % MC. */
function monthsOf(air: MonthlyAir) {
  const { monthlyEmcPct } = emcOfYear(air);
  const sdPct = airSdPct(air);
  return air.map(({ tempC }, month) => ({ emcPct: monthlyEmcPct[month]!, tempC, sdPct }));
}
