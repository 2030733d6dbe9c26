import type { ReactNode } from 'react';

/** Facts with their names, side by side; what is null is left out. */
export function Facts({ of }: { of: readonly (readonly [name: string, fact: ReactNode])[] }) {
  return (
    <dl className="facts">
      {of.map(
        ([name, fact]) =>
          fact !== null && (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{fact}</dd>
            </div>
          ),
      )}
    </dl>
  );
}
