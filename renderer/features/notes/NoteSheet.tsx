import { useState } from 'react';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { NoteDialog } from './NoteDialog.tsx';
import css from './notes.module.css';

/** The note on a board, stack or round, and where it is written. */
export function NoteSheet({ subject, title }: { subject: Subject; title: string }) {
  const { say } = useWords();
  const found = useQuery('notes.get', { subject });
  const [isWriting, setWriting] = useState(false);
  const note = found.output?.note;
  return (
    <Sheet
      title={say('note.title')}
      actions={
        note !== undefined && (
          <Button kind="quiet" onClick={() => setWriting(true)}>
            {say(note === '' ? 'note.write' : 'note.edit')}
          </Button>
        )
      }
    >
      <Await of={[found]}>
        {({ note }) =>
          note === '' ? (
            <p className="soft">{say('note.none')}</p>
          ) : (
            <p translate="no" className={css.note}>
              {note}
            </p>
          )
        }
      </Await>
      {isWriting && note !== undefined && (
        <NoteDialog on={{ subject, title, note }} onClose={() => setWriting(false)} />
      )}
    </Sheet>
  );
}
