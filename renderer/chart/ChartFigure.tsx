import { type ReactNode, useId } from 'react';
import { TableFrame } from '../ui/TableFrame.tsx';
import { Unfold } from '../ui/Unfold.tsx';
import { useWords } from '../words.ts';
import { useWidth } from './useWidth.ts';
import './chart.css';

/** A drawing of values with the same values as a table below it, for whoever would rather read or hear them. */
export function ChartFigure({
  title,
  summary,
  height,
  legend,
  columns,
  rows,
  children,
}: {
  title: string;
  /** What the drawing shows, in a sentence. */
  summary: string;
  height: number;
  /** What its marks mean, where that does not stand beside them. */
  legend?: ReactNode;
  columns: readonly string[];
  rows: readonly { key: string | number; cells: readonly string[] }[];
  children: (width: number) => ReactNode;
}) {
  const { say } = useWords();
  const id = useId();
  const [frame, width] = useWidth<HTMLDivElement>(640);
  return (
    <figure className="chart">
      <div ref={frame}>
        <svg
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-labelledby={`${id}-title`}
          aria-describedby={`${id}-summary`}
        >
          <title id={`${id}-title`}>{title}</title>
          {children(width)}
        </svg>
      </div>
      {legend}
      <figcaption id={`${id}-summary`}>{summary}</figcaption>
      <Unfold words={say('common.show-as-table')}>
        <TableFrame name={title}>
          <table className="table">
            <caption className="spoken-only">{title}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.key}>
                  {columns.map((column, index) => (
                    <td key={column}>{row.cells[index]}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      </Unfold>
    </figure>
  );
}
