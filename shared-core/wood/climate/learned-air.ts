/** What readings in the places of one yard teach of the air of each. */
import { airSdPct, type MonthlyAir } from './monthly-air.ts';

/** What a board's readings alone tell of how far the EMC where it is lies from that of the place's months, % MC. */
export type AirTold = {
  offsetPct: number;
  /** Inverse of its variance, without what all boards' readings are wrong by alike. */
  precision: number;
};

/** What the boards at a place tell together: the sum of their precisions, and of those times their offsets. */
export type AirEvidence = { placeId: number; precision: number; pull: number };

/** A place whose air may be off. */
export type UnsureAir = {
  placeId: number;
  /** Places of one kind share a part of their offset. */
  kind: string;
  /** Before any reading, % MC (`placeSdPct`). */
  sdPct: number;
};

/** A place's offset with its standard deviation, % MC of EMC. */
export type LearnedAir = { offsetPct: number; sdPct: number };

/** Of the variance of a place's offset, the part that all places of its kind in the yard have. Common practice, no source. */
export const KIND_SHARE = 0.5;
/** How boards at one place differ: from top to bottom of a stack, and by the wood, % MC. Common practice, no source. */
export const AIR_BETWEEN_BOARDS_SD_PCT = 0.3;

/** How far the EMC of a place may be from that of its months, % MC: without what its boards differ by. */
export const placeSdPct = (air: MonthlyAir): number =>
  Math.sqrt(airSdPct(air) ** 2 - AIR_BETWEEN_BOARDS_SD_PCT ** 2);

/** What all boards' readings are wrong by alike, by meter and model, so that many do not average it away, % MC. */
export const SHARED_SD_PCT = 0.7;

/** @param sdPct  of the offset as a board's readings have it, % MC */
export const airTold = (offsetPct: number, sdPct: number): AirTold => ({
  offsetPct,
  precision: 1 / (Math.max(sdPct ** 2 - SHARED_SD_PCT ** 2, 0) + AIR_BETWEEN_BOARDS_SD_PCT ** 2),
});

/** Of one number: inverse variance, and that times the estimate. Independent evidence adds. */
type Evidence = Omit<AirEvidence, 'placeId'>;
const NONE: Evidence = { precision: 0, pull: 0 };

const added = (all: readonly Evidence[]): Evidence =>
  all.reduce((a, b) => ({ precision: a.precision + b.precision, pull: a.pull + b.pull }), NONE);

/** The same estimate, when more variance comes on top. */
function blurred({ precision, pull }: Evidence, variance: number): Evidence {
  const share = 1 / (1 + variance * precision);
  return { precision: share * precision, pull: share * pull };
}

/**
 * What is known of a place's air before a board's own readings there: a normal hierarchy (Gelman and others, Bayesian Data
 * Analysis, chapter 5, from memory). A place's offset is that of its kind in this yard plus what sets the place apart; a
 * board's is that of its place plus what sets the board apart.
 *
 * @param places  those of the yard
 * @param told    by boards other than the one asked for, each place once
 * @returns       null where no readings tell of its kind
 */
export function learnedAir(
  placeId: number,
  places: readonly UnsureAir[],
  told: readonly AirEvidence[],
): LearnedAir | null {
  const here = places.find((place) => place.placeId === placeId);
  if (here === undefined) return null;
  const alike = places.filter(({ kind }) => kind === here.kind);
  const at = (id: number): Evidence => told.find((each) => each.placeId === id) ?? NONE;
  if (alike.every((place) => at(place.placeId).precision === 0)) return null;
  const kindVariance = KIND_SHARE * Math.min(...alike.map(({ sdPct }) => sdPct ** 2));
  const ownVariance = (sdPct: number): number => sdPct ** 2 - kindVariance;
  const others = added(
    alike
      .filter((place) => place.placeId !== placeId)
      .map((place) => blurred(at(place.placeId), ownVariance(place.sdPct))),
  );
  const shared = SHARED_SD_PCT ** 2;
  const kind = added([{ precision: 1 / kindVariance, pull: 0 }, blurred(others, shared)]);
  const place = added([blurred(kind, ownVariance(here.sdPct)), blurred(at(placeId), shared)]);
  return { offsetPct: place.pull / place.precision, sdPct: Math.sqrt(1 / place.precision) };
}
