import { type AppContext, orRefuse } from '../context.ts';
import type { Rounds } from '../rounds/rounds.ts';
import type { MeterDesk } from './meter-desk.ts';
import { simulatedTruth } from './simulated-truth.ts';

/** Lets the simulated meter show what the spot holds that the window with the meter aims at. */
export function createSimulatedAim(
  context: AppContext,
  { link, holder }: MeterDesk,
  { aims, spotOf }: Pick<Rounds, 'aims' | 'spotOf'>,
): void {
  function aim(): void {
    const simulated = link.simulated();
    if (simulated === null) return;
    const window = holder.window();
    const at = window === null ? null : aims.of(window);
    if (at === null || at.spotIndex === null) {
      simulated.setTruth(null);
      return;
    }
    const board = orRefuse(context.yard().boards.get(at.boardId), 'board');
    const planned = spotOf(at);
    simulated.setTruth(planned ? simulatedTruth(board, planned.spot) : null);
  }
  aims.changed.follow((window) => {
    if (window === holder.window()) aim();
  });
  holder.changed.follow(aim);
  link.phaseChanged.follow((phase) => {
    if (phase === 'live') aim();
  });
}
