import type { ChartDescription } from '../../shared-core/drawing/chart/description.ts';
import type { tableOf } from '../../shared-core/drawing/chart/rows.ts';
import { DataTable } from '../ui/DataTable.tsx';

/** The values of a chart as a table, for whoever would rather read or hear them. */
export function ChartTable({
  chart,
  table: { columns, rows },
}: {
  chart: ChartDescription;
  table: ReturnType<typeof tableOf>;
}) {
  return (
    <DataTable
      name={chart.title}
      rows={rows}
      keyOf={(row) => rows.indexOf(row)}
      columns={[
        { id: 'x', head: chart.x.title, cell: ({ x }) => chart.x.text(x) },
        ...columns.map((head) => ({
          id: head,
          head,
          cell: ({ cells }: (typeof rows)[number]) => {
            const cell = cells.get(head);
            return cell?.isName ? <span translate="no">{cell.text}</span> : cell?.text;
          },
        })),
      ]}
    />
  );
}
