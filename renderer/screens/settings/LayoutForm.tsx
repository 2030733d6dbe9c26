import { useState } from 'react';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { type DisplayUnits, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { NumberField } from '../../parts/Field.tsx';
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
  const [draft, setDraft] = useState<LayoutDraft>(draftOfLayout(before, units));
  const { layout, problems } = layoutOf(draft, before, units);
  const changed = layout && JSON.stringify(layout) !== JSON.stringify(before);
  const isSheet = before.kind === 'sheet';
  return (
    <div className="layout-form">
      {isSheet && (
        <Actions>
          {knownSheets.map((known) => (
            <Button key={known.label} onClick={() => onSave(known.layout)}>
              Use {known.label}
            </Button>
          ))}
        </Actions>
      )}
      <div className="layout-fields">
        {(isSheet ? sheetSizes : singleSizes).map(({ size, label }) => (
          <NumberField
            key={size}
            label={label}
            unit={counts.has(size) ? undefined : shortLengthUnit(units)}
            value={draft[size]}
            error={problems[size]}
            onValue={(value) => setDraft({ ...draft, [size]: value })}
          />
        ))}
      </div>
      {layout && <LayoutSketch layout={layout} />}
      <Actions>
        <Button kind="main" disabled={!changed} onClick={() => layout && onSave(layout)}>
          Save these sizes
        </Button>
        {changed !== false && (
          <Button onClick={() => setDraft(draftOfLayout(before, units))}>Back to the saved ones</Button>
        )}
      </Actions>
    </div>
  );
}
