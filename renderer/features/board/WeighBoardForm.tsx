import { useState } from 'react';
import { requests } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { WeightField } from '../../form/MeasureFields.tsx';
import { TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = requests['samples.weigh'].input.omit({ at: true });

/** Asks what a sample board weighs now. */
export function WeighBoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(schema, { boardId: board.id, kg: null });
  const [at, setAt] = useState<string | null>(null);
  return (
    <FormDialog
      title={say('weights.weigh-title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={() => bridge().command('samples.weigh', { ...read(), at: at ?? new Date().toISOString() })}
      onClose={onClose}
    >
      <p>{say('weights.weigh-how')}</p>
      <WeightField label={say('weights.board')} autoFocus {...field('kg')} />
      <TimeField label={say('weights.weighed-when')} instant={at} onInstant={setAt} />
    </FormDialog>
  );
}
