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

/**
 * Backups, each with a way to look inside and to restore it.
 * @param shown  the one that the page already shows
 * @param none       says that there is none
 */
export function BackupChoice({ shown, none }: { shown?: Backup | null; none: string }) {
  const { say, formats } = useWords();
  const list = useQuery('backups.list', {});
  const [chosen, setChosen] = useState<Backup | null>(null);
  const [looked, setLooked] = useState<Backup | null>(null);
  const dateOf = useDates(list.output ?? []);
  const columns: Column<Backup>[] = [
    {
      id: 'at',
      head: say('backups.made-on'),
      cell: ({ at }) => dateOf(at),
      below: ({ isOfOtherYard }) =>
        isOfOtherYard === false
          ? null
          : say(isOfOtherYard ? 'backups.other-yard' : 'backups.perhaps-other-yard'),
    },
    ...folderColumn(list.output ?? [], say('backups.in-folder')),
    { id: 'why', head: say('backups.why'), cell: ({ why }) => say(`backups.why.${why}`) },
    {
      id: 'contents',
      head: say('backups.contents'),
      cell: ({ contents }) =>
        say(contents ? message('backups.contents-of', countsIn(contents)) : message('backups.unreadable')),
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
      cell: (backup) =>
        backup.contents && (
          <Actions>
            <Button
              aria-label={say('restore.look-inside-of', { backedUpText: dateOf(backup.at) })}
              onClick={() => setLooked(backup)}
            >
              {say('restore.look-inside')}
            </Button>
            <Button
              aria-label={say('restore.button-of', { backedUpText: dateOf(backup.at) })}
              onClick={() => setChosen(backup)}
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
        {(all) => {
          const backups = all.filter(({ file }) => file !== shown?.file);
          return backups.length === 0 ? (
            <p>{none}</p>
          ) : (
            <DataTable
              name={say('backups.list')}
              columns={columns}
              rows={backups}
              keyOf={({ file }) => file}
            />
          );
        }}
      </Await>
      {looked && <LookDialog file={looked.file} at={looked.at} onClose={() => setLooked(null)} />}
      {chosen && (
        <RestoreDialog file={chosen.file} of={{ backedUpAt: chosen.at }} onClose={() => setChosen(null)} />
      )}
    </div>
  );
}

/** Which folder each is in, where they are in more than one. */
function folderColumn(backups: readonly Backup[], head: string): Column<Backup>[] {
  const folderOf = ({ file }: Backup) => file.replace(/[\\/][^\\/]*$/, '');
  if (new Set(backups.map(folderOf)).size < 2) return [];
  const cell = (backup: Backup) => (
    <span className="file" translate="no">
      {folderOf(backup)}
    </span>
  );
  return [{ id: 'folder', head, cell }];
}

/** When a backup was made, to the second where two of the same minute are in the list. */
function useDates(backups: readonly Backup[]): (at: string) => string {
  const { formats } = useWords();
  const inMinute = (at: string) =>
    backups.filter((other) => other.at.slice(0, 16) === at.slice(0, 16)).length;
  return (at) => formats.dateTime(at, inMinute(at) > 1);
}

const countsIn = ({ stacks, boards, readings }: YardContents) => ({ stacks, boards, readings });
