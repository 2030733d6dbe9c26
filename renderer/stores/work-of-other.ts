import { create } from 'zustand';
import type { EventData } from '../../shared-core/contract/events.ts';
import { bridge } from '../data/bridge.ts';
import { isLinkLost, useLink } from './link.ts';

/** How far another window's act on many boards is; null while there is none. */
export const useWorkOfOther = create<EventData<'work.ofOther'>>()(() => ({ progress: null }));

export function followWorkOfOther(): () => void {
  const unfollow = bridge().on('work.ofOther', (news) => useWorkOfOther.setState(news));
  // Its end may come while nothing is heard.
  const unfollowLink = useLink.subscribe((link) => {
    if (isLinkLost(link)) useWorkOfOther.setState({ progress: null });
  });
  return () => {
    unfollow();
    unfollowLink();
  };
}
