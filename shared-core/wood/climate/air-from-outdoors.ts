import { emcPct } from './emc.ts';
import { saturationPressurePa, vaporPa } from './moist-air.ts';
import type { Air, MonthlyAir } from './monthly-air.ts';
import type { RoomAir } from './room-air.ts';

/**
 * Room temperature of ASHRAE Standard 160, °C, as listed in open code: 21.1 while it is heated, with the outdoor mean up to
 * 18.3; above that the outdoor mean and 2.8, and at most 23.9 where it is cooled.
 */
export const ROOM_TEMP_C = { heated: 21.1, heatedUntil: 18.3, aboveOutdoors: 2.8, cooledTo: 23.9 } as const;

/** A part-heated shop is kept from freezing and a little more, °C. Common practice, no source. */
export const PART_HEATED_C = 10;

/**
 * Water that people, cooking and plants add to a house's air, g/m³, where it is this cold and this warm outdoors; linear
 * between. Half of the design values for low occupancy, which one house in ten exceeds: 4 and 1.5 (T. Kalamees, J. Vinha and
 * J. Kurnitski, J. Building Physics 29, 2006, abstract seen). That half is near the mean is from memory. EN ISO 13788 has
 * the same shape in its humidity classes. A shop has half of that again: common practice, no source.
 */
export const MOISTURE_GAIN = {
  cold: { outdoorsC: 5, gramsPerM3: 2 },
  warm: { outdoorsC: 15, gramsPerM3: 0.75 },
} as const;
const SHOP_SHARE = 0.5;

/** Where a room is cooled, the cooler takes out what is above this. Common practice, no source. */
export const COOLED_RH = 0.5;

/** How far rooms differ: standard deviations of the gain, g/m³, and of the temperature, °C. Common practice, no source. */
export const ROOM_SD = { gramsPerM3: 1, tempC: 1.5 } as const;

/**
 * How far an open shed may be from the outdoor air, % MC of EMC: it has that air, without the rain and the sun. Common
 * practice, no source.
 */
export const SHED_SD_PCT = 0.5;

/** Beyond these no month of a room is. */
const [DRIEST_RH, DAMPEST_RH] = [0.02, 0.95];

function roomTempC(room: Exclude<RoomAir, 'open-shed'>, outdoorsC: number): number {
  const above = outdoorsC + ROOM_TEMP_C.aboveOutdoors;
  if (room === 'part-heated') return Math.max(PART_HEATED_C, above);
  if (outdoorsC <= ROOM_TEMP_C.heatedUntil) return ROOM_TEMP_C.heated;
  return room === 'conditioned' ? Math.min(ROOM_TEMP_C.cooledTo, above) : above;
}

/** What people add to a room's air, g/m³. */
function gainOf(room: RoomAir, outdoorsC: number): number {
  const { cold, warm } = MOISTURE_GAIN;
  const warmth = (outdoorsC - cold.outdoorsC) / (warm.outdoorsC - cold.outdoorsC);
  const gain = cold.gramsPerM3 + Math.min(1, Math.max(0, warmth)) * (warm.gramsPerM3 - cold.gramsPerM3);
  return room === 'part-heated' ? SHOP_SHARE * gain : gain;
}

/** Humidity of outdoor air that was brought to a room's temperature, and given water, as a fraction. */
function humidityWithin({ tempC, rh }: Air, withinC: number, gramsPerM3: number): number {
  const vapor = rh * saturationPressurePa(tempC) + vaporPa(Math.max(0, gramsPerM3), withinC);
  return Math.min(DAMPEST_RH, Math.max(DRIEST_RH, vapor / saturationPressurePa(withinC)));
}

/**
 * The air of a shed or a room over the year, from the outdoor air there. Ventilation brings in the outdoor air with its
 * water; the room warms it, and people add some water. So a heated room is driest in the coldest month. An open shed has the
 * outdoor air.
 *
 * The mean of the month's vapor pressure is taken as that of its mean temperature and humidity: in the hours of 12 stations
 * it is within 15 % of that in all but the coldest months of the north, where little of a room's water is from outdoors.
 *
 * @param outdoors  twelve months of the air outdoors
 * @returns         twelve months, with how far they may be off (`emcSdPct`)
 */
export function airFromOutdoors(room: RoomAir, outdoors: MonthlyAir): MonthlyAir {
  return outdoors.map((month) => (room === 'open-shed' ? inShed(month) : inRoom(room, month)));
}

const inShed = (month: Air): Air => ({
  ...month,
  emcSdPct: Math.hypot(month.emcSdPct ?? 0, SHED_SD_PCT),
});

function inRoom(room: Exclude<RoomAir, 'open-shed'>, month: Air): Air {
  const tempC = roomTempC(room, month.tempC);
  const gain = gainOf(room, month.tempC);
  const isCooled = room === 'conditioned' && month.tempC > ROOM_TEMP_C.heatedUntil;
  const humidity = (withinC: number, gramsPerM3: number): number => {
    const rh = humidityWithin(month, withinC, gramsPerM3);
    return isCooled ? Math.min(COOLED_RH, rh) : rh;
  };
  const emc = (withinC: number, gramsPerM3: number): number => emcPct(withinC, humidity(withinC, gramsPerM3));
  const byGain = (emc(tempC, gain + ROOM_SD.gramsPerM3) - emc(tempC, gain - ROOM_SD.gramsPerM3)) / 2;
  const byTemp = (emc(tempC + ROOM_SD.tempC, gain) - emc(tempC - ROOM_SD.tempC, gain)) / 2;
  return {
    tempC,
    rh: humidity(tempC, gain),
    emcPct: emc(tempC, gain),
    emcSdPct: Math.hypot(byGain, byTemp, month.emcSdPct ?? 0, SHED_SD_PCT),
  };
}
