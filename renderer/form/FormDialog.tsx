import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { guardLeaving } from '../stores/navigation.ts';
import { Banner } from '../ui/Banner.tsx';
import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { WorkUnderWay } from '../ui/WorkUnderWay.tsx';
import { useWords } from '../words.ts';
import { useSaving } from './useSaving.ts';
import './form-dialog.css';

/** What `onSave` throws where fields are marked wrong. */
export const fieldsMarked = (): Refusal => new Refusal(message('validation.fix-fields'));

interface FormConflict {
  takeTheirs: () => void;
  /** What was saved meanwhile, where the fields do not show it. */
  shown?: ReactNode;
  /** What the two buttons say, where it is not usual. */
  keepWords?: string;
  theirsWords?: string;
}

interface SavingWork {
  label: string;
  underWay: Progress | null;
  onCancel: () => void;
}
interface Progress {
  done: number;
  total: number;
}

/**
 * A form over the screen. It closes when `onSave` succeeds; when that throws, the sentence is shown, everything typed
 * stays, and the focus goes to the first field that is marked wrong. Where none is, the sentence is scrolled into sight.
 * Going back and Escape leave nothing typed behind: it says how to save or discard it.
 */
export function FormDialog({
  title,
  saveWords,
  onSave,
  onClose,
  conflict,
  work,
  isQuestion = false,
  instead = null,
  children,
}: {
  title: string;
  /** What the button does: "Add the stack". */
  saveWords: string;
  onSave: () => Promise<unknown>;
  onClose: () => void;
  /** Where another edit came between: to take that one; saving once more saves over it. */
  conflict?: FormConflict | null;
  /** Whether what `onSave` threw is a question, which the button answers with yes. */
  isQuestion?: boolean;
  /** The other answer of that question, or what can be done where saving was refused. */
  instead?: { words: string; onSave: () => Promise<unknown> } | null;
  /** What saving it may take long for. Once that is under way, closing the form stops it. */
  work?: SavingWork;
  children: ReactNode;
}) {
  const { say } = useWords();
  const { busy, problem, save, tell, forgetProblem, form, answer } = useSaving(onClose);
  const isTyped = useRef(false);
  const isWarned = useRef(false);
  /** What is done in a moment shows no progress. */
  const long = work?.underWay && work.underWay.total > 0 ? { ...work, ...work.underWay } : null;
  /** Saving was refused, and there is another way: that comes first, and has the focus. */
  const isRefused = instead !== null && !isQuestion;
  const otherWay = instead && (
    <Button
      kind={isRefused ? 'main' : 'plain'}
      autoFocus={isRefused}
      aria-disabled={busy}
      onClick={() => void save(instead.onSave)}
    >
      {instead.words}
    </Button>
  );
  useLayoutEffect(() =>
    guardLeaving(() => {
      // One that is being saved may go elsewhere by itself, before it is gone.
      const wouldLose = isTyped.current && !busy;
      if (wouldLose) tell(say('common.not-saved'));
      return wouldLose;
    }),
  );

  /** Escape slips, and what was typed would be gone. */
  function onEscape(): void {
    if (isTyped.current && !isWarned.current && !busy) {
      isWarned.current = true;
      tell(say('common.escape-discards'));
    } else onClose();
  }

  return (
    <Dialog title={title} onClose={long ? long.onCancel : onEscape}>
      <form
        ref={form}
        className="column"
        noValidate
        onInput={() => {
          isTyped.current = true;
          isWarned.current = false;
          // What was wrong may be right now.
          if (!conflict) forgetProblem();
        }}
        onSubmit={(event) => {
          event.preventDefault();
          // Not to a form that this one was opened from.
          event.stopPropagation();
          void save(onSave);
        }}
      >
        {children}
        {(problem || conflict) && (
          <div ref={answer} className="column form-dialog-answer">
            {problem && <Banner kind={isQuestion ? 'caution' : 'problem'}>{problem.sentence}</Banner>}
            {conflict?.shown}
          </div>
        )}
        {long ? (
          <WorkUnderWay label={long.label} done={long.done} total={long.total} onCancel={long.onCancel} />
        ) : (
          <Actions>
            {isRefused && otherWay}
            {/* One that is disabled would lose the focus. */}
            <Button kind={isRefused ? 'plain' : 'main'} type="submit" aria-disabled={busy}>
              {busy
                ? say('common.saving')
                : conflict
                  ? (conflict.keepWords ?? say('conflict.keep-mine'))
                  : saveWords}
            </Button>
            {!isRefused && otherWay}
            {conflict && (
              <Button
                disabled={busy}
                onClick={() => {
                  conflict.takeTheirs();
                  forgetProblem();
                }}
              >
                {conflict.theirsWords ?? say('conflict.use-theirs')}
              </Button>
            )}
            <Button onClick={onClose}>{say('common.cancel')}</Button>
          </Actions>
        )}
      </form>
    </Dialog>
  );
}
