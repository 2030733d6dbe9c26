import { useEffect, useRef, useState } from 'react';
import { firmCall, openSpots } from '../../../shared-core/contract/round.ts';
import { type PedalAction, pedalActionOf } from '../../../shared-core/hands-free/pedal-keys.ts';
import { unsavedOf, useDraftsOf } from '../../stores/drafts.ts';
import { finishRound } from '../../stores/round-opening.ts';
import { useSettings } from '../../stores/settings.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { keyName } from '../settings/key-name.ts';
import type { Probing } from './useProbing.ts';

/** So many boards are named; the others are counted. */
const MOST_NAMED = 3;
/** A key that is pressed so soon after the dialog opened was meant for the round. */
const TWICE_MS = 400;
/** With something still to be read, a foot has to mean it: a pedal needs no way to the button. */
const MEANT_MS = 1500;
/** They do in this dialog what they do in any other, whatever a pedal sends. */
const OF_DIALOGS = ['Enter', ' ', 'Tab', 'Escape'];

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
  const pedalKeys = useSettings(({ settings }) => settings.pedalKeys);
  const nameOf = (action: 'go-on' | 'go-back') => {
    const key = pedalKeys[action];
    return key === null || OF_DIALOGS.includes(key) ? undefined : say(keyName(key));
  };
  function finish(): void {
    onClose();
    void finishRound();
  }
  /** The pedal that goes on presses what ends the round, and the one that goes back what keeps it. */
  usePedal((action) => {
    if (action === 'go-back') onClose();
    else if (action === 'go-on' && performance.now() - openedAt >= (isAllRead ? TWICE_MS : MEANT_MS))
      finish();
  });
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
          shortcut={nameOf('go-on')}
          onClick={({ detail }) => {
            // By a key that was pressed twice.
            if (detail === 0 && performance.now() - openedAt < TWICE_MS) return;
            finish();
          }}
        >
          {say('finish.finish')}
        </Button>
        <Button shortcut={nameOf('go-back')} onClick={onClose}>
          {say('finish.keep-probing')}
        </Button>
      </Actions>
    </Dialog>
  );
}

/** What a pedal sends while the dialog is open; a foot that stays on it means it once. */
function usePedal(press: (action: PedalAction) => void): void {
  const newest = useRef(press);
  useEffect(() => {
    newest.current = press;
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      if (OF_DIALOGS.includes(event.key)) return;
      const action = pedalActionOf(event.key, useSettings.getState().settings.pedalKeys, false);
      if (action === null) return;
      event.preventDefault();
      event.stopPropagation();
      if (!event.repeat) newest.current(action);
    };
    // On its way down: a dialog keeps its keys to itself.
    addEventListener('keydown', onKey, true);
    return () => removeEventListener('keydown', onKey, true);
  }, []);
}
