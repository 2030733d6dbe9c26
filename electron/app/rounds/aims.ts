import type { Aim } from '../../../shared-core/contract/round.ts';
import { createSignal } from '../signal.ts';
import type { Windows } from '../windows.ts';

/** The spot of a round that a window's next reading belongs to. */
export interface WindowAim extends Aim {
  roundId: number;
}

/** Where each window aims: only while a round is on its screen, so that nothing of the meter is saved unseen. */
export function createAims({ closed }: Pick<Windows, 'closed'>) {
  const aims = new Map<string, WindowAim>();
  /** Where windows left a round: the next one takes it up there, as after a reload. */
  const left = new Map<number, Aim>();
  /** Where each window was that left its round, or closed: it goes on there, whoever else left. */
  const lastOf = new Map<string, WindowAim>();
  /** The same in yards that are not open, by yard: a window may show one until it is opened again. */
  const inOtherYards = new Map<string, ReadonlyMap<string, WindowAim>>();
  const changed = createSignal<string>();

  function forget(window: string): void {
    if (aims.delete(window)) changed.give(window);
  }
  const inRound = (roundId: number): [window: string, aim: WindowAim][] =>
    [...aims].filter(([, aim]) => aim.roundId === roundId);

  /** The round is no longer on the window's screen. */
  function pause(window: string): void {
    const aim = aims.get(window);
    if (aim) remember(window, aim);
    forget(window);
  }
  function remember(window: string, aim: WindowAim): void {
    left.set(aim.roundId, aim);
    lastOf.set(window, aim);
  }
  closed.follow(pause);

  return {
    /** A window aims elsewhere, or again at the same spot; given by its id. */
    changed,
    of: (window: string): WindowAim | null => aims.get(window) ?? null,
    inRound,
    /** Whether a round is on any window's screen. */
    isAnywhere: (): boolean => aims.size > 0,
    pause,
    /** Where the window goes on in the round; null where neither it nor another that left it had it open. */
    leftIn: (roundId: number, window: string): Aim | null => {
      const own = lastOf.get(window);
      return (own?.roundId === roundId ? own : left.get(roundId)) ?? null;
    },
    /** The round comes on the window's screen. */
    enter: (window: string, aim: WindowAim): void => {
      aims.set(window, aim);
      lastOf.delete(window);
      left.delete(aim.roundId);
      changed.give(window);
    },
    /** Aims elsewhere in a round. A window that has left it by now only goes on there once it comes back. */
    move: (window: string, aim: WindowAim): void => {
      if (aims.get(window)?.roundId !== aim.roundId) {
        remember(window, aim);
        return;
      }
      aims.set(window, aim);
      changed.give(window);
    },
    /** The window aims at nothing. */
    forget,
    /** No window aims at the round any more. */
    leaveRound: (roundId: number): void => {
      left.delete(roundId);
      for (const [window, aim] of lastOf) if (aim.roundId === roundId) lastOf.delete(window);
      for (const [window] of inRound(roundId)) forget(window);
    },
    /** Another yard is opened. */
    leave: (yard: string | null): void => {
      if (yard !== null) inOtherYards.set(yard, new Map([...lastOf, ...aims]));
      left.clear();
      lastOf.clear();
      for (const window of [...aims.keys()]) forget(window);
    },
    /** The yard was opened: each window goes on where it was in it, once it opens its round. */
    comeBack: (yard: string): void => {
      for (const [window, aim] of inOtherYards.get(yard) ?? []) lastOf.set(window, aim);
      inOtherYards.delete(yard);
    },
  };
}
export type Aims = ReturnType<typeof createAims>;
