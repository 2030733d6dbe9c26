import { useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { TextField } from '../../form/Field.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Where the board of that ID is in the walk; -1 where it is not. Capitals make no difference. */
export const indexOfCode = (boards: readonly RoundBoard[], code: string): number =>
  boards.findIndex((board) => board.code.toLowerCase() === code.trim().toLowerCase());

/** To the board whose ID is typed, or whose label is scanned by a reader that types what it reads. */
export function GoToBoardDialog({
  boards,
  stackName,
  onChoose,
  onClose,
}: {
  boards: readonly RoundBoard[];
  stackName: string;
  onChoose: (boardIndex: number) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [code, setCode] = useState('');
  const [error, setError] = useState<string | null>(null);
  return (
    <Dialog title={say('go-to.title')} onClose={onClose}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          const typed = code.trim();
          const index = indexOfCode(boards, typed);
          if (index === -1) {
            return setError(
              typed === '' ? say('go-to.missing') : say('go-to.unknown', { stackName, boardCode: typed }),
            );
          }
          onClose();
          onChoose(index);
        }}
      >
        <TextField
          label={say('go-to.label')}
          hint={say('go-to.hint')}
          error={error}
          value={code}
          autoFocus
          onValue={(typed) => {
            setError(null);
            setCode(typed);
          }}
        />
        <Actions>
          <Button type="submit" kind="main">
            {say('go-to.go')}
          </Button>
          <Button onClick={onClose}>{say('common.cancel')}</Button>
        </Actions>
      </form>
    </Dialog>
  );
}
