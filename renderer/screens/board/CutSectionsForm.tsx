import { useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { kgFromWeight, weightUnit } from '../../../shared-core/units/weight.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { NumberField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { TimeField } from '../../parts/TimeField.tsx';
import { isWeight, WeightField } from '../../parts/WeightField.tsx';

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
  const [weight, setWeight] = useState<number | null>(null);
  const [grams, setGrams] = useState<{ first: number | null; second: number | null }>({
    first: null,
    second: null,
  });
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const secondWrong = grams.second !== null && !isWeight(grams.second);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(weight) || !isWeight(grams.first) || secondWrong) throw fieldsMarked();
    await bridge().command('samples.cut', {
      boardId: board.id,
      boardKg: kgFromWeight(weight, units),
      wetGrams: [grams.first, grams.second].filter(isWeight),
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
        <WeightField
          label="First section, wet"
          unit="g"
          weight={grams.first}
          shown={shown}
          onWeight={(first) => setGrams({ ...grams, first })}
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
      <WeightField
        label="Mass of the board"
        unit={weightUnit(units)}
        weight={weight}
        shown={shown}
        onWeight={setWeight}
      />
      <TimeField label="Cut" instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
