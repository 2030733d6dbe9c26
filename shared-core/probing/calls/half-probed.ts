/** A board of whose plan only some spots are read. */
import { DAY_MS } from '../../time.ts';
import { message } from '../../words/message.ts';
import type { BoardEstimate, Estimate } from '../readings/estimate.ts';
import type { BoardEvidence, EarlierRound } from '../readings/evidence.ts';
import type { ShellOrCore, Suspicion } from '../readings/reading.ts';
import { expectationNow } from '../suspicions/expectation.ts';
import { possibleRange } from '../suspicions/possible-change.ts';
import type { Assessment, SpotsRead } from './assessment.ts';
import { isTooWetForIndoors } from './call-here.ts';
import { isSurelyTooWet } from './decide.ts';
import { ENOUGH, halfProbed, spotsLacking } from './spots-read.ts';

/** First reason of a round that does not replace the call of the full round before it. */
export const FULL_ROUND_HOLDS = 'call.half-read-since';

/** Standard deviations of the drying model that a sound board does not pass. */
export const MODEL_SCORE = 2;

/**
 * How far a round is read that left out the core, where the full round before it read that and called the board ready; null
 * where it did not, or this one has it too. Its plan has no core, but it cannot replace the other without.
 */
export function coreUnreadSince(estimate: Estimate, evidence: BoardEvidence): SpotsRead | null {
  const { plan, fullRound } = evidence;
  if (plan === undefined || fullRound?.isReady !== true) return null;
  const core = Math.min(ENOUGH, fullRound.estimate.inCore);
  return core <= plan.core ? null : halfProbed(estimate, { ...evidence, plan: { ...plan, core } });
}

/**
 * Whether the spots that are read decide the call, whatever the others read: it is too wet with a chance of 95 %. That the
 * others would show an average within the target is less likely still. While its core is open, only a board that is too wet
 * for a heated room is decided: any other could be brought in with a core that checks there, and nobody read it.
 */
export function isDecided(firm: BoardEstimate | null, evidence: BoardEvidence): boolean {
  if (firm === null || !isSurelyTooWet(firm.estimate, evidence.endUse)) return false;
  const { estimate } = firm;
  const isCoreOpen = estimate.countedCore === 0 && spotsLacking(estimate, evidence).core > 0;
  return !isCoreOpen || isTooWetForIndoors(estimate.averagePct, null);
}

/**
 * No call, but where an earlier round read every spot and this one contradicts it: then the board is to be probed again.
 *
 * @param firm     from the readings that are not questionable; null where there are none
 * @param heaviest what speaks most against its readings
 */
export function callHalfProbed({
  half,
  firm,
  heaviest,
  evidence,
}: {
  half: SpotsRead;
  firm: BoardEstimate | null;
  heaviest: Suspicion | undefined;
  evidence: BoardEvidence;
}): Pick<Assessment, 'call' | 'reasons' | 'reliable' | 'spotsRead'> {
  const { fullRound } = evidence;
  const why = heaviest === undefined ? [] : [heaviest.why];
  const reliable = firm?.estimate ?? null;
  if (!fullRound)
    return {
      call: null,
      reasons: [message('call.half-read', { ...half }), ...why],
      reliable,
      spotsRead: half,
    };
  const probedOn = fullRound.takenAt;
  const isContradicted =
    firm === null
      ? heaviest?.rule === 'jump-since-last-round'
      : contradicts(firm.estimate, fullRound, evidence);
  return isContradicted
    ? {
        call: 'probe-again',
        reasons: [message('call.contradicts-full', { ...half, probedOn }), ...why],
        reliable: null,
        spotsRead: null,
      }
    : {
        call: null,
        reasons: [message(FULL_ROUND_HOLDS, { ...half, probedOn }), ...why],
        reliable,
        spotsRead: half,
      };
}

/**
 * Whether two rounds cannot both be right: the 90 % interval of the later average lies wholly outside that of the earlier
 * one, moved by the most that the average can have changed since. By chance alone, that is so of 2 boards in 100.
 *
 * That change is what the drying model expects of shell and core, within two standard deviations. Without a forecast it is
 * what is possible for any board. The average of a parabola is two parts of its middle and one of its faces.
 */
function contradicts(now: Estimate, fullRound: EarlierRound, evidence: BoardEvidence): boolean {
  const { estimate: before } = fullRound;
  const at = evidence.readings.at(-1)?.takenAt ?? fullRound.takenAt;
  const days = Math.max(0, (Date.parse(at) - Date.parse(fullRound.takenAt)) / DAY_MS);
  const expectation = expectationNow({ ...evidence, previous: fullRound }, at);
  const change = (depth: ShellOrCore) => {
    const beforePct = (depth === 'shell' ? before.shellPct : before.corePct) ?? before.averagePct;
    const expected = expectation?.[depth];
    const { lowPct, highPct } = expected
      ? {
          lowPct: expected.pct - MODEL_SCORE * expected.sdLowPct,
          highPct: expected.pct + MODEL_SCORE * expected.sdHighPct,
        }
      : possibleRange(depth, beforePct, evidence.board.thicknessMm, days, evidence);
    return { fall: lowPct - beforePct, rise: highPct - beforePct };
  };
  const shell = change('shell');
  const core = change('core');
  const lowest = before.lowPct + (2 * core.fall + shell.fall) / 3;
  const highest = before.highPct + (2 * core.rise + shell.rise) / 3;
  return now.highPct < lowest || now.lowPct > highest;
}
