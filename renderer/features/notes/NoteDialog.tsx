import { type ReactNode, useRef, useState } from 'react';
import { z } from 'zod';
import { Conflict } from '../../../shared-core/contract/answer.ts';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import { noteSchema } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { Choice } from '../../form/Choice.tsx';
import { TextArea } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ note: noteSchema });

/** What a note can be written on. */
export interface NoteOn {
  subject: Subject;
  title: string;
  /** As it is saved. */
  note: string;
}

/** One of several that a note can be written on. */
export interface ChosenNote extends NoteOn {
  /** What it is called among them. */
  name: string;
}

/** What was typed so far beyond what was saved. */
const typedBeyond = (saved: string, now: string): string =>
  now.startsWith(saved) ? now.slice(saved.length).trimStart() : now;

/** Writes a note with the hands busy: Enter saves it, Esc leaves it as it was. */
export function NoteDialog({
  on,
  others = [],
  below,
  onClose,
}: {
  /** What it is written on, unless another is chosen. */
  on: NoteOn;
  /** All that can be chosen, `on` among them. */
  others?: readonly ChosenNote[];
  /** What else can be put down about what is chosen. */
  below?: (subject: Subject) => ReactNode;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [chosen, setChosen] = useState(on);
  const { draft, field, read, refill } = useDraft(schema, { note: on.note });
  const [theirs, setTheirs] = useState<string | null>(null);
  const form = useRef<HTMLDivElement>(null);
  const { subject, title, note: shown } = chosen;
  async function save(): Promise<void> {
    const typed = read().note.trim();
    try {
      await bridge().command('notes.set', { subject, note: typed, shown: theirs ?? shown });
    } catch (error) {
      if (error instanceof Conflict) setTheirs((error.current as { note: string }).note);
      throw error;
    }
  }
  /** What was typed goes along: it was meant for there. */
  function choose(kind: Subject['kind']): void {
    const next = others.find((each) => each.subject.kind === kind);
    if (!next || kind === subject.kind) return;
    const typed = typedBeyond(shown, draft.note);
    setChosen(next);
    setTheirs(null);
    refill({ note: [next.note, typed].filter(Boolean).join('\n') });
    // A finger goes on to type; with arrow keys, the next may be meant.
    requestAnimationFrame(() => {
      if (!document.activeElement?.matches(':focus-visible'))
        form.current?.querySelector('textarea')?.focus();
    });
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
                setChosen({ ...chosen, note: theirs });
                setTheirs(null);
                refill({ note: theirs });
              },
            }
      }
    >
      <div ref={form} className="column">
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
        {others.length > 1 && (
          <Choice
            label={say('note.on')}
            value={subject.kind}
            options={others.map(({ subject: { kind }, name }) => ({ value: kind, label: name }))}
            onValue={choose}
          />
        )}
        {below?.(subject)}
      </div>
    </FormDialog>
  );
}
