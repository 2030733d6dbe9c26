import { memo, useEffect, useRef } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { verdictMarks } from '../../../shared-core/labels/verdict-mark.ts';
import { VerdictShape } from '../../parts/VerdictBadge.tsx';

/** All boards of the stack in the order of the walk, each with its call so far; the current one is kept in sight. */
export function BoardStrip({
  boards,
  boardIndex,
  onChoose,
}: {
  boards: readonly RoundBoard[];
  boardIndex: number;
  onChoose: (boardIndex: number) => void;
}) {
  const strip = useRef<HTMLOListElement>(null);
  useEffect(() => {
    strip.current?.children[boardIndex]?.scrollIntoView?.({ block: 'nearest', inline: 'center' });
  }, [boardIndex]);
  // The buttons are drawn again only where their board changed; the newest `onChoose` is reached through here.
  const choose = useRef(onChoose);
  useEffect(() => {
    choose.current = onChoose;
  });
  return (
    <nav className="board-strip" aria-label="Boards of this round">
      <ol ref={strip}>
        {boards.map((board, index) => (
          <BoardChip
            key={board.boardId}
            board={board}
            index={index}
            isCurrent={index === boardIndex}
            choose={choose}
          />
        ))}
      </ol>
    </nav>
  );
}

const BoardChip = memo(function BoardChip({
  board,
  index,
  isCurrent,
  choose,
}: {
  board: RoundBoard;
  index: number;
  isCurrent: boolean;
  choose: React.RefObject<(boardIndex: number) => void>;
}) {
  const verdict = board.assessment?.call.verdict;
  return (
    <li>
      <button
        type="button"
        className="board-chip"
        aria-current={isCurrent ? 'step' : undefined}
        onClick={() => choose.current(index)}
      >
        <span className="board-chip-code">{board.code}</span>
        <span className={verdict ? `board-chip-call verdict-${verdict}` : 'board-chip-call'}>
          {verdict ? (
            <>
              <VerdictShape verdict={verdict} /> {verdictMarks[verdict].word}
            </>
          ) : (
            'not yet'
          )}
        </span>
      </button>
    </li>
  );
});
