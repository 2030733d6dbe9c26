import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { AppContext } from '../context.ts';
import type { Judging } from '../judging/judging.ts';
import { checkCurve } from './known-curve.ts';

/** Woods and uses: the built-in ones and the user's own. */
export function catalogueUseCases(context: AppContext, judging: Judging) {
  return {
    'species.list': () => context.yard().species.list(),
    'species.save': (species: Species): Species => {
      checkCurve(species.curveId, message('refusal.species-not-saved'));
      context.yard().species.save(species);
      judging.judgeAgain(context.yard().boards.idsOfSpecies(species.id));
      context.emit('yard.changed', {});
      return species;
    },
    'endUses.list': () => context.yard().endUses.list(),
    'endUses.save': (endUse: EndUse): EndUse => {
      context.yard().endUses.save(endUse);
      judging.judgeAgain(context.yard().boards.idsForEndUse(endUse.id));
      context.emit('yard.changed', {});
      return endUse;
    },
  };
}
