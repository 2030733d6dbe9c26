import type { JudgedOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import { requests } from '../../../shared-core/contract/requests.ts';
import { constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { givenTimeSchema, TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = requests['ovenChecks.weigh'].input.extend({ at: givenTimeSchema.nullable() });

/** Adds what a piece weighs now. */
export function WeighForm({ check, onClose }: { check: JudgedOvenCheck; onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { checkId: check.id, grams: null, at: null });
  async function save(): Promise<void> {
    const weighed = read();
    await bridge().command('ovenChecks.weigh', { ...weighed, at: weighed.at ?? new Date().toISOString() });
  }
  return (
    <FormDialog
      title={say('oven.weigh-piece', { piece: check.piece })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('oven.weigh-lead', { hours: constantMassRules[check.rule].hours })}</p>
      <NumberField label={say('oven.weight')} unit="g" autoFocus {...field('grams')} />
      <TimeField label={say('oven.weighed-at')} {...field('at')} />
    </FormDialog>
  );
}
