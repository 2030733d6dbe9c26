import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { NextBoardChoice } from '../settings/NextBoardChoice.tsx';
import { KeyList } from './KeyList.tsx';
import { roundKeys } from './round-keys.ts';

/** The keys of a round, and whether it goes on to the next board by itself. */
export function KeysDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  return (
    <Dialog title={say('round-keys.title')} onClose={onClose}>
      <NextBoardChoice />
      <KeyList keys={roundKeys} />
      <Actions>
        <Button kind="main" onClick={onClose} autoFocus>
          {say('common.close')}
        </Button>
      </Actions>
    </Dialog>
  );
}
