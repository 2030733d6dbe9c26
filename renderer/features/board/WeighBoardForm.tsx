import { useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { kgFromWeight, weightUnit } from '../../../shared-core/units/weight.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { TimeField } from '../../form/TimeField.tsx';
import { isWeight, WeightField } from '../../form/WeightField.tsx';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';

/** Asks what a sample board weighs now. */
export function WeighBoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const units = useUnits();
  const [weight, setWeight] = useState<number | null>(null);
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(weight)) throw fieldsMarked();
    const kg = kgFromWeight(weight, units);
    await bridge().command('samples.weigh', { boardId: board.id, kg, at: at ?? new Date().toISOString() });
  }
  return (
    <FormDialog
      title={say('weights.weigh-title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('weights.weigh-how')}</p>
      <WeightField
        label={say('weights.board')}
        unit={weightUnit(units)}
        autoFocus
        weight={weight}
        shown={shown}
        onWeight={setWeight}
      />
      <TimeField label={say('weights.weighed-when')} instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
