import { useState } from 'react';
import { z } from 'zod';
import { Conflict } from '../../../shared-core/contract/answer.ts';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import { noteSchema } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { TextArea } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ note: noteSchema });

/** Writes a note with the hands busy: Enter saves it, Esc leaves it as it was. */
export function NoteDialog({
  subject,
  title,
  note,
  onClose,
}: {
  subject: Subject;
  title: string;
  /** As it is saved. */
  note: string;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { field, read, refill } = useDraft(schema, { note });
  const [shown, setShown] = useState(note);
  const [theirs, setTheirs] = useState<string | null>(null);
  async function save(): Promise<void> {
    const typed = read().note.trim();
    try {
      await bridge().command('notes.set', { subject, note: typed, shown: theirs ?? shown });
    } catch (error) {
      if (error instanceof Conflict) setTheirs((error.current as { note: string }).note);
      throw error;
    }
  }
  return (
    <FormDialog
      title={title}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={
        theirs === null
          ? null
          : {
              shown: (
                <p translate="no">
                  {theirs === '' ? say('note.theirs-none') : say('note.theirs', { note: theirs })}
                </p>
              ),
              takeTheirs: () => {
                setShown(theirs);
                setTheirs(null);
                refill({ note: theirs });
              },
            }
      }
    >
      <TextArea
        label={say('note.field')}
        hint={say('note.keys')}
        autoFocus
        {...field('note')}
        onFocus={({ target }) => target.setSelectionRange(target.value.length, target.value.length)}
        onKeyDown={(event) => {
          // Not the Enter that ends a word of an input method.
          if (event.key !== 'Enter' || event.shiftKey || event.nativeEvent.isComposing) return;
          event.preventDefault();
          event.currentTarget.form?.requestSubmit();
        }}
      />
    </FormDialog>
  );
}
