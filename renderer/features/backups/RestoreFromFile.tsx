import { useRef, useState } from 'react';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { RestoreDialog } from './RestoreDialog.tsx';
import { uploadFile } from './transfers.ts';
import { useTransfer } from './useTransfer.ts';

interface ChosenFile {
  /** Where the machine has it. */
  file: string;
  /** What the person calls it. */
  fileName: string;
}

/** Any yard file: chosen in the system's dialog, or given by the browser. It is looked into before anything is touched. */
export function RestoreFromFile({ hasDialogs }: { hasDialogs: boolean }) {
  const { say } = useWords();
  const { underWay, run, stop } = useTransfer();
  const [chosen, setChosen] = useState<ChosenFile | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const drop = () => bridge().command('backups.dropUpload', {});
  const choose = async () => {
    const { path } = await bridge().command('backups.chooseFile', { purpose: 'yard' });
    if (path !== null) setChosen({ file: path, fileName: path });
  };
  const take = async (given: File) => {
    const file = await run((onPart) => uploadFile(given, onPart));
    if (file === null) await drop();
    else setChosen({ file, fileName: given.name });
  };
  const close = () => {
    setChosen(null);
    if (!hasDialogs) void attempt(drop());
  };
  return (
    <>
      {underWay ? (
        <WorkUnderWay label={say('restore.uploading')} {...underWay} onCancel={stop} />
      ) : (
        <Button onClick={() => (hasDialogs ? attempt(choose()) : picker.current?.click())}>
          {say('restore.from-file')}
        </Button>
      )}
      <input
        ref={picker}
        type="file"
        hidden
        accept=".sqlite"
        aria-label={say('restore.file')}
        onChange={({ target }) => {
          const [given] = target.files ?? [];
          if (given) void attempt(take(given));
          // The same file can be chosen again.
          target.value = '';
        }}
      />
      {chosen && <RestoreDialog file={chosen.file} of={{ fileName: chosen.fileName }} onClose={close} />}
    </>
  );
}
