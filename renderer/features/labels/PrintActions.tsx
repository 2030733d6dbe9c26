import { useCallback, useState } from 'react';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from './PrintPages.tsx';

/** The ways to get labels on paper. Either records what was printed, so that a label can be out of date. */
export function PrintActions({
  pages,
  boardIds,
  kind,
  used,
  disabled,
}: {
  pages: readonly DrawnPage[];
  boardIds: readonly number[];
  kind: RequestInput<'labels.pdf'>['kind'];
  used: number;
  disabled: boolean;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'pdf'>('nothing');
  const { underWay, run, cancel } = useLongWork();
  const { say } = useWords();
  const isOff = disabled || pages.length === 0 || busy !== 'nothing';

  const finish = useCallback(() => {
    setBusy('nothing');
    void attempt(bridge().command('labels.recordPrint', { boardIds: [...boardIds] }));
  }, [boardIds]);

  async function save(): Promise<void> {
    setBusy('pdf');
    const made = await run((work) =>
      bridge().query('labels.pdf', { boardIds: [...boardIds], kind, used, region: region(), work }),
    );
    if (!made) return setBusy('nothing');
    const { pdfBase64, fileName } = made;
    const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
    download(new Blob([bytes], { type: 'application/pdf' }), fileName);
    tellDone(say('labels.pdf-made', { fileName, labels: boardIds.length, pages: pages.length }));
    finish();
  }

  return (
    <>
      <Button kind="main" disabled={isOff} onClick={() => setBusy('print')}>
        {say('common.print')}
      </Button>
      <Button disabled={isOff} onClick={save}>
        {say('labels.save-as-pdf')}
      </Button>
      {underWay && <WorkUnderWay label={say('labels.making-pdf')} {...underWay} onCancel={cancel} />}
      {busy === 'print' && <PrintPages pages={pages} onDone={finish} />}
    </>
  );
}
