import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { attempt } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { AddBoardsForm } from '../stacks/AddBoardsForm.tsx';

/** Adds a line to the page for a board that its stack did not have, or that the yard does not have yet. */
export function OtherBoard({
  stack,
  onBoards,
}: {
  stack: StackRow;
  onBoards: (ids: readonly number[]) => void;
}) {
  const { say } = useWords();
  const [typed, setTyped] = useState('');
  /** An ID that no board has. */
  const [unknown, setUnknown] = useState<string | null>(null);
  const [isAdding, setAdding] = useState(false);

  function change(text: string): void {
    setTyped(text);
    setUnknown(null);
  }
  async function addLine(): Promise<void> {
    if (typed.trim() === '') return;
    const { code, boardId } = await bridge().query('pastRounds.boardOf', { code: typed });
    if (boardId === null) return setUnknown(code);
    onBoards([boardId]);
    change('');
  }

  return (
    <>
      <Actions>
        <TextField
          label={say('past-round.other-id')}
          maxLength={80}
          value={typed}
          onValue={change}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            // It would save the page.
            event.preventDefault();
            void attempt(addLine());
          }}
        />
        <Button onClick={() => void attempt(addLine())}>{say('past-round.add-line')}</Button>
      </Actions>
      <div aria-live="polite">
        {unknown !== null && (
          <Banner
            kind="caution"
            actions={
              <Button onClick={() => setAdding(true)}>
                {say('past-round.add-board', { boardCode: unknown })}
              </Button>
            }
          >
            {say('past-round.no-such-board', { boardCode: unknown, stackName: stack.name })}
          </Banner>
        )}
      </div>
      {isAdding && unknown !== null && (
        <AddBoardsForm
          stack={stack}
          named={{
            code: unknown,
            onAdded: (ids) => {
              onBoards(ids);
              change('');
            },
          }}
          onClose={() => setAdding(false)}
        />
      )}
    </>
  );
}
