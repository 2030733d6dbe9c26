import { useState } from 'react';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { NoteDialog } from './NoteDialog.tsx';

/** Opens the note on a reading. */
export function ReadingNote({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const { say, formats } = useWords();
  const [isWriting, setWriting] = useState(false);
  const { id, raw, unit, note = '' } = reading;
  const recordName = say('reading.name', { depth, shownValue: rawText(raw, unit, formats) });
  const title = say('note.of-reading', { recordName });
  return (
    <>
      <Button kind="quiet" aria-label={title} onClick={() => setWriting(true)}>
        {say('note.open')}
      </Button>
      {isWriting && (
        <NoteDialog
          on={{ subject: { kind: 'reading', id }, title, note }}
          onClose={() => setWriting(false)}
        />
      )}
    </>
  );
}
