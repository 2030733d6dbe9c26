import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow, Sawing } from '../../../shared-core/contract/yard.ts';
import { typedLengthMm } from '../../../shared-core/units/typed-length.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { ringRadiusProblem } from '../board/board-draft.ts';
import { EndFields } from '../board/EndFields.tsx';
import { barkSideOptions, sawingOptions } from '../board/end-words.ts';
import { StackOrderFields } from './StackOrderFields.tsx';
import { emptyStackOrderDraft, layersOf, stackOrderOf } from './stack-order-draft.ts';

const UNCHANGED = 'unchanged';
type Unchanged = typeof UNCHANGED;

/** Edits several boards at once: how their rings lie, and how they are laid in the stack. */
export function EditBoardsForm({
  boards: edited,
  onSaved,
  onClose,
}: {
  /** In the order in which they are laid. */
  boards: readonly BoardRow[];
  /** With the boards' new versions. */
  onSaved: (versions: RequestOutput<'boards.editTogether'>) => void;
  onClose: () => void;
}) {
  const units = useUnits();
  const { say } = useWords();
  const [end, setEnd] = useState<{
    sawing: Sawing | Unchanged;
    barkSide: BarkSide | Unchanged;
    barkOffOn: string;
    ringRadius: string;
  }>({ sawing: UNCHANGED, barkSide: UNCHANGED, barkOffOn: '', ringRadius: '' });
  const [stackOrderDraft, setStackOrderDraft] = useState(emptyStackOrderDraft);
  const [shown, setShown] = useState(false);
  const laid = stackOrderOf(stackOrderDraft, edited.length, 1);
  const stackOrderProblem = 'problem' in laid ? say(laid.problem) : null;
  const radiusProblem = ringRadiusProblem(end.ringRadius, units);
  const boards = edited.length;
  const unchanged = { value: UNCHANGED, label: say('stacks.unchanged') } as const;

  async function save(): Promise<void> {
    setShown(true);
    if ('problem' in laid || radiusProblem !== null) throw fieldsMarked();
    const ringRadiusMm = typedLengthMm(end.ringRadius, units);
    const changed = {
      ...(end.sawing === UNCHANGED ? {} : { sawing: end.sawing }),
      ...(end.barkSide === UNCHANGED ? {} : { barkSide: end.barkSide, barkOffOn: end.barkOffOn || null }),
      ...(ringRadiusMm === null ? {} : { ringRadiusMm }),
    };
    if (laid.stackOrder === null && Object.keys(changed).length === 0) {
      throw new Refusal(message('validation.nothing-to-change'));
    }
    onSaved(
      await bridge().command('boards.editTogether', {
        boards: edited.map(({ id, version }) => ({ id, basedOn: version })),
        changed,
        stackOrder: laid.stackOrder,
      }),
    );
    tellDone(say('stacks.boards-saved', { boards }));
  }

  return (
    <FormDialog
      title={say('stacks.edit-boards', { boards })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('stacks.edit-boards-lead')}</p>
      <EndFields
        draft={end}
        sawings={[unchanged, ...sawingOptions(say)]}
        barkSides={[unchanged, ...barkSideOptions(say)]}
        ringRadiusError={shown && radiusProblem ? say(radiusProblem) : null}
        units={units}
        lead={say('stacks.end-grain-lead')}
        onDraft={(changed) => setEnd({ ...end, ...changed })}
      />
      <StackOrderFields
        draft={stackOrderDraft}
        firstLayer={1}
        hint={
          'stackOrder' in laid && laid.stackOrder
            ? say(layersOf(laid.stackOrder, boards))
            : say('stacks.per-layer-unchanged')
        }
        error={shown ? stackOrderProblem : null}
        onDraft={setStackOrderDraft}
      />
    </FormDialog>
  );
}
