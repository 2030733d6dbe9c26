import { useLink } from '../stores/link.ts';
import { Banner } from '../ui/Banner.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';

/** Says that nothing can be saved now, why, and what to do. It stays in sight, and is read out again at each try. */
export function LinkBanner() {
  const { say } = useWords();
  const { state, tries } = useLink();
  const sentences = {
    away: say('frame.not-responding'),
    silent: say('frame.not-responding'),
    locked: say('frame.restarted'),
    foreign: say('frame.foreign'),
    connecting: null,
    open: null,
  };
  if (sentences[state] === null) return null;
  return (
    <div className={css.link}>
      <Banner key={tries} kind="problem">
        {sentences[state]}
      </Banner>
    </div>
  );
}
