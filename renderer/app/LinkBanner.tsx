import type { LinkState } from '../data/bridge.ts';
import { Banner } from '../ui/Banner.tsx';
import { useWords } from '../words.ts';

/** Says that nothing can be saved now, why, and what to do. */
export function LinkBanner({ state }: { state: LinkState }) {
  const { say } = useWords();
  const sentences = {
    away: say('frame.not-responding'),
    locked: say('frame.restarted'),
    foreign: say('frame.foreign'),
    connecting: null,
    open: null,
  };
  return sentences[state] && <Banner kind="problem">{sentences[state]}</Banner>;
}
