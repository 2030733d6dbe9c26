import { useId, useState } from 'react';
import type { ChartDescription } from '../../shared-core/drawing/chart/description.ts';
import { layoutOf } from '../../shared-core/drawing/chart/layout.ts';
import { type Cell, type Row, tableOf } from '../../shared-core/drawing/chart/rows.ts';
import { attempt } from '../stores/notices.ts';
import { DataTable } from '../ui/DataTable.tsx';
import { Menu } from '../ui/Menu.tsx';
import { Unfold } from '../ui/Unfold.tsx';
import { useWords } from '../words.ts';
import styles from './chart.module.css';
import { Drawing } from './Drawing.tsx';
import { LayerSymbol } from './LayerSymbol.tsx';
import { Reader } from './Reader.tsx';
import { saveChart } from './saved-picture.tsx';
import { useWidth } from './useWidth.ts';

/** Values drawn, and read by pointer, by arrow keys, as a table, on paper and from a file. */
export function Chart(chart: ChartDescription) {
  const words = useWords();
  const { say } = words;
  const id = useId();
  const [frame, width] = useWidth<HTMLDivElement>(640);
  const layout = layoutOf(chart, width);
  const { columns, rows } = tableOf(chart, words);
  const [read, setCursor] = useState<number | null>(null);
  // What was read may be out of sight by now.
  const cursor = rows.some(({ x }) => x === read) ? read : null;
  // What is drawn alone is what the axis is named by.
  const isAxisAlone = layout.legend.every(({ name }) => name === chart.y.title);
  const save = (as: 'svg' | 'png') => void attempt(saveChart(chart, as));
  return (
    <figure className={styles.chart}>
      <div ref={frame} className={styles.frame}>
        <svg
          width={width}
          height={layout.height}
          viewBox={`0 0 ${width} ${layout.height}`}
          role="img"
          aria-labelledby={`${id}-title`}
          aria-describedby={`${id}-summary`}
        >
          <title id={`${id}-title`}>{chart.title}</title>
          <Drawing chart={chart} layout={layout} cursor={cursor} />
        </svg>
        <Reader chart={chart} layout={layout} rows={rows} cursor={cursor} onRead={setCursor} />
      </div>
      {!isAxisAlone && (
        <ul className={styles.legend} aria-label={say('common.legend')}>
          {layout.legend.map((layer) => (
            <li key={layer.name} className="marked">
              <svg viewBox="0 0 26 20" aria-hidden="true">
                <LayerSymbol layer={layer} />
              </svg>
              {layer.name}
            </li>
          ))}
        </ul>
      )}
      <figcaption id={`${id}-summary`}>{chart.summary}</figcaption>
      <div className={styles.tools}>
        <Unfold words={say('common.show-as-table')}>
          <DataTable
            name={chart.title}
            rows={rows}
            keyOf={(row) => rows.indexOf(row)}
            columns={[
              { id: 'x', head: chart.x.title, cell: ({ x }) => chart.x.text(x) },
              ...columns.map((head) => ({
                id: head,
                head,
                cell: ({ cells }: Row) => cellOf(cells.get(head)),
              })),
            ]}
          />
        </Unfold>
        <Menu
          title={say('chart.export')}
          items={[
            { id: 'svg', title: say('chart.save-svg'), onPress: () => save('svg') },
            { id: 'png', title: say('chart.save-png'), onPress: () => save('png') },
          ]}
        />
      </div>
    </figure>
  );
}

function cellOf(cell: Cell | undefined) {
  if (cell?.isSentence) return <span className={styles.sentence}>{cell.text}</span>;
  return cell?.isName ? <span translate="no">{cell.text}</span> : cell?.text;
}
