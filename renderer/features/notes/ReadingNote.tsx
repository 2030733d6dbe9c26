import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { useWords } from '../../words.ts';
import { ReadingAction } from '../records/ReadingAction.tsx';
import { NoteDialog } from './NoteDialog.tsx';

/** Opens the note on a reading. */
export function ReadingNote({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const words = useWords();
  const { say } = words;
  const { id, note = '' } = reading;
  const title = say('note.of-reading', { recordName: readingName(reading, depth, words) });
  return (
    <ReadingAction words={say('note.open')} title={title}>
      {(onClose) => <NoteDialog on={{ subject: { kind: 'reading', id }, title, note }} onClose={onClose} />}
    </ReadingAction>
  );
}
