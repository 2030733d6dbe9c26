import type { RoundState } from '../../../shared-core/contract/round.ts';
import { finishRound } from '../../stores/round.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Ends the round; says what is still unread. */
export function FinishDialog({ round, onClose }: { round: RoundState; onClose: () => void }) {
  const { say } = useWords();
  const unread = round.summary.boards - round.summary.probed;
  return (
    <Dialog title={say('finish.title')} onClose={onClose}>
      <p>{say(round.summary.message)}</p>
      <p>
        {unread === 0 ? say('finish.all-probed') : say('finish.unread', { unread })} {say('finish.effect')}
      </p>
      <Actions>
        <Button
          kind="main"
          autoFocus
          onClick={() => {
            onClose();
            void finishRound();
          }}
        >
          {say('round.finish-round')}
        </Button>
        <Button onClick={onClose}>{say('finish.keep-probing')}</Button>
      </Actions>
    </Dialog>
  );
}
