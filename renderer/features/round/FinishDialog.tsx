import { useState } from 'react';
import { firmCall, openSpots } from '../../../shared-core/contract/round.ts';
import { unsavedOf, useDraftsOf } from '../../stores/drafts.ts';
import { finishRound } from '../../stores/round-opening.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';

/** So many boards are named; the others are counted. */
const MOST_NAMED = 3;
/** A key that is pressed so soon after the dialog opened was meant for the round. */
const TWICE_MS = 400;

/** Where something is still to be read the question has the focus, and no button: Enter, pressed once too often, does nothing. */
const focusOn = (question: HTMLElement | null) => question?.focus();

/** Asks before it ends the round, and says what is still unread and unsaved. */
export function FinishDialog({ round, onClose }: Probing) {
  const { say } = useWords();
  const unread = round.summary.boards - round.summary.probed;
  const begun = round.boards.filter(
    (board) => board.isRead && firmCall(board) === null && openSpots(board) > 0,
  );
  const named = begun.slice(0, MOST_NAMED);
  const more = begun.length - named.length;
  const values = unsavedOf(useDraftsOf(round.id)).length;
  const isAllRead = unread === 0 && begun.length === 0 && values === 0;
  const [openedAt] = useState(() => performance.now());
  return (
    <Dialog title={say('finish.title')} onClose={onClose}>
      <p ref={isAllRead ? undefined : focusOn} tabIndex={-1}>
        {say(round.summary.message)}
      </p>
      {round.updating > 0 && <p>{say('round-page.updating', { boards: round.updating })}</p>}
      {begun.length > 0 && (
        <p>
          {named
            .map((board) => say('finish.open-spots', { boardCode: board.code, spots: openSpots(board) }))
            .join(' ')}{' '}
          {more > 0 && say('finish.more-open', { boards: more })}
        </p>
      )}
      {values > 0 && <p>{say('finish.unsaved', { values })}</p>}
      <p>
        {unread > 0 && say('finish.unread', { unread })} {say('finish.effect')}
      </p>
      <Actions>
        <Button
          kind="main"
          onClick={({ detail }) => {
            // By a key that was pressed twice.
            if (detail === 0 && performance.now() - openedAt < TWICE_MS) return;
            onClose();
            void finishRound();
          }}
        >
          {say('finish.finish')}
        </Button>
        <Button onClick={onClose}>{say('finish.keep-probing')}</Button>
      </Actions>
    </Dialog>
  );
}
