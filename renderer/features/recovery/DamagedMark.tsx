import { useWords } from '../../words.ts';
import css from './damaged-ways.module.css';

/** Beside the name of an entry that the disk damaged. */
export function DamagedMark() {
  const { say } = useWords();
  return (
    <span className={css.damaged}>
      <span aria-hidden="true">! </span>
      {say('damaged.entry')}
    </span>
  );
}
