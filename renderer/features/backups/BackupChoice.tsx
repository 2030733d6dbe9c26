import { useState } from 'react';
import type { Backup, YardContents } from '../../../shared-core/contract/backups.ts';
import { message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import { LookDialog } from './LookDialog.tsx';
import { RestoreDialog } from './RestoreDialog.tsx';
import { RestoreFromFile } from './RestoreFromFile.tsx';

/** The backups, each with a way to restore it, and the way to restore any other yard file. */
export function BackupChoice() {
  const { say, formats } = useWords();
  const list = useQuery('backups.list', {});
  const state = useQuery('backups.state', {}).output;
  const [chosen, setChosen] = useState<string | null>(null);
  const [looked, setLooked] = useState<string | null>(null);
  const dateOf = useDates(list.output ?? []);
  const columns: Column<Backup>[] = [
    {
      id: 'at',
      head: say('backups.made-on'),
      cell: ({ at }) => dateOf(at),
      below: ({ isOfOtherYard }) => (isOfOtherYard ? say('backups.other-yard') : null),
    },
    { id: 'why', head: say('backups.why'), cell: ({ why }) => say(`backups.why.${why}`) },
    {
      id: 'inside',
      head: say('backups.inside'),
      cell: ({ contents }) =>
        say(contents ? message('backups.inside-of', countsIn(contents)) : message('backups.unreadable')),
    },
    {
      id: 'size',
      head: say('backups.size'),
      align: 'end',
      cell: ({ sizeBytes }) => formats.fileSize(sizeBytes),
    },
    {
      id: 'restore',
      head: say('restore.button'),
      headSpokenOnly: true,
      cell: ({ file, at, contents }) =>
        contents && (
          <Actions>
            <Button
              aria-label={say('restore.look-inside-of', { backedUpText: dateOf(at) })}
              onClick={() => setLooked(file)}
            >
              {say('restore.look-inside')}
            </Button>
            <Button
              aria-label={say('restore.button-of', { backedUpText: dateOf(at) })}
              onClick={() => setChosen(file)}
            >
              {say('restore.button')}
            </Button>
          </Actions>
        ),
    },
  ];
  return (
    <div className="column">
      <Await of={[list]}>
        {(backups) =>
          backups.length === 0 ? (
            <p>{say('backups.none')}</p>
          ) : (
            <DataTable
              name={say('backups.list')}
              columns={columns}
              rows={backups}
              keyOf={({ file }) => file}
            />
          )
        }
      </Await>
      {state && <RestoreFromFile hasDialogs={state.hasDialogs} />}
      {looked !== null && <LookDialog file={looked} onClose={() => setLooked(null)} />}
      {chosen !== null && <RestoreDialog file={chosen} onClose={() => setChosen(null)} />}
    </div>
  );
}

/** When a backup was made, to the second where two of the same minute are in the list. */
function useDates(backups: readonly Backup[]): (at: string) => string {
  const { formats } = useWords();
  const inMinute = (at: string) =>
    backups.filter((other) => other.at.slice(0, 16) === at.slice(0, 16)).length;
  return (at) => formats.dateTime(at, inMinute(at) > 1);
}

const countsIn = ({ stacks, boards, readings }: YardContents) => ({ stacks, boards, readings });
