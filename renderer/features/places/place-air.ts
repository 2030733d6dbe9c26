import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import {
  type AirSource,
  type Place,
  type PlaceKind,
  placeKindSchema,
} from '../../../shared-core/contract/yard.ts';
import type { PastedMonth } from '../../../shared-core/units/pasted-months.ts';
import { airFromOutdoors } from '../../../shared-core/wood/climate/air-from-outdoors.ts';
import { type Air, airSchema } from '../../../shared-core/wood/climate/monthly-air.ts';
import { outdoorMonth } from '../../../shared-core/wood/climate/outdoor-month.ts';
import { monthsLater } from '../../../shared-core/wood/climate/regional-air.ts';
import { type RoomAir, roomAirSchema, roomYear } from '../../../shared-core/wood/climate/room-air.ts';
import { type AirMovement, airMovementSchema } from '../../../shared-core/wood/drying/air-movement.ts';
import type { Draft } from '../../form/useDraft.ts';
import { region } from '../../region.ts';

/** What a place is given of a station, a file, what is usual in a room, or a person. */
export type AirOfPlace = Pick<Place, 'air' | 'airSource'>;

/** The outdoor air of the yard, by the place that has it. */
export type Outdoors = Pick<Place, 'name' | 'air'>;

/** What makes a place's air, beside the fields: the yard's outdoor air, if it is known, and the air of a room as saved. */
export interface AirKnown {
  outdoors: Outdoors | null;
  saved: AirOfPlace | null;
}

/** The place whose air is the yard's outdoor air: outdoors first, then an open shed, with a station's air, a file's or its own. */
export function outdoorsOf(places: readonly Place[], butId: number | null): Outdoors | null {
  const isKnown = ({ airSource }: Place): boolean =>
    airSource?.kind !== 'region' && airSource?.kind !== 'room';
  const known = places.filter((place) => place.id !== butId && isKnown(place));
  return (
    known.find(({ kind }) => kind === 'outdoors') ?? known.find(({ kind }) => kind === 'open-shed') ?? null
  );
}

/** Where the air of a place can come from. */
const ways = [...roomAirSchema.options, 'steady', 'station', 'file', 'own'] as const;
type Way = (typeof ways)[number];
const isRoom = (kind: PlaceKind): boolean => kind === 'shop' || kind === 'heated-room';

/** First what is made from the yard's outdoor air, or what is usual in a room. */
export function waysOf(kind: PlaceKind, outdoors: Outdoors | null): readonly Way[] {
  if (isRoom(kind)) return ways.filter((way) => way !== 'open-shed');
  const isMade = kind === 'open-shed' && outdoors !== null;
  return [...(isMade ? (['open-shed'] as const) : []), 'station', 'file', 'own', 'steady'];
}

/** How the air of a kind of place is given at first: a station tells little of the air within walls. */
export function usualWay(kind: PlaceKind, outdoors: Outdoors | null): Way {
  if (kind === 'shop') return 'part-heated';
  if (kind === 'heated-room') return 'heated';
  return kind === 'open-shed' && outdoors ? 'open-shed' : 'station';
}

/** January is 0. */
export const MONTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;
type MonthField = `${(typeof MONTHS)[number]}.${'tempC' | 'rhPct'}`;

/** A place's kind, and its air and how that moves, as typed, with what was entered for each of the ways. */
export type PlaceAir = {
  kind: PlaceKind;
  way: Way;
  file: AirOfPlace;
  /** Null: as is usual for its kind. */
  airMovement: AirMovement | null;
  /** Whether a room's saved air is to be made again from the outdoor air of now. */
  isRenewed: boolean;
  tempC: number;
  rhPct: number;
} & {
  [F in MonthField]: number;
};

const airShape = { tempC: airSchema.shape.tempC, rhPct: z.number().min(0).max(99) };
const monthsShape = Object.fromEntries(
  MONTHS.flatMap((month) => [
    [`${month}.tempC`, airShape.tempC],
    [`${month}.rhPct`, airShape.rhPct],
  ]),
);
const given = z.object({
  kind: placeKindSchema,
  airMovement: airMovementSchema.nullable(),
  isRenewed: z.boolean(),
});
const airOf = (tempC: number, rhPct: number): Air => ({ tempC, rh: rhPct / 100 });

const fields = z.discriminatedUnion('way', [
  given.extend({ way: roomAirSchema }),
  given.extend({ way: z.literal('station') }),
  given.extend({
    way: z.literal('file'),
    file: z.custom<AirOfPlace>((file) => file !== null, says('epw.missing')),
  }),
  given.extend({ way: z.literal('steady'), ...airShape }),
  given.extend({ way: z.literal('own'), ...monthsShape }),
]);

export type PlaceAirSchema = z.ZodType<
  Pick<Place, 'kind' | 'airMovement'> & { made: AirOfPlace | null },
  PlaceAir
>;

/** Makes the place's kind, how its air moves, and its air, which is null where it is a station's. */
export const placeAirSchema = (known: AirKnown): PlaceAirSchema =>
  fields.transform((typed) => ({
    kind: typed.kind,
    airMovement: typed.airMovement,
    made: airMade(typed as unknown as PlaceAir, known),
  })) as unknown as PlaceAirSchema;

function airMade(typed: PlaceAir, known: AirKnown): AirOfPlace | null {
  const { kind, way, file, tempC, rhPct, isRenewed } = typed;
  switch (way) {
    case 'station':
      return null;
    case 'file':
      return file;
    case 'steady':
      return { air: MONTHS.map(() => airOf(tempC, rhPct)), airSource: null };
    case 'own': {
      const months = MONTHS.map((month) => airOf(typed[`${month}.tempC`], typed[`${month}.rhPct`]));
      return { air: isRoom(kind) ? months : months.map(outdoorMonth), airSource: null };
    }
    default: {
      const { saved } = known;
      const isSaved = saved?.airSource?.kind === 'room' && saved.airSource.room === way;
      return isSaved && !isRenewed
        ? { air: saved.air, airSource: saved.airSource }
        : roomMade(way, known.outdoors);
    }
  }
}

/** The air of a room from the yard's outdoor air, or what is usual where that is not known; none of a shed then. */
export function roomMade(room: RoomAir, outdoors: Outdoors | null): AirOfPlace | null {
  const airSource: AirSource = { kind: 'room', room, ...(outdoors && { outdoors: outdoors.name }) };
  if (outdoors) return { air: airFromOutdoors(room, outdoors.air), airSource };
  return room === 'open-shed' ? null : { air: roomYear(room, monthsLater(region().timeZone)), airSource };
}

/** Twelve months in their fields; blank where there are none. */
export const monthFields = (months: readonly PastedMonth[] | null) =>
  Object.fromEntries(
    MONTHS.flatMap((month) => [
      [`${month}.tempC`, months?.[month]?.tempC ?? null],
      [`${month}.rhPct`, months?.[month]?.rhPct ?? null],
    ]),
  ) as { [F in MonthField]: number | null };

/** Months as the fields show them. */
export const monthsOf = (air: Place['air']) =>
  air.map(({ tempC, rh }) => ({ tempC, rhPct: Math.round(rh * 1000) / 10 }));

/** A place's air in the fields of its form; of a new place where there is none yet. */
export function placeAirOf(
  place: Place | null,
  outdoors: Outdoors | null,
  newKind: PlaceKind = 'open-shed',
): Draft<PlaceAir> {
  const { kind = newKind, airMovement = null } = place ?? {};
  const blank = {
    kind,
    airMovement,
    way: usualWay(kind, outdoors),
    file: null,
    isRenewed: false,
    tempC: null,
    rhPct: null,
    ...monthFields(null),
  };
  if (!place) return blank;
  const { air, airSource } = place;
  switch (airSource?.kind) {
    case 'room':
      return { ...blank, way: airSource.room };
    case 'file':
      return { ...blank, way: 'file', file: { air, airSource } };
    case undefined: {
      const months = monthsOf(air);
      const isSteady = new Set(air.map(({ tempC, rh }) => `${tempC} ${rh}`)).size === 1;
      return { ...blank, way: isSteady ? 'steady' : 'own', ...months[0], ...monthFields(months) };
    }
    default:
      return { ...blank, way: 'station' };
  }
}
