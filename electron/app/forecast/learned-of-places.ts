import { movementIn } from '../../../shared-core/contract/yard.ts';
import { SAME_EMC_PCT } from '../../../shared-core/wood/climate/climate.ts';
import { AIR_SPREADS, placeSdPct } from '../../../shared-core/wood/climate/learned-air.ts';
import {
  type Evidence,
  type Learned,
  learnedAt,
  type Spreads,
  type UnsurePlace,
} from '../../../shared-core/wood/climate/learned-at-places.ts';
import type { LearnedOfPlace } from '../../../shared-core/wood/drying/forecast.ts';
import { PLACE_SURFACE_LOG_SD, SURFACE_SPREADS } from '../../../shared-core/wood/drying/learned-surface.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import { measuredAt } from '../air/measured-places.ts';
import { type BoardToForecast, MOST_SIBLINGS } from './forecast-messages.ts';

/** A number of places that readings teach. */
type Lesson = {
  spreads: Spreads;
  places: UnsurePlace[];
  /** Forecasts stay as they are until the offset of a place has moved by this, … */
  moved: number;
};
/** … or its doubt by this share. Then boards are forecast again. */
const MOVED_SHARE = 0.1;

/** What is measured moves what is stated in steps of 0.1, which rounding makes a hair smaller. */
const LEAST_RESTATED_PCT = 0.09;

type LearnedFrom = Pick<YardReader, 'places' | 'airLogs'>;

const lessonsOf = (yard: LearnedFrom, now: string): Record<keyof LearnedOfPlace, Lesson> => ({
  air: {
    spreads: AIR_SPREADS,
    places: yard.places.list().map((place) => ({
      placeId: place.id,
      kind: place.kind,
      sd: placeSdPct(measuredAt(yard, place, now).air),
    })),
    moved: 0.1,
  },
  surface: {
    spreads: SURFACE_SPREADS,
    // A fan's air is not like that of other sheds.
    places: yard.places.list().map((place) => ({
      placeId: place.id,
      kind: `${place.kind} ${movementIn(place)}`,
      sd: PLACE_SURFACE_LOG_SD,
    })),
    moved: 0.1,
  },
});

const learned = ({ places, spreads }: Lesson, placeId: number, told: readonly Evidence[]): Learned | null =>
  learnedAt(placeId, places, told, spreads);

/** Gives boards what the others teach of each place, by what these had told when this was called. */
export function learnerOfPlaces(yard: YardReader, now: string): (board: BoardToForecast) => BoardToForecast {
  const lessons = lessonsOf(yard, now);
  const all = { air: yard.places.told('air'), surface: yard.places.told('surface') };
  return (board) => {
    // What its family told is in its forecast already.
    const family = [board.boardId, ...yard.boards.probedSiblings(board.boardId, MOST_SIBLINGS)];
    const others = (what: keyof LearnedOfPlace) => without(all[what], yard.places.toldBy(what, family));
    const told = { air: others('air'), surface: others('surface') };
    const of = (placeId: number): LearnedOfPlace => ({
      air: learned(lessons.air, placeId, told.air),
      surface: learned(lessons.surface, placeId, told.surface),
    });
    return {
      ...board,
      learned: of(board.placeId),
      elsewhere: board.elsewhere.map((place) => ({ ...place, learned: of(place.placeId) })),
    };
  };
}

/** Says how far readings of boards put the EMC of a place from that of its months, as all forecasts go by, % MC. */
export function offsetsByBoards({ places, airLogs }: LearnedFrom, now: string): (placeId: number) => number {
  const { air } = lessonsOf({ places, airLogs }, now);
  const told = places.told('air');
  return (placeId) => learned(air, placeId, told)?.offset ?? 0;
}

/**
 * Lets what is stated of places follow what is measured there, or no longer used, before any board is forecast again.
 *
 * @returns whether any place came out differently: then all boards are due
 */
export function restatePlaces({ places, airLogs }: Pick<Yard, 'places' | 'airLogs'>, now: string): boolean {
  const byBoards = offsetsByBoards({ places, airLogs }, now);
  const moved = places.list().flatMap((place) => {
    const offset = measuredAt({ airLogs }, place, now).shiftPct + byBoards(place.id);
    const stated = places.airOffsetPct(place.id);
    const offsetPct = Math.abs(offset) >= SAME_EMC_PCT ? offset : null;
    return Math.abs((offsetPct ?? 0) - (stated ?? 0)) >= LEAST_RESTATED_PCT
      ? [{ placeId: place.id, offsetPct }]
      : [];
  });
  if (moved.length > 0) places.restate(moved);
  return moved.length > 0;
}

function without(all: readonly Evidence[], some: readonly Evidence[]): Evidence[] {
  return all.flatMap(({ placeId, precision, pull }) => {
    const its = some.find((each) => each.placeId === placeId);
    if (its === undefined) return [{ placeId, precision, pull }];
    const left = precision - its.precision;
    // Rounding leaves a hair of nothing.
    return left > 1e-9 * precision ? [{ placeId, precision: left, pull: pull - its.pull }] : [];
  });
}

/**
 * Lets forecasts go by what all readings tell of places, and saves with each place how far they, and what was measured there,
 * put its EMC from that of its months: the one number that is stated of it.
 *
 * @returns whether anything changed enough for that
 */
export function learnOfPlaces({ places, airLogs }: Pick<Yard, 'places' | 'airLogs'>, now: string): boolean {
  const lessons = lessonsOf({ places, airLogs }, now);
  const shifts = new Map(
    places.list().map((place) => [place.id, measuredAt({ airLogs }, place, now).shiftPct] as const),
  );
  const change = (what: keyof LearnedOfPlace) => {
    const lesson = lessons[what];
    const [before, after] = [places.told(what), places.newlyTold(what)];
    return lesson.places.map(({ placeId, sd }) => {
      const [was, is] = [learned(lesson, placeId, before), learned(lesson, placeId, after)];
      const offsetBy = Math.abs((is?.offset ?? 0) - (was?.offset ?? 0));
      const sdBy = Math.abs(Math.log((is?.sd ?? sd) / (was?.sd ?? sd)));
      return { placeId, learned: is, hasMoved: offsetBy >= lesson.moved || sdBy >= MOVED_SHARE };
    });
  };
  const airs = change('air').map((air) => {
    const stated = places.airOffsetPct(air.placeId);
    const offset = (shifts.get(air.placeId) ?? 0) + (air.learned?.offset ?? 0);
    const isForgotten = Math.abs(offset) < SAME_EMC_PCT && stated !== null;
    const hasMoved = air.hasMoved || isForgotten || Math.abs(offset - (stated ?? 0)) >= lessons.air.moved;
    return { placeId: air.placeId, offsetPct: Math.abs(offset) >= SAME_EMC_PCT ? offset : null, hasMoved };
  });
  const hasMoved = [...airs, ...change('surface')].some((place) => place.hasMoved);
  if (hasMoved) places.takeNewlyTold(airs);
  return hasMoved;
}
