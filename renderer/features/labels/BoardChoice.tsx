import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { Checkbox, Select } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { type CallOrNone, callName, callsAndNone, type LabelBoard } from './label-choice.ts';

/** Which stack the boards are taken from. */
export function StackChoice({
  stacks,
  stackId,
  onStack,
}: {
  stacks: readonly StackRow[];
  stackId: number | null;
  onStack: (stackId: number | null) => void;
}) {
  const { say } = useWords();
  return (
    <Select
      label={say('labels.stack')}
      value={stackId === null ? 'all' : String(stackId)}
      options={[
        { value: 'all', label: say('labels.all-stacks') },
        ...stacks.map((stack) => ({ value: String(stack.id), label: stack.name, isName: true })),
      ]}
      onValue={(value) => onStack(value === 'all' ? null : Number(value))}
    />
  );
}

/** Boards of which calls get a label, with how many boards have each. */
export function CallChoice({
  boards,
  calls,
  onCalls,
}: {
  boards: readonly LabelBoard[];
  calls: ReadonlySet<CallOrNone>;
  onCalls: (calls: Set<CallOrNone>) => void;
}) {
  const { say } = useWords();
  return (
    <fieldset className="label-calls">
      <legend>{say('labels.calls')}</legend>
      {callsAndNone.map((call) => (
        <Checkbox
          key={call}
          label={say('labels.call-and-boards', {
            callName: callName(call, say),
            boards: boards.filter((board) => board.call === call).length,
          })}
          checked={calls.has(call)}
          onChecked={(isChecked) => onCalls(changed(calls, call, isChecked))}
        />
      ))}
    </fieldset>
  );
}

/** The boards one by one, to exclude some. */
export function BoardsOneByOne({
  boards,
  excluded,
  onExcluded,
}: {
  boards: readonly LabelBoard[];
  excluded: ReadonlySet<number>;
  onExcluded: (excluded: Set<number>) => void;
}) {
  const { say } = useWords();
  return (
    <fieldset className="label-boards">
      <legend>{say('labels.boards')}</legend>
      <ul>
        {boards.map((board) => (
          <li key={board.id}>
            <label>
              <input
                type="checkbox"
                checked={!excluded.has(board.id)}
                onChange={(event) => onExcluded(changed(excluded, board.id, !event.target.checked))}
              />
              <strong translate="no">{board.code}</strong>
              <span className="label-board-words">
                {say('labels.species-and-call', {
                  speciesName: board.speciesName,
                  callName: callName(board.call, say),
                })}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

function changed<T>(set: ReadonlySet<T>, item: T, isIn: boolean): Set<T> {
  const copy = new Set(set);
  if (isIn) copy.add(item);
  else copy.delete(item);
  return copy;
}
