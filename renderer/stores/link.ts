import { create } from 'zustand';
import type { LinkState } from '../data/bridge.ts';

/** Whether the machine can be reached, and how often it came back: what is on screen is asked for again then. */
export const useLink = create<{ state: LinkState; returns: number }>()(() => ({
  state: 'connecting',
  returns: 0,
}));

export function setLink(state: LinkState): void {
  useLink.setState((link) => ({
    state,
    returns:
      state === 'open' && !['connecting', 'open'].includes(link.state) ? link.returns + 1 : link.returns,
  }));
}
