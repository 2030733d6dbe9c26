import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import { boardTexts } from '../board/board-texts.ts';

/** Boards that another window edited while they were to be edited here, each with what changed. */
export function EditedMeanwhile({ before, now }: { before: readonly BoardRow[]; now: readonly BoardRow[] }) {
  const words = useWords();
  const { say, formats } = words;
  const texts = boardTexts(words, [], []);
  const labelOf = (field: keyof typeof texts): string => {
    const text = texts[field];
    return typeof text === 'string' ? labelOf(text) : text.label;
  };
  const changedOf = (board: BoardRow) => {
    const seen = before.find(({ id }) => id === board.id);
    const labels = (Object.keys(texts) as (keyof typeof texts)[])
      .filter((field) => seen?.[field] !== board[field])
      .map((field) => labelOf(field));
    return formats.list([...new Set(labels)]);
  };
  return (
    <DataTable
      name={say('stacks.edited-meanwhile')}
      rows={now}
      keyOf={({ id }) => id}
      columns={[
        {
          id: 'code',
          head: say('stacks.column-code'),
          cell: ({ code }) => <span translate="no">{code}</span>,
        },
        { id: 'changed', head: say('stacks.edited-meanwhile'), cell: changedOf },
      ]}
    />
  );
}
