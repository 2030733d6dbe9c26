import { TableFrame } from '../ui/TableFrame.tsx';
import type { ChartDescription } from './description.ts';
import type { tableOf } from './rows.ts';

/** The values of a chart as a table, for whoever would rather read or hear them. */
export function ChartTable({
  chart,
  table: { columns, rows },
}: {
  chart: ChartDescription;
  table: ReturnType<typeof tableOf>;
}) {
  return (
    <TableFrame name={chart.title}>
      <table className="table">
        <caption className="spoken-only">{chart.title}</caption>
        <thead>
          <tr>
            {[chart.x.title, ...columns].map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ x, cells }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two rows may be of one x.
            <tr key={index}>
              <td>{chart.x.text(x)}</td>
              {columns.map((column) => (
                <td key={column} translate={cells.get(column)?.isName ? 'no' : undefined}>
                  {cells.get(column)?.text}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}
