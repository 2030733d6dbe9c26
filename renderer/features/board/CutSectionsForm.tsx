import { useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { kgFromWeight, weightUnit } from '../../../shared-core/units/weight.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { TimeField } from '../../form/TimeField.tsx';
import { isWeight, WeightField } from '../../form/WeightField.tsx';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** Where sections are cut, mm: common practice, no source. */
const SECTIONS = { sectionMm: 25, clearDistanceMm: 500 };

/** Asks for the weights of a board and of the sections that were just cut beside it. */
export function CutSectionsForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const units = useUnits();
  const [weight, setWeight] = useState<number | null>(null);
  const [grams, setGrams] = useState<{ first: number | null; second: number | null }>({
    first: null,
    second: null,
  });
  const [at, setAt] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const isSecondWrong = grams.second !== null && !isWeight(grams.second);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(weight) || !isWeight(grams.first) || isSecondWrong) throw fieldsMarked();
    await bridge().command('samples.cut', {
      boardId: board.id,
      boardKg: kgFromWeight(weight, units),
      wetGrams: [grams.first, grams.second].filter(isWeight),
      at: at ?? new Date().toISOString(),
    });
  }
  return (
    <FormDialog
      title={say('weights.cut-title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <ol className="sample-steps">
        <li>
          {say('weights.cut-where', SECTIONS)} {say('weights.cut-middle')}
        </li>
        <li>{say('weights.cut-weigh')}</li>
        <li>{say('weights.cut-coat')}</li>
      </ol>
      <Banner kind="caution">{say('weights.cut-caution')}</Banner>
      <div className="form-grid">
        <WeightField
          label={say('weights.first-section')}
          unit="g"
          weight={grams.first}
          shown={shown}
          onWeight={(first) => setGrams({ ...grams, first })}
        />
        <NumberField
          label={say('weights.second-section')}
          unit="g"
          hint={say('weights.second-hint')}
          value={grams.second}
          error={shown && isSecondWrong ? say('weights.second-wrong') : null}
          onValue={(second) => setGrams({ ...grams, second })}
        />
      </div>
      <WeightField
        label={say('weights.board')}
        unit={weightUnit(units)}
        weight={weight}
        shown={shown}
        onWeight={setWeight}
      />
      <TimeField label={say('weights.cut-when')} instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
