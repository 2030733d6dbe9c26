import { useDeferredValue, useState } from 'react';
import {
  type LabelBoard,
  labelFilterSchema,
  MOST_LABELS,
} from '../../../shared-core/contract/requests/labels.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { callsInOrder } from '../../ui/CallBadge.tsx';
import { CallFilter } from '../../ui/CallFilter.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import styles from './labels.module.css';

interface Chosen {
  chosen: readonly number[];
  onChosen: (boardIds: readonly number[]) => void;
}

const allCalls = { value: 'all', filter: null } as const;
/** What a large yard is narrowed to, as it is shown and asked for: its groups are made of the first boards alone. */
const ofCalls = [allCalls, ...labelFilterSchema.options.map((call) => ({ value: call, filter: call }))];
const counts = Object.fromEntries(ofCalls.map(({ value }) => [value, null]));

/** Which boards get a label. What was chosen stays so while another stack or a search is shown. */
export function BoardChoice({ stackId: first, ...chosen }: Chosen & { stackId: number | null }) {
  const [stackId, setStackId] = useState(first);
  const [search, setSearch] = useState('');
  const stacks = useQuery('stacks.list', {});
  const [{ value: call, filter }, setCall] = useState<(typeof ofCalls)[number]>(allCalls);
  const found = useQuery('labels.boards', { stackId, search: useDeferredValue(search.trim()), filter });
  const { output } = found;
  // Whoever chose a call can choose another while the boards of that one are on their way.
  const [isLarge, setLarge] = useState(false);
  const hasMore = output !== null && output.total > output.boards.length;
  if (output !== null && filter === null && hasMore !== isLarge) setLarge(hasMore);
  const { say } = useWords();
  return (
    <Sheet title={say('labels.boards')}>
      <div className={styles.find}>
        <Select
          label={say('labels.stack')}
          value={stackId}
          options={[
            { value: null, label: say('labels.all-stacks') },
            ...(stacks.output ?? []).map(({ id, name }) => ({ value: id, label: name, isName: true })),
          ]}
          onValue={setStackId}
        />
        <TextField
          label={say('stacks.search')}
          type="search"
          maxLength={80}
          value={search}
          onValue={setSearch}
        />
      </div>
      {isLarge && (
        <CallFilter
          value={call}
          counts={counts}
          onValue={(value) => setCall(ofCalls.find((each) => each.value === value) ?? allCalls)}
        />
      )}
      <Await of={[found]}>
        {({ boards, total }) => (
          <>
            {hasMore && <p>{say('labels.first-boards-only', { first: boards.length, boards: total })}</p>}
            {boards.length === 0 ? (
              <EmptyState sentence={say('labels.no-boards')}>
                <ButtonLink href={hrefOf({ name: 'stacks' })}>{say('stacks.go-to-stacks')}</ButtonLink>
              </EmptyState>
            ) : (
              <>
                <Groups boards={boards} onChosen={chosen.onChosen} />
                <OneByOne boards={boards} {...chosen} />
              </>
            )}
          </>
        )}
      </Await>
    </Sheet>
  );
}

/** All of a kind at one press. */
function Groups({ boards, onChosen }: Pick<Chosen, 'onChosen'> & { boards: readonly LabelBoard[] }) {
  const { say } = useWords();
  const groups: [name: string, isIn: (board: LabelBoard) => boolean][] = [
    [say('labels.all'), () => true],
    ...callsInOrder.map((call): (typeof groups)[number] => [
      say(`call.${call}`),
      (board) => board.call === call,
    ]),
    [say('labels.no-call'), ({ call }) => call === null],
    [say('labels.outdated'), ({ label }) => label === 'outdated'],
    [say('labels.to-print'), ({ label }) => label !== 'current'],
  ];
  return (
    <fieldset className="actions" aria-label={say('labels.choose')}>
      {groups.map(([groupName, isIn]) => {
        const ids = boards.filter(isIn).map(({ id }) => id);
        return (
          ids.length > 0 && (
            <Button key={groupName} onClick={() => onChosen(ids)}>
              {say('labels.group-and-boards', { groupName, boards: ids.length })}
            </Button>
          )
        );
      })}
      <Button onClick={() => onChosen([])}>{say('labels.none')}</Button>
    </fieldset>
  );
}

function OneByOne({ boards, chosen, onChosen }: Chosen & { boards: readonly LabelBoard[] }) {
  const { say } = useWords();
  const isChosen = new Set(chosen);
  return (
    <DataTable
      name={say('labels.list')}
      columns={[
        {
          id: 'board',
          head: say('labels.board'),
          cell: ({ code }) => <span translate="no">{code}</span>,
          below: ({ speciesName, call, label }) => (
            <>
              {say('labels.species-and-call', {
                speciesName,
                callName: say(call ? `call.${call}` : 'labels.no-call'),
              })}
              {label === 'outdated' && <strong> {say('labels.outdated')}</strong>}
            </>
          ),
        },
      ]}
      rows={boards}
      keyOf={({ id }) => id}
      fill
      selection={{
        isSelected: ({ id }) => isChosen.has(id),
        selected: boards.filter(({ id }) => isChosen.has(id)).length,
        onSelect: (rows, isSelected) => {
          const ids = new Set(rows.map(({ id }) => id));
          const others = chosen.filter((id) => !ids.has(id));
          const all = isSelected ? [...others, ...ids].sort((a, b) => a - b) : others;
          onChosen(all.slice(0, MOST_LABELS));
        },
        nameOf: ({ code }) => code,
        summary: say('labels.chosen', { boards: chosen.length }),
      }}
    />
  );
}
