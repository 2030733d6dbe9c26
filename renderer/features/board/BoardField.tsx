import { type ReactNode, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Combobox } from '../../form/Combobox.tsx';
import { useWords } from '../../words.ts';

/** So many are asked for; who sees no board types more of its ID. */
const MOST = 24;

/** Chooses a board of the yard by its ID, species or log. */
export function BoardField({
  label,
  value,
  onValue,
  ...rest
}: {
  label: ReactNode;
  /** Null for none yet. */
  value: Pick<BoardRow, 'id' | 'code'> | null;
  error?: string | null;
  onValue: (board: BoardRow | null) => void;
  onBlur?: () => void;
}) {
  const { say } = useWords();
  const [typed, setTyped] = useState('');
  const search = typed.trim();
  const found = useQuery('boards.list', { stackId: null, search, offset: 0, limit: MOST }).output;
  const itemOf = ({ id, code, speciesName, stackName }: BoardRow) => ({
    id: String(id),
    name: code,
    detail: say('dates.move-board-of', { speciesName, stackName }),
  });
  const rows = found?.rows ?? [];
  const isMeant = ({ code }: BoardRow) => code.toLowerCase() === search.toLowerCase();
  return (
    <Combobox
      {...rest}
      label={label}
      hint={say('dates.move-board-hint')}
      none={say('dates.move-board-none')}
      text={value?.code ?? typed}
      chosenId={value && String(value.id)}
      items={found ? rows.map(itemOf) : null}
      more={Math.max(0, (found?.total ?? 0) - rows.length)}
      meant={value ? [] : rows.filter(isMeant).map(itemOf)}
      onText={(changed) => {
        setTyped(changed);
        if (value) onValue(null);
      }}
      onChoose={({ id }) => onValue(rows.find((row) => String(row.id) === id) ?? null)}
    />
  );
}
