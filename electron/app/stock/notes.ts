import type { Subject, SubjectPlace } from '../../../shared-core/contract/notes.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';

/**
 * Where a board, stack, round or reading is shown.
 * @throws Refusal where there is none
 */
export function placeOf(
  { boards, readings, rounds, stacks }: Pick<YardReader, 'boards' | 'readings' | 'rounds' | 'stacks'>,
  { kind, id }: Subject,
): SubjectPlace {
  switch (kind) {
    case 'board':
      return { boardId: id, stackId: orRefuse(boards.get(id), 'board').stackId, roundId: null };
    case 'stack':
      return { boardId: null, stackId: orRefuse(stacks.get(id), 'stack').id, roundId: null };
    case 'round':
      return { boardId: null, stackId: orRefuse(rounds.get(id), 'round').stackId, roundId: id };
    case 'reading': {
      const { boardId, roundId } = orRefuse(readings.get(id), 'reading');
      return { boardId, stackId: orRefuse(rounds.get(roundId), 'round').stackId, roundId };
    }
  }
}

export const noteQueries = (context: QueryContext) =>
  ({
    'notes.get': ({ subject }) => ({ note: orRefuse(context.yard().notes.of(subject), subject.kind) }),
  }) satisfies Partial<Queries>;

export const noteCommands = (context: AppContext) =>
  ({
    'notes.set': ({ subject, note, shown }) => {
      const yard = context.yard();
      const place = placeOf(yard, subject);
      const current = yard.notes.of(subject);
      if (current === note) return place;
      orConflict(current === shown ? null : { note: current });
      yard.notes.set(subject, note, context.now());
      return place;
    },
  }) satisfies Partial<Commands>;
