import type { RoundState } from '../../../shared-core/contract/round.ts';
import { finishRound } from '../../stores/round.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Asks before it ends the round, and says what is still unread; Enter goes on probing. */
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
        <Button kind="main" autoFocus onClick={onClose}>
          {say('finish.keep-probing')}
        </Button>
        <Button
          onClick={() => {
            onClose();
            void finishRound();
          }}
        >
          {say('finish.finish')}
        </Button>
      </Actions>
    </Dialog>
  );
}
