import type { ReactNode } from 'react';
import { useWords } from '../words.ts';

/** What the marks of a drawing mean. */
export function ChartLegend({ children }: { children: ReactNode }) {
  const { say } = useWords();
  return (
    <ul className="chart-legend" aria-label={say('common.legend')}>
      {children}
    </ul>
  );
}

/** One kind of mark, drawn as it is in the drawing, in a square of 20, and what it means. */
export function LegendItem({ words, children }: { words: string; children: ReactNode }) {
  return (
    <li>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {children}
      </svg>
      {words}
    </li>
  );
}
