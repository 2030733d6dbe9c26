import { useState } from 'react';
import type { Move } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

/** Asks before a move that never was is deleted; on request of all boards that were moved with it. */
export function DeleteMoveForm({
  boardCode,
  move,
  beforeName,
  onClose,
}: {
  boardCode: string;
  move: Move;
  /** Where it was before; null: nowhere, so that it cannot be deleted. */
  beforeName: string | null;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [isForAll, setForAll] = useState(false);
  const { boards = 1 } = useQuery('moves.together', { id: move.id }).output ?? {};
  const { underWay, follow, cancel } = useLongWork();

  async function remove(): Promise<void> {
    const { id, version: basedOn } = move;
    await follow((work) => bridge().command('moves.delete', { id, basedOn, together: isForAll, work }));
    tellDone(say('life.move-deleted', { boardCode }));
  }

  return (
    <FormDialog
      title={say('life.delete-move-of', { boardCode })}
      saveWords={say('life.delete')}
      onSave={remove}
      onClose={onClose}
      work={{ label: say('life.changing-moves'), underWay, onCancel: cancel }}
    >
      <p>{say('board.at-place', { placeName: move.placeName, sinceOn: move.since })}</p>
      {beforeName !== null && <p>{say('life.delete-move-effect', { boardCode, beforeName })}</p>}
      {boards > 1 && (
        <Checkbox label={say('life.deletes-together', { boards })} checked={isForAll} onChecked={setForAll} />
      )}
    </FormDialog>
  );
}
