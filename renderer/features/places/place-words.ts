import type { AirSource } from '../../../shared-core/contract/yard.ts';
import type { Station } from '../../../shared-core/wood/climate/station.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

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
    case 'room':
      return message('places.air-of-room', { room: source.room });
    case undefined:
      return message('places.own-figures');
  }
}
