import { Refusal } from '../../shared-core/contract/answer.ts';
import type { NewOvenCheck, OvenCheck, OwnFit } from '../../shared-core/contract/oven-checks.ts';
import { correctReading } from '../../shared-core/wood/correction.ts';
import { type AppContext, wanted } from './context.ts';
import type { Judging } from './judging.ts';
import type { OwnFits } from './own-fits.ts';

/** The user's own oven-dry checks of a wood, and whether they correct its readings. */
export function ovenCheckUseCases(context: AppContext, judging: Judging, ownFits: OwnFits) {
  const get = (id: number): OvenCheck => wanted(context.yard().ovenChecks.get(id), 'oven-dry check');

  /** Judges the wood's boards again where its checks correct readings, and gives the checks as they now are. */
  function changed(woodId: string, corrects: boolean): OwnFit[] {
    if (corrects) judging.judgeAgain(context.yard().boards.idsWithWood(woodId));
    context.emit('yard.changed', {});
    return ownFits.ofWood(woodId);
  }
  const corrects = (woodId: string): boolean => context.yard().ovenChecks.chosen(woodId).length > 0;

  function checkReadings(check: NewOvenCheck): void {
    const yard = context.yard();
    const wood = wanted(yard.species.get(check.woodId), 'wood');
    const meter = check.meterId === null ? undefined : wanted(yard.meters.get(check.meterId), 'meter');
    const basis = meter?.description?.basis ?? null;
    for (const value of check.readings) {
      if (
        correctReading({ value, unit: check.unit, woodTempC: check.woodTempC, wood, basis }).mcPct === null
      ) {
        throw new Refusal(
          `${value} cannot be a reading of ${wood.name}. The check was not saved. Mend the reading and save again.`,
        );
      }
    }
  }

  function mark(checkId: number, massId: number | null, why: string | null): OwnFit[] {
    const check = get(checkId);
    if (massId !== null)
      wanted(
        check.masses.find((mass) => mass.id === massId),
        'mass',
      );
    context.yard().ovenChecks.mark(checkId, massId, why, context.now());
    return changed(check.woodId, corrects(check.woodId));
  }

  return {
    'ovenChecks.ofWood': ({ woodId }: { woodId: string }): OwnFit[] => ownFits.ofWood(woodId),

    'ovenChecks.add': (check: NewOvenCheck): OwnFit[] => {
      checkReadings(check);
      context.yard().ovenChecks.add(check, context.now());
      return changed(check.woodId, false);
    },

    'ovenChecks.weigh': ({
      checkId,
      grams,
      at,
    }: {
      checkId: number;
      grams: number;
      at: string;
    }): OwnFit[] => {
      const check = get(checkId);
      if (grams > check.wetGrams) {
        throw new Refusal(
          `${grams} g is more than the ${check.wetGrams} g that ${check.piece} weighed when it was wet. The mass was not saved. Check the number, and that it is this piece.`,
        );
      }
      if (at > context.now()) {
        throw new Refusal(
          'That time is still to come. The mass was not saved. Give the time at which it was weighed.',
        );
      }
      if (check.masses.some((mass) => mass.setAside === null && Date.parse(mass.at) === Date.parse(at))) {
        throw new Refusal(
          `${check.piece} has a mass for that time already. The new one was not saved. Give another time, or set the old one aside first.`,
        );
      }
      context.yard().ovenChecks.weigh(checkId, grams, at);
      return changed(check.woodId, corrects(check.woodId));
    },

    'ovenChecks.setAside': ({
      checkId,
      massId,
      why,
    }: {
      checkId: number;
      massId: number | null;
      why: string;
    }) => mark(checkId, massId, why),
    'ovenChecks.putBack': ({ checkId, massId }: { checkId: number; massId: number | null }) =>
      mark(checkId, massId, null),

    'ovenChecks.useFit': ({
      woodId,
      meterId,
      use,
    }: {
      woodId: string;
      meterId: number | null;
      use: boolean;
    }): OwnFit[] => {
      const own = wanted(
        ownFits.ofWood(woodId).find((each) => each.meterId === meterId),
        'oven-dry check of this wood with this meter',
      );
      if (use && own.fit?.worthUsing !== true) {
        throw new Refusal(
          `Your checks are not worth using yet: ${own.sentence} Readings are corrected as before.`,
        );
      }
      context.yard().ovenChecks.choose(woodId, meterId, use, context.now());
      return changed(woodId, true);
    },
  };
}
