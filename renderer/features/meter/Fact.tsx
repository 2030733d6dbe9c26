import type { ReactNode } from 'react';

/** One entry of a list of facts (`dl`). */
export function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="tabular">{children}</dd>
    </div>
  );
}
