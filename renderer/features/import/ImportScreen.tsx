import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { NotebookPages } from '../past-round/NotebookPages.tsx';
import { ChooseTable } from './ChooseTable.tsx';
import { ImportTable } from './ImportTable.tsx';

/** With the name of its file; null for pasted cells. */
export type ReadTable = RequestOutput<'imports.read'> & { fileName: string | null };

/** A table that a person has elsewhere: chosen, looked through, and imported. */
export function ImportScreen() {
  const { say } = useWords();
  const [table, setTable] = useState<ReadTable | null>(null);
  return (
    <Screen
      title={say('import.title')}
      lead={say('import.lead')}
      actions={<ButtonLink href={hrefOf({ name: 'files' })}>{say('files.title')}</ButtonLink>}
    >
      {table ? (
        <ImportTable key={table.table} table={table} onClose={() => setTable(null)} />
      ) : (
        <>
          <ChooseTable onTable={setTable} />
          <NotebookPages />
        </>
      )}
    </Screen>
  );
}
