import type { ReactNode } from 'react';
import './unfold.css';

/** Details, behind words that look like a link. */
export function Unfold({ words, children }: { words: string; children: ReactNode }) {
  return (
    <details className="unfold">
      <summary>{words}</summary>
      {children}
    </details>
  );
}
