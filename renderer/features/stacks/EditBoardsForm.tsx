import { useState } from 'react';
import { Conflict, Refusal } from '../../../shared-core/contract/answer.ts';
import { type Part, partNames, schemaOf } from '../../../shared-core/contract/boards-edit.ts';
import type { RequestInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { type BoardRow, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { momentOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { EditBoardsFields } from './EditBoardsFields.tsx';
import { EditedMeanwhile } from './EditedMeanwhile.tsx';
import css from './edit-boards.module.css';
import { useStackOrder } from './StackOrderFields.tsx';
import { useMoveQuestions } from './useMoveQuestions.tsx';

/** Edits several boards at once: only what a person turns on. */
export function EditBoardsForm({
  boards: selected,
  onSaved,
  onClose,
}: {
  /** In the order in which they are laid. */
  boards: readonly BoardRow[];
  /** `movedTo`: the place that they were moved to, where nothing else was changed. */
  onSaved: (output: RequestOutput<'boards.editTogether'>, movedTo: number | null) => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const [on, setOn] = useState<ReadonlySet<Part>>(new Set());
  const [boards, setBoards] = useState(selected);
  /** Those that another window edited meanwhile, as they are now. */
  const [newer, setNewer] = useState<readonly BoardRow[]>([]);
  const typed = useDraft(schemaOf(on, today), {
    ...unknownOfBoard,
    speciesId: '',
    thicknessMm: null,
    thicknessQuarters: null,
    placeId: null,
    since: today,
    time: '',
    endUseId: '',
    readings: 'include',
  });
  const { underWay, follow, cancel } = useLongWork();
  const { placeId: to, since: movedOn, time: movedAt, sawnOn } = typed.draft;
  const questions = useMoveQuestions({ to, movedOn, movedAt, sawnOn });
  const order = useStackOrder(boards.length, 1, false);
  const newerOf = (board: BoardRow) => newer.find(({ id }) => id === board.id);

  function leaveOut(): void {
    const others = boards.filter((board) => !newerOf(board));
    setBoards(others);
    setNewer([]);
    if (others.length === 0) onClose();
  }

  async function save(): Promise<void> {
    order.show();
    const { placeId, since = today, time = '', endUseId = null, readings, ...changed } = typed.read();
    if (on.size === 0) throw new Refusal(message('validation.nothing-to-change'));
    const edit: RequestInput<'boards.editTogether'> = {
      boards: boards.map((board) => ({ id: board.id, basedOn: (newerOf(board) ?? board).version })),
      changed,
      stackOrder: on.has('order') ? order.read() : null,
      endUseId,
      latestReadings:
        readings === undefined || readings === 'include'
          ? (readings ?? null)
          : { exclude: { code: readings } },
    };
    try {
      const saved = await questions.ask((answers) => {
        const to = placeId === undefined ? null : { placeId, ...momentOfDay(since, time, new Date()) };
        const move = to && { ...to, ...answers };
        const log = answers.isBeforeSawing && { isBeforeSawing: true };
        return follow((work) => bridge().command('boards.editTogether', { ...edit, ...log, move, work }));
      });
      onSaved(saved, on.size === 1 ? (placeId ?? null) : null);
    } catch (error) {
      if (error instanceof Conflict) setNewer(error.current as BoardRow[]);
      throw error;
    }
  }

  function turn(part: Part, isOn: boolean): void {
    setOn(new Set(partNames.filter((each) => (each === part ? isOn : on.has(each)))));
  }

  return (
    <FormDialog
      title={say('stacks.edit-boards', { boards: boards.length })}
      saveWords={questions.saveWords ?? say('common.save')}
      isQuestion={questions.isAsking}
      onSave={save}
      onClose={onClose}
      work={{ label: say('stacks.changing-boards'), underWay, onCancel: cancel }}
      conflict={
        newer.length === 0
          ? null
          : {
              shown: <EditedMeanwhile before={boards} now={newer} />,
              keepWords: say('stacks.edit-anyway'),
              takeTheirs: leaveOut,
              theirsWords: say('stacks.leave-edited-out', { boards: newer.length }),
            }
      }
    >
      <fieldset className={css.parts}>
        <legend>{say('stacks.edit-boards-lead')}</legend>
        {partNames.map((part) => (
          <Checkbox
            key={part}
            label={say(`stacks.edit.${part}`)}
            checked={on.has(part)}
            onChecked={(isOn) => turn(part, isOn)}
          />
        ))}
      </fieldset>
      {[...on].map((part) => (
        <EditBoardsFields key={part} part={part} typed={typed} order={order} boards={boards} />
      ))}
      {questions.choice}
    </FormDialog>
  );
}
