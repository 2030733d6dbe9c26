import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { boardsMeant } from '../../../shared-core/labels/board-meant.ts';
import { message } from '../../../shared-core/words/message.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';

/** So many of the boards that may be meant are named. */
const MOST_NAMED = 5;

/** To the board whose ID, or enough of it, is typed, or whose label is scanned by a reader that types what it reads. */
export function GoToBoardDialog({ round: { boards, stackName }, goTo, onClose }: Probing) {
  const { say } = useWords();
  const [code, setCode] = useState('');
  async function choose(): Promise<void> {
    const boardCode = code.trim();
    if (boardCode === '') throw new Refusal(message('go-to.missing'));
    const [board, ...more] = boardsMeant(boards, boardCode);
    if (!board) throw new Refusal(message('go-to.unknown', { stackName, boardCode }));
    if (more.length > 0) {
      const someCodes = [board, ...more].slice(0, MOST_NAMED).map((each) => each.code);
      throw new Refusal(message('go-to.several', { boards: 1 + more.length, boardCode, someCodes }));
    }
    goTo(board);
  }
  return (
    <FormDialog title={say('go-to.title')} saveWords={say('go-to.go')} onSave={choose} onClose={onClose}>
      <TextField
        label={say('go-to.label')}
        hint={say('go-to.hint')}
        value={code}
        autoFocus
        onValue={setCode}
      />
    </FormDialog>
  );
}
