import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { useWords } from '../../words.ts';
import { MoveReadingForm } from './MoveReadingForm.tsx';
import { ReadingAction } from './ReadingAction.tsx';

/** Moves a reading that was saved for the wrong board; nothing where there is none to move. */
export function MoveReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const words = useWords();
  const { say } = words;
  if (reading.isDamaged || isSlip(reading.excluded)) return null;
  const recordName = readingName(reading, depth, words);
  return (
    <ReadingAction words={say('reading-move.button')} title={say('reading-move.of', { recordName })}>
      {(onClose) => <MoveReadingForm {...{ reading, recordName, onClose }} />}
    </ReadingAction>
  );
}
