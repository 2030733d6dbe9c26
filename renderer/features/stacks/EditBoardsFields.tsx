import type { ReactNode } from 'react';
import type { EditOfBoards, Part } from '../../../shared-core/contract/boards-edit.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { readingReasons } from '../../../shared-core/probing/readings/exclusion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select, TextField } from '../../form/Field.tsx';
import { BoardLengthField, LengthField } from '../../form/MeasureFields.tsx';
import type { Fields } from '../../form/useDraft.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import {
  BoardBark,
  BoardDriedBy,
  BoardSawing,
  BoardSpecies,
  BoardThickness,
  DistanceFromPith,
} from '../board/BoardFields.tsx';
import { endUseOptions } from './end-use-options.ts';
import { MoveFields } from './MoveFields.tsx';
import { StackOrderFields, type useStackOrder } from './StackOrderFields.tsx';

/** The fields of each part of the form that edits several boards. */
export function EditBoardsFields({
  part,
  typed,
  order,
  boards,
}: {
  part: Part;
  typed: Fields<EditOfBoards>;
  order: ReturnType<typeof useStackOrder>;
  boards: readonly BoardRow[];
}): ReactNode {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const { draft, field } = typed;
  switch (part) {
    case 'species':
      return <BoardSpecies board={typed} />;
    case 'thickness':
      return <BoardThickness board={typed} />;
    case 'width':
      return <LengthField label={say('board.width')} {...field('widthMm')} />;
    case 'length':
      return <BoardLengthField label={say('board.length')} {...field('lengthMm')} />;
    case 'sawn-on':
      return <DateField label={say('board.sawn-on')} max={today} {...field('sawnOn')} />;
    case 'dried-by':
      return <BoardDriedBy board={typed} />;
    case 'log':
      return <TextField label={say('board.log')} {...field('log')} />;
    case 'sawing':
      return <BoardSawing board={typed} />;
    case 'bark-side':
      return <BoardBark board={typed} />;
    case 'pith':
      return <DistanceFromPith board={typed} />;
    case 'place':
      return <MoveFields move={typed} boards={{ boardIds: boards.map(({ id }) => id) }} />;
    case 'use':
      return <UseOfStacks typed={typed} boards={boards} />;
    case 'readings':
      return (
        <Select
          label={say('stacks.edit.readings')}
          hint={say('exclude.effect')}
          {...field('readings')}
          value={draft.readings ?? 'include'}
          options={[
            { value: 'include', label: say('common.include') },
            ...readingReasons.map((value) => ({
              value,
              label: say('stacks.exclude-for', { reason: message(`exclusion.${value}`) }),
            })),
          ]}
        />
      );
    case 'order':
      return <StackOrderFields order={order} blankHint={say('stacks.in-order-of-list')} />;
  }
}

/** A use is of a whole stack: it names those that it changes. */
function UseOfStacks({
  typed: { field },
  boards,
}: {
  typed: Fields<EditOfBoards>;
  boards: readonly BoardRow[];
}) {
  const { say } = useWords();
  const allUses = useQuery('endUses.list', {});
  const stackNames = [...new Set(boards.map(({ stackName }) => stackName))];
  return (
    <Await of={[allUses]}>
      {(uses) => (
        <Select
          label={say('stacks.use')}
          hint={say('stacks.use-of-stacks', { stackNames })}
          {...field('endUseId')}
          options={[{ value: '', label: say('stacks.choose-use') }, ...endUseOptions(uses, say)]}
        />
      )}
    </Await>
  );
}
