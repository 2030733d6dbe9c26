import { type KeyboardEvent, type PointerEvent, useId } from 'react';
import type { ChartDescription } from '../../shared-core/drawing/chart/description.ts';
import type { Layout } from '../../shared-core/drawing/chart/layout.ts';
import type { Row } from '../../shared-core/drawing/chart/rows.ts';
import { useWords } from '../words.ts';
import styles from './chart.module.css';

/** Reads a chart's values out where the pointer is, or step by step with the arrow keys. */
export function Reader({
  chart,
  layout: { left, right, top, bottom, width, x },
  rows,
  cursor,
  onRead,
}: {
  chart: ChartDescription;
  layout: Layout;
  rows: readonly Row[];
  /** The x that is read; null: none. */
  cursor: number | null;
  onRead: (x: number | null) => void;
}) {
  const { say } = useWords();
  const id = useId();
  const stops = [...new Set(rows.map((row) => row.x))];
  if (stops.length === 0) return null;
  const last = stops.length - 1;
  const index = cursor === null ? last : stops.indexOf(cursor);
  const readAt = (stop: number) => onRead(stops[Math.min(Math.max(stop, 0), last)]!);

  function onKeyDown(event: KeyboardEvent) {
    const stop = { ArrowLeft: index - 1, ArrowRight: index + 1, Home: 0, End: last }[event.key];
    if (stop !== undefined) readAt(stop);
    else if (event.key === 'Escape' && cursor !== null) onRead(null);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
  function onPointer({ clientX, currentTarget }: PointerEvent) {
    const at = left + clientX - currentTarget.getBoundingClientRect().left;
    const distances = stops.map((stop) => Math.abs(x.at(stop) - at));
    readAt(distances.indexOf(Math.min(...distances)));
  }
  return (
    <>
      <div
        role="slider"
        tabIndex={0}
        className={styles.reader}
        style={{ left, top, width: right - left, height: bottom - top }}
        aria-label={say('chart.values', { chartTitle: chart.title })}
        aria-describedby={id}
        aria-valuemin={0}
        aria-valuemax={last}
        aria-valuenow={index}
        aria-valuetext={chart.x.text(stops[index]!)}
        onFocus={() => cursor === null && readAt(last)}
        onBlur={() => onRead(null)}
        onKeyDown={onKeyDown}
        onPointerDown={onPointer}
        onPointerMove={onPointer}
        onPointerLeave={() => onRead(null)}
      />
      <span id={id} hidden>
        {say('chart.keys')}
      </span>
      <output
        className={styles.reading}
        style={cursor !== null && x.at(cursor) < width / 2 ? { right: 0 } : { left }}
      >
        {cursor !== null && <strong>{chart.x.text(cursor)}</strong>}
        {rows
          .filter((row) => row.x === cursor)
          .flatMap(({ cells }) => [...cells])
          .map(([seriesName, { text }], at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two values of a name may be alike.
            <span key={at}>{say('chart.reading', { seriesName, valueText: text })}</span>
          ))}
      </output>
    </>
  );
}
