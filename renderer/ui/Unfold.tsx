import type { ReactNode } from 'react';
import css from './unfold.module.css';

/** Details, behind words that look like a link. */
export function Unfold({ words, children }: { words: string; children: ReactNode }) {
  return (
    <details className={css.unfold}>
      <summary>{words}</summary>
      {children}
    </details>
  );
}
