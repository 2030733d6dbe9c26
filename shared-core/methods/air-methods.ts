import {
  COOLED_RH,
  MOISTURE_GAIN,
  PART_HEATED_C,
  ROOM_SD,
  ROOM_TEMP_C,
  SHED_SD_PCT,
} from '../wood/climate/air-from-outdoors.ts';
import { COLDEST_C } from '../wood/climate/emc.ts';
import { ABOVE_MEANS, ABOVE_MEANS_SD } from '../wood/climate/outdoor-month.ts';
import { roomSeasons, UNSURE_PCT } from '../wood/climate/room-air.ts';
import { message } from '../words/message.ts';
import { type MethodPart, partOf } from './method-part.ts';

export const emcMethods = (): MethodPart =>
  partOf(
    'emc',
    message('methods.emc.title'),
    [
      message('methods.emc.what'),
      message('methods.emc.formula'),
      message('methods.emc.w'),
      message('methods.emc.k'),
      message('methods.emc.cold', { coldestTempC: COLDEST_C }),
      message('methods.emc.dew'),
    ],
    message('methods.emc.source'),
  );

export function airMethods(): MethodPart {
  const { cold, warm } = MOISTURE_GAIN;
  return partOf(
    'air',
    message('methods.air.title'),
    [
      message('methods.air.stations'),
      message('methods.air.region'),
      message('methods.air.hours'),
      message('methods.air.typed', { sdPoints: ABOVE_MEANS_SD }),
      message('methods.air.rooms'),
      message('methods.air.room-temperature', {
        heatedTempC: ROOM_TEMP_C.heated,
        untilTempC: ROOM_TEMP_C.heatedUntil,
        aboveStepK: ROOM_TEMP_C.aboveOutdoors,
        cooledTempC: ROOM_TEMP_C.cooledTo,
        cooledRhPct: 100 * COOLED_RH,
        shopTempC: PART_HEATED_C,
      }),
      message('methods.air.gain', {
        coldGain: cold.gramsPerM3,
        coldTempC: cold.outdoorsC,
        warmGain: warm.gramsPerM3,
        warmTempC: warm.outdoorsC,
      }),
      message('methods.air.room-sd', { gainSd: ROOM_SD.gramsPerM3, tempSdStepK: ROOM_SD.tempC }),
      message('methods.air.shed', { sdPoints: SHED_SD_PCT }),
      message('methods.air.unknown', {
        driestPct: roomSeasons.heated.winter.emcPct,
        dampestPct: roomSeasons.heated.summer.emcPct,
        sdPoints: UNSURE_PCT,
      }),
    ],
    message('methods.air.source'),
    {
      caption: message('methods.air.typed-caption'),
      heads: [message('methods.air.rh'), message('methods.air.above')],
      rows: ABOVE_MEANS.map(([rh, points]) => [Math.round(100 * rh), points]),
    },
  );
}
