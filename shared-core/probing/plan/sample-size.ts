/**
 * How many boards of a stack to probe, and which ones next.
 */
import { normalCdf, normalDensity } from '../../wood/maths/gaussian.ts';
import { coverageFactor } from '../../wood/maths/student-t.ts';

const checkBoards = (boards: number): void => {
  if (!(Number.isInteger(boards) && boards >= 1 && boards <= 1_000_000)) {
    throw new RangeError(`A stack has 1 to 1000000 boards, not ${boards}.`);
  }
};
const checkCertainty = (certainty: number): void => {
  if (!(certainty >= 0.5 && certainty <= 0.999)) {
    throw new RangeError(`Certainty ${certainty} is outside 0.5 to 0.999.`);
  }
};

/** A sample for an endless population, brought down to this one; never less than one board or more than all. */
const finite = (endless: number, boards: number): number =>
  Math.min(boards, Math.max(1, Math.ceil(endless / (1 + (endless - 1) / boards) - 1e-9)));

/**
 * Boards to probe so that their mean is within a margin of the stack's mean.
 *
 * @param boards                in the stack, 1 to 1000000
 * @param standardDeviationPct  of the boards among themselves, % MC, above 0
 * @param marginPct             % MC, above 0
 * @param certainty             0.5 to 0.999
 * @param spreadOf              how many boards that spread was found from, 2 or more; null where it is only a usual one
 * @throws                      RangeError outside those ranges
 * Source: n0 = (t s / e)², n = n0 / (1 + (n0 - 1) / N): W. G. Cochran, Sampling Techniques (3rd edition, 1977),
 * section 4.6, and R. L. Scheaffer, W. Mendenhall and L. Ott, Elementary Survey Sampling, section 4.4; from memory. With
 * a spread found from few boards t has the degrees of freedom of that first sample (C. Stein, Annals of Mathematical
 * Statistics 16, 1945; from memory); without one, those of the sample that is asked for.
 * @example boardsForMean(60, 1.5, 0.5, 0.9, null) // 19
 */
export function boardsForMean(
  boards: number,
  standardDeviationPct: number,
  marginPct: number,
  certainty: number,
  spreadOf: number | null,
): number {
  checkBoards(boards);
  checkCertainty(certainty);
  if (!(standardDeviationPct > 0 && Number.isFinite(standardDeviationPct) && marginPct > 0)) {
    throw new RangeError('The spread between boards and the margin must be above 0 % MC.');
  }
  const asked = (degrees: number): number =>
    finite(((coverageFactor(certainty, degrees) * standardDeviationPct) / marginPct) ** 2, boards);
  if (spreadOf !== null) {
    if (!(spreadOf >= 2)) throw new RangeError(`A spread is found from 2 boards or more, not ${spreadOf}.`);
    return asked(spreadOf - 1);
  }
  let sample = Math.min(boards, Math.max(2, asked(1e6)));
  while (sample < boards && asked(sample - 1) > sample) sample += 1;
  return sample;
}

/**
 * Boards to probe, all of them found ready, so that at most a given share of the stack can still be wet.
 *
 * If `wet` boards of N are wet, n probed boards are all dry with the hypergeometric probability
 * C(N - wet, n) / C(N, n); n is the least for which that is no more than 1 - certainty at the least number of wet
 * boards that would be too many. Acceptance sampling with no failure allowed (any textbook of quality control).
 *
 * @param boards        in the stack, 1 to 1000000
 * @param tolerableWet  share of boards that may be wet without harm, 0 to below 1; 0 asks for every board
 * @param certainty     0.5 to 0.999
 * @throws              RangeError outside those ranges
 * @example boardsForNoneWet(60, 0.1, 0.9) // 16
 */
export function boardsForNoneWet(boards: number, tolerableWet: number, certainty: number): number {
  checkBoards(boards);
  checkCertainty(certainty);
  if (!(tolerableWet >= 0 && tolerableWet < 1)) {
    throw new RangeError(`Share ${tolerableWet} is outside 0 to below 1.`);
  }
  const tooMany = Math.floor(boards * tolerableWet + 1e-9) + 1;
  let missed = 1;
  let probed = 0;
  while (missed > 1 - certainty + 1e-12) {
    missed *= (boards - tooMany - probed) / (boards - probed);
    probed++;
  }
  return probed;
}

/** What is known of a board's average; forecast, or estimate of its last round, or its stack's for one never probed. */
export type BoardKnowledge = {
  boardId: number;
  averagePct: number;
  /** Standard uncertainty of the average today, % MC, above 0: it grows again with the days since the last round. */
  standardUncertaintyPct: number;
};

export type ProbeNext = {
  boardId: number;
  /** What a certain answer would save on average, in % MC of a wrong call; boards at 0 need no probing. */
  worthPct: number;
  /** Probability that the call which now looks right is wrong. */
  wrongCall: number;
};

/**
 * Boards in the order in which readings would tell most: the least sure and nearest to a limit of the use's range
 * come first. A board that is surely ready, or surely wet, comes last however roughly its MC is known.
 *
 * Worth is the expected value of perfect information where a wrong call costs in proportion to how far the board is
 * beyond the limit: s times the unit normal loss at the distance in standard deviations (H. Raiffa and R. Schlaifer,
 * Applied Statistical Decision Theory, 1961; from memory), for the nearer limit.
 *
 * @throws RangeError for an uncertainty not above 0
 */
export function probeNext(
  boards: readonly BoardKnowledge[],
  endUse: { minPct: number; maxPct: number },
): ProbeNext[] {
  return boards
    .map(({ boardId, averagePct, standardUncertaintyPct }) => {
      if (!(standardUncertaintyPct > 0 && Number.isFinite(averagePct))) {
        throw new RangeError(`Board ${boardId} has no average with an uncertainty above 0.`);
      }
      const away = Math.min(Math.abs(averagePct - endUse.maxPct), Math.abs(averagePct - endUse.minPct));
      const z = away / standardUncertaintyPct;
      const wrongCall = normalCdf(-z);
      return {
        boardId,
        worthPct: Math.max(0, standardUncertaintyPct * (normalDensity(z) - z * wrongCall)),
        wrongCall,
      };
    })
    .sort((a, b) => b.worthPct - a.worthPct || a.boardId - b.boardId);
}
