import { Chart } from '../../renderer/chart/Chart.tsx';
import { DataTable } from '../../renderer/ui/DataTable.tsx';
import { useWords } from '../../renderer/words.ts';
import { mcAxis, timeAxis } from '../../shared-core/drawing/chart/axes.ts';
import type { Layer } from '../../shared-core/drawing/chart/description.ts';
import type { Story } from './story.ts';

interface Row {
  code: string;
  averagePct: number;
  why: string;
}
const rows: Row[] = [
  { code: 'MAP-01', averagePct: 12.9, why: '' },
  { code: 'MAP-02', averagePct: 16.9, why: 'Wet face: wipe it, and wait a day.' },
];
const columns = [
  { id: 'code', head: 'Board', cell: ({ code }: Row) => code, sortBy: ({ code }: Row) => code },
  {
    id: 'average',
    head: 'Average',
    align: 'end' as const,
    cell: ({ averagePct }: Row) => `${averagePct}%`,
    below: ({ why }: Row) => why,
    sortBy: ({ averagePct }: Row) => averagePct,
  },
];

const day = (month: number) => new Date(2026, month, 1, 12).getTime();
const layers: Layer[] = [
  { kind: 'target', name: 'Target 6–8%', color: 'ready', low: 6, high: 8 },
  {
    kind: 'line',
    name: 'Forecast',
    color: 'accent',
    stroke: 'solid',
    values: [
      { x: day(8), y: 14, low: 13, high: 15 },
      { x: day(14), y: 8, low: 6.5, high: 9.5 },
    ],
  },
  {
    kind: 'points',
    name: 'Average',
    color: 'ink',
    shape: 'disc',
    values: [
      { x: day(3), y: 24, low: 22, high: 26 },
      { x: day(8), y: 14, low: 13, high: 15 },
    ],
  },
];

function Drying() {
  const words = useWords();
  return (
    <Chart
      title="MAP-05"
      summary="14.0% in September. Likely ready in March."
      x={timeAxis(day(3), day(14), words)}
      y={mcAxis('Moisture content', words)}
      layers={layers}
    />
  );
}

export const stories: Story[] = [
  {
    part: 'DataTable',
    states: {
      plain: () => <DataTable name="Boards" columns={columns} rows={rows} keyOf={({ code }) => code} />,
      'one selected': () => (
        <DataTable
          name="Boards to label"
          columns={columns}
          rows={rows}
          keyOf={({ code }) => code}
          selection={{
            isSelected: ({ code }) => code === 'MAP-02',
            selected: 1,
            onSelect: () => undefined,
            nameOf: ({ code }) => code,
            summary: '1 of 2 selected',
          }}
        />
      ),
    },
  },
  { part: 'Chart', isWide: true, states: { 'history and forecast': () => <Drying /> } },
];
