import { hrefOf } from '../../stores/navigation.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { NotebookPages } from '../past-round/NotebookPages.tsx';
import { BringInSheet } from './BringInSheet.tsx';
import { ExportSheet } from './ExportSheet.tsx';

/** Files that a person takes along, and files that come from elsewhere. */
export function FilesScreen() {
  const { say } = useWords();
  return (
    <Screen
      title={say('files.title')}
      lead={say('files.lead')}
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'import-table' })}>{say('import.title')}</ButtonLink>
          <ButtonLink href={hrefOf({ name: 'history' })}>{say('act.title')}</ButtonLink>
        </>
      }
    >
      <ExportSheet />
      <NotebookPages />
      <BringInSheet />
    </Screen>
  );
}
