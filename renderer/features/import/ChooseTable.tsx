import { useState } from 'react';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { TextArea } from '../../form/Field.tsx';
import { FileButton } from '../../form/FileButton.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { uploadFile } from '../backups/transfers.ts';
import { useTransfer } from '../backups/useTransfer.ts';
import type { ReadTable } from './ImportScreen.tsx';
import { ownOrder } from './reader.ts';

/** A file, or cells pasted from a spreadsheet. Reading it changes nothing. */
export function ChooseTable({ onTable }: { onTable: (table: ReadTable) => void }) {
  const { say } = useWords();
  const units = useUnits();
  const sending = useTransfer();
  const reading = useLongWork();
  const [pasted, setPasted] = useState('');
  async function take(given: File, fileName: string | null): Promise<void> {
    const file = await sending.run((onPart) => uploadFile(given, onPart));
    if (file !== null) {
      const read = await reading.run(
        (work) => bridge().command('imports.read', { file, units, order: ownOrder(), work }),
        say('import.stopped'),
      );
      if (read) onTable({ ...read, fileName });
    }
    await bridge().command('backups.dropUpload', {});
  }
  const underWay = sending.underWay ?? reading.underWay;
  const stop = () => {
    sending.stop();
    reading.cancel();
  };
  if (underWay) return <WorkUnderWay label={say('import.reading')} {...underWay} onCancel={stop} />;
  return (
    <div className="beside">
      <Sheet title={say('import.file')}>
        <p>{say('import.file-hint')}</p>
        <Actions>
          <FileButton
            kind="main"
            label={say('import.choose-file')}
            accept=".csv,.tsv,.txt,.tab"
            onFiles={([given]) => given && void attempt(take(given, given.name))}
          />
        </Actions>
      </Sheet>
      <Sheet title={say('import.paste')}>
        <TextArea label={say('import.pasted')} value={pasted} onValue={setPasted} rows={5} />
        <Actions>
          <Button
            disabled={pasted.trim() === ''}
            onClick={() => attempt(take(new File([pasted], 'pasted.tsv'), null))}
          >
            {say('import.read-pasted')}
          </Button>
        </Actions>
      </Sheet>
    </div>
  );
}
