import type { Place } from '../../../shared-core/contract/yard.ts';
import type { LowestEmc } from '../../../shared-core/probing/calls/call-here.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';

/** Months that a person did not enter: those of its region, usual ones of such a room, or those that replace damaged ones. */
const isRoughAir = ({ airSource, isDamaged }: Place & { isDamaged?: true | undefined }): boolean =>
  isDamaged === true || airSource?.kind === 'region' || airSource?.kind === 'room';

/** @param offsetPct  how far readings put the EMC of the place from that of its months, % MC; null where none were taken */
export function lowestEmcOf(
  place: Place & { isDamaged?: true | undefined },
  offsetPct: number | null,
): LowestEmc {
  const { driestEmcPct, driestMonth } = emcOfYear(place.air, offsetPct ?? 0);
  return {
    placeName: place.name,
    emcPct: driestEmcPct,
    month: driestMonth,
    isByReadings: offsetPct !== null,
    isRough: isRoughAir(place),
  };
}
