import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';

/** What each field of a board is called. */
const fields = {
  code: 'board.id',
  stackId: 'board.stack',
  speciesId: 'board.species',
  thicknessMm: 'board.thickness',
  thicknessQuarters: 'board.thickness',
  widthMm: 'board.width',
  lengthMm: 'board.length',
  sawnOn: 'board.sawn-on',
  driedBy: 'board.dried-by',
  sawing: 'board.sawing',
  ringRadiusMm: 'board.pith-distance',
  barkSide: 'board.bark-side',
  barkOffOn: 'board.bark-off-on',
  log: 'board.log',
  layer: 'board.layer',
  column: 'board.column',
  note: 'board.note',
} as const satisfies {
  [F in Exclude<keyof RequestInput<'boards.edit'>['changed'], 'isBeforeSawing' | 'hereSinceOn'>]-?: Code;
};

/** Boards that another window edited while they were to be edited here, each with what changed. */
export function EditedMeanwhile({ before, now }: { before: readonly BoardRow[]; now: readonly BoardRow[] }) {
  const { say, formats } = useWords();
  const changedOf = (board: BoardRow) => {
    const seen = before.find(({ id }) => id === board.id);
    const changed = (Object.keys(fields) as (keyof typeof fields)[]).filter(
      (field) => seen?.[field] !== board[field],
    );
    return formats.list([...new Set(changed.map((field) => say(fields[field])))]);
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
