import { useCallback, useState } from 'react';
import type { AskedReport } from '../../../shared-core/contract/report.ts';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import type { Paper } from '../../../shared-core/drawing/paper.ts';
import { bridge } from '../../data/bridge.ts';
import { downloadPdf } from '../../data/download.ts';
import type { LongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from '../labels/PrintPages.tsx';
import type { BeforePaper } from '../printing/BeforePaper.tsx';
import { usePrinter, waitingWords } from '../printing/usePrinter.ts';

/** The ways to get a report on paper. */
export function ReportActions({
  report,
  paper,
  pages,
  work: { run },
  printing,
  beforePaper,
}: {
  report: AskedReport;
  paper: Paper;
  pages: readonly DrawnPage[];
  /** Making the PDF. How far it is, and what stops it, is shown elsewhere. */
  work: LongWork;
  /** The same of printing without a dialog. */
  printing: LongWork;
  beforePaper: BeforePaper;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'pdf'>('nothing');
  const { say } = useWords();
  const isOff = pages.length === 0 || busy !== 'nothing';
  const printer = usePrinter(paper);
  const printed = useCallback(() => setBusy('nothing'), []);

  async function print(): Promise<void> {
    if (printer === null) return setBusy('print');
    setBusy('pdf');
    const asked = { kind: 'report' as const, report, paper };
    const { name, title: printerName } = printer;
    const sent = await printing.run(
      (work) => bridge().command('printers.print', { printer: name, pages: asked, region: region(), work }),
      say('print.stopped'),
    );
    setBusy('nothing');
    if (sent?.state === 'printed') tellDone(say('print.report-sent', { printerName, pages: pages.length }));
    else if (sent) tellDone(say(waitingWords(printerName, sent.why)));
  }

  async function save(): Promise<void> {
    setBusy('pdf');
    const made = await run(
      (work) => bridge().query('reports.pdf', { ...report, paper, region: region(), work }),
      say('labels.pdf-stopped'),
    );
    setBusy('nothing');
    if (!made) return;
    downloadPdf(made.pdfBase64, made.fileName);
    tellDone(say('report.pdf-made', { fileName: made.fileName, pages: pages.length }));
  }

  return (
    <>
      <Button kind="main" disabled={isOff} onClick={() => beforePaper.before('print', print)}>
        {say('common.print')}
      </Button>
      <Button disabled={isOff} onClick={() => beforePaper.before('pdf', save)}>
        {say('labels.save-as-pdf')}
      </Button>
      {beforePaper.question}
      {busy === 'print' && <PrintPages pages={pages} onDone={printed} />}
    </>
  );
}
