import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { AirSource } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Combobox } from '../../form/Combobox.tsx';
import { fieldsMarked } from '../../form/FormDialog.tsx';
import { region } from '../../region.ts';
import { useUnsaved } from '../../stores/unsaved-forms.ts';
import { useWords } from '../../words.ts';
import type { AirOfPlace } from './place-air.ts';
import { airSourceText, stationText } from './place-words.ts';

type Found = RequestOutput<'stations.find'>;
const airOf = ({ air, station }: Found['years'][number]): AirOfPlace => ({
  air,
  airSource: { kind: 'station', station },
});
const meantBy = ({ years: [first], isClear }: Found): AirOfPlace | null =>
  first && isClear ? airOf(first) : null;
const textOf = (source: AirSource | null | undefined): string =>
  source?.kind === 'station' ? stationText(source.station) : '';
const ofOutdoors = (place: AirOfPlace | null): AirOfPlace | null =>
  place?.airSource?.kind === 'station' || place?.airSource?.kind === 'region'
    ? { air: place.air, airSource: place.airSource }
    : null;

/**
 * The nearest weather station as it is typed, begun with a place's own air; blank for the average of the region.
 *
 * @param form the form in which it outlasts its screen
 */
export function useStation(start: AirOfPlace | null, form: string | null = null) {
  const [chosen, setChosen] = useUnsaved(form, 'station', ofOutdoors(start));
  const [text, setText] = useUnsaved(form, 'station-text', textOf(chosen?.airSource));
  const [shown, setShown] = useState(false);
  const found = useQuery('stations.find', { text }).output;

  function choose(air: AirOfPlace | null): void {
    setChosen(air);
    setText(textOf(air?.airSource));
  }

  return {
    text,
    found,
    /** Whether what is missing is to be shown. */
    shown,
    chosen,
    /** The air to be saved, as far as it is known yet. */
    meant: chosen ?? (found && meantBy(found)),
    type: (typed: string): void => {
      setChosen(null);
      setText(typed);
    },
    choose,
    refill: (air: AirOfPlace): void => choose(ofOutdoors(air)),
    /** @throws Refusal where the text means no one station, which the field then shows */
    async read(): Promise<AirOfPlace> {
      setShown(true);
      if (chosen) return chosen;
      if (text.trim() === '') {
        const { air, stations } = await bridge().query('stations.ofRegion', { timeZone: region().timeZone });
        return { air, airSource: { kind: 'region', stations } };
      }
      const meant = meantBy(await bridge().query('stations.find', { text }));
      if (!meant) throw fieldsMarked();
      return meant;
    },
  };
}

/** Asks for the nearest weather station by name, state or coordinates, and says which one is meant. */
export function StationField({
  station: { text, found, shown, chosen, meant, type, choose },
}: {
  station: ReturnType<typeof useStation>;
}) {
  const { say } = useWords();
  const itemOf = ({ station }: Found['years'][number]) => ({ id: station.wmo, name: stationText(station) });
  const items = found?.years.map(itemOf) ?? null;
  const typedText = text.trim();
  return (
    <Combobox
      label={say('stations.nearest')}
      hint={say(meant ? airSourceText(meant.airSource) : message('stations.hint'))}
      error={shown && typedText !== '' && !meant ? say('stations.none', { typedText }) : null}
      none={say('stations.none', { typedText })}
      note={found?.onlyState && say('stations.only-state', { typedText, stateName: found.onlyState })}
      text={text}
      chosenId={chosen?.airSource?.kind === 'station' ? chosen.airSource.station.wmo : null}
      items={items}
      more={found?.more ?? 0}
      meant={(meant && items?.slice(0, 1)) ?? []}
      onText={type}
      onChoose={({ id }) =>
        choose(found?.years.filter(({ station }) => station.wmo === id).map(airOf)[0] ?? null)
      }
    />
  );
}
