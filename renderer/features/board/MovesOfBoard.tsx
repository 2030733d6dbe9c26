import { useState } from 'react';
import type { BoardRow, Move } from '../../../shared-core/contract/yard.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { DeleteMoveForm } from './DeleteMoveForm.tsx';
import { EditMoveForm } from './EditMoveForm.tsx';

/** The places where a board has been, the present one first; each can be corrected while the board is in the yard. */
export function MovesOfBoard({
  board,
  moves,
}: {
  board: Pick<BoardRow, 'code' | 'archived'>;
  moves: readonly Move[];
}) {
  const { say } = useWords();
  const [open, setOpen] = useState<{ what: 'edit' | 'delete'; move: Move } | null>(null);
  const close = () => setOpen(null);
  const newestFirst = moves.toSorted((a, b) => Date.parse(b.since) - Date.parse(a.since) || b.id - a.id);
  const before = (move: Move) => newestFirst[newestFirst.findIndex(({ id }) => id === move.id) + 1] ?? null;
  return (
    <>
      <ol className={`list ${css.moves}`}>
        {newestFirst.map((move, index) => {
          const { id, placeName, since } = move;
          const until = newestFirst[index - 1]?.since ?? board.archived?.at;
          const named = { placeName, movedOn: since };
          return (
            <li key={id}>
              {until
                ? say('board.moved-through', { placeName, stayRange: { from: since, to: until } })
                : say('board.at-place', { placeName, sinceOn: since })}
              {board.archived === null && (
                <Actions>
                  <Button
                    kind="quiet"
                    aria-label={say('life.edit-move', named)}
                    onClick={() => setOpen({ what: 'edit', move })}
                  >
                    {say('common.edit')}
                  </Button>
                  {/* Every board needs a first place: that is only corrected. */}
                  {before(move) !== null && (
                    <Button
                      kind="quiet"
                      aria-label={say('life.delete-move', named)}
                      onClick={() => setOpen({ what: 'delete', move })}
                    >
                      {say('life.delete')}
                    </Button>
                  )}
                </Actions>
              )}
            </li>
          );
        })}
      </ol>
      {open?.what === 'edit' && <EditMoveForm boardCode={board.code} move={open.move} onClose={close} />}
      {open?.what === 'delete' && (
        <DeleteMoveForm
          boardCode={board.code}
          move={open.move}
          beforeName={before(open.move)?.placeName ?? null}
          onClose={close}
        />
      )}
    </>
  );
}
