import type { CoreWay } from '../../shared-core/probing/readings/plan-basis.ts';
import { bridge } from '../data/bridge.ts';
import { inRound } from './round.ts';
import { move } from './round-aim.ts';
import { refreshRound } from './round-opening.ts';

/** Chooses how the core of a board is read, or that it is not; also for the other boards of the round, where that is asked. */
export const planCore = (boardId: number, core: CoreWay | null, forRound: boolean) =>
  inRound(async ({ id: roundId }) => {
    await move(bridge().command('rounds.planCore', { roundId, boardId, core, forRound }));
    // The event carries one board.
    if (forRound) await refreshRound(roundId);
  });
