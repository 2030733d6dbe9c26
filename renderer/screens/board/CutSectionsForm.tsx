import { useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { kgFromMass, massUnit } from '../../../shared-core/units/mass.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { NumberField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { isMass, MassField } from '../../parts/MassField.tsx';
import { TimeField } from '../../parts/TimeField.tsx';

/** Asks for the masses of a board and of the sections that were just cut beside it. */
export function CutSectionsForm({
  board,
  units,
  onClose,
}: {
  board: BoardRow;
  units: DisplayUnits;
  onClose: () => void;
}) {
  const [mass, setMass] = useState<number | null>(null);
  const [grams, setGrams] = useState<{ first: number | null; second: number | null }>({
    first: null,
    second: null,
  });
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const secondWrong = grams.second !== null && !isMass(grams.second);
  async function save(): Promise<void> {
    setShown(true);
    if (!isMass(mass) || !isMass(grams.first) || secondWrong) throw fieldsMarked();
    await bridge().call('samples.cut', {
      boardId: board.id,
      boardKg: kgFromMass(mass, units),
      wetGrams: [grams.first, grams.second].filter(isMass),
      at: at ?? new Date().toISOString(),
    });
  }
  return (
    <FormDialog
      title={`Sections of ${board.code}`}
      saveWords="Keep the masses"
      onSave={save}
      onClose={onClose}
    >
      <p>
        At least half a metre (20 in) from the ends, clear of knots, cut two sections of about 25 mm (1 in)
        along the grain; what is left between them is the sample board. Weigh the sections at once, before
        they dry, and the board. Coat its fresh ends.
      </p>
      <Banner kind="caution">
        Short pieces can be thrown by a saw: clamp the board and keep your hands clear.
      </Banner>
      <div className="form-grid">
        <MassField
          label="First section, wet"
          unit="g"
          mass={grams.first}
          shown={shown}
          onMass={(first) => setGrams({ ...grams, first })}
        />
        <NumberField
          label="Second section, wet"
          unit="g"
          hint="Leave it empty if there is only one: nothing then tells how sure the estimate is."
          value={grams.second}
          error={shown && secondWrong ? 'Type a mass above 0 g, or leave it empty.' : null}
          onValue={(second) => setGrams({ ...grams, second })}
        />
      </div>
      <MassField
        label="Mass of the board"
        unit={massUnit(units)}
        mass={mass}
        shown={shown}
        onMass={setMass}
      />
      <TimeField label="Cut" instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
