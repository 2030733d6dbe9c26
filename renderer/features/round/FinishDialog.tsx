import { unsavedOf, useDraftsOf } from '../../stores/drafts.ts';
import { finishRound } from '../../stores/round-opening.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';

/** The question has the focus, and no button: Enter, pressed once more than needed, does nothing. */
const focusOn = (question: HTMLElement | null) => question?.focus();

/** Asks before it ends the round, and says what is still unread and unsaved. */
export function FinishDialog({ round, onClose }: Probing) {
  const { say } = useWords();
  const unread = round.summary.boards - round.summary.probed;
  const values = unsavedOf(useDraftsOf(round.id)).length;
  return (
    <Dialog title={say('finish.title')} onClose={onClose}>
      <p ref={focusOn} tabIndex={-1}>
        {say(round.summary.message)}
      </p>
      {values > 0 && <p>{say('finish.unsaved', { values })}</p>}
      <p>
        {unread > 0 && say('finish.unread', { unread })} {say('finish.effect')}
      </p>
      <Actions>
        <Button
          kind="main"
          onClick={() => {
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
