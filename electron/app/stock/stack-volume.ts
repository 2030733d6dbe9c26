import { setImmediate } from 'node:timers/promises';
import type { StackVolume } from '../../../shared-core/contract/stack-volume.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { createTally, missingInTally, type Tally, type TallyBy } from '../../../shared-core/tally/tally.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { YardReader } from '../../store/yard.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';

/** So many boards are read and added at a time, some milliseconds. */
const AT_A_TIME = 2000;

/**
 * What boards amount to, split as asked, a slice of them at a time.
 * @param stackId  those that are with that stack; null: every board of the yard
 */
export function* tallySlices(
  yard: () => Pick<YardReader, 'boards' | 'endUses' | 'species'>,
  stackId: number | null,
  by: readonly TallyBy[],
): Generator<undefined, Tally> {
  const allSpecies = new Map<string, Species>();
  const targets = new Map<string, number>();
  const tally = createTally(by);
  for (let afterId = 0; ; yield) {
    const { boards, endUses, species } = yard();
    const some = boards.toTally(stackId, afterId, AT_A_TIME);
    for (const { speciesId, endUseId, ...board } of some) {
      const known = allSpecies.get(speciesId) ?? orRefuse(species.get(speciesId), 'species');
      const targetPct = targets.get(endUseId) ?? targetOfUsePct(orRefuse(endUses.get(endUseId), 'use'));
      allSpecies.set(speciesId, known);
      targets.set(endUseId, targetPct);
      tally.add({ ...board, species: known, targetPct });
    }
    if (some.length < AT_A_TIME) return tally.made();
    afterId = some.at(-1)!.id;
  }
}

/** The same, and others have their turn between the slices. */
export async function tallyOf(
  context: QueryContext,
  stackId: number | null,
  by: readonly TallyBy[],
): Promise<Tally> {
  const slices = tallySlices(() => context.yard(), stackId, by);
  for (;;) {
    const { done, value } = slices.next();
    if (done) return value;
    await setImmediate();
  }
}

/** What a stack amounts to: volume by the trade's rounding, and weight now and at the target of its use. */
export const stackVolumeQueries = (context: QueryContext) =>
  ({
    'stacks.volume': async ({ id }): Promise<StackVolume> => {
      const { endUses, stacks } = context.yard();
      const endUse = orRefuse(endUses.get(orRefuse(stacks.get(id), 'stack').endUseId), 'use');
      const { total } = await tallyOf(context, id, []);
      const { boards, measured, boardFeet, cubicMeters, weighed, nowKg, targetKg } = total;
      return {
        boards,
        measured,
        boardFeet,
        cubicMeters,
        mass: weighed > 0 ? { boards: weighed, nowKg, targetKg } : null,
        targetPct: targetOfUsePct(endUse),
        // Without any, there are no totals that some are missing in.
        missing: measured > 0 ? missingInTally(total) : [],
      };
    },

    'tallies.get': ({ stackId, by }) => {
      if (stackId !== null) orRefuse(context.yard().stacks.get(stackId), 'stack');
      return tallyOf(context, stackId, by);
    },
  }) satisfies Partial<Queries>;
