import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { FileButton } from '../../form/FileButton.tsx';
import { attempt } from '../../stores/notices.ts';
import { useYard } from '../../stores/yard.ts';
import { Actions } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { uploadFile } from '../backups/transfers.ts';
import { useTransfer } from '../backups/useTransfer.ts';
import { BringInDialog } from './BringInDialog.tsx';

interface LookedInto {
  /** Where the machine has it. */
  file: string;
  /** What the person calls it. */
  fileName: string;
  found: RequestOutput<'exchange.look'>;
}

/** Another yard, whose records come into this one: chosen in the system's dialog, or given by the browser. */
export function BringInSheet() {
  const { say } = useWords();
  const isDemo = useYard(({ info }) => info?.kind === 'demo');
  const hasDialogs = useQuery('backups.state', {}).output?.hasDialogs === true;
  const sending = useTransfer();
  const looking = useLongWork();
  const [looked, setLooked] = useState<LookedInto | null>(null);
  const drop = () => bridge().command('backups.dropUpload', {});
  const look = async (file: string, fileName: string) => {
    const found = await looking.run(
      (work) => bridge().query('exchange.look', { file, work }),
      say('merge.stopped'),
    );
    if (found) setLooked({ file, fileName, found });
    else if (!hasDialogs) await drop();
  };
  const choose = async () => {
    const { path } = await bridge().command('backups.chooseFile', { purpose: 'other-yard' });
    if (path !== null) await look(path, path);
  };
  const take = async (given: File) => {
    const file = await sending.run((onPart) => uploadFile(given, onPart));
    if (file === null) await drop();
    else await look(file, given.name);
  };
  const close = () => {
    setLooked(null);
    if (!hasDialogs) void attempt(drop());
  };
  if (isDemo) {
    return (
      <Sheet title={say('merge.title')}>
        <p>{say('merge.demo')}</p>
      </Sheet>
    );
  }
  return (
    <Sheet title={say('merge.title')}>
      <p>{say('merge.lead')}</p>
      {sending.underWay ? (
        <WorkUnderWay label={say('merge.uploading')} {...sending.underWay} onCancel={sending.stop} />
      ) : looking.underWay ? (
        <WorkUnderWay
          label={say('merge.looking')}
          done={looking.underWay.done}
          total={looking.underWay.total}
          onCancel={looking.cancel}
        />
      ) : (
        <Actions>
          <FileButton
            label={say('merge.choose')}
            accept=".sqlite,.json"
            onFiles={([given]) => void attempt(take(given))}
            instead={hasDialogs ? () => void attempt(choose()) : undefined}
          />
        </Actions>
      )}
      {looked && <BringInDialog {...looked} onClose={close} />}
    </Sheet>
  );
}
