import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { LinkState } from '../data/bridge.ts';

/** Whether the machine can be reached, and how often it came back: what is on screen is asked for again then. */
export const useLink = create<{
  state: LinkState;
  returns: number;
  /** How often something was tried while it could not be reached. */
  tries: number;
}>()(() => ({ state: 'connecting', returns: 0, tries: 0 }));

/** Whether the machine was there and is not: the banner at the top says so, and nothing can be saved. */
export const isLinkLost = ({ state }: { state: LinkState }): boolean =>
  state !== 'connecting' && state !== 'open';

export function setLink(state: LinkState): void {
  useLink.setState((link) => ({
    state,
    returns: state === 'open' && isLinkLost(link) ? link.returns + 1 : link.returns,
  }));
}

/** Whether a call failed only because the link was lost, before it was sent or before its answer came. */
export const wentWithLink = (error: unknown): boolean =>
  error instanceof Refusal &&
  ['refusal.machine-away', 'refusal.machine-stopped'].includes(error.problem.code);

/** What was just tried cannot be done: the banner is read out again. */
export const sayLinkLost = (): void => useLink.setState(({ tries }) => ({ tries: tries + 1 }));

/**
 * Says what went wrong. Where that is the lost link, its banner says so, once for all that was tried meanwhile. What may
 * have been done is said when the link is back, as it can be checked then.
 */
export function tellBesideLink(error: unknown, tell: () => void): void {
  const code = isLinkLost(useLink.getState()) && error instanceof Refusal ? error.problem.code : null;
  if (code === 'refusal.machine-away') sayLinkLost();
  else if (code === 'refusal.machine-stopped') {
    const unfollow = useLink.subscribe(({ state }) => {
      if (state !== 'open') return;
      unfollow();
      tell();
    });
  } else tell();
}
