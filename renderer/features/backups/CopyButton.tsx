import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { downloadCopy } from './transfers.ts';
import { useTransfer } from './useTransfer.ts';

/** The whole yard as one file: where the system's dialog says, or downloaded by the browser. */
export function CopyButton({ hasDialogs }: { hasDialogs: boolean }) {
  const { say } = useWords();
  const { underWay, run, stop } = useTransfer();
  const save = async () => {
    const { path } = await bridge().command('backups.chooseFile', { purpose: 'copy' });
    if (path === null) return;
    await bridge().command('backups.saveCopy', { file: path, replaces: true });
    tellDone(say('backups.copy-saved'));
  };
  const get = async () => {
    const isWhole = await run(downloadCopy);
    if (isWhole) tellDone(say('backups.downloaded'));
    else await bridge().command('backups.dropDownload', {});
  };
  if (underWay) return <WorkUnderWay label={say('backups.downloading')} {...underWay} onCancel={stop} />;
  return (
    <Button onClick={() => attempt(hasDialogs ? save() : get())}>
      {say(hasDialogs ? 'backups.save-copy' : 'backups.download-copy')}
    </Button>
  );
}
