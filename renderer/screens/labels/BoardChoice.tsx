import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import { callsInOrder } from '../../parts/CallBadge.tsx';
import { Checkbox, Select } from '../../parts/Field.tsx';
import type { LabelBoard, Standing } from './label-choice.ts';

export const standings: readonly { value: Standing; label: string }[] = [
  ...callsInOrder.map((value) => ({ value, label: callMarks[value].word })),
  { value: 'not-probed', label: 'Not probed yet' },
];

const standingWords = new Map(standings.map(({ value, label }) => [value, label]));

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
  return (
    <Select
      label="Stack"
      value={stackId === null ? 'all' : String(stackId)}
      options={[
        { value: 'all', label: 'All stacks' },
        ...stacks.map((stack) => ({ value: String(stack.id), label: stack.name })),
      ]}
      onValue={(value) => onStack(value === 'all' ? null : Number(value))}
    />
  );
}

/** Which calls are wanted, with how many boards stand at each. */
export function CallChoice({
  boards,
  wanted,
  onWanted,
}: {
  boards: readonly LabelBoard[];
  wanted: ReadonlySet<Standing>;
  onWanted: (wanted: Set<Standing>) => void;
}) {
  return (
    <fieldset className="label-calls">
      <legend>With the call</legend>
      {standings.map(({ value, label }) => {
        const count = boards.filter((board) => board.standing === value).length;
        return (
          <Checkbox
            key={value}
            label={`${label} (${count})`}
            checked={wanted.has(value)}
            onChecked={(checked) => {
              const changed = new Set(wanted);
              if (checked) changed.add(value);
              else changed.delete(value);
              onWanted(changed);
            }}
          />
        );
      })}
    </fieldset>
  );
}

/** The boards one by one, to leave some out. */
export function BoardsOneByOne({
  boards,
  leftOut,
  onLeftOut,
}: {
  boards: readonly LabelBoard[];
  leftOut: ReadonlySet<number>;
  onLeftOut: (leftOut: Set<number>) => void;
}) {
  return (
    <fieldset className="label-boards">
      <legend>Boards</legend>
      <ul>
        {boards.map((board) => (
          <li key={board.id}>
            <label>
              <input
                type="checkbox"
                checked={!leftOut.has(board.id)}
                onChange={(event) => {
                  const changed = new Set(leftOut);
                  if (event.target.checked) changed.delete(board.id);
                  else changed.add(board.id);
                  onLeftOut(changed);
                }}
              />
              <strong>{board.code}</strong>
              <span className="label-board-words">
                {board.speciesName}, {standingWords.get(board.standing)?.toLowerCase()}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
