import { useState } from 'react';
import type { Backup } from '../../../shared-core/contract/backups.ts';
import { useQuery } from '../../data/useQuery.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import { RestoreDialog } from './RestoreDialog.tsx';

/** The backups, each with a way to restore it, and the way to restore any other yard file. */
export function BackupChoice() {
  const { say, formats } = useWords();
  const list = useQuery('backups.list', {});
  const [chosen, setChosen] = useState<string | null>(null);
  const [isTyping, setTyping] = useState(false);
  const columns: Column<Backup>[] = [
    {
      id: 'at',
      head: say('backups.made-on'),
      cell: ({ at }) => formats.dateTime(at),
      below: ({ isOfOtherYard }) => (isOfOtherYard ? say('backups.other-yard') : null),
    },
    { id: 'why', head: say('backups.why'), cell: ({ why }) => say(`backups.why.${why}`) },
    {
      id: 'readings',
      head: say('backups.readings'),
      align: 'end',
      cell: ({ contents }) => (contents ? formats.number(contents.readings) : say('backups.unreadable')),
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
          <Button aria-label={say('restore.button-of', { backedUpAt: at })} onClick={() => setChosen(file)}>
            {say('restore.button')}
          </Button>
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
      <Actions>
        <Button onClick={() => setTyping(true)}>{say('restore.from-file')}</Button>
      </Actions>
      {isTyping && (
        <FileDialog
          onClose={() => setTyping(false)}
          onFile={(file) => {
            setTyping(false);
            setChosen(file);
          }}
        />
      )}
      {chosen !== null && <RestoreDialog file={chosen} onClose={() => setChosen(null)} />}
    </div>
  );
}

function FileDialog({ onFile, onClose }: { onFile: (file: string) => void; onClose: () => void }) {
  const { say } = useWords();
  const [file, setFile] = useState('');
  return (
    <FormDialog
      title={say('restore.from-file')}
      saveWords={say('restore.look-inside')}
      onSave={async () => onFile(file)}
      onClose={onClose}
    >
      <TextField
        label={say('restore.file')}
        hint={say('restore.file-hint')}
        value={file}
        onValue={setFile}
        required
      />
    </FormDialog>
  );
}
