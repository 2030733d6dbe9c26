import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Aims } from '../rounds/aims.ts';
import type { MeterDesk } from './meter-desk.ts';
import { simulatedTruth } from './simulated-truth.ts';

/** Lets the simulated meter show what the spot holds that the window with the meter aims at. */
export function createSimulatedAim(context: AppContext, { link, holder }: MeterDesk, aims: Aims): void {
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
    const planned = planSpots(board).plan[at.spotIndex];
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
