import type { Ref } from 'react';
import type { MethodCell, MethodPart, MethodTable } from '../../shared-core/methods/method-part.ts';
import { sourceShown } from '../../shared-core/methods/source-pieces.ts';
import { Sheet } from '../ui/Screen.tsx';
import { unbroken } from '../unbroken.ts';
import { useWords } from '../words.ts';
import css from './methods.module.css';

/** One part of the methods: what is figured, its numbers, and where they come from. `ref` is what a link leads to. */
export function MethodPartSheet({ part, ref }: { part: MethodPart; ref: Ref<HTMLDivElement> }) {
  const { say } = useWords();
  return (
    <div className={css.part} ref={ref} tabIndex={-1}>
      <Sheet title={say(part.title)}>
        {part.says.map((each) => (
          <p key={each.code}>{say(each)}</p>
        ))}
        {part.tables.map((table) => (
          <Table key={table.caption.code} table={table} />
        ))}
        {part.source && (
          <p className="soft" translate="no">
            {say('methods.source', { source: part.source })}
          </p>
        )}
      </Sheet>
    </div>
  );
}

function Table({ table: { caption, heads, rows, isOfUnlike } }: { table: MethodTable }) {
  const { say, formats } = useWords();
  const digits = heads.map((_, at) => Math.max(...rows.map((row) => decimalsOf(row[at]))));
  const shown = (cell: MethodCell, at: number): string => {
    if (typeof cell === 'number') return isOfUnlike ? formats.raw(cell) : formats.decimal(cell, digits[at]!);
    if (typeof cell !== 'string') return say(cell);
    return unbroken(sourceShown(cell, formats.named, say('methods.from-memory')));
  };
  /** What stays as it was written, in every language. */
  const marked = (cell: MethodCell | undefined, at: number) =>
    typeof cell === 'string' && shown(cell, at) === unbroken(cell) ? 'no' : undefined;
  return (
    <table className={css.table}>
      <caption>{say(caption)}</caption>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head.code} scope="col">
              {say(head)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const [first = '', ...others] = row.map(shown);
          return (
            <tr key={first}>
              <th scope="row" translate={marked(row[0], 0)}>
                {first}
              </th>
              {others.map((text, at) => {
                const head = heads[at + 1];
                return (
                  <td key={head?.code} data-head={head && say(head)} translate={marked(row[at + 1], at + 1)}>
                    {text}
                  </td>
                );
              })}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const decimalsOf = (cell: MethodCell | undefined): number =>
  typeof cell === 'number' ? (String(cell).split('.')[1]?.length ?? 0) : 0;
