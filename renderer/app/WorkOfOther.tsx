import { useWorkOfOther } from '../stores/work-of-other.ts';
import { Banner } from '../ui/Banner.tsx';
import { useWords } from '../words.ts';
import css from './work-of-other.module.css';

/** Another window changes many boards: what this one shows of them is partly changed. */
export function WorkOfOther() {
  const { say } = useWords();
  const progress = useWorkOfOther((work) => work.progress);
  if (!progress) return null;
  const sentence = say('frame.other-changing');
  const { done, total } = progress;
  return (
    <Banner>
      <span>{sentence}</span>
      <progress className={css.progress} aria-label={sentence} value={done} max={total} />
      {/* A screen reader would read out every step. */}
      <span className="soft" aria-hidden="true">
        {say('common.done-of', { done, total })}
      </span>
    </Banner>
  );
}
