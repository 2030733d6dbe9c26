import { useState } from 'react';
import { bridge } from '../../data/bridge.ts';
import { FileButton } from '../../form/FileButton.tsx';
import { attempt } from '../../stores/notices.ts';
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
        <FileButton
          label={say('restore.from-file')}
          accept=".sqlite"
          onFiles={([given]) => void attempt(take(given))}
          instead={hasDialogs ? () => void attempt(choose()) : undefined}
        />
      )}
      {chosen && <RestoreDialog file={chosen.file} of={{ fileName: chosen.fileName }} onClose={close} />}
    </>
  );
}
