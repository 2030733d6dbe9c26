import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

/** Saves the whole yard as one file where the person wants it; over another file only when asked a second time. */
export function SaveCopyDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  const [file, setFile] = useState('');
  const [taken, setTaken] = useState<string | null>(null);
  const replaces = taken !== null && taken === file;
  const save = async () => {
    const { isTaken } = await bridge().command('backups.saveCopy', { file, replaces });
    if (isTaken) {
      setTaken(file);
      throw new Refusal(message('refusal.copy-taken'));
    }
    tellDone(say('backups.copy-saved'));
  };
  return (
    <FormDialog
      title={say('backups.save-copy')}
      saveWords={say(replaces ? 'backups.replace-copy' : 'backups.save-copy-yes')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('backups.copy-lead')}</p>
      <TextField
        label={say('backups.copy-file')}
        hint={say('backups.copy-hint')}
        value={file}
        onValue={setFile}
        required
      />
    </FormDialog>
  );
}
