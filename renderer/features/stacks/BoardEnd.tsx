import type { KeyboardEvent } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { CallShape, groundOf, inkOf } from '../../ui/CallBadge.tsx';
import { EndGrain, isEndKnown } from '../../ui/EndGrain.tsx';
import { useWords } from '../../words.ts';
import { endWords } from '../board/end-words.ts';
import css from './stack-drawing.module.css';

/** A board's end with its ID, its call and its moisture content; opens the board. */
export function BoardEnd({
  board,
  isNext,
  isEntry = true,
  ...rest
}: {
  board: BoardRow;
  /** Whether the plan names it to be probed next. */
  isNext: boolean;
  /** Whether Tab stops here. */
  isEntry?: boolean;
  onFocus?: () => void;
  onKeyDown?: (event: KeyboardEvent) => void;
}) {
  const { say, formats } = useWords();
  const { latest, code } = board;
  const call = latest?.call ?? null;
  const tail = code.slice(code.lastIndexOf('-') + 1);
  return (
    <a
      href={hrefOf({ name: 'board', id: board.id })}
      className={`${css.board} ${call ? '' : css.unprobed} ${isNext ? css.next : ''}`}
      style={call ? groundOf(call) : undefined}
      data-board={board.id}
      tabIndex={isEntry ? 0 : -1}
      {...rest}
    >
      <span className={css.code} translate="no">
        <span className={css.stem}>{code.slice(0, code.length - tail.length)}</span>
        {tail}
      </span>{' '}
      {call ? (
        <span className={`marked ${css.call}`} style={inkOf(call)}>
          <CallShape call={call} />
          <span className="spoken-only">{say(`call.${call}`)}</span>{' '}
          {latest?.averagePct != null && (
            <span className={css.pct}>
              {latest.averageIs === 'above' && '>'}
              {formats.mc(latest.averagePct)}
            </span>
          )}
        </span>
      ) : (
        <span className={`marked ${css.call}`}>
          <span aria-hidden="true">–</span>
          <span className="spoken-only">
            {latest?.spotsRead ? say('board.spots-read', latest.spotsRead) : say('stacks.not-probed')}
          </span>
        </span>
      )}
      {isEndKnown(board) && (
        <>
          <EndGrain board={board} /> <span className="spoken-only">{endWords(board, say)}</span>
        </>
      )}
      {isNext && (
        <>
          {' '}
          <span className="spoken-only">{say('stacks.probe-next')}</span>
        </>
      )}
    </a>
  );
}
