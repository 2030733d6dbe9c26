import { useId, useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { Place } from '../../../shared-core/contract/yard.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { TextField } from '../../form/Field.tsx';
import { region } from '../../region.ts';
import { useWords } from '../../words.ts';
import { airSourceText, stationText } from './air-source-text.ts';

/** As many as a sentence names. */
const MOST_NAMED = 4;

/** What a place is given of a station, a file or a person. */
export type AirOfPlace = Pick<Place, 'air' | 'airSource'>;
type Found = RequestOutput<'stations.find'>;

/** Asks for the nearest weather station by name, state or coordinates, and says which one is meant. */
export function StationField({ text, onText }: { text: string; onText: (text: string) => void }) {
  const { say, formats } = useWords();
  const listId = useId();
  const [left, setLeft] = useState(false);
  const found = useQuery('stations.find', { text }).output;
  const meant = found && meantBy(found);
  const problem = left && found ? problemOf(text, found, formats.list) : null;
  return (
    <>
      <TextField
        label={say('stations.nearest')}
        hint={say(meant ? airSourceText(meant.airSource) : message('stations.hint'))}
        error={problem && say(problem)}
        list={listId}
        maxLength={80}
        value={text}
        onBlur={() => setLeft(true)}
        onValue={onText}
      />
      <datalist id={listId}>
        {found?.years.map(({ station }) => (
          <option key={station.wmo} value={stationText(station)} />
        ))}
      </datalist>
    </>
  );
}

function meantBy({ years: [first], isClear }: Found): AirOfPlace | null {
  return first && isClear ? { air: first.air, airSource: { kind: 'station', station: first.station } } : null;
}

function problemOf(text: string, found: Found, list: (names: string[]) => string): Message | null {
  if (text.trim() === '' || meantBy(found)) return null;
  if (found.years.length === 0) return message('stations.none', { typedText: text.trim() });
  const names = found.years.slice(0, MOST_NAMED).map(({ station }) => stationText(station));
  return message('stations.which', { stationNames: list(names) });
}

/** The air of the station that a text means, to preview; null while none is. */
export function useStationAir(text: string): AirOfPlace | null {
  const found = useQuery('stations.find', { text }).output;
  return found && meantBy(found);
}

/**
 * The air of the station that a text means; of the computer's region where it is blank.
 * @throws Refusal where no station is meant
 */
export async function airOfStation(text: string, list: (names: string[]) => string): Promise<AirOfPlace> {
  if (text.trim() === '') {
    const { air, stations } = await bridge().query('stations.ofRegion', { timeZone: region().timeZone });
    return { air, airSource: { kind: 'region', stations } };
  }
  const found = await bridge().query('stations.find', { text });
  const problem = problemOf(text, found, list);
  if (problem) throw new Refusal(problem);
  return meantBy(found) as AirOfPlace;
}
