import { DAY_MS } from '../../time.ts';
import { median, robustSpread } from '../../wood/maths/robust.ts';
import { log10OhmsAt, mcAtLog10Ohms } from '../../wood/moisture/resistance.ts';
import { resistanceCurves } from '../../wood/moisture/resistance-curves.ts';
import { basisOfScale, showsSpecies, USUAL_SCALE } from '../../wood/moisture/scale.ts';
import { spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import { atWoodTempPct, james } from '../../wood/moisture/temperature.ts';
import { message } from '../../words/message.ts';
import { meterOf } from '../readings/corrected-reading.ts';
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { Depth, Suspicion } from '../readings/reading.ts';
import { type Expectation, type Expected, expectationNow } from './expectation.ts';
import { DEPTHS, firmValues, OWN_PACE, type WalkedBoard } from './round-suspicions.ts';

/** Fewer boards of one species than this cannot tell how that species reads in this stack. */
export const FEWEST_MATES = 4;
/** Boards this much thicker or thinner dry otherwise, as a part of the thickness. */
const THICKNESS_SHARE = 0.1;
/** Rounds further apart than this are not one and the same, days. */
const ONE_ROUND_DAYS = 3;
/** Species that would read closer to each other than this are not worth a word, % MC. */
export const LEAST_SHIFT_PCT = 2;
/**
 * Fall of the sum of squared scores from which the stack's species is the better story where there is one round only; two
 * rounds tell of the board's change as well, and any fall will do.
 */
const ONE_ROUND_GAIN = 2;
/** How much of what sets shells apart sets the cores under them apart too (correlation). Common practice, no source. */
const SHELL_WITH_CORE = 0.5;

/** Of shell and core, or of the average alone, % MC. */
type Level = Partial<Record<Depth, number>>;
const AVERAGE = ['average'] as const;
/** A board with what it reads and read, % MC, the resistance curve that this was read on, and the scale's temperature. */
type Compared = {
  index: number;
  board: WalkedBoard;
  depths: readonly Depth[];
  curveId: string;
  scaleTempC: number;
  now: Level;
  before: Level | null;
};

/**
 * Suspicions of the species that a board is entered as: it is another than that of the boards around it, and read as
 * theirs it would fit in with them better.
 *
 * A wrong species is wrong in every round at once, so what shows is not a change but a level: boards of one stack dry
 * together, and a wrong curve shifts one of them away, the more the wetter it is. A board of another species that is
 * entered like the rest is not looked for: it differs from them as a board does that was sawn later.
 *
 * Only boards of one thickness in one place that were read at the same depths are compared with each other, and at least
 * four others of one species are needed. Boards corrected by the person's own oven-dry checks are left out, and those whose species a person confirmed.
 *
 * @returns suspicions of all of a board's readings, by the board's index in the list
 */
export function speciesSuspicionsOf(boards: readonly WalkedBoard[]): Map<number, Suspicion> {
  const all = boards.flatMap((board, index) => comparedOf(board, index));
  return new Map(
    all.flatMap((each): [number, Suspicion][] => {
      if (each.board.evidence.board.isSpeciesConfirmed === true) return [];
      const mates = matesOf(each, all);
      if (mates.length < FEWEST_MATES || mates[0]!.curveId === each.curveId) return [];
      const found = betterAsTheStack(each, mates);
      return found === null ? [] : [[each.index, found]];
    }),
  );
}

function comparedOf(board: WalkedBoard, index: number): Compared[] {
  const isRead = (depth: Depth): boolean => firmValues(board, depth).length > 0;
  const depths = [DEPTHS, AVERAGE].find((some) => some.every(isRead));
  // A line, and not a curve, that turned a reading into moisture content tells nothing of other species.
  const byLine = board.readings.some(({ corrected: { steps } }) =>
    steps.some(({ step }) => step === 'own-calibration' || step === 'species-linear'),
  );
  if (depths === undefined || byLine) return [];
  const { scale } = meterOf(board.readings[0]!, board.evidence);
  const { species } = board.evidence;
  // The meter turned it into % of a species without a curve, so the resistance is unknown.
  if (species.curveId === null && showsSpecies(scale, species)) return [];
  const basis = basisOfScale(scale);
  const before = board.evidence.previous?.estimate;
  const beforeAt = { shell: before?.shellPct, core: before?.corePct, average: averageReadIn(before) };
  return [
    {
      index,
      board,
      // A species without a curve is read on the meter's own.
      curveId: species.curveId ?? basis.curveId ?? USUAL_SCALE.curveId,
      scaleTempC: basis.tempC,
      depths,
      now: levelAt(depths, (depth) => median(firmValues(board, depth))),
      before: depths.every((depth) => (beforeAt[depth] ?? null) !== null)
        ? levelAt(depths, (depth) => beforeAt[depth]!)
        : null,
    },
  ];
}

const averageReadIn = (before: Estimate | undefined): number | null =>
  before !== undefined && before.countedAverage > 0 ? before.averagePct : null;

const levelAt = (depths: readonly Depth[], pctAt: (depth: Depth) => number): Level =>
  Object.fromEntries(depths.map((depth) => [depth, pctAt(depth)]));

/** The boards beside it that are read on one curve, if those are more than half; it does not count among them. */
function matesOf(each: Compared, all: readonly Compared[]): Compared[] {
  const { board, place } = each.board.evidence;
  const beside = all.filter(({ index, depths, board: { evidence } }) => {
    const apart = Math.abs(evidence.board.thicknessMm - board.thicknessMm);
    return (
      index !== each.index &&
      depths === each.depths &&
      evidence.place.name === place.name &&
      apart <= THICKNESS_SHARE * board.thicknessMm
    );
  });
  const alike = (curveId: string) => beside.filter((other) => other.curveId === curveId);
  const curves = [...new Set(beside.map(({ curveId }) => curveId))];
  return curves.map(alike).find((some) => 2 * some.length > beside.length) ?? [];
}

/** Those whose last round was this board's last round. */
function matesBefore(each: Compared, mates: readonly Compared[]): Compared[] {
  const takenAt = ({ board }: Compared) => Date.parse(board.evidence.previous?.takenAt ?? '');
  return mates.filter(
    (mate) => mate.before !== null && Math.abs(takenAt(mate) - takenAt(each)) <= ONE_ROUND_DAYS * DAY_MS,
  );
}

function betterAsTheStack(each: Compared, mates: readonly Compared[]): Suspicion | null {
  const as = (level: Level): Level =>
    levelAt(each.depths, (depth) => readOn(mates[0]!.curveId, level[depth]!, each));
  const now = as(each.now);
  const shift = Math.max(...each.depths.map((depth) => Math.abs(now[depth]! - each.now[depth]!)));
  if (shift < LEAST_SHIFT_PCT) return null;

  const levels = mates.map((mate) => mate.now);
  const gain = gainOverTwoRounds(each, as, mates);
  const better =
    gain === null ? squaredScore(each.now, levels) - squaredScore(now, levels) > ONE_ROUND_GAIN : gain > 0;
  return better ? enteredAsAnother(each, mates[0]!, now) : null;
}

/** By the levels of the last round, and by what has become of them since; null where there is no last round to go by. */
function gainOverTwoRounds(
  each: Compared,
  as: (level: Level) => Level,
  mates: readonly Compared[],
): number | null {
  const { evidence } = each.board;
  const { before, now } = each;
  const others = matesBefore(each, mates);
  if (before === null || evidence.previous === null || others.length < FEWEST_MATES) return null;
  const own = changeOf(now, each.board.expectation);
  const rest = others.flatMap((mate) => changeOf(mate.now, mate.board.expectation) ?? []);
  if (own === null || rest.length < FEWEST_MATES) return null;
  const asBefore = as(before);
  const read: BoardEvidence = {
    ...evidence,
    species: mates[0]!.board.evidence.species,
    previous: {
      ...evidence.previous,
      estimate: {
        ...evidence.previous.estimate,
        shellPct: asBefore.shell ?? null,
        corePct: asBefore.core ?? null,
        averagePct: asBefore.average ?? evidence.previous.estimate.averagePct,
      },
    },
  };
  const other = changeOf(as(now), expectationNow(read, each.board.readings.at(-1)!.takenAt));
  if (other === null) return null;
  const levels = others.map((mate) => mate.before!);
  const changes = (change: Change) =>
    each.depths.reduce((sum, depth) => {
      const { offPct, sdPct } = change[depth]!;
      return sum + ((offPct - median(rest.map((mate) => mate[depth]!.offPct))) / sdPct) ** 2;
    }, 0);
  return squaredScore(before, levels) - squaredScore(asBefore, levels) + changes(own) - changes(other);
}

/** What each depth reads over what its last round leads to expect, % MC, and how far a sound one strays. */
type Change = Partial<Record<Depth, { offPct: number; sdPct: number }>>;

function changeOf(now: Level, expectation: Expectation | null): Change | null {
  const depths = Object.keys(now) as Depth[];
  if (expectation === null || depths.some((depth) => expectation[depth] === null)) return null;
  const at = (depth: Depth, { pct, sdLowPct, sdHighPct }: Expected) => {
    const offPct = now[depth]! - pct;
    return { offPct, sdPct: Math.hypot(spotScatterPct(pct), OWN_PACE * (offPct < 0 ? sdLowPct : sdHighPct)) };
  };
  return Object.fromEntries(depths.map((depth) => [depth, at(depth, expectation[depth]!)]));
}

function enteredAsAnother(each: Compared, mate: Compared, as: Level): Suspicion {
  const ownSpecies = each.board.evidence.species.name;
  const otherSpecies = mate.board.evidence.species.name;
  const depth = each.depths.at(-1)!;
  return {
    rule: 'species-unlike-stack',
    severity: 'questionable',
    why: message('suspicion.species-unlike-stack', {
      ownSpecies,
      otherSpecies,
      depth,
      mcPct: each.now[depth]!,
      otherPct: as[depth]!,
    }),
    whatToDo: message('suspicion.species-unlike-stack.do', { ownSpecies, otherSpecies }),
  };
}

/** What a moisture content that was read on the board's own curve is on another species', % MC. */
function readOn(curveId: string, mcPct: number, { curveId: ownId, scaleTempC }: Compared): number {
  const [curve, own] = [resistanceCurves.get(curveId)!, resistanceCurves.get(ownId)!];
  const onOwnPct = atWoodTempPct(james, mcPct, own.tempC, scaleTempC);
  const onCurvePct = mcAtLog10Ohms(curve, log10OhmsAt(own, onOwnPct).log10Ohms).mcPct;
  return atWoodTempPct(james, onCurvePct, scaleTempC, curve.tempC);
}

/** By how many of their standard deviations a value lies above the others' median. */
function score(value: number, others: readonly number[]): number {
  const center = median(others);
  const square = others.reduce((sum, other) => sum + (other - center) ** 2, 0) / others.length;
  return (value - center) / Math.max(robustSpread(others), Math.sqrt(square), 0.8 * spotScatterPct(center));
}

/** Squared distance from the others, shell and core together, in standard deviations (Mahalanobis). */
function squaredScore(level: Level, others: readonly Level[]): number {
  const scoreAt = (depth: Depth): number =>
    score(
      level[depth]!,
      others.map((other) => other[depth]!),
    );
  if (level.average !== undefined) return scoreAt('average') ** 2;
  const [shell, core] = [scoreAt('shell'), scoreAt('core')];
  return (shell ** 2 - 2 * SHELL_WITH_CORE * shell * core + core ** 2) / (1 - SHELL_WITH_CORE ** 2);
}
