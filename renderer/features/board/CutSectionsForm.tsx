import { z } from 'zod';
import { givenGramsSchema } from '../../../shared-core/contract/oven-checks.ts';
import { newSampleCutSchema } from '../../../shared-core/contract/sample-board.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { WeightField } from '../../form/MeasureFields.tsx';
import { givenTimeSchema, TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** Where sections are cut, mm: common practice, no source. */
const SECTIONS = { sectionMm: 25, clearDistanceMm: 500 };

const schema = newSampleCutSchema.pick({ boardKg: true }).extend({
  firstGrams: givenGramsSchema,
  secondGrams: z.nullable(givenGramsSchema),
  at: givenTimeSchema.nullable(),
});

/** Asks for the weights of a board and of the sections that were just cut beside it. */
export function CutSectionsForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { boardKg: null, firstGrams: null, secondGrams: null, at: null });
  async function save(): Promise<void> {
    const { boardKg, firstGrams, secondGrams, at } = read();
    await bridge().command('samples.cut', {
      boardId: board.id,
      boardKg,
      wetGrams: secondGrams === null ? [firstGrams] : [firstGrams, secondGrams],
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
      <ol className="list numbered">
        <li>
          {say('weights.cut-where', SECTIONS)} {say('weights.cut-middle')}
        </li>
        <li>{say('weights.cut-weigh')}</li>
        <li>{say('weights.cut-coat')}</li>
      </ol>
      <Banner kind="caution">{say('weights.cut-caution')}</Banner>
      <div className="form-grid">
        <NumberField label={say('weights.first-section')} unit="g" {...field('firstGrams')} />
        <NumberField
          label={say('weights.second-section')}
          unit="g"
          hint={say('weights.second-hint')}
          {...field('secondGrams')}
        />
      </div>
      <WeightField label={say('weights.board')} {...field('boardKg')} />
      <TimeField label={say('weights.cut-when')} {...field('at')} />
    </FormDialog>
  );
}
