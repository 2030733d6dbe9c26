import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useRef } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type DisplayUnits, shortLengthText } from '../../../shared-core/units/length.ts';
import { CallBadge } from '../../parts/CallBadge.tsx';
import { dayWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { RowsOutOfSight } from '../../parts/RowsOutOfSight.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import type { BoardPages } from './useBoardPages.ts';
import './board-rows.css';

const ROW_PX = 64;
/** A browser draws nothing taller than some 16 to 33 million pixels; 100,000 rows are 6.4 million. */
const ROWS_BEYOND_SIGHT = 12;

/** Boards as a table that draws only the rows in sight. */
export function BoardRows({
  pages,
  total,
  units,
  showStack,
  chosen,
  onChosen,
}: {
  pages: BoardPages;
  total: number;
  units: DisplayUnits;
  /** Whether the boards are of several stacks. */
  showStack: boolean;
  chosen: ReadonlyMap<number, BoardRow>;
  onChosen: (board: BoardRow, isChosen: boolean) => void;
}) {
  const frame = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: total,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_PX,
    overscan: ROWS_BEYOND_SIGHT,
  });
  const visible = rows.getVirtualItems();
  const first = visible[0]?.index ?? 0;
  const last = visible.at(-1)?.index ?? 0;
  const { show } = pages;
  useEffect(() => show(first, last), [show, first, last]);
  const before = visible[0]?.start ?? 0;
  const after = rows.getTotalSize() - (visible.at(-1)?.end ?? 0);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard.
    // biome-ignore lint/a11y/useSemanticElements: a region that scrolls is not a section of the page.
    <div ref={frame} className="board-rows" role="region" aria-label="Boards, scrolling" tabIndex={0}>
      <table className={showStack ? 'board-rows-all' : 'board-rows-stack'} aria-rowcount={total + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col" className="board-col-tick">
              <span className="spoken-only">Chosen</span>
            </th>
            <th scope="col" className="board-col-code">
              Board
            </th>
            <th scope="col">Wood</th>
            <th scope="col" className="board-col-place">
              {showStack ? 'Stack and place' : 'Place'}
            </th>
            <th scope="col" className="board-col-mc">
              MC
            </th>
            <th scope="col" className="board-col-shell">
              Shell, core
            </th>
            <th scope="col" className="board-col-call">
              Call
            </th>
          </tr>
        </thead>
        <tbody>
          <RowsOutOfSight height={before} />
          {visible.map((item) => (
            <tr key={item.key} aria-rowindex={item.index + 2} style={{ height: ROW_PX }}>
              <BoardCells
                board={pages.rowAt(item.index)}
                units={units}
                showStack={showStack}
                chosen={chosen}
                onChosen={onChosen}
              />
            </tr>
          ))}
          <RowsOutOfSight height={after} />
        </tbody>
      </table>
    </div>
  );
}

function BoardCells({
  board,
  units,
  showStack,
  chosen,
  onChosen,
}: {
  board: BoardRow | undefined;
  units: DisplayUnits;
  showStack: boolean;
  chosen: ReadonlyMap<number, BoardRow>;
  onChosen: (board: BoardRow, isChosen: boolean) => void;
}) {
  if (!board) return <td>…</td>;
  const { latest } = board;
  return (
    <>
      <td>
        <label className="board-tick">
          <input
            type="checkbox"
            checked={chosen.has(board.id)}
            onChange={(event) => onChosen(board, event.target.checked)}
          />
          <span className="spoken-only">Choose {board.code}</span>
        </label>
      </td>
      <td>
        <a className="board-code" title={board.code} href={hrefOf({ name: 'board', id: board.id })}>
          {board.code}
        </a>
        {board.log && <small>log {board.log}</small>}
      </td>
      <td>
        {board.speciesName}
        <small>{shortLengthText(board.thicknessMm, units)} thick</small>
      </td>
      <td className="board-col-place">
        {showStack ? board.stackName : board.placeName}
        <small>
          {showStack ? board.placeName : ''} since {dayWords(board.placeSince)}
        </small>
      </td>
      <td className="tabular">
        {latest && latest.averagePct !== null ? (
          <>
            <strong>{pctWords(latest.averagePct)} %</strong>
            <small>
              likely {pctWords(latest.lowPct)} to {pctWords(latest.highPct)}
            </small>
          </>
        ) : (
          <span className="board-none">{latest ? 'no sound reading' : 'not probed'}</span>
        )}
      </td>
      <td className="tabular board-col-shell">
        {latest && (latest.shellPct !== null || latest.corePct !== null) && (
          <>
            shell {pctWords(latest.shellPct)}
            <br />
            core {pctWords(latest.corePct)}
          </>
        )}
      </td>
      <td>
        {latest && (
          <>
            <CallBadge call={latest.call} />
            <small>{dayWords(latest.at)}</small>
          </>
        )}
      </td>
    </>
  );
}
