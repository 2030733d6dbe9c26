import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import {
  boardFeetTallied,
  boardMassKg,
  cubicMetersTallied,
} from '../../../shared-core/wood/movement/volume.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { message } from '../../../shared-core/words/message.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';

/** What a stack amounts to: volume by the trade's rounding, and weight now and at the target of its use. */
export const stackVolumeQueries = (context: QueryContext) =>
  ({
    'stacks.volume': ({ id }) => {
      const yard = context.yard();
      const endUse = orRefuse(yard.endUses.get(orRefuse(yard.stacks.get(id), 'stack').endUseId), 'use');
      const allSpecies = new Map<string, Species>();
      const speciesOf = (speciesId: string): Species => {
        const species = allSpecies.get(speciesId) ?? orRefuse(yard.species.get(speciesId), 'species');
        allSpecies.set(speciesId, species);
        return species;
      };
      const targetPct = targetOfUsePct(endUse);
      const total = { boards: 0, measured: 0, boardFeet: 0, cubicMeters: 0 };
      const mass = { boards: 0, nowKg: 0, targetKg: 0 };
      let unprobed = 0;
      const withoutDensity = new Set<string>();

      for (const { speciesId, averagePct, thicknessMm, widthMm, lengthMm } of yard.boards.sizesOfStack(id)) {
        total.boards++;
        if (widthMm === null || lengthMm === null) continue;
        const size = { thicknessMm, widthMm, lengthMm };
        total.measured++;
        total.boardFeet += boardFeetTallied(size);
        total.cubicMeters += cubicMetersTallied(size);
        const species = speciesOf(speciesId);
        if (species.basicSpecificGravity === null) withoutDensity.add(species.name);
        else if (averagePct === null) unprobed++;
        else {
          // A wet board's reading may be above what its species can hold.
          const most = mostWaterPct(species.basicSpecificGravity);
          const each = boardMassKg(size, species, Math.min(averagePct, most), Math.min(targetPct, most));
          mass.boards++;
          mass.nowKg += each?.nowKg ?? 0;
          mass.targetKg += each?.targetKg ?? 0;
        }
      }
      const unmeasured = total.boards - total.measured;
      return {
        ...total,
        mass: mass.boards > 0 ? mass : null,
        targetPct,
        missing: [
          ...(unmeasured > 0 && total.measured > 0
            ? [message('stacks.size-missing', { boards: unmeasured })]
            : []),
          ...(unprobed > 0 ? [message('stacks.weight-not-probed', { boards: unprobed })] : []),
          ...[...withoutDensity].map((speciesName) => message('stacks.density-missing', { speciesName })),
        ],
      };
    },
  }) satisfies Partial<Queries>;
