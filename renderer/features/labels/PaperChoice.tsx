import type { Settings } from '../../../shared-core/contract/settings.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';

/** The paper that the labels go on. */
export function PaperChoice({
  kind,
  layouts: { sheet, single },
  onKind,
  used,
  onUsed,
  problem,
}: {
  kind: LabelLayout['kind'];
  layouts: Settings['labelLayouts'];
  onKind: (kind: LabelLayout['kind']) => void;
  used: number | null;
  onUsed: (used: number | null) => void;
  problem: string | null;
}) {
  const { say } = useWords();
  const { labelWidthMm: widthMm, labelHeightMm: heightMm } = single;
  return (
    <Sheet title={say('labels.paper')}>
      <Choice
        label={say('labels.print-on')}
        value={kind}
        options={[
          { value: 'sheet', label: say('labels.sheets', { columns: sheet.columns, rows: sheet.rows }) },
          { value: 'single', label: say('labels.singles', { widthMm, heightMm }) },
        ]}
        onValue={onKind}
      />
      {kind === 'sheet' && (
        <NumberField
          label={say('labels.used')}
          hint={say('labels.used-hint', { labels: sheet.columns * sheet.rows })}
          error={problem}
          value={used}
          onValue={onUsed}
        />
      )}
      <p>
        {say('labels.actual-size')} <a href={hrefOf({ name: 'settings' })}>{say('labels.other-sizes')}</a>
      </p>
    </Sheet>
  );
}
