import type { AirSource } from '../../../shared-core/contract/yard.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { Station } from '../../../shared-core/wood/climate/station.ts';
import type { AirMovement } from '../../../shared-core/wood/drying/air-movement.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { AirOfPlace } from './place-air.ts';

/** "Asheville, NC". */
export const stationText = ({ name, state }: Station): string => `${name}, ${state}`;

/** Where a place's months of air come from. */
export function airSourceText(source: AirSource | null): Message {
  switch (source?.kind) {
    case 'station':
      return message('places.air-of', { siteName: stationText(source.station) });
    case 'file':
      return message('places.air-of', { siteName: source.siteName });
    case 'region':
      return source.stations === null
        ? message('places.air-of-no-region')
        : message('places.air-of-region', { stations: source.stations });
    case 'room': {
      const { room, outdoors } = source;
      if (outdoors === undefined) return message('places.air-of-room', { room });
      return room === 'open-shed'
        ? message('places.air-of-outdoors', { outdoorsName: outdoors })
        : message('places.air-made-of-outdoors', { room, outdoorsName: outdoors });
    }
    case undefined:
      return message('places.own-figures');
  }
}

/** What moving air can do to wet wood; null where it hardly can. */
export function movementCaution(movement: AirMovement): Message | null {
  switch (movement) {
    case 'fan':
    case 'dehumidified':
    case 'solar-kiln':
      return message(`places.movement-caution.${movement}`);
    default:
      return null;
  }
}

/** What the air of a room is assumed to be, and from what. */
export function roomHint({ air, airSource }: AirOfPlace): Message {
  const emcs = emcOfYear(air).monthlyEmcPct;
  const [driestPct, dampestPct] = [Math.min(...emcs), Math.max(...emcs)];
  return airSource?.kind === 'room' && airSource.outdoors !== undefined
    ? message('places.from-outdoors-hint', {
        outdoorsName: airSource.outdoors,
        emcInterval: { minPct: driestPct, maxPct: dampestPct },
      })
    : message('places.room-hint', { driestPct, dampestPct });
}
