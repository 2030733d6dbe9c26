import { DAY_MS } from '../../time.ts';
import { priorPace, withinGroupSd } from '../../wood/drying/history-fit.ts';
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
 * How far boards of two species differ in their pace, over how far those of one stack do. Two species of a class differ by
 * about as much as a board's pace is unsure by (`wood/drying/history-fit.ts`: √2 times 0.35).
 */
export const OTHER_SPREAD =
  Math.hypot(withinGroupSd.logDiffusivity, priorPace.diffusivity.logSd) / withinGroupSd.logDiffusivity;
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
 * together, and a wrong curve shifts one of them away, the more the wetter it is. A board that is rightly of another species
 * dries at its own pace, so it may lie further off. Whichever is likelier is taken. A board of another species that is
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
  return (gain ?? gainByLevel(each.now, now, levels)) > 0 ? enteredAsAnother(each, mates[0]!, now) : null;
}

/** As `gainByLevel`, by the levels of the last round and what has become of them since; null without a last round to go by. */
function gainOverTwoRounds(
  each: Compared,
  as: (level: Level) => Level,
  mates: readonly Compared[],
): number | null {
  const { evidence } = each.board;
  const { before, now } = each;
  const others = matesBefore(each, mates);
  if (before === null || evidence.previous === null) return null;
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
  const changes = (change: Change, pace: number) =>
    each.depths.reduce((sum, depth) => {
      const { offPct, spotsPct, modelPct } = change[depth]!;
      const sdPct = Math.hypot(spotsPct, pace * modelPct);
      const apartPct = offPct - median(rest.map((mate) => mate[depth]!.offPct));
      return sum + (apartPct / sdPct) ** 2 + 2 * Math.log(sdPct);
    }, 0);
  return (
    gainByLevel(before, asBefore, levels) + changes(own, OTHER_SPREAD * OWN_PACE) - changes(other, OWN_PACE)
  );
}

/**
 * What each depth reads over what its last round leads to expect, % MC, and how unsure that is by its spots and its pace;
 * only of a board of which the last round tells the same depths.
 */
type Change = Partial<Record<Depth, { offPct: number; spotsPct: number; modelPct: number }>>;

function changeOf(now: Level, expectation: Expectation | null): Change | null {
  if (expectation === null) return null;
  const depths = Object.keys(now) as Depth[];
  const at = (depth: Depth, { pct, sdLowPct, sdHighPct }: Expected) => {
    const offPct = now[depth]! - pct;
    return { offPct, spotsPct: spotScatterPct(pct), modelPct: offPct < 0 ? sdLowPct : sdHighPct };
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

/** How much likelier a level is as the stack's species than as another that dries at its own pace: twice the logarithm. */
const gainByLevel = (own: Level, asStack: Level, others: readonly Level[]): number =>
  improbability(own, others, OTHER_SPREAD) - improbability(asStack, others, 1);

/**
 * Less twice the logarithm of a level's probability, but for a constant: its squared distance from the others, shell and core
 * together, in standard deviations (Mahalanobis), and how wide those are.
 *
 * @param spread how much further it may lie from the others than they from each other, 1 or more
 */
function improbability(level: Level, others: readonly Level[], spread: number): number {
  const scoreAt = (depth: Depth): { score: number; width: number } => {
    const there = others.map((other) => other[depth]!);
    const sdPct = spread * spreadOf(there);
    return { score: (level[depth]! - median(there)) / sdPct, width: 2 * Math.log(sdPct) };
  };
  if (level.average !== undefined) {
    const { score, width } = scoreAt('average');
    return score ** 2 + width;
  }
  const [shell, core] = [scoreAt('shell'), scoreAt('core')];
  const crossed = 2 * SHELL_WITH_CORE * shell.score * core.score;
  const square = (shell.score ** 2 - crossed + core.score ** 2) / (1 - SHELL_WITH_CORE ** 2);
  return square + shell.width + core.width;
}

/** How far values lie from their median, one standard deviation, and no less than what their spots make of it, % MC. */
function spreadOf(values: readonly number[]): number {
  const center = median(values);
  const square = values.reduce((sum, value) => sum + (value - center) ** 2, 0) / values.length;
  return Math.max(robustSpread(values), Math.sqrt(square), 0.8 * spotScatterPct(center));
}
