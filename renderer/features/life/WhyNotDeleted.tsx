import { hrefOf } from '../../stores/navigation.ts';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import type { NamedBoard } from './LeaveForm.tsx';

/** Says why a board that was probed is not deleted, with what a person may do instead. */
export function WhyNotDeleted({
  board,
  onChoose,
  onClose,
}: {
  board: NamedBoard;
  onChoose: (instead: 'merge' | 'scrapped') => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  return (
    <Dialog title={say('life.not-deleted', { boardCode: board.code })} onClose={onClose}>
      <p>{say('life.not-deleted-why')}</p>
      <p>{say('life.not-deleted-instead')}</p>
      <Actions>
        {(['merge', 'scrapped'] as const).map((instead) => (
          <Button key={instead} onClick={() => onChoose(instead)}>
            {say(`life.${instead}`)}
          </Button>
        ))}
        <ButtonLink href={hrefOf({ name: 'history' })}>{say('life.open-history')}</ButtonLink>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
