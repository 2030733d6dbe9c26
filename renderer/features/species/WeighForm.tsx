import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { JudgedOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import { constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TimeField } from '../../form/TimeField.tsx';
import { isWeight, WeightField } from '../../form/WeightField.tsx';
import { useWords } from '../../words.ts';

/** Adds what a piece weighs now. */
export function WeighForm({ check, onClose }: { check: JudgedOvenCheck; onClose: () => void }) {
  const { say } = useWords();
  const [grams, setGrams] = useState<number | null>(null);
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(grams)) throw new Refusal(message('validation.weight-missing'));
    await bridge().command('ovenChecks.weigh', {
      checkId: check.id,
      grams,
      at: at ?? new Date().toISOString(),
    });
  }
  return (
    <FormDialog
      title={say('oven.weigh-piece', { piece: check.piece })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('oven.weigh-lead', { hours: constantMassRules[check.rule].hours })}</p>
      <WeightField
        label={say('oven.weight')}
        unit="g"
        autoFocus
        weight={grams}
        shown={shown}
        onWeight={setGrams}
      />
      <TimeField label={say('oven.weighed-at')} instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
