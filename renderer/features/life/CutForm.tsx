import { useEffect, useRef, useState } from 'react';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Cut, cutSchema } from '../../../shared-core/contract/archive.ts';
import { MOST_PIECES } from '../../../shared-core/contract/requests/life.ts';
import { type BoardRow, dayUntil } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { instantOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { DayField } from './DayField.tsx';
import { PieceFields, usePieces } from './PieceFields.tsx';

const FEWEST_USUAL = 2;
const schemaOn = (today: string) =>
  z.object({ how: cutSchema, pieces: z.int().min(1).max(MOST_PIECES), on: dayUntil(today) });

/** What is refused as a question: they are larger together than the board. */
const QUESTIONS: readonly string[] = ['refusal.pieces-wider', 'refusal.pieces-longer'];

/** Asks into which pieces a board was ripped or crosscut, and when. */
export function CutForm({
  board,
  onCut,
  onClose,
}: {
  board: BoardRow;
  onCut?: () => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const { draft, field, read, made, set } = useDraft(schemaOn(today), {
    how: 'ripped',
    pieces: FEWEST_USUAL,
    on: today,
  });
  const how: Cut = draft.how ?? 'ripped';
  const pieces = usePieces(board, how);
  const count = made?.pieces ?? pieces.count;
  const free = useQuery('boards.pieceCodes', { boardId: board.id, pieces: count }).output;
  // The sizes typed so far stay.
  const proposed = useRef(pieces.propose);
  useEffect(() => {
    if (free?.codes.length === count) proposed.current(free.codes);
  }, [free, count]);
  /** The pieces, as JSON, of which it was asked whether they may be so large. */
  const [asked, setAsked] = useState<string | null>(null);

  async function save(): Promise<void> {
    pieces.show();
    const { on } = read();
    const cut = { boardId: board.id, how, at: instantOfDay(on, new Date()), pieces: pieces.read() };
    const question = JSON.stringify(cut.pieces);
    try {
      const { projectName } = await bridge().command('boards.cut', { ...cut, isLarger: asked === question });
      onCut?.();
      const done = say('life.cut-done', { how, boardCode: board.code, pieces: cut.pieces.length });
      tellDone(projectName === null ? done : `${done} ${say('life.pieces-reserved', { projectName })}`);
    } catch (error) {
      const isAsking = error instanceof Refusal && QUESTIONS.includes(error.problem.code);
      setAsked(isAsking ? question : null);
      throw error;
    }
  }

  return (
    <FormDialog
      title={say('life.cut-board', { boardCode: board.code })}
      saveWords={say(asked === null ? 'life.cut-button' : 'life.cut-anyway')}
      isQuestion={asked !== null}
      onSave={save}
      onClose={onClose}
    >
      <p className="soft">{say('life.cut-effect')}</p>
      <Choice
        label={say('life.cut-how')}
        value={how}
        options={cutSchema.options.map((value) => ({ value, label: say(`life.cut-${value}`) }))}
        onValue={(value) => set({ how: value })}
      />
      <div className="form-grid">
        <NumberField label={say('life.pieces')} {...field('pieces')} />
        <DayField today={today} fields={{ draft, field, set }} />
      </div>
      <PieceFields pieces={pieces} />
      {how === 'crosscut' && <Banner kind="caution">{say('life.fresh-ends')}</Banner>}
    </FormDialog>
  );
}
