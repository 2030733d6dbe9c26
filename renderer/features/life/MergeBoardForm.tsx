import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useEach } from '../../data/useQuery.ts';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { wayOn } from '../../stores/navigation.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { AlikeBoards } from './AlikeBoards.tsx';
import { TwiceChoices, useTwiceChoices } from './TwiceChoices.tsx';

/** Asks with which other record of it a board is merged, and which of both is right where they differ. */
export function MergeBoardForm({ board, onClose }: { board: BoardRow; onClose: () => void }) {
  const { say } = useWords();
  const [other, setOther] = useState<BoardRow | null>(null);
  const [isMissing, setMissing] = useState(false);
  const [twice] = useEach('boards.twice', other === null ? [] : [{ id: board.id, otherId: other.id }]);
  const choices = useTwiceChoices();

  async function save(): Promise<void> {
    const both = twice?.output;
    if (other === null) {
      setMissing(true);
      throw fieldsMarked();
    }
    if (!both) throw new Refusal(message('life.merge-not-compared'));
    const goOn = wayOn();
    const merge = choices.merge(both);
    const { id } = await bridge().command('boards.merge', merge);
    const [kept, gone] =
      id === both.own.board.id ? [both.own.board, both.other.board] : [both.other.board, both.own.board];
    // Told there, or it would go with the page that was left.
    if (id !== board.id) goOn({ name: 'board', id });
    tellDone(say('life.merge-done', { boardCode: gone.code, intoCode: kept.code }));
  }

  return (
    <FormDialog
      title={say('life.merge-board', { boardCode: board.code })}
      saveWords={say('life.merge-button')}
      onSave={save}
      onClose={onClose}
    >
      <p className="soft">{say('life.merge-effect')}</p>
      <AlikeBoards
        board={board}
        question={say('life.merge-other')}
        chosen={other}
        error={isMissing && other === null ? say('life.merge-not-chosen') : null}
        onChoose={setOther}
      />
      {twice && <Await of={[twice]}>{(both) => <TwiceChoices twice={both} choices={choices} />}</Await>}
    </FormDialog>
  );
}
