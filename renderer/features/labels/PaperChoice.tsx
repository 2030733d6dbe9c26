import { useState } from 'react';
import { type LabelPaper, MOST_PAPERS } from '../../../shared-core/labels/paper.ts';
import { newUuid } from '../../data/uuid.ts';
import { NumberField, Select } from '../../form/Field.tsx';
import { attempt, tellDone } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { PrinterChoice } from '../printing/PrinterChoice.tsx';
import { CalibrationDialog } from './CalibrationDialog.tsx';
import { PaperDialog } from './PaperDialog.tsx';
import { paperName } from './paper-name.ts';

/** The paper that the labels go on, and from which of its labels on. */
export function PaperChoice({
  paper,
  onPaper,
  used,
  onUsed,
  problem,
}: {
  paper: LabelPaper;
  onPaper: (paperId: string) => void;
  used: number | null;
  onUsed: (used: number | null) => void;
  problem: string | null;
}) {
  const { say } = useWords();
  const papers = useSettings(({ settings }) => settings.labelPapers);
  const [editing, setEditing] = useState<LabelPaper | null>(null);
  const [isCalibrating, setCalibrating] = useState(false);
  const labels = paper.layout.columns * paper.layout.rows;

  async function save(saved: LabelPaper): Promise<void> {
    const { settings } = useSettings.getState();
    const isKnown = settings.labelPapers.some(({ id }) => id === saved.id);
    const labelPapers = isKnown
      ? settings.labelPapers.map((each) => (each.id === saved.id ? saved : each))
      : [...settings.labelPapers, saved];
    await saveSettings({ ...settings, labelPapers });
    onPaper(saved.id);
  }

  async function remove(): Promise<void> {
    const { settings } = useSettings.getState();
    const labelPapers = settings.labelPapers.filter(({ id }) => id !== paper.id);
    const paperTitle = paperName(paper, say);
    await attempt(
      saveSettings({ ...settings, labelPapers }).then(() =>
        tellDone(say('labels.paper-deleted', { paperTitle })),
      ),
    );
  }

  return (
    <Sheet title={say('labels.paper')}>
      <Select
        label={say('labels.print-on')}
        value={paper.id}
        options={papers.map((each) => ({
          value: each.id,
          label: paperName(each, say),
          isName: each.name !== '',
        }))}
        onValue={onPaper}
      />
      {labels > 1 && (
        <NumberField
          label={say('labels.used')}
          hint={say('labels.used-hint', { labels })}
          error={problem}
          value={used}
          onValue={onUsed}
        />
      )}
      <PrinterChoice paper={paper.id} />
      <p>{say('labels.actual-size')}</p>
      <Actions>
        <Button onClick={() => setEditing(paper)}>{say('labels.edit-paper')}</Button>
        <Button onClick={() => setCalibrating(true)}>{say('labels.calibrate')}</Button>
        <Button
          disabled={papers.length >= MOST_PAPERS}
          onClick={() => setEditing({ ...paper, id: newUuid(), name: '' })}
        >
          {say('labels.add-paper')}
        </Button>
        {papers.length > 1 && <Button onClick={remove}>{say('labels.delete-paper')}</Button>}
      </Actions>
      {isCalibrating && (
        <CalibrationDialog paper={paper} onSave={save} onClose={() => setCalibrating(false)} />
      )}
      {editing && (
        <PaperDialog
          paper={editing}
          isNew={papers.every(({ id }) => id !== editing.id)}
          onSave={save}
          onClose={() => setEditing(null)}
        />
      )}
    </Sheet>
  );
}
