import { z } from 'zod';
import { type Leaving, leavingNoteSchema } from '../../../shared-core/contract/archive.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { type BoardRow, dayUntil } from '../../../shared-core/contract/yard.ts';
import { boardFeetIfMeasured, type SizesOfBoard } from '../../../shared-core/wood/movement/volume.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { tellDone } from '../../stores/notices.ts';
import { instantOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { forBuyer } from '../reports/for-buyer.ts';
import { DayField } from './DayField.tsx';

/** Boards as what is done with them names them. */
export type NamedBoard = Pick<BoardRow, 'id' | 'code'>;

type Answers = Pick<RequestInput<'boards.archive'>, 'isBeforeReading' | 'isBeforeMove' | 'isReserved'>;

/** The questions with which it is refused. */
const questions = {
  'refusal.left-before-read': { isBeforeReading: true },
  'refusal.left-before-move': { isBeforeMove: true },
  'refusal.left-reserved': { isReserved: true },
} as const;

/** A notice names no more boards than this. */
const MOST_NAMED = 5;

const schemaOn = (today: string) => z.object({ note: leavingNoteSchema, on: dayUntil(today) });

/** Asks to whom boards were sold, what they were used for, or why they were scrapped, and when. */
export function LeaveForm({
  boards,
  why,
  onLeft,
  onClose,
}: {
  boards: readonly (NamedBoard & SizesOfBoard)[];
  why: Leaving;
  onLeft?: () => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const { draft, field, read, set } = useDraft(schemaOn(today), { note: '', on: today });
  const { underWay, follow, cancel } = useLongWork();
  const count = boards.length;
  const [only] = boards;
  const feet = boards.map(boardFeetIfMeasured).filter((each) => each !== null);
  const missing = count - feet.length;
  const leftBoardFeet = feet.reduce((sum, each) => sum + each, 0);
  const isOne = count === 1 && only;
  const { open, ask } = useQuestions<Answers, keyof typeof questions>(questions, { on: draft.on });

  function releasedInWords(released: readonly number[]): string {
    if (isOne) return say('life.released');
    const codes = boards.filter(({ id }) => released.includes(id)).map(({ code }) => code);
    return say('life.released-of', {
      boardCodes: codes.slice(0, MOST_NAMED),
      more: Math.max(0, codes.length - MOST_NAMED),
    });
  }

  async function save(): Promise<void> {
    const { note, on } = read();
    const boardIds = boards.map(({ id }) => id);
    const at = instantOfDay(on, new Date());
    const leaving = { boardIds, why, note, at };
    const { released } = await ask((answers) =>
      follow((work) => bridge().command('boards.archive', { ...leaving, ...answers, work })),
    );
    onLeft?.();
    const left = isOne
      ? say('life.board-archived', { why, boardCode: only.code })
      : say('life.boards-archived', { why, boards: count });
    const sheet = forBuyer(boards, say);
    tellDone(
      released.length === 0 ? left : `${left} ${releasedInWords(released)}`,
      why === 'sold' ? { words: sheet.words, href: hrefOf(sheet.route) } : null,
    );
  }

  return (
    <FormDialog
      title={
        isOne
          ? say('life.mark-board', { why, boardCode: only.code })
          : say('life.mark-boards', { why, boards: count })
      }
      saveWords={say(open === 'refusal.left-reserved' ? 'life.archive-anyway' : 'life.archive-button', {
        why,
      })}
      isQuestion={open !== null}
      onSave={save}
      onClose={onClose}
      work={{ label: say('life.archiving-boards'), underWay, onCancel: cancel }}
    >
      <p className="soft">{say('life.mark-effect', { boards: count })}</p>
      {missing < count && <p>{say('life.mark-amount', { leftBoardFeet, missing })}</p>}
      <TextField
        label={say('life.note', { why })}
        hint={say('life.note-hint', { why })}
        maxLength={200}
        {...field('note')}
      />
      <DayField today={today} fields={{ draft, field, set }} />
    </FormDialog>
  );
}
