import { defaultRangeExtractor, type Range, useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { CallBadge } from '../../parts/CallBadge.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { RowsOutOfSight } from '../../parts/RowsOutOfSight.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';

/** A row with two lines of reasons; each is measured once it is drawn. */
const ROW_PX = 71;
const ROWS_BEYOND_SIGHT = 12;
/** Up to so many are drawn whether they are in sight or not, so that they can be printed and searched. */
const ROWS_DRAWN_AT_ANY_RATE = 100;

const LETTER_REM = 0.72;
const PADDING_REM = 1.5;

/** A round's boards as a table that draws, where they are many, only the rows in sight. */
export function FindingsTable({ boards }: { boards: readonly RoundBoard[] }) {
  const frame = useRef<HTMLDivElement>(null);
  const [topPx, setTopPx] = useState(0);
  useLayoutEffect(() => {
    // What stands above it is not always as high.
    if (frame.current) setTopPx(Math.round(frame.current.getBoundingClientRect().top + scrollY));
  });
  const rows = useWindowVirtualizer({
    count: boards.length,
    estimateSize: () => ROW_PX,
    getItemKey: (index) => boards[index]?.boardId ?? index,
    scrollMargin: topPx,
    overscan: ROWS_BEYOND_SIGHT,
    rangeExtractor: drawnRows,
  });
  const drawn = rows.getVirtualItems();
  const before = (drawn[0]?.start ?? topPx) - topPx;
  const after = rows.getTotalSize() - ((drawn.at(-1)?.end ?? topPx) - topPx);
  const longest = boards.reduce((most, { code }) => Math.max(most, code.length), 'Board'.length);
  return (
    <div ref={frame} className="table-frame">
      <table className="table findings-table" aria-rowcount={boards.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col" style={{ width: `${longest * LETTER_REM + PADDING_REM}rem` }}>
              Board
            </th>
            <th scope="col" className="findings-wood">
              Wood
            </th>
            <th scope="col" className="number findings-average">
              Average, % MC
            </th>
            <th scope="col" className="number findings-shell">
              Shell / core
            </th>
            <th scope="col" className="findings-call">
              Call
            </th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          <RowsOutOfSight height={before} />
          {drawn.map(({ key, index }) => (
            <tr key={key} ref={rows.measureElement} data-index={index} aria-rowindex={index + 2}>
              <FindingCells board={boards[index] as RoundBoard} />
            </tr>
          ))}
          <RowsOutOfSight height={after} />
        </tbody>
      </table>
    </div>
  );
}

const drawnRows = (range: Range): number[] =>
  range.count <= ROWS_DRAWN_AT_ANY_RATE ? [...Array(range.count).keys()] : defaultRangeExtractor(range);

function FindingCells({ board: { boardId, code, speciesName, isRead, finding } }: { board: RoundBoard }) {
  const { say } = useWords();
  const isEstimated = finding !== null && finding.averagePct !== null;
  return (
    <>
      <th scope="row">
        <a href={hrefOf({ name: 'board', id: boardId })}>{code}</a>
      </th>
      <td className="findings-wood">{speciesName}</td>
      <td className="number">
        {isEstimated ? (
          <>
            <strong>{pctWords(finding.averagePct)}</strong>{' '}
            <small>
              ({pctWords(finding.lowPct)} to {pctWords(finding.highPct)})
            </small>
          </>
        ) : (
          '–'
        )}
      </td>
      <td className="number">
        {isEstimated ? `${pctWords(finding.shellPct)} / ${pctWords(finding.corePct)}` : '–'}
      </td>
      <td>{finding ? <CallBadge call={finding.call} /> : isRead ? 'Being judged' : 'Not probed'}</td>
      <td>{finding && say(finding.reason)}</td>
    </>
  );
}
