import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkMove, moveBoards } from './moving.ts';
import { openPlace, openStack } from './open-ones.ts';
import { stacksToday, stackToday } from './stacks-today.ts';

export const stackQueries = (context: QueryContext) =>
  ({
    'stacks.list': () => stacksToday(context),
    'stacks.get': ({ id }) => {
      const { acts, boards, stacks } = context.yard();
      const stack = stackToday(context, orRefuse(stacks.get(id), 'stack'));
      const onPage = { ...stack, speciesNames: boards.speciesOfStack(id) };
      if (stack.closedAt === null) return { ...onPage, closed: null };
      const hasArchived = boards.idsEverOfStack(id).length > 0;
      const into = stacks.get(acts.stackMergedInto(id) ?? 0);
      const mergedInto = into ? { id: into.id, name: into.name } : null;
      return { ...onPage, closed: { hasArchived, mergedInto } };
    },
    'stacks.nextLayer': ({ id }) => {
      const { boards, stacks } = context.yard();
      return { layer: (boards.topLayer(orRefuse(stacks.get(id), 'stack').id) ?? 0) + 1 };
    },
    'stacks.hereSince': ({ id }) => {
      const { boards, stacks } = context.yard();
      return { since: boards.hereSince(orRefuse(stacks.get(id), 'stack').id) };
    },
  }) satisfies Partial<Queries>;

export function stackCommands(context: AppContext, judging: Judging) {
  const get = (id: number): StackRow => orRefuse(context.yard().stacks.get(id), 'stack');
  const taken = (name: string) => message('refusal.stack-name-taken', { stackName: name });

  return {
    'stacks.add': (stack) => {
      openPlace(context, stack.placeId);
      orRefuse(context.yard().endUses.get(stack.endUseId), 'use');
      return get(refusingDuplicates(taken(stack.name), () => context.yard().stacks.add(stack)));
    },
    'stacks.edit': (edit) => {
      const { id, changed } = edit;
      const before = get(id);
      if (changed.endUseId !== undefined) orRefuse(context.yard().endUses.get(changed.endUseId), 'use');
      orConflict(
        refusingDuplicates(taken(changed.name ?? before.name), () => context.yard().stacks.edit(edit)),
      );
      const after = get(id);
      if (before.endUseId !== after.endUseId) judging.judgeAgain(context.yard().boards.idsOfStack(id));
      return after;
    },
    'stacks.move': function* ({ id, work: _, ...to }) {
      const { boards, stacks } = context.yard();
      const { version } = openStack(context, id);
      const boardIds = boards.idsWithStack(id);
      checkMove(context, to);
      stacks.edit({ id, basedOn: version, changed: { placeId: to.placeId } });
      yield* moveBoards(context, judging, boardIds, to);
      return get(id);
    },
  } satisfies Partial<Commands>;
}
