import { defaultRangeExtractor, type Range, useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { mcOrDash } from '../../ui/McValue.tsx';
import { RowsOutOfSight } from '../../ui/RowsOutOfSight.tsx';
import { useWords } from '../../words.ts';

/** A row with two lines of reasons; each is measured once it is drawn. */
const ROW_PX = 71;
const ROWS_BEYOND_SIGHT = 12;
/** Up to so many are drawn even out of sight, so that they can be printed and searched. */
const ROWS_ALWAYS_DRAWN = 100;

const LETTER_REM = 0.72;
const PADDING_REM = 1.5;

/** A round's boards as a table that draws, where they are many, only the rows in sight. */
export function FindingsTable({ boards }: { boards: readonly RoundBoard[] }) {
  const { say } = useWords();
  const frame = useRef<HTMLDivElement>(null);
  const [topPx, setTopPx] = useState(0);
  useLayoutEffect(() => {
    // What is above it is not always as high.
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
  const longest = boards.reduce(
    (most, { code }) => Math.max(most, code.length),
    say('findings.board').length,
  );
  return (
    <div ref={frame} className="table-frame">
      <table className="table findings-table" aria-rowcount={boards.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col" style={{ width: `${longest * LETTER_REM + PADDING_REM}rem` }}>
              {say('findings.board')}
            </th>
            <th scope="col" className="findings-species">
              {say('findings.species')}
            </th>
            <th scope="col" className="number findings-average">
              {say('findings.average')}
            </th>
            <th scope="col" className="number findings-shell">
              {say('findings.shell-core')}
            </th>
            <th scope="col" className="findings-call">
              {say('findings.call')}
            </th>
            <th scope="col">{say('findings.why')}</th>
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
  range.count <= ROWS_ALWAYS_DRAWN ? [...Array(range.count).keys()] : defaultRangeExtractor(range);

function FindingCells({ board: { boardId, code, speciesName, isRead, finding } }: { board: RoundBoard }) {
  const { say, formats } = useWords();
  const isEstimated = finding !== null && finding.averagePct !== null;
  return (
    <>
      <th scope="row">
        <a translate="no" href={hrefOf({ name: 'board', id: boardId })}>
          {code}
        </a>
      </th>
      <td className="findings-species" translate="no">
        {speciesName}
      </td>
      <td className="number">
        {isEstimated ? (
          <>
            <strong>{mcOrDash(finding.averagePct, formats)}</strong>{' '}
            {finding.lowPct !== null && finding.highPct !== null && (
              <small>({formats.mcInterval({ minPct: finding.lowPct, maxPct: finding.highPct })})</small>
            )}
          </>
        ) : (
          '–'
        )}
      </td>
      <td className="number">
        {isEstimated ? `${mcOrDash(finding.shellPct, formats)} / ${mcOrDash(finding.corePct, formats)}` : '–'}
      </td>
      <td>
        {finding ? (
          <CallBadge call={finding.call} />
        ) : (
          say(isRead ? 'findings.being-judged' : 'findings.not-probed')
        )}
      </td>
      <td>{finding && say(finding.reason)}</td>
    </>
  );
}
