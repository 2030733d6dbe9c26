import { useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';

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
  const [code, setCode] = useState('');
  const [error, setError] = useState<string | null>(null);
  return (
    <Dialog title="Go to a board" onClose={onClose}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          const wanted = code.trim().toLowerCase();
          const index = boards.findIndex((board) => board.code.toLowerCase() === wanted);
          if (index === -1) {
            return setError(
              wanted === ''
                ? 'Type the ID, or scan the label.'
                : `${stackName} has no board ${code.trim()}. The round stands where it stood.`,
            );
          }
          onClose();
          onChoose(index);
        }}
      >
        <TextField
          label="ID of the board"
          hint="As it stands on its label, or scan the label."
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
            Go to it
          </Button>
          <Button onClick={onClose}>Stay here</Button>
        </Actions>
      </form>
    </Dialog>
  );
}
