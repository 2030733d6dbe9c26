import { requests } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { WeightField } from '../../form/MeasureFields.tsx';
import { givenTimeSchema, TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = requests['samples.weigh'].input.extend({ at: givenTimeSchema.nullable() });

/** Asks what a sample board weighs now. */
export function WeighBoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { boardId: board.id, kg: null, at: null });
  async function save(): Promise<void> {
    const weighed = read();
    await bridge().command('samples.weigh', { ...weighed, at: weighed.at ?? new Date().toISOString() });
  }
  return (
    <FormDialog
      title={say('weights.weigh-title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('weights.weigh-how')}</p>
      <WeightField label={say('weights.board')} autoFocus {...field('kg')} />
      <TimeField label={say('weights.weighed-when')} {...field('at')} />
    </FormDialog>
  );
}
