import {
  a4SheetLayout,
  type LabelLayout,
  labelLayoutSchema,
  letterSheetLayout,
} from '../../../shared-core/labels/sheet.ts';
import { message } from '../../../shared-core/words/message.ts';
import { NumberField } from '../../form/Field.tsx';
import { PaperSizeField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { LayoutSketch } from './LayoutSketch.tsx';

/** Sheets that most shops sell, to begin with. */
const knownSheets = [
  { code: 'settings.letter-sheet', layout: letterSheetLayout },
  { code: 'settings.a4-sheet', layout: a4SheetLayout },
] as const;

/** The sizes of a sheet of labels, or of a single one, with a sketch of what they make. */
export function LayoutForm({
  layout: before,
  onSave,
}: {
  layout: LabelLayout;
  onSave: (layout: LabelLayout) => void;
}) {
  const { say } = useWords();
  const { field, set, made, refill } = useDraft(labelLayoutSchema, before);
  const changed = JSON.stringify(made) !== JSON.stringify(before);
  return (
    <div className="column">
      {before.kind === 'sheet' && (
        <Actions>
          {knownSheets.map(({ code, layout: known }) => (
            <Button key={code} onClick={() => onSave(known)}>
              {say('settings.use-sheet', {
                sheetName: message(code, { columns: known.columns, rows: known.rows }),
              })}
            </Button>
          ))}
        </Actions>
      )}
      <div className="form-grid">
        {before.kind === 'single' ? (
          <>
            <PaperSizeField
              label={say('settings.label-width')}
              {...field('pageWidthMm')}
              onValue={(mm) => set({ pageWidthMm: mm, labelWidthMm: mm })}
            />
            <PaperSizeField
              label={say('settings.label-height')}
              {...field('pageHeightMm')}
              onValue={(mm) => set({ pageHeightMm: mm, labelHeightMm: mm })}
            />
          </>
        ) : (
          <>
            <PaperSizeField label={say('settings.page-width')} {...field('pageWidthMm')} />
            <PaperSizeField label={say('settings.page-height')} {...field('pageHeightMm')} />
            <NumberField label={say('settings.columns')} {...field('columns')} />
            <NumberField label={say('settings.rows')} {...field('rows')} />
            <PaperSizeField label={say('settings.label-width')} {...field('labelWidthMm')} />
            <PaperSizeField label={say('settings.label-height')} {...field('labelHeightMm')} />
            <PaperSizeField label={say('settings.left-margin')} {...field('leftMm')} />
            <PaperSizeField label={say('settings.top-margin')} {...field('topMm')} />
            <PaperSizeField label={say('settings.column-gap')} {...field('columnGapMm')} />
            <PaperSizeField label={say('settings.row-gap')} {...field('rowGapMm')} />
          </>
        )}
      </div>
      {made && <LayoutSketch layout={made} />}
      <Actions>
        <Button kind="main" disabled={!made || !changed} onClick={() => made && onSave(made)}>
          {say('settings.save-sizes')}
        </Button>
        {changed && <Button onClick={() => refill(before)}>{say('settings.undo-changes')}</Button>}
      </Actions>
    </div>
  );
}
