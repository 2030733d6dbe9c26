import type { StackVolume } from '../../shared-core/contract/stack-volume.ts';
import { targetOfUsePct } from '../../shared-core/probing/target-of-use.ts';
import { counted } from '../../shared-core/probing/wording.ts';
import { mostWaterPct } from '../../shared-core/wood/most-water.ts';
import { boardFeetTallied, boardMassKg, cubicMetresTallied } from '../../shared-core/wood/volume.ts';
import type { Wood } from '../../shared-core/wood/wood.ts';
import { type AppContext, wanted } from './context.ts';

/** What a stack amounts to: volume by the trade's rounding, and mass now and when fit for its use. */
export function stackVolumeUseCases(context: AppContext) {
  return {
    'stacks.volume': ({ id }: { id: number }): StackVolume => {
      const yard = context.yard();
      const use = wanted(yard.uses.get(wanted(yard.stacks.get(id), 'stack').useId), 'use');
      const woods = new Map<string, Wood>();
      const woodOf = (woodId: string): Wood => {
        const wood = woods.get(woodId) ?? wanted(yard.species.get(woodId), 'wood');
        woods.set(woodId, wood);
        return wood;
      };
      const targetPct = targetOfUsePct(use);
      const total = { boards: 0, measured: 0, boardFeet: 0, cubicMetres: 0 };
      const mass = { boards: 0, nowKg: 0, targetKg: 0 };
      let unprobed = 0;
      const withoutDensity = new Set<string>();

      for (const { woodId, averagePct, thicknessMm, widthMm, lengthMm } of yard.boards.sizesOfStack(id)) {
        total.boards++;
        if (widthMm === null || lengthMm === null) continue;
        const size = { thicknessMm, widthMm, lengthMm };
        total.measured++;
        total.boardFeet += boardFeetTallied(size);
        total.cubicMetres += cubicMetresTallied(size);
        const wood = woodOf(woodId);
        if (wood.basicSpecificGravity === null) withoutDensity.add(wood.name);
        else if (averagePct === null) unprobed++;
        else {
          // A wet board's reading may lie above what its wood can hold.
          const most = mostWaterPct(wood.basicSpecificGravity);
          const each = boardMassKg(size, wood, Math.min(averagePct, most), Math.min(targetPct, most));
          mass.boards++;
          mass.nowKg += each?.nowKg ?? 0;
          mass.targetKg += each?.targetKg ?? 0;
        }
      }
      const unmeasured = total.boards - total.measured;
      return {
        ...total,
        mass: mass.boards > 0 ? mass : null,
        useName: use.name,
        targetPct,
        missing: [
          ...(unmeasured > 0 ? [`${counted(unmeasured, 'board')} without width or length left out.`] : []),
          ...(unprobed > 0 ? [`${counted(unprobed, 'board')} not probed yet: mass not known.`] : []),
          ...[...withoutDensity].map(
            (name) => `The specific gravity of ${name} is not known, so neither is its mass.`,
          ),
        ],
      };
    },
  };
}
