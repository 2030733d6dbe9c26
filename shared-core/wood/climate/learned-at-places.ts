/**
 * What readings in the places of one yard teach of each: a normal hierarchy (Gelman and others, Bayesian Data Analysis, chapter
 * 5, from memory). A place's offset is that of its kind in this yard plus what sets the place apart; a board's is that of
 * its place plus what sets the board apart.
 */

/** What a board's readings alone tell of the offset of the place where it is. */
export type Told = {
  offset: number;
  /** Inverse of its variance, without what all boards' readings are wrong by alike. */
  precision: number;
};

/** What the boards at a place tell together: the sum of their precisions, and of those times their offsets. */
export type Evidence = { placeId: number; precision: number; pull: number };

/** A place whose number may be off. */
export type UnsurePlace = {
  placeId: number;
  /** Places of one kind share a part of their offset. */
  kind: string;
  /** Standard deviation of its offset before any reading. */
  sd: number;
};

/** A place's offset with its standard deviation. */
export type Learned = { offset: number; sd: number };

/** What is known beforehand of how offsets differ, as standard deviations, and a share. */
export type Spreads = {
  /** How boards at one place differ. */
  betweenBoards: number;
  /** What all boards' readings are wrong by alike, by meter and model, so that many do not average it away. */
  shared: number;
  /** Of the variance of a place's offset, the part that all places of its kind in the yard have; below 1. */
  kindShare: number;
};

/** @param sd  of the offset as a board's readings have it */
export const toldOf = (offset: number, sd: number, { betweenBoards, shared }: Spreads): Told => ({
  offset,
  precision: 1 / (Math.max(sd ** 2 - shared ** 2, 0) + betweenBoards ** 2),
});

/** Of one number: inverse variance, and that times the estimate. Independent evidence adds. */
type Sum = Omit<Evidence, 'placeId'>;
const NONE: Sum = { precision: 0, pull: 0 };

const added = (all: readonly Sum[]): Sum =>
  all.reduce((a, b) => ({ precision: a.precision + b.precision, pull: a.pull + b.pull }), NONE);

/** The same estimate, when more variance comes on top. */
function blurred({ precision, pull }: Sum, variance: number): Sum {
  const share = 1 / (1 + variance * precision);
  return { precision: share * precision, pull: share * pull };
}

/**
 * What is known of a place before a board's own readings there.
 *
 * @param places  those of the yard
 * @param told    by boards other than the one asked for, each place once
 * @returns       null where no readings tell of its kind
 */
export function learnedAt(
  placeId: number,
  places: readonly UnsurePlace[],
  told: readonly Evidence[],
  { kindShare, shared }: Spreads,
): Learned | null {
  const here = places.find((place) => place.placeId === placeId);
  if (here === undefined) return null;
  const alike = places.filter(({ kind }) => kind === here.kind);
  const at = (id: number): Sum => told.find((each) => each.placeId === id) ?? NONE;
  if (alike.every((place) => at(place.placeId).precision === 0)) return null;
  const kindVariance = kindShare * Math.min(...alike.map(({ sd }) => sd ** 2));
  const ownVariance = (sd: number): number => sd ** 2 - kindVariance;
  const others = added(
    alike
      .filter((place) => place.placeId !== placeId)
      .map((place) => blurred(at(place.placeId), ownVariance(place.sd))),
  );
  const kind = added([{ precision: 1 / kindVariance, pull: 0 }, blurred(others, shared ** 2)]);
  const place = added([blurred(kind, ownVariance(here.sd)), blurred(at(placeId), shared ** 2)]);
  return { offset: place.pull / place.precision, sd: Math.sqrt(1 / place.precision) };
}
