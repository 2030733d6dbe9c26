import { useCallback, useState } from 'react';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';
import type { LongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from './PrintPages.tsx';

/** The ways to get labels on paper. Either records what was printed, so that a label can be out of date. */
export function PrintActions({
  pages,
  boardIds,
  kind,
  used,
  disabled,
  work: { run },
}: {
  pages: readonly DrawnPage[];
  boardIds: readonly number[];
  kind: RequestInput<'labels.pdf'>['kind'];
  used: number;
  disabled: boolean;
  /** Making the PDF. How far it is, and what stops it, is shown elsewhere, so that no button comes where these are. */
  work: LongWork;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'pdf'>('nothing');
  const { say } = useWords();
  const isOff = disabled || pages.length === 0 || busy !== 'nothing';

  const finish = useCallback(() => {
    setBusy('nothing');
    void attempt(bridge().command('labels.recordPrint', { boardIds: [...boardIds] }));
  }, [boardIds]);

  async function save(): Promise<void> {
    setBusy('pdf');
    const made = await run(
      (work) => bridge().query('labels.pdf', { boardIds: [...boardIds], kind, used, region: region(), work }),
      say('labels.pdf-stopped'),
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
      {busy === 'print' && <PrintPages pages={pages} onDone={finish} />}
    </>
  );
}
