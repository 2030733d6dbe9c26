import { type AirSource, placeKindSchema } from '../../../shared-core/contract/yard.ts';
import { roomAirSchema } from '../../../shared-core/wood/climate/room-air.ts';
import { NumberField, Select, useHint } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import type { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { AirMovementField } from './AirMovementField.tsx';
import { EpwField } from './EpwField.tsx';
import { MonthsOfAir } from './MonthsOfAir.tsx';
import { type AirKnown, type PlaceAirSchema, usualWay, waysOf } from './place-air.ts';
import { airSourceText, roomHint } from './place-words.ts';
import { RoomAirActions } from './RoomAirActions.tsx';
import { StationField, type useStation } from './StationField.tsx';

/** A place's kind and air as they are typed. */
export type PlaceAirTyped = ReturnType<
  typeof useDraft<PlaceAirSchema['_zod']['input'], PlaceAirSchema['_zod']['output']>
>;

/**
 * What kind of place it is, where its air comes from (the yard's outdoor air, one pair, a station, a file, or months), and
 * how that moves at the boards.
 */
export function PlaceAirFields({
  typed,
  known,
  station,
  saved,
}: {
  typed: PlaceAirTyped;
  known: AirKnown;
  station: ReturnType<typeof useStation>;
  /** Where the air saved meanwhile comes from, where another is typed. */
  saved: AirSource | null | undefined;
}) {
  const { say } = useWords();
  const {
    draft: { kind, way },
    set,
    field,
    made,
  } = typed;
  const room = roomAirSchema.safeParse(way).success ? made?.made : null;
  return (
    <>
      <Select
        label={say('places.kind')}
        {...field('kind')}
        options={placeKindSchema.options.map((value) => ({ value, label: say(`places.kind.${value}`) }))}
        onValue={(chosen) => set({ kind: chosen, way: usualWay(chosen, known.outdoors), airMovement: null })}
      />
      <Select
        label={say('places.air')}
        {...field('way')}
        hint={useHint(room && say(roomHint(room)), saved === undefined ? saved : say(airSourceText(saved)))}
        saved={undefined}
        options={waysOf(kind ?? 'open-shed', known.outdoors).map((value) => ({
          value,
          label: say(`places.way.${value}`),
        }))}
      />
      {room && <RoomAirActions {...{ room, known, set }} />}
      {way === 'steady' && (
        <div className="form-grid">
          <TempField label={say('places.temperature')} hint={say('places.steady-hint')} {...field('tempC')} />
          <NumberField label={say('places.humidity')} unit="%" {...field('rhPct')} />
        </div>
      )}
      {way === 'station' && <StationField station={station} />}
      {way === 'file' && <EpwField {...field('file')} />}
      {way === 'own' && <MonthsOfAir typed={typed} />}
      <AirMovementField {...field('airMovement')} kind={kind ?? 'open-shed'} />
    </>
  );
}
