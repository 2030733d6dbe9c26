import type { ReactNode } from 'react';

/** Details, behind words that look like a link. */
export function Unfold({ words, children }: { words: string; children: ReactNode }) {
  return (
    <details>
      <summary>{words}</summary>
      {children}
    </details>
  );
}
