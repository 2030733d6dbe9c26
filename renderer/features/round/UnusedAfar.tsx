import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { useWords } from '../../words.ts';

/** Why a reading is not used, to be read from two meters away: the list of spots, which says more, is not shown there. */
export function UnusedAfar({
  reading,
  className,
}: {
  reading: JudgedReading;
  className: string | undefined;
}) {
  const { say } = useWords();
  const refused = reading.suspicions.find(({ severity }) => severity === 'refused');
  if (!refused) return null;
  // A sentence chooses by no name with a hyphen.
  const rule = refused.rule === 'typing-slip' ? 'slip' : refused.rule;
  return <span className={className}>{say('live.unused-by.far', { rule })}</span>;
}
