import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { useWords } from '../../words.ts';
import { exclusionText } from './exclusion-text.ts';
import css from './record-list.module.css';

/**
 * Why a reading is excluded, or what is questionable about it and what to do. That the wood's temperature is unknown
 * is true of all of them: the round's own button says it once.
 */
export function ReadingRemarks({ reading: { excluded, suspicions } }: { reading: JudgedReading }) {
  const { say } = useWords();
  if (excluded !== null) {
    return <p className={css.note}>{say('exclude.excluded', { reason: exclusionText(excluded, say) })}</p>;
  }
  return suspicions
    .filter(({ rule }) => rule !== 'temperature-unknown')
    .map(({ rule, severity, why, whatToDo }) => (
      <p key={rule} className={css[severity]}>
        <strong>{say(`severity.${severity}`)}</strong> {say(why)} {say(whatToDo)}
      </p>
    ));
}
