import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import { type Place, type PlaceKind, placeKindSchema } from '../../../shared-core/contract/yard.ts';
import type { PastedMonth } from '../../../shared-core/units/pasted-months.ts';
import { type Air, airSchema } from '../../../shared-core/wood/climate/monthly-air.ts';
import { monthsLater } from '../../../shared-core/wood/climate/regional-air.ts';
import { roomAirSchema, roomYear } from '../../../shared-core/wood/climate/room-air.ts';
import type { Draft } from '../../form/useDraft.ts';
import { region } from '../../region.ts';

/** What a place is given of a station, a file, what is usual in a room, or a person. */
export type AirOfPlace = Pick<Place, 'air' | 'airSource'>;

/** Where the air of a place can come from: first what is usual in a room. */
const ways = [...roomAirSchema.options, 'steady', 'station', 'file', 'own'] as const;
type Way = (typeof ways)[number];
const isRoom = (kind: PlaceKind): boolean => kind === 'shop' || kind === 'heated-room';
export const waysOf = (kind: PlaceKind): readonly Way[] =>
  isRoom(kind) ? ways : ['station', 'file', 'own', 'steady'];

/** How the air of a kind of place is given at first: a station tells little of the air within walls. */
export const usualWay = (kind: PlaceKind): Way =>
  kind === 'shop' ? 'part-heated' : kind === 'heated-room' ? 'heated' : 'station';

/** January is 0. */
export const MONTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;
type MonthField = `${(typeof MONTHS)[number]}.${'tempC' | 'rhPct'}`;

/** A place's kind and air as typed, with what was entered for each of the ways. */
export type PlaceAir = { kind: PlaceKind; way: Way; file: AirOfPlace; tempC: number; rhPct: number } & {
  [F in MonthField]: number;
};

const airShape = { tempC: airSchema.shape.tempC, rhPct: z.number().min(0).max(99) };
const monthsShape = Object.fromEntries(
  MONTHS.flatMap((month) => [
    [`${month}.tempC`, airShape.tempC],
    [`${month}.rhPct`, airShape.rhPct],
  ]),
);
const given = z.object({ kind: placeKindSchema });
const airOf = (tempC: number, rhPct: number): Air => ({ tempC, rh: rhPct / 100 });

/** Makes the place's kind and its air, which is null where it is a station's. */
export const placeAirSchema = z
  .discriminatedUnion('way', [
    given.extend({ way: roomAirSchema }),
    given.extend({ way: z.literal('station') }),
    given.extend({
      way: z.literal('file'),
      file: z.custom<AirOfPlace>((file) => file !== null, says('epw.missing')),
    }),
    given.extend({ way: z.literal('steady'), ...airShape }),
    given.extend({ way: z.literal('own'), ...monthsShape }),
  ])
  .transform((typed) => ({
    kind: typed.kind,
    made: airMade(typed as unknown as PlaceAir),
  })) as unknown as z.ZodType<{ kind: PlaceKind; made: AirOfPlace | null }, PlaceAir>;

function airMade(typed: PlaceAir): AirOfPlace | null {
  const { way, file, tempC, rhPct } = typed;
  switch (way) {
    case 'station':
      return null;
    case 'file':
      return file;
    case 'steady':
      return { air: MONTHS.map(() => airOf(tempC, rhPct)), airSource: null };
    case 'own':
      return {
        air: MONTHS.map((month) => airOf(typed[`${month}.tempC`], typed[`${month}.rhPct`])),
        airSource: null,
      };
    default:
      return { air: roomYear(way, monthsLater(region().timeZone)), airSource: { kind: 'room', room: way } };
  }
}

/** Twelve months in their fields; blank where there are none. */
export const monthFields = (months: readonly PastedMonth[] | null) =>
  Object.fromEntries(
    MONTHS.flatMap((month) => [
      [`${month}.tempC`, months?.[month]?.tempC ?? null],
      [`${month}.rhPct`, months?.[month]?.rhPct ?? null],
    ]),
  ) as { [F in MonthField]: number | null };

/** A place's air in the fields of its form; of a new place where there is none yet. */
export function placeAirOf(place: Place | null): Draft<PlaceAir> {
  const kind = place?.kind ?? 'open-shed';
  const blank = { kind, way: usualWay(kind), file: null, tempC: null, rhPct: null, ...monthFields(null) };
  if (!place) return blank;
  const { air, airSource } = place;
  switch (airSource?.kind) {
    case 'room':
      return { ...blank, way: airSource.room };
    case 'file':
      return { ...blank, way: 'file', file: { air, airSource } };
    case undefined: {
      const months = air.map(({ tempC, rh }) => ({ tempC, rhPct: Math.round(rh * 1000) / 10 }));
      const isSteady = new Set(air.map(({ tempC, rh }) => `${tempC} ${rh}`)).size === 1;
      return { ...blank, way: isSteady ? 'steady' : 'own', ...months[0], ...monthFields(months) };
    }
    default:
      return { ...blank, way: 'station' };
  }
}
