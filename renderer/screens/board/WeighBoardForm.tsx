import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { kgFromWeight, weightUnit } from '../../../shared-core/units/weight.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { TimeField } from '../../parts/TimeField.tsx';
import { isWeight, WeightField } from '../../parts/WeightField.tsx';

/** Asks what a sample board weighs now. */
export function WeighBoardForm({
  board,
  units,
  onClose,
}: {
  board: BoardRow;
  units: DisplayUnits;
  onClose: () => void;
}) {
  const [weight, setWeight] = useState<number | null>(null);
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(weight)) throw new Refusal(message('validation.weight-missing'));
    const kg = kgFromWeight(weight, units);
    await bridge().command('samples.weigh', { boardId: board.id, kg, at: at ?? new Date().toISOString() });
  }
  return (
    <FormDialog title={`Weigh ${board.code}`} saveWords="Keep the mass" onSave={save} onClose={onClose}>
      <p>The whole board, without stickers, brushed of rain and snow.</p>
      <WeightField
        label="Mass of the board"
        unit={weightUnit(units)}
        autoFocus
        weight={weight}
        shown={shown}
        onWeight={setWeight}
      />
      <TimeField label="Weighed" instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
