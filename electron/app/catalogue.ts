import type { Use } from '../../shared-core/probing/assessment.ts';
import type { Wood } from '../../shared-core/wood/wood.ts';
import type { AppContext } from './context.ts';
import type { Judging } from './judging.ts';
import { checkCurve } from './known-curve.ts';

/** Woods and uses: the built-in ones and the user's own. */
export function catalogueUseCases(context: AppContext, judging: Judging) {
  return {
    'woods.list': () => context.yard().species.list(),
    'woods.save': (wood: Wood): Wood => {
      checkCurve(wood.curveId, 'The wood was not saved');
      context.yard().species.save(wood);
      judging.judgeAgain(context.yard().boards.idsWithWood(wood.id));
      context.emit('yard.changed', {});
      return wood;
    },
    'uses.list': () => context.yard().uses.list(),
    'uses.save': (use: Use): Use => {
      context.yard().uses.save(use);
      judging.judgeAgain(context.yard().boards.idsForUse(use.id));
      context.emit('yard.changed', {});
      return use;
    },
  };
}
