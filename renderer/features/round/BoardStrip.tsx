import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual';
import { memo, useCallback, useEffect, useRef } from 'react';
import { firmCall, openSpots, type RoundBoard } from '../../../shared-core/contract/round.ts';
import { CallShape, callsInOrder, inkOf } from '../../ui/CallBadge.tsx';
import { useWords } from '../../words.ts';
import css from './BoardStrip.module.css';
import type { Probing } from './useProbing.ts';

/** All chips are as wide as the longest call and the longest ID need (their widest letters). */
const LETTER_PX = { call: 8.5, code: 11 };
const SHAPE_PX = 20;
const PADDING_PX = 28;
const CHIPS_BEYOND_SIGHT = 8;

/**
 * All boards of the stack in the order of the walk, each with its call so far. Only those in sight are drawn, and the
 * current one, which stays in sight and is the strip's one stop for the Tab key.
 */
export function BoardStrip({ round: { boards }, boardIndex, goTo }: Probing) {
  const { say } = useWords();
  const frame = useRef<HTMLDivElement>(null);
  const longestCode = boards.reduce((most, { code }) => Math.max(most, code.length), 0);
  const longestCall = Math.max(...callsInOrder.map((call) => say(`call.${call}`).length));
  const chipPx = PADDING_PX + Math.max(longestCode * LETTER_PX.code, SHAPE_PX + longestCall * LETTER_PX.call);
  const strip = useVirtualizer({
    horizontal: true,
    count: boards.length,
    getScrollElement: () => frame.current,
    estimateSize: () => chipPx,
    getItemKey: (index) => boards[index]?.boardId ?? index,
    overscan: CHIPS_BEYOND_SIGHT,
    rangeExtractor: useCallback(
      (range: Range) => [...new Set([...defaultRangeExtractor(range), boardIndex])].toSorted((a, b) => a - b),
      [boardIndex],
    ),
  });
  useEffect(() => {
    strip.scrollToIndex(boardIndex, { align: 'center' });
    // Whoever walks along the strip by its keys stays on the current board.
    if (!frame.current?.contains(document.activeElement)) return;
    frame.current.querySelector<HTMLElement>('[aria-current]')?.focus({ preventScroll: true });
  }, [strip, boardIndex]);
  // The buttons are drawn again only where their board changed; the newest `goTo` is reached through here.
  const choose = useRef(goTo);
  useEffect(() => {
    choose.current = goTo;
  });
  return (
    <nav className={css.strip} aria-label={say('round.boards')}>
      <div ref={frame} className={css.frame}>
        <ol style={{ width: strip.getTotalSize() }}>
          {strip.getVirtualItems().map(({ key, index, start }) => (
            <li
              key={key}
              aria-posinset={index + 1}
              aria-setsize={boards.length}
              style={{ width: chipPx, transform: `translateX(${start}px)` }}
            >
              <BoardChip
                board={boards[index] as RoundBoard}
                isCurrent={index === boardIndex}
                choose={choose}
              />
            </li>
          ))}
        </ol>
      </div>
    </nav>
  );
}

const BoardChip = memo(function BoardChip({
  board,
  isCurrent,
  choose,
}: {
  board: RoundBoard;
  isCurrent: boolean;
  choose: React.RefObject<(board: RoundBoard) => void>;
}) {
  const { say } = useWords();
  const { finding } = board;
  const open = openSpots(board);
  const call = firmCall(board);
  return (
    <button
      type="button"
      className={`tab ${css.chip}`}
      aria-current={isCurrent ? 'step' : undefined}
      tabIndex={isCurrent ? 0 : -1}
      onClick={() => choose.current(board)}
    >
      <span className={css.code} translate="no">
        {board.code}
      </span>
      <span className={call ? `marked ${css.call}` : 'soft'} style={call ? inkOf(call) : undefined}>
        {call ? (
          <>
            <CallShape call={call} /> {say(`call.${call}`)}
          </>
        ) : finding ? (
          say('round.spots-read', { filled: finding.filledSpots, spots: finding.filledSpots + open })
        ) : (
          say(board.isRead ? 'round.being-judged' : 'round.not-probed')
        )}
      </span>
    </button>
  );
});
