import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { exclusionText } from '../../../shared-core/record-words/exclusion-text.ts';
import { useWords } from '../../words.ts';
import { MovedReading } from './MovedReading.tsx';
import css from './record-list.module.css';

/**
 * Why a reading is excluded, or what is questionable about it and what to do. That the wood's temperature is unknown
 * is true of all of them: the round's own button says it once.
 */
export function ReadingRemarks({
  reading,
  but,
}: {
  reading: JudgedReading;
  /** Those that are shown elsewhere. */
  but: readonly Suspicion[];
}) {
  const { say } = useWords();
  const { excluded, suspicions, movedTo } = reading;
  if (movedTo) {
    return (
      <p className={css.note}>
        <MovedReading reading={reading} />
      </p>
    );
  }
  if (excluded !== null) {
    return <p className={css.note}>{say('exclude.excluded', { reason: exclusionText(excluded, say) })}</p>;
  }
  return <Remarks of={suspicions.filter((each) => !but.some((other) => isSame(each, other)))} />;
}

/** What is questionable about readings, and what to do. */
export function Remarks({ of }: { of: readonly Suspicion[] }) {
  const { say } = useWords();
  return of
    .filter(({ rule }) => rule !== 'temperature-unknown')
    .map(({ rule, severity, why, whatToDo }) => (
      <p key={rule} className={css[severity]}>
        <strong>{say(`severity.${severity}`)}</strong> {say(why)} {say(whatToDo)}
      </p>
    ));
}

const isSame = (one: Suspicion, other: Suspicion): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What is said alike of every reading that is not excluded; nothing where there is only one. */
export function suspicionsOfAll(readings: readonly JudgedReading[]): Suspicion[] {
  const [first, ...others] = readings.filter(({ excluded }) => excluded === null);
  return first === undefined || others.length === 0
    ? []
    : first.suspicions.filter((each) =>
        others.every(({ suspicions }) => suspicions.some((other) => isSame(each, other))),
      );
}
