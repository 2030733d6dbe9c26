import { SAME_EMC_PCT } from '../../../shared-core/wood/climate/climate.ts';
import {
  type AirEvidence,
  type LearnedAir,
  learnedAir,
  placeSdPct,
  type UnsureAir,
} from '../../../shared-core/wood/climate/learned-air.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import { type BoardToForecast, MOST_SIBLINGS } from './forecast-messages.ts';

/** What is stated of a place stays as it is until its number has moved by this, % MC, … */
const MOVED_PCT = 0.1;
/** … or its doubt by this share. Then all boards are forecast again. */
const MOVED_SHARE = 0.1;

const unsureAirs = ({ places }: Pick<YardReader, 'places'>): UnsureAir[] =>
  places.list().map(({ id, kind, air }) => ({ placeId: id, kind, sdPct: placeSdPct(air) }));

/** Gives boards what the others teach of the air of each place, by what these had told when this was called. */
export function airLearner(yard: YardReader): (board: BoardToForecast) => BoardToForecast {
  const places = unsureAirs(yard);
  const all = yard.places.airTold();
  return (board) => {
    // What its family told is in its forecast already.
    const family = [board.boardId, ...yard.boards.probedSiblings(board.boardId, MOST_SIBLINGS)];
    const told = without(all, yard.places.airToldBy(family));
    const learned = (placeId: number): LearnedAir | null => learnedAir(placeId, places, told);
    return {
      ...board,
      learned: learned(board.placeId),
      elsewhere: board.elsewhere.map((place) => ({ ...place, learned: learned(place.placeId) })),
    };
  };
}

function without(all: readonly AirEvidence[], some: readonly AirEvidence[]): AirEvidence[] {
  return all.flatMap(({ placeId, precision, pull }) => {
    const its = some.find((each) => each.placeId === placeId);
    if (its === undefined) return [{ placeId, precision, pull }];
    const left = precision - its.precision;
    // Rounding leaves a hair of nothing.
    return left > 1e-9 * precision ? [{ placeId, precision: left, pull: pull - its.pull }] : [];
  });
}

/**
 * Saves with each place how far all readings put its EMC from that of its months: the one number that is stated of it.
 *
 * @returns whether any changed enough to be stated
 */
export function learnAirs({ places }: Pick<Yard, 'places'>): boolean {
  const airs = unsureAirs({ places });
  const [before, after] = [places.airTold(), places.airNewlyTold()];
  const learned = airs.map(({ placeId, sdPct }) => {
    const known = learnedAir(placeId, airs, after);
    const offsetPct = known?.offsetPct ?? 0;
    const stated = places.airOffsetPct(placeId);
    const sdOf = (told: readonly AirEvidence[]): number => learnedAir(placeId, airs, told)?.sdPct ?? sdPct;
    const isForgotten = known === null && stated !== null;
    return {
      placeId,
      offsetPct: Math.abs(offsetPct) >= SAME_EMC_PCT ? offsetPct : null,
      hasMoved:
        isForgotten ||
        Math.abs(offsetPct - (stated ?? 0)) >= MOVED_PCT ||
        Math.abs(Math.log(sdOf(after) / sdOf(before))) >= MOVED_SHARE,
    };
  });
  const hasMoved = learned.some((place) => place.hasMoved);
  if (hasMoved) places.takeNewlyTold(learned);
  return hasMoved;
}
