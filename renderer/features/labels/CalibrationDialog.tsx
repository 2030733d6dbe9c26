import { useCallback, useState } from 'react';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import {
  type CalibrationLines,
  calibrationFrom,
  calibrationLines,
  exactPrinter,
} from '../../../shared-core/labels/calibration.ts';
import { calibrationPage } from '../../../shared-core/labels/calibration-page.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { bridge } from '../../data/bridge.ts';
import { downloadPdf } from '../../data/download.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { PaperSizeField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { region } from '../../region.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { usePrinter, waitingWords } from '../printing/usePrinter.ts';
import { PrintPages } from './PrintPages.tsx';

const mm = z.number(says('labels.line-missing')).min(0);
const measuredSchema = z.object({ leftMm: mm, rightMm: mm, topMm: mm, bottomMm: mm });

const lines = [
  ['leftMm', 'labels.line-left'],
  ['rightMm', 'labels.line-right'],
  ['topMm', 'labels.line-top'],
  ['bottomMm', 'labels.line-bottom'],
] as const satisfies readonly (readonly [keyof CalibrationLines, Code])[];

/** Where the printer puts what is to be printed on a paper: a page is printed, and the person types where its lines are. */
export function CalibrationDialog({
  paper,
  onSave,
  onClose,
}: {
  paper: LabelPaper;
  onSave: (paper: LabelPaper) => Promise<void>;
  onClose: () => void;
}) {
  const words = useWords();
  const { say } = words;
  const [isPrinting, setPrinting] = useState(false);
  const printer = usePrinter(paper.id);
  const meant = calibrationLines(paper.layout);
  const { field, read } = useDraft(measuredSchema, {
    leftMm: null,
    rightMm: null,
    topMm: null,
    bottomMm: null,
  });
  const printed = useCallback(() => setPrinting(false), []);

  async function save(): Promise<void> {
    const found = calibrationFrom(meant, read());
    if ('problem' in found) throw new Refusal(found.problem);
    await onSave({ ...paper, calibration: found.calibration });
  }
  async function print(): Promise<void> {
    if (printer === null) return setPrinting(true);
    const pages = { kind: 'calibration' as const, paperId: paper.id };
    const input = { printer: printer.name, pages, region: region(), work: null };
    const { title: printerName } = printer;
    const sent = await attempt(bridge().command('printers.print', input));
    if (sent?.state === 'printed') tellDone(say('print.page-sent', { printerName }));
    else if (sent) tellDone(say(waitingWords(printerName, sent.why)));
  }
  async function savePdf(): Promise<void> {
    await attempt(
      bridge()
        .query('labels.calibrationPdf', { paperId: paper.id, region: region() })
        .then(({ pdfBase64, fileName }) => downloadPdf(pdfBase64, fileName)),
    );
  }

  return (
    <FormDialog
      title={say('labels.calibrate-title')}
      saveWords={say('labels.calibrate-save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('labels.calibrate-lead')}</p>
      <Actions>
        <Button onClick={print}>{say('labels.calibrate-page')}</Button>
        <Button onClick={savePdf}>{say('labels.calibrate-pdf')}</Button>
        {JSON.stringify(paper.calibration) !== JSON.stringify(exactPrinter) && (
          <Button
            onClick={() => attempt(onSave({ ...paper, calibration: exactPrinter }).then(() => onClose()))}
          >
            {say('labels.calibrate-reset')}
          </Button>
        )}
      </Actions>
      <p className="soft">
        {say('labels.calibrate-decimals', { exampleText: `20${words.formats.decimalMark}5 mm` })}
      </p>
      <div className="form-grid">
        {lines.map(([key, code]) => (
          <PaperSizeField
            key={key}
            label={say(code)}
            hint={say('labels.line-meant', { meantMm: meant[key] })}
            {...field(key)}
          />
        ))}
      </div>
      {isPrinting && <PrintPages pages={[calibrationPage(paper.layout, words)]} onDone={printed} />}
    </FormDialog>
  );
}
