import { message } from '../../shared-core/words/message.ts';
import { faultMessage } from './fault-message.ts';
import type { Windows } from './windows.ts';

/**
 * Work in the background that cannot run now, as on a full disk. Windows hear of it once, and again when all of it is
 * done.
 */
export function createDelays(
  windows: Pick<Windows, 'emit' | 'emitTo'>,
  reportFault: (error: unknown) => void,
) {
  const delayed = new Set<object>();
  return {
    /**
     * @param by      whose work it is
     * @param undone  what a person misses meanwhile
     */
    begin: (by: object, error: unknown, undone = message('refusal.saved-not-updated')): void => {
      const isNew = delayed.size === 0;
      delayed.add(by);
      if (!isNew) return;
      const problem = faultMessage(error, { undone, again: message('refusal.goes-on') }, reportFault);
      windows.emit('updates.delayed', { problem });
    },
    end: (by: object): void => {
      if (delayed.delete(by) && delayed.size === 0) windows.emit('updates.delayed', { problem: null });
    },
    /** Something that follows from what a window did failed, and is made again the next time someone asks for it. */
    tell: (window: string, error: unknown): void => {
      const undone = { undone: message('refusal.saved-not-updated'), again: message('refusal.open-again') };
      windows.emitTo(window, 'updates.delayed', { problem: faultMessage(error, undone, reportFault) });
    },
  };
}
export type Delays = ReturnType<typeof createDelays>;
