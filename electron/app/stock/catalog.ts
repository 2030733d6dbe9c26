import { Refusal } from '../../../shared-core/contract/answer.ts';
import { problemOf } from '../../../shared-core/contract/validation.ts';
import { newEndUseSchema } from '../../../shared-core/wood/species/end-use.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkCurve } from './known-curve.ts';

/** Species and end uses: the built-in ones and the person's own. */
export const catalogQueries = (context: QueryContext) =>
  ({
    'species.list': () => context.yard().species.list(),
    'endUses.list': () => context.yard().endUses.list(),
  }) satisfies Partial<Queries>;

export function catalogCommands(context: AppContext, judging: Judging) {
  const speciesOf = (id: string) => orRefuse(context.yard().species.row(id), 'species');
  const endUseOf = (id: string) => orRefuse(context.yard().endUses.row(id), 'use');

  return {
    'species.add': (species) => {
      checkCurve(species.curveId, message('refusal.species-not-saved'));
      refusingDuplicates(message('refusal.species-exists', { speciesId: species.id }), () =>
        context.yard().species.add(species),
      );
      return speciesOf(species.id);
    },
    'species.edit': (edit) => {
      speciesOf(edit.id);
      checkCurve(edit.changed.curveId ?? null, message('refusal.species-not-saved'));
      orConflict(context.yard().species.edit(edit));
      judging.judgeAgain(context.yard().boards.idsOfSpecies(edit.id));
      return speciesOf(edit.id);
    },
    'endUses.add': (endUse) => {
      refusingDuplicates(message('refusal.use-exists', { useId: endUse.id }), () =>
        context.yard().endUses.add(endUse),
      );
      return endUseOf(endUse.id);
    },
    'endUses.edit': (edit) => {
      // One limit alone is checked against the other as it is saved.
      const { error } = newEndUseSchema.safeParse({ ...endUseOf(edit.id), ...edit.changed });
      if (error) throw new Refusal(message('refusal.nothing-saved', { why: problemOf(error) }));
      orConflict(context.yard().endUses.edit(edit));
      judging.judgeAgain(context.yard().boards.idsForEndUse(edit.id));
      return endUseOf(edit.id);
    },
  } satisfies Partial<Commands>;
}
