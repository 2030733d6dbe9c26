import type { NewStack, Stack, StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import type { Judging } from '../judging/judging.ts';
import { moveBoards } from './moving.ts';

export function stackUseCases(context: AppContext, judging: Judging) {
  const get = (id: number): StackRow => orRefuse(context.yard().stacks.get(id), 'stack');
  const taken = (name: string) => message('refusal.stack-name-taken', { stackName: name });

  return {
    'stacks.list': (): StackRow[] => context.yard().stacks.list(),
    'stacks.add': (stack: NewStack): StackRow => {
      orRefuse(context.yard().places.get(stack.placeId), 'place');
      orRefuse(context.yard().endUses.get(stack.endUseId), 'use');
      const id = refusingDuplicates(taken(stack.name), () => context.yard().stacks.add(stack));
      context.emit('yard.changed', {});
      return get(id);
    },
    'stacks.change': (stack: Omit<Stack, 'placeId'>): StackRow => {
      const before = get(stack.id);
      orRefuse(context.yard().endUses.get(stack.endUseId), 'use');
      refusingDuplicates(taken(stack.name), () =>
        context.yard().stacks.edit({ id: stack.id, basedOn: before.version, changed: stack }),
      );
      if (before.endUseId !== stack.endUseId) judging.judgeAgain(context.yard().boards.idsOfStack(stack.id));
      context.emit('yard.changed', {});
      return get(stack.id);
    },
    'stacks.nextLayer': ({ id }: { id: number }): { layer: number } => ({
      layer: (context.yard().boards.topLayer(get(id).id) ?? 0) + 1,
    }),
    'stacks.move': ({ id, placeId, since }: { id: number; placeId: number; since: string }): StackRow => {
      const stack = get(id);
      const boardIds = context.yard().boards.idsOfStack(id);
      context.yard().transaction(() => {
        moveBoards(context, boardIds, placeId, since);
        context.yard().stacks.edit({ id, basedOn: stack.version, changed: { placeId } });
      });
      judging.judgeAgain(boardIds);
      context.emit('yard.changed', {});
      return get(id);
    },
  };
}
