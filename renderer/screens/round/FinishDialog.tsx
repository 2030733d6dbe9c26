import type { RoundState } from '../../../shared-core/contract/round.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { finishRound } from '../../stores/round.ts';
import { useWords } from '../../words.ts';

/** Ends the round; says what is still unread. */
export function FinishDialog({ round, onClose }: { round: RoundState; onClose: () => void }) {
  const { say } = useWords();
  const unread = round.summary.boards - round.summary.probed;
  return (
    <Dialog title="Finish the round?" onClose={onClose}>
      <p>{say(round.summary.message)}</p>
      <p>
        {unread === 0
          ? 'Every board has been probed.'
          : `${unread} of ${round.summary.boards} boards have no reading yet; they keep the call of an earlier round, if any.`}{' '}
        A finished round takes no more readings.
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
          Finish the round
        </Button>
        <Button onClick={onClose}>Go on probing</Button>
      </Actions>
    </Dialog>
  );
}
