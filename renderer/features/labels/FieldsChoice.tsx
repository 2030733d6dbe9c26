import { labelFieldSchema, movedField, withField } from '../../../shared-core/labels/label-field.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import { Choice } from '../../form/Choice.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import styles from './labels.module.css';

/** What the labels on a paper show, and in what order. Every choice shows in the preview at once. */
export function FieldsChoice({ paper }: { paper: LabelPaper }) {
  const { say } = useWords();
  const { fields, code } = paper;
  const others = labelFieldSchema.options.filter((field) => !fields.includes(field));
  const save = (changed: Partial<LabelPaper>) => {
    const { settings } = useSettings.getState();
    const labelPapers = settings.labelPapers.map((each) =>
      each.id === paper.id ? { ...each, ...changed } : each,
    );
    void attempt(saveSettings({ ...settings, labelPapers }));
  };
  return (
    <Sheet title={say('labels.shows')}>
      <Choice
        label={say('labels.code-kind')}
        value={code}
        options={[
          { value: 'qr', label: say('labels.code.qr') },
          { value: 'code-128', label: say('labels.code.code-128') },
          { value: 'none', label: say('labels.code.none') },
        ]}
        onValue={(chosen) => save({ code: chosen })}
      />
      <p className="soft">{say('labels.fields-hint')}</p>
      <ol className={`list ${styles.fields}`} aria-label={say('labels.fields')}>
        {[...fields, ...others].map((field) => {
          const fieldTitle = say(`labels.field.${field}`);
          const at = fields.indexOf(field);
          return (
            <li key={field} className={styles.field}>
              <Checkbox
                label={fieldTitle}
                checked={at >= 0}
                disabled={field === 'code'}
                onChecked={(isIn) => save({ fields: withField(fields, field, isIn) })}
              />
              {at >= 0 && (
                <span className={styles.moves}>
                  <Button
                    kind="quiet"
                    aria-label={say('labels.move-up', { fieldTitle })}
                    aria-disabled={at === 0}
                    onClick={() => save({ fields: movedField(fields, field, -1) })}
                  >
                    ↑
                  </Button>
                  <Button
                    kind="quiet"
                    aria-label={say('labels.move-down', { fieldTitle })}
                    aria-disabled={at === fields.length - 1}
                    onClick={() => save({ fields: movedField(fields, field, 1) })}
                  >
                    ↓
                  </Button>
                </span>
              )}
            </li>
          );
        })}
      </ol>
    </Sheet>
  );
}
