import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { JudgedOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import { constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { TimeField } from '../../parts/TimeField.tsx';
import { isWeight, WeightField } from '../../parts/WeightField.tsx';

/** Asks what a piece weighs now. */
export function WeighForm({ check, onClose }: { check: JudgedOvenCheck; onClose: () => void }) {
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
    <FormDialog title={`Weigh ${check.piece}`} saveWords="Keep the mass" onSave={save} onClose={onClose}>
      <p>
        Take it out with gloves or tongs, and let it cool in a closed dry jar: from the open air it takes up
        moisture, and warm air around it puts the balance out. Then back into the oven, and again in{' '}
        {constantMassRules[check.rule].hours} h.
      </p>
      <WeightField label="Mass" unit="g" autoFocus weight={grams} shown={shown} onWeight={setGrams} />
      <TimeField label="Weighed" instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
