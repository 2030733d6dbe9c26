import { useCallback, useState } from 'react';
import type { Report } from '../../../shared-core/contract/report.ts';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import type { Paper } from '../../../shared-core/drawing/paper.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';
import type { LongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from '../labels/PrintPages.tsx';

/** The ways to get a report on paper. */
export function ReportActions({
  report,
  paper,
  pages,
  work: { run },
}: {
  report: Report;
  paper: Paper;
  pages: readonly DrawnPage[];
  /** Making the PDF. How far it is, and what stops it, is shown elsewhere. */
  work: LongWork;
}) {
  const [busy, setBusy] = useState<'nothing' | 'print' | 'pdf'>('nothing');
  const { say } = useWords();
  const isOff = pages.length === 0 || busy !== 'nothing';
  const printed = useCallback(() => setBusy('nothing'), []);

  async function save(): Promise<void> {
    setBusy('pdf');
    const made = await run(
      (work) => bridge().query('reports.pdf', { ...report, paper, region: region(), work }),
      say('labels.pdf-stopped'),
    );
    setBusy('nothing');
    if (!made) return;
    const bytes = Uint8Array.from(atob(made.pdfBase64), (character) => character.charCodeAt(0));
    download(new Blob([bytes], { type: 'application/pdf' }), made.fileName);
    tellDone(say('report.pdf-made', { fileName: made.fileName, pages: pages.length }));
  }

  return (
    <>
      <Button kind="main" disabled={isOff} onClick={() => setBusy('print')}>
        {say('common.print')}
      </Button>
      <Button disabled={isOff} onClick={save}>
        {say('labels.save-as-pdf')}
      </Button>
      {busy === 'print' && <PrintPages pages={pages} onDone={printed} />}
    </>
  );
}
