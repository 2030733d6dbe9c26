import { message } from '../../../shared-core/words/message.ts';
import type { AppContext, QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkCurve } from './known-curve.ts';

/** Species and end uses: the built-in ones and the person's own. */
export const catalogueQueries = (context: QueryContext) =>
  ({
    'species.list': () => context.yard().species.list(),
    'endUses.list': () => context.yard().endUses.list(),
  }) satisfies Partial<Queries>;

export const catalogueCommands = (context: AppContext, judging: Judging) =>
  ({
    'species.save': (species) => {
      checkCurve(species.curveId, message('refusal.species-not-saved'));
      context.yard().species.save(species);
      judging.judgeAgain(context.yard().boards.idsOfSpecies(species.id));
      return species;
    },
    'endUses.save': (endUse) => {
      context.yard().endUses.save(endUse);
      judging.judgeAgain(context.yard().boards.idsForEndUse(endUse.id));
      return endUse;
    },
  }) satisfies Partial<Commands>;
