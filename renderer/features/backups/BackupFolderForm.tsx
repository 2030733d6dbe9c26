import { type ReactNode, useState } from 'react';
import type { BackupState } from '../../../shared-core/contract/backups.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { attempt, sentenceOf, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** Where backups are saved, and another folder for them. */
export function BackupFolderForm({ state }: { state: BackupState }) {
  const { say } = useWords();
  const { chosenFolder, usualFolder, isAway, elsewhere, hasDialogs } = state;
  const take = async (folder: string | null) => {
    const { isBackedUp } = await bridge().command('backups.setFolder', { folder });
    tellDone(say(isBackedUp ? 'backups.folder-changed-backed-up' : 'backups.folder-changed'));
  };
  const choose = async () => {
    const { path } = await bridge().command('backups.chooseFile', { purpose: 'folder' });
    if (path !== null) await take(path);
  };
  const useUsual = chosenFolder !== null && (
    <Button onClick={() => attempt(take(null))}>{say('backups.use-usual-folder')}</Button>
  );
  return (
    <div className="column">
      {/* Where the newest backup went elsewhere, the banner above says so. */}
      {isAway && elsewhere === null && (
        <Banner kind="caution">{say('backups.folder-away', { usualFolder })}</Banner>
      )}
      <p className="file" translate="no">
        <span className="spoken-only">{say('backups.folder-now')} </span>
        {chosenFolder ?? usualFolder}
      </p>
      {hasDialogs ? (
        <Actions>
          <Button onClick={() => attempt(choose())}>{say('backups.choose-folder')}</Button>
          {useUsual}
        </Actions>
      ) : (
        <TypedFolder onFolder={take}>{useUsual}</TypedFolder>
      )}
    </div>
  );
}

/** A browser shows no folders of this computer: its path is typed. What is wrong with it stands at the field. */
function TypedFolder({
  onFolder,
  children,
}: {
  onFolder: (folder: string) => Promise<void>;
  children: ReactNode;
}) {
  const { say } = useWords();
  const [folder, setFolder] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <form
      className="column"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setProblem(null);
        onFolder(folder).catch((error) => setProblem(sentenceOf(error)));
      }}
    >
      <TextField
        label={say('backups.other-folder')}
        hint={say('backups.other-folder-hint')}
        value={folder}
        onValue={setFolder}
        error={problem}
      />
      <Actions>
        <Button type="submit">{say('backups.use-folder')}</Button>
        {children}
      </Actions>
    </form>
  );
}
