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
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PrintPages } from './PrintPages.tsx';

/** The ways to get labels on paper. Either records what was printed, so that a label can be out of date. */
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
  const [busy, setBusy] = useState<'nothing' | 'print' | 'pdf'>('nothing');
  const words = useWords();
  const { say } = words;
  const { id: paperId } = paper;
  const isOff = disabled || amount.pages === 0 || busy !== 'nothing';

  const finish = useCallback(() => {
    setBusy('nothing');
    void attempt(bridge().command('labels.recordPrint', { boardIds: [...boardIds], paperId }));
  }, [boardIds, paperId]);

  async function save(): Promise<void> {
    setBusy('pdf');
    const made = await run(
      (work) =>
        bridge().query('labels.pdf', { boardIds: [...boardIds], paperId, used, region: region(), work }),
      say('labels.pdf-stopped'),
    );
    if (!made) return setBusy('nothing');
    const { pdfBase64, fileName } = made;
    downloadPdf(pdfBase64, fileName);
    tellDone(say('labels.pdf-made', { fileName, ...amount }));
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
      {busy === 'print' && (
        <PrintPages pages={drawLabels(contents, paper, words, used, 'printer', shapes)} onDone={finish} />
      )}
    </>
  );
}
