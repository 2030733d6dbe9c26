import { useState } from 'react';
import type { BackupState } from '../../../shared-core/contract/backups.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** Where backups are saved, and another folder for them. */
export function BackupFolderForm({ state }: { state: BackupState }) {
  const { say } = useWords();
  const { chosenFolder, usualFolder, isAway } = state;
  const [folder, setFolder] = useState(chosenFolder ?? '');
  const choose = async (chosen: string | null) => {
    const done = await attempt(bridge().command('backups.setFolder', { folder: chosen }));
    if (done) tellDone(say('backups.folder-changed'));
  };
  return (
    <form
      className="column"
      onSubmit={(event) => {
        event.preventDefault();
        void choose(folder);
      }}
    >
      {isAway && <Banner kind="caution">{say('backups.folder-away', { usualFolder })}</Banner>}
      <p className="file" translate="no">
        <span className="spoken-only">{say('backups.folder-now')} </span>
        {chosenFolder ?? usualFolder}
      </p>
      <TextField
        label={say('backups.other-folder')}
        hint={say('backups.other-folder-hint')}
        value={folder}
        onValue={setFolder}
      />
      <Actions>
        <Button type="submit" disabled={folder.trim() === ''}>
          {say('backups.use-folder')}
        </Button>
        {chosenFolder !== null && (
          <Button onClick={() => choose(null)}>{say('backups.use-usual-folder')}</Button>
        )}
      </Actions>
    </form>
  );
}
