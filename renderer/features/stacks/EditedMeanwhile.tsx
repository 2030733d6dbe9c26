import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import { boardTexts } from '../board/board-texts.ts';

/** Boards that another window edited while they were to be edited here, each with what changed. */
export function EditedMeanwhile({ before, now }: { before: readonly BoardRow[]; now: readonly BoardRow[] }) {
  const words = useWords();
  const { say, formats } = words;
  const fields = Object.entries(boardTexts(words, [], [])) as [keyof BoardRow, { label: string }][];
  const changedOf = (board: BoardRow) => {
    const seen = before.find(({ id }) => id === board.id);
    const labels = fields.flatMap(([field, { label }]) => (seen?.[field] === board[field] ? [] : [label]));
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
          head: say('stacks.column-board'),
          cell: ({ code }) => <span translate="no">{code}</span>,
        },
        { id: 'changed', head: say('stacks.edited-meanwhile'), cell: changedOf },
      ]}
    />
  );
}
