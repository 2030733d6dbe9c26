import { useState } from 'react';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { type DisplayUnits, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { message } from '../../../shared-core/words/message.ts';
import { NumberField } from '../../form/Field.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { LayoutSketch } from './LayoutSketch.tsx';
import {
  counts,
  draftOfLayout,
  knownSheets,
  type LayoutDraft,
  layoutOf,
  sheetSizes,
  singleSizes,
} from './layout-draft.ts';

/** The sizes of a sheet of labels, or of a single one, with a sketch of what they make. */
export function LayoutForm({
  layout: before,
  units,
  onSave,
}: {
  layout: LabelLayout;
  units: DisplayUnits;
  onSave: (layout: LabelLayout) => void;
}) {
  const { say } = useWords();
  const [draft, setDraft] = useState<LayoutDraft>(draftOfLayout(before, units));
  const { layout, problems } = layoutOf(draft, before, units);
  const changed = layout && JSON.stringify(layout) !== JSON.stringify(before);
  const isSheet = before.kind === 'sheet';
  return (
    <div className="layout-form">
      {isSheet && (
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
      <div className="layout-fields">
        {(isSheet ? sheetSizes : singleSizes).map(({ size, code }) => (
          <NumberField
            key={size}
            label={say(code)}
            unit={counts.has(size) ? undefined : shortLengthUnit(units)}
            value={draft[size]}
            error={problems[size] && say(problems[size])}
            onValue={(value) => setDraft({ ...draft, [size]: value })}
          />
        ))}
      </div>
      {layout && <LayoutSketch layout={layout} />}
      <Actions>
        <Button kind="main" disabled={!changed} onClick={() => layout && onSave(layout)}>
          {say('settings.save-sizes')}
        </Button>
        {changed !== false && (
          <Button onClick={() => setDraft(draftOfLayout(before, units))}>
            {say('settings.undo-changes')}
          </Button>
        )}
      </Actions>
    </div>
  );
}
