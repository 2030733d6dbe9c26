import { z } from 'zod';
import { type BoardRow, boardCodeSchema } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ code: boardCodeSchema });

/** Brings an archived board back; under another ID, where its own was given to another board. */
export function BringBackForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const { field, read, set } = useDraft(schema, { code: board.code });
  const { id, code: boardCode, stackName } = board;

  async function save(): Promise<void> {
    const { code } = read();
    await bridge().command('boards.bringBack', { boards: [{ id, code }] });
    tellDone(say('life.board-back', { boardCode: code, stackName }));
  }

  return (
    <FormDialog
      title={say('life.bring-back-board', { boardCode })}
      saveWords={say('life.bring-back')}
      onSave={save}
      onClose={onClose}
    >
      <p className="soft">{say('life.bring-back-effect', { stackName })}</p>
      <TextField
        label={say('board.id')}
        maxLength={16}
        {...field('code')}
        onValue={(code) => set({ code: code.toUpperCase() })}
      />
    </FormDialog>
  );
}
