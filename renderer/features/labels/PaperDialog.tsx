import { useState } from 'react';
import { type LabelPaper, labelPaperSchema } from '../../../shared-core/labels/paper.ts';
import {
  a4SheetLayout,
  asRoll,
  type LabelLayout,
  labelLayoutSchema,
  letterSheetLayout,
} from '../../../shared-core/labels/sheet.ts';
import { message } from '../../../shared-core/words/message.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField, Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { PaperSizeField } from '../../form/MeasureFields.tsx';
import { type Fields, useDraft } from '../../form/useDraft.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { LayoutSketch } from './LayoutSketch.tsx';

/** Sheets that most shops sell, to begin with. */
const knownSheets = [
  { code: 'labels.letter-sheet', layout: letterSheetLayout },
  { code: 'labels.a4-sheet', layout: a4SheetLayout },
] as const;

const DOTS = [null, 203, 300, 600] as const;

/** A sheet or roll of labels: its sizes, with a sketch of what they make, and the dots of the printer. */
export function PaperDialog({
  paper,
  isNew,
  onSave,
  onClose,
}: {
  paper: LabelPaper;
  isNew: boolean;
  onSave: (paper: LabelPaper) => Promise<void>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [name, setName] = useState(paper.name);
  const [dotsPerInch, setDots] = useState(paper.dotsPerInch);
  const layout = useDraft(labelLayoutSchema, paper.layout);
  const { draft, set, made, refill } = layout;
  return (
    <FormDialog
      title={say(isNew ? 'labels.new-paper' : 'labels.edit-paper')}
      saveWords={say(isNew ? 'labels.add-paper' : 'labels.save-paper')}
      onSave={() => onSave(labelPaperSchema.parse({ ...paper, name, dotsPerInch, layout: layout.read() }))}
      onClose={onClose}
    >
      <TextField
        label={say('labels.paper-name')}
        hint={say('labels.paper-name-hint')}
        maxLength={40}
        value={name}
        onValue={setName}
      />
      <Choice
        label={say('labels.paper-kind')}
        value={draft.kind}
        options={[
          { value: 'sheet', label: say('labels.kind-sheet') },
          { value: 'roll', label: say('labels.kind-roll') },
        ]}
        onValue={(kind) => set(kind === 'roll' ? asRoll(draft) : { kind })}
      />
      {draft.kind === 'sheet' ? (
        <>
          <Actions>
            {knownSheets.map(({ code, layout: { columns, rows }, layout: known }) => (
              <Button key={code} onClick={() => refill(known)}>
                {say('labels.use-sheet', { sheetName: message(code, { columns, rows }) })}
              </Button>
            ))}
          </Actions>
          <SheetSizes {...layout} />
        </>
      ) : (
        <RollSizes {...layout} />
      )}
      {made && <LayoutSketch layout={made} />}
      <Select
        label={say('labels.dots')}
        hint={say('labels.dots-hint')}
        value={dotsPerInch}
        options={DOTS.map((dots) => ({
          value: dots,
          label: dots === null ? say('labels.dots-unknown') : say('labels.dots-of', { dots }),
        }))}
        onValue={setDots}
      />
    </FormDialog>
  );
}

function SheetSizes({ field }: Fields<LabelLayout>) {
  const { say } = useWords();
  return (
    <div className="form-grid">
      <PaperSizeField label={say('labels.page-width')} {...field('pageWidthMm')} />
      <PaperSizeField label={say('labels.page-height')} {...field('pageHeightMm')} />
      <NumberField label={say('labels.columns')} {...field('columns')} />
      <NumberField label={say('labels.rows')} {...field('rows')} />
      <PaperSizeField label={say('labels.label-width')} {...field('labelWidthMm')} />
      <PaperSizeField label={say('labels.label-height')} {...field('labelHeightMm')} />
      <PaperSizeField label={say('labels.left-margin')} {...field('leftMm')} />
      <PaperSizeField label={say('labels.top-margin')} {...field('topMm')} />
      <PaperSizeField label={say('labels.column-gap')} {...field('columnGapMm')} />
      <PaperSizeField label={say('labels.row-gap')} {...field('rowGapMm')} />
    </div>
  );
}

/** Its page follows from its labels. */
function RollSizes({ draft, field, set }: Fields<LabelLayout>) {
  const { say } = useWords();
  const sized = (key: 'labelWidthMm' | 'labelHeightMm' | 'columns' | 'columnGapMm') => ({
    ...field(key),
    onValue: (value: number | null) => set(asRoll({ ...draft, [key]: value })),
  });
  return (
    <div className="form-grid">
      <PaperSizeField label={say('labels.label-width')} {...sized('labelWidthMm')} />
      <PaperSizeField label={say('labels.label-height')} {...sized('labelHeightMm')} />
      <NumberField label={say('labels.columns')} {...sized('columns')} />
      <PaperSizeField label={say('labels.column-gap')} {...sized('columnGapMm')} />
    </div>
  );
}
