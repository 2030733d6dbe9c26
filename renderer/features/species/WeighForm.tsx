import { useState } from 'react';
import type { JudgedOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import { requests } from '../../../shared-core/contract/requests.ts';
import { constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = requests['ovenChecks.weigh'].input.omit({ at: true });

/** Adds what a piece weighs now. */
export function WeighForm({ check, onClose }: { check: JudgedOvenCheck; onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { checkId: check.id, grams: null });
  const [at, setAt] = useState<string | null>(null);
  return (
    <FormDialog
      title={say('oven.weigh-piece', { piece: check.piece })}
      saveWords={say('common.save')}
      onSave={() => bridge().command('ovenChecks.weigh', { ...read(), at: at ?? new Date().toISOString() })}
      onClose={onClose}
    >
      <p>{say('oven.weigh-lead', { hours: constantMassRules[check.rule].hours })}</p>
      <NumberField label={say('oven.weight')} unit="g" autoFocus {...field('grams')} />
      <TimeField label={say('oven.weighed-at')} instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
