import type { RoundState } from '../../shared-core/contract/round.ts';
import { bridge } from '../data/bridge.ts';
import { sentenceOf } from './notices.ts';
import { inRound, nothing, useRound } from './round.ts';
import { withNewestAim } from './round-aim.ts';

/** Opens a round: it comes on screen, and the meter is aimed at it. */
export function openRound(roundId: number): Promise<void> {
  if (useRound.getState().round?.id !== roundId) useRound.setState(nothing);
  return show(bridge().command('rounds.open', { roundId }));
}

/** The round is no longer on screen: nothing of the meter is saved until it is again, and its messages are gone. */
export function leaveRound(roundId: number): void {
  const { trouble, done, offersReplacing } = nothing;
  useRound.setState({ trouble, done, offersReplacing });
  // The machine pauses the round by itself where it cannot be told: the link is lost, or another yard is open.
  bridge()
    .command('rounds.leave', { roundId })
    .catch(() => undefined);
}

/** Asks again for the round on screen. */
export function refreshRound(roundId: number): Promise<void> {
  return show(bridge().query('rounds.get', { roundId }));
}

async function show(asked: Promise<RoundState>): Promise<void> {
  try {
    const fresh = await asked;
    useRound.setState(({ round, saved }) => ({
      round: round ? withNewestAim(fresh, round) : fresh,
      error: null,
      saved: fresh.finishedAt === null ? saved : null,
    }));
  } catch (error) {
    useRound.setState({ error: sentenceOf(error) });
  }
}

/** Lets the finished round take readings again, in this window too. */
export function reopenRound(): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.reopen', { roundId: round.id });
    await openRound(round.id);
  });
}

/** Finishes the round on screen; it stays there. */
export function finishRound(): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.finish', { roundId: round.id });
    await refreshRound(round.id);
  });
}

/** Gives the wood temperature of a board; with `boardId` null, that of the whole round. */
export function setWoodTemp(boardId: number | null, woodTempC: number | null): Promise<void> {
  return inRound(async (round) => {
    await bridge().command('rounds.setTemperature', { roundId: round.id, boardId, woodTempC });
    // The event carries one board; all others, and the round's own temperature, come with the whole.
    if (boardId !== null) return;
    await refreshRound(round.id);
    // The reading saved last on another board may have another value now.
    useRound.setState(({ round: now, saved }) =>
      now?.probed?.boardId === saved?.board.boardId ? {} : { saved: null },
    );
  });
}
