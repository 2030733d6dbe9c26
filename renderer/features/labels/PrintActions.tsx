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
import type { BeforePaper } from '../printing/BeforePaper.tsx';
import { usePrinter, waitingWords } from '../printing/usePrinter.ts';
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
  printing,
  beforePaper,
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
  /** The same of printing without a dialog. */
  printing: LongWork;
  beforePaper: BeforePaper;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'ask' | 'pdf'>('nothing');
  const words = useWords();
  const { say } = words;
  const { id: paperId } = paper;
  const isOff = disabled || amount.pages === 0;
  /** Off, but with the focus: making a PDF can take long. */
  const isBusy = busy !== 'nothing';
  const printer = usePrinter(paperId);
  /** What a printer says of labels that are still in its queue. */
  const [waiting, setWaiting] = useState<string | null>(null);

  const ask = useCallback(() => setBusy('ask'), []);
  const stop = useCallback(() => {
    setBusy('nothing');
    setWaiting(null);
  }, []);

  async function record(): Promise<boolean> {
    const recorded = bridge().command('labels.recordPrint', { boardIds: [...boardIds], paperId });
    return (await attempt(recorded)) !== undefined;
  }

  async function printed(): Promise<void> {
    stop();
    if (await record()) tellDone(say('labels.recorded', amount));
  }

  async function print(): Promise<void> {
    if (isBusy) return;
    if (printer === null) return setBusy('print');
    setBusy('pdf');
    const pages = { kind: 'labels' as const, boardIds: [...boardIds], paperId, used };
    const sent = await printing.run(
      (work) => bridge().command('printers.print', { printer: printer.name, pages, region: region(), work }),
      say('print.stopped'),
    );
    if (sent?.state === 'waiting') {
      setWaiting(say(waitingWords(printer.title, sent.why)));
      return setBusy('ask');
    }
    stop();
    if (sent && (await record()))
      tellDone(say('print.labels-sent', { printerName: printer.title, labels: amount.labels }));
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
      <Button
        kind="main"
        disabled={isOff}
        aria-disabled={isBusy}
        onClick={() => isBusy || beforePaper.before('print', print)}
      >
        {say('common.print')}
      </Button>
      <Button
        disabled={isOff}
        aria-disabled={isBusy}
        onClick={() => isBusy || beforePaper.before('pdf', save)}
      >
        {say('labels.save-as-pdf')}
      </Button>
      {beforePaper.question}
      {busy === 'print' && (
        <PrintPages pages={drawLabels(contents, paper, words, used, 'printer', () => shapes)} onDone={ask} />
      )}
      {busy === 'ask' && (
        <Dialog title={say('labels.did-print', amount)} onClose={stop}>
          {waiting !== null && <p>{waiting}</p>}
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
