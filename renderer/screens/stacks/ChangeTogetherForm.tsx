import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Sawing } from '../../../shared-core/contract/yard.ts';
import { typedLengthMm } from '../../../shared-core/units/typed-length.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { ringRadiusProblem } from '../board/board-draft.ts';
import { EndFields } from '../board/EndFields.tsx';
import { barkSideOptions, sawingOptions } from '../board/end-words.ts';
import { StackOrderFields } from './StackOrderFields.tsx';
import { emptyStackOrderDraft, stackOrderOf, stackOrderWords } from './stack-order-draft.ts';

const AS_IT_IS = { value: 'as-it-is', label: 'As it is' } as const;
type AsItIs = typeof AS_IT_IS.value;

/** Says the same of several boards at once: how their rings lie, and how they are laid in the pile. */
export function ChangeTogetherForm({ boardIds, onClose }: { boardIds: number[]; onClose: () => void }) {
  const units = useUnits();
  const { say } = useWords();
  const [end, setEnd] = useState<{
    sawing: Sawing | AsItIs;
    barkSide: BarkSide | AsItIs;
    barkOffOn: string;
    ringRadius: string;
  }>({ sawing: AS_IT_IS.value, barkSide: AS_IT_IS.value, barkOffOn: '', ringRadius: '' });
  const [stackOrderDraft, setStackOrderDraft] = useState(emptyStackOrderDraft);
  const [shown, setShown] = useState(false);
  const laid = stackOrderOf(stackOrderDraft, boardIds.length, 1);
  const stackOrderProblem = 'problem' in laid ? say(laid.problem) : null;
  const radiusProblem = ringRadiusProblem(end.ringRadius, units);
  const what = boardIds.length === 1 ? '1 board' : `${boardIds.length.toLocaleString('en')} boards`;

  async function save(): Promise<void> {
    setShown(true);
    if ('problem' in laid || radiusProblem !== null) throw fieldsMarked();
    const ringRadiusMm = typedLengthMm(end.ringRadius, units);
    const said = {
      ...(end.sawing === AS_IT_IS.value ? {} : { sawing: end.sawing }),
      ...(end.barkSide === AS_IT_IS.value
        ? {}
        : { barkSide: end.barkSide, barkOffOn: end.barkOffOn || null }),
      ...(ringRadiusMm === null ? {} : { ringRadiusMm }),
    };
    if (laid.stackOrder === null && Object.keys(said).length === 0) {
      throw new Refusal(message('validation.nothing-to-change'));
    }
    await bridge().command('boards.changeTogether', { boardIds, said, stackOrder: laid.stackOrder });
    tellDone(`Changed ${what}.`);
  }

  return (
    <FormDialog title={`Change ${what}`} saveWords={`Change ${what}`} onSave={save} onClose={onClose}>
      <p>What is left as it is stays. Everything else of a board is changed on its own page.</p>
      <EndFields
        draft={end}
        sawings={[AS_IT_IS, ...sawingOptions(say)]}
        barkSides={[AS_IT_IS, ...barkSideOptions(say)]}
        ringRadiusError={shown && radiusProblem ? say(radiusProblem) : null}
        units={units}
        lead="The same for all of them."
        onDraft={(changed) => setEnd({ ...end, ...changed })}
      />
      <StackOrderFields
        draft={stackOrderDraft}
        firstLayer={1}
        hint={
          'stackOrder' in laid && laid.stackOrder
            ? stackOrderWords(laid.stackOrder, boardIds.length)
            : 'They are laid in the order of their list; left empty, they lie where they are.'
        }
        error={shown ? stackOrderProblem : null}
        onDraft={setStackOrderDraft}
      />
    </FormDialog>
  );
}
