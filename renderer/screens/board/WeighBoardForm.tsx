import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { kgFromMass, massUnit } from '../../../shared-core/units/mass.ts';
import { bridge } from '../../bridge.ts';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { isMass, MassField } from '../../parts/MassField.tsx';
import { TimeField } from '../../parts/TimeField.tsx';

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
  const [mass, setMass] = useState<number | null>(null);
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isMass(mass)) throw new Refusal('Nothing was saved yet. Type what the scale shows.');
    const kg = kgFromMass(mass, units);
    await bridge().call('samples.weigh', { boardId: board.id, kg, at: at ?? new Date().toISOString() });
  }
  return (
    <FormDialog title={`Weigh ${board.code}`} saveWords="Keep the mass" onSave={save} onClose={onClose}>
      <p>The whole board, without stickers, brushed of rain and snow.</p>
      <MassField
        label="Mass of the board"
        unit={massUnit(units)}
        autoFocus
        mass={mass}
        shown={shown}
        onMass={setMass}
      />
      <TimeField label="Weighed" instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
