import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { NewOvenCheck, OvenCheck, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { shown } from '../../../shared-core/probing/suspicions/reading-suspicions.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from './judging.ts';
import type { Learning } from './learning.ts';
import type { OwnFits } from './own-fits.ts';

export const ovenCheckQueries = (ownFits: OwnFits) =>
  ({
    'ovenChecks.ofSpecies': ({ speciesId }) => ownFits.ofSpecies(speciesId),
  }) satisfies Partial<Queries>;

/** The person's own oven-dry checks of a species, and whether they correct its readings. */
export function ovenCheckCommands(
  context: AppContext,
  judging: Judging,
  ownFits: OwnFits,
  learning: Learning,
) {
  const get = (id: number): OvenCheck => orRefuse(context.yard().ovenChecks.get(id), 'check');

  /** Judges boards again where the change teaches something else, and gives the checks as they now are. */
  function changed(speciesId: string, corrects: boolean, before: string): OwnFit[] {
    if (corrects) judging.judgeAgain(context.yard().boards.idsOfSpecies(speciesId));
    learning.forget();
    if (taught() !== before) judging.judgeAgain(context.yard().findings.boardIds());
    return ownFits.ofSpecies(speciesId);
  }
  /** All that the yard's boards teach of its meters. */
  const taught = (): string => JSON.stringify(learning.known());
  const corrects = (speciesId: string): boolean => context.yard().ovenChecks.chosen(speciesId).length > 0;

  function checkReadings(check: NewOvenCheck): void {
    const yard = context.yard();
    const species = orRefuse(yard.species.get(check.speciesId), 'species');
    if (check.meterId !== null) orRefuse(yard.meters.get(check.meterId), 'meter');
    const meaning = ownFits.meaningOf(check.meterId);
    for (const value of check.readings) {
      const { unit, woodTempC } = check;
      if (correctReading({ value, unit, woodTempC, species, ...meaning }).mcPct === null) {
        throw new Refusal(
          message('refusal.reading-impossible', {
            reading: shown({ raw: value, unit }),
            speciesName: species.name,
          }),
        );
      }
    }
  }

  function exclude(checkId: number, weightId: number | null, why: Exclusion | null): OwnFit[] {
    const check = get(checkId);
    if (weightId !== null)
      orRefuse(
        check.weights.find((weight) => weight.id === weightId),
        'weight',
      );
    const { amendments } = context.yard();
    const before = taught();
    if (weightId === null) amendments.exclude('ovenCheck', checkId, why, context.now());
    else amendments.exclude('ovenWeight', weightId, why, context.now());
    return changed(check.speciesId, corrects(check.speciesId), before);
  }

  return {
    'ovenChecks.add': (check) => {
      checkReadings(check);
      context.yard().ovenChecks.add(check, context.now());
      // Not dried yet, it teaches nothing.
      return ownFits.ofSpecies(check.speciesId);
    },

    'ovenChecks.weigh': ({ checkId, grams, at }) => {
      const check = get(checkId);
      if (grams > check.wetGrams) {
        throw new Refusal(
          message('refusal.piece-heavier-than-wet', {
            weightGrams: grams,
            wetGrams: check.wetGrams,
            piece: check.piece,
          }),
        );
      }
      if (Date.parse(at) > Date.parse(context.now())) {
        throw new Refusal(message('refusal.weighed-to-come'));
      }
      if (
        check.weights.some((weight) => weight.excluded === null && Date.parse(weight.at) === Date.parse(at))
      ) {
        throw new Refusal(message('refusal.weighed-already', { piece: check.piece }));
      }
      const before = taught();
      context.yard().ovenChecks.weigh(checkId, grams, at);
      return changed(check.speciesId, corrects(check.speciesId), before);
    },

    'ovenChecks.exclude': ({ checkId, weightId, why }) => exclude(checkId, weightId, why),
    'ovenChecks.include': ({ checkId, weightId }) => exclude(checkId, weightId, null),

    'ovenChecks.useFit': ({ speciesId, meterId, inUse }) => {
      const own = orRefuse(
        ownFits.ofSpecies(speciesId).find((each) => each.meterId === meterId),
        'check',
      );
      if (inUse && own.fit?.worthUsing !== true) {
        throw new Refusal(message('refusal.checks-not-used', { why: own.status }));
      }
      context.yard().ovenChecks.choose(speciesId, meterId, inUse, context.now());
      return changed(speciesId, true, taught());
    },
  } satisfies Partial<Commands>;
}
