import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useRef } from 'react';
import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { RowsOutOfSight } from '../../ui/RowsOutOfSight.tsx';
import { useWords } from '../../words.ts';
import type { BoardPages } from './useBoardPages.ts';
import './board-rows.css';

const ROW_PX = 64;
/** A browser draws nothing taller than some 16 to 33 million pixels; 100,000 rows are 6.4 million. */
const ROWS_BEYOND_SIGHT = 12;

/** Boards as a table that draws only the rows in sight. */
export function BoardRows({
  pages,
  total,
  ...cells
}: Omit<Cells, 'board'> & {
  pages: BoardPages;
  total: number;
}) {
  const { say } = useWords();
  const { showStack } = cells;
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
    <div ref={frame} className="board-rows" role="region" aria-label={say('stacks.board-table')} tabIndex={0}>
      <table className={showStack ? 'board-rows-all' : 'board-rows-stack'} aria-rowcount={total + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col" className="board-col-tick">
              <span className="spoken-only">{say('stacks.column-selected')}</span>
            </th>
            <th scope="col" className="board-col-code">
              {say('stacks.column-board')}
            </th>
            <th scope="col">{say('stacks.column-species')}</th>
            <th scope="col" className="board-col-place">
              {say(showStack ? 'stacks.column-stack-place' : 'stacks.column-place')}
            </th>
            <th scope="col" className="board-col-mc">
              {say('stacks.column-mc')}
            </th>
            <th scope="col" className="board-col-shell">
              {say('stacks.column-shell-core')}
            </th>
            <th scope="col" className="board-col-call">
              {say('stacks.column-call')}
            </th>
          </tr>
        </thead>
        <tbody>
          <RowsOutOfSight height={before} />
          {visible.map((item) => (
            <tr key={item.key} aria-rowindex={item.index + 2} style={{ height: ROW_PX }}>
              <BoardCells board={pages.rowAt(item.index)} {...cells} />
            </tr>
          ))}
          <RowsOutOfSight height={after} />
        </tbody>
      </table>
    </div>
  );
}

interface Cells {
  /** Undefined while its page is on its way. */
  board: BoardRow | undefined;
  /** Whether the boards are of several stacks. */
  showStack: boolean;
  selected: ReadonlyMap<number, BoardRow>;
  onSelected: (board: BoardRow, isSelected: boolean) => void;
}

function BoardCells({ board, showStack, selected, onSelected }: Cells) {
  const { say, formats } = useWords();
  if (!board) return <td>…</td>;
  const { code, latest, placeName, placeSince } = board;
  return (
    <>
      <td>
        <label className="board-tick">
          <input
            type="checkbox"
            checked={selected.has(board.id)}
            onChange={(event) => onSelected(board, event.target.checked)}
          />
          <span className="spoken-only">{say('stacks.select-board', { boardCode: code })}</span>
        </label>
      </td>
      <td>
        <a className="board-code" translate="no" title={code} href={hrefOf({ name: 'board', id: board.id })}>
          {code}
        </a>
        {board.log && <small>{say('stacks.log', { logName: board.log })}</small>}
      </td>
      <td>
        <span translate="no">{board.speciesName}</span>
        <small>{formats.thickness(thicknessOf(board))}</small>
      </td>
      <td className="board-col-place">
        <span translate="no">{showStack ? board.stackName : placeName}</span>
        <small>
          {showStack
            ? say('board.at-place', { placeName, sinceOn: placeSince })
            : say('stacks.since', { sinceOn: placeSince })}
        </small>
      </td>
      <td className="tabular">
        {latest && latest.averagePct !== null ? (
          <>
            <strong>{formats.mc(latest.averagePct)}</strong>
            <Likely latest={latest} />
          </>
        ) : (
          <span className="board-none">{say(latest ? 'stacks.no-average' : 'stacks.not-probed')}</span>
        )}
      </td>
      <td className="tabular board-col-shell">{latest && <ShellAndCore latest={latest} />}</td>
      <td>
        {latest && (
          <>
            <CallBadge call={latest.call} />
            <small>{formats.day(latest.at)}</small>
          </>
        )}
      </td>
    </>
  );
}

function Likely({ latest: { lowPct, highPct } }: { latest: LatestFinding }) {
  const { say } = useWords();
  if (lowPct === null || highPct === null) return null;
  return <small>{say('stacks.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } })}</small>;
}

function ShellAndCore({ latest: { shellPct, corePct } }: { latest: LatestFinding }) {
  const { say } = useWords();
  return (
    <>
      {shellPct !== null && <div>{say('stacks.shell', { shellPct })}</div>}
      {corePct !== null && <div>{say('stacks.core', { corePct })}</div>}
    </>
  );
}
