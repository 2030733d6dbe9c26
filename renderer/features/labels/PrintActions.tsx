import { useCallback, useState } from 'react';
import type { Shapes } from '../../../shared-core/drawing/shapes.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import { bridge } from '../../data/bridge.ts';
import { downloadPdf } from '../../data/download.ts';
import type { LongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from './PrintPages.tsx';

/**
 * The ways to get labels on paper. What was printed is recorded, so that a label can be out of date. Nothing tells how
 * the system's print dialog ended, so the person is asked.
 */
export function PrintActions({
  contents,
  shapes,
  amount,
  boardIds,
  paper,
  used,
  disabled,
  work: { run },
}: {
  contents: readonly LabelContent[];
  /** Of their texts of other scripts. */
  shapes: Shapes;
  /** Of labels, and of pages that they take; no page where they cannot be printed. */
  amount: { labels: number; pages: number };
  boardIds: readonly number[];
  paper: LabelPaper;
  used: number;
  disabled: boolean;
  /** Making the PDF. How far it is, and what stops it, is shown elsewhere, so that no button comes where these are. */
  work: LongWork;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'ask' | 'pdf'>('nothing');
  const words = useWords();
  const { say } = words;
  const { id: paperId } = paper;
  const isOff = disabled || amount.pages === 0;
  /** Off, but with the focus: making a PDF can take long. */
  const isBusy = busy !== 'nothing';

  const ask = useCallback(() => setBusy('ask'), []);
  const stop = useCallback(() => setBusy('nothing'), []);

  async function record(): Promise<boolean> {
    const recorded = bridge().command('labels.recordPrint', { boardIds: [...boardIds], paperId });
    return (await attempt(recorded)) !== undefined;
  }

  async function printed(): Promise<void> {
    stop();
    if (await record()) tellDone(say('labels.recorded', amount));
  }

  async function save(): Promise<void> {
    if (isBusy) return;
    setBusy('pdf');
    const made = await run(
      (work) =>
        bridge().query('labels.pdf', { boardIds: [...boardIds], paperId, used, region: region(), work }),
      say('labels.pdf-stopped'),
    );
    stop();
    if (!made) return;
    const { pdfBase64, fileName } = made;
    downloadPdf(pdfBase64, fileName);
    const isRecorded = await record();
    tellDone(say(isRecorded ? 'labels.pdf-made' : 'labels.pdf-not-recorded', { fileName, ...amount }));
  }

  return (
    <>
      <Button kind="main" disabled={isOff} aria-disabled={isBusy} onClick={() => !isBusy && setBusy('print')}>
        {say('common.print')}
      </Button>
      <Button disabled={isOff} aria-disabled={isBusy} onClick={save}>
        {say('labels.save-as-pdf')}
      </Button>
      {busy === 'print' && (
        <PrintPages pages={drawLabels(contents, paper, words, used, 'printer', shapes)} onDone={ask} />
      )}
      {busy === 'ask' && (
        <Dialog title={say('labels.did-print', amount)} onClose={stop}>
          <p>{say('labels.did-print-why')}</p>
          <Actions>
            <Button kind="main" onClick={printed}>
              {say('labels.did-print-yes')}
            </Button>
            <Button onClick={stop}>{say('labels.did-print-no')}</Button>
          </Actions>
        </Dialog>
      )}
    </>
  );
}
