import { mean } from '../maths/mean.ts';
import type { MonthlyAir } from './monthly-air.ts';
import type { StationList, StationYear } from './station.ts';

/** States whose clocks mostly go by a time zone of the United States. */
const statesOfZone: readonly (readonly [zone: RegExp, states: string])[] = [
  [
    /^(America\/(New_York|Detroit|Indiana\/(?!Knox|Tell).*|Kentucky\/.*|Louisville|Indianapolis)|US\/(Eastern|Michigan|East-Indiana))$/,
    'ME,NH,VT,MA,RI,CT,NY,NJ,PA,DE,MD,VA,WV,NC,SC,GA,FL,OH,MI,IN,KY',
  ],
  [
    /^(America\/(Chicago|Menominee|North_Dakota\/.*|Indiana\/(Knox|Tell_City))|US\/Central)$/,
    'WI,IL,IA,MN,MO,AR,LA,MS,AL,TN,TX,OK,KS,NE,SD,ND',
  ],
  [/^(America\/(Denver|Boise)|US\/Mountain)$/, 'MT,WY,CO,NM,UT,ID'],
  [/^(America\/Phoenix|US\/Arizona)$/, 'AZ'],
  [/^(America\/Los_Angeles|US\/Pacific)$/, 'WA,OR,CA,NV'],
  [/^(America\/(Anchorage|Juneau|Sitka|Nome|Yakutat|Metlakatla|Adak)|US\/Alaska)$/, 'AK'],
  [/^(Pacific\/Honolulu|US\/Hawaii)$/, 'HI'],
  [/^America\/(Puerto_Rico|St_Thomas)$/, 'PR,VI'],
  [/^Pacific\/(Guam|Saipan)$/, 'GU'],
];

/** Outside the mid-latitudes of the list. */
const FAR_STATES = 'AK,HI,PR,VI,GU'.split(',');

/** Where July is winter. */
const SOUTHERN_ZONE =
  /^(Australia\/|Antarctica\/|Pacific\/(Auckland|Chatham)|NZ|Africa\/(Johannesburg|Maseru|Mbabane|Windhoek|Gaborone|Harare|Maputo)|America\/(Sao_Paulo|Santiago|Montevideo|Asuncion|Argentina\/.*|Buenos_Aires))/;

/** How many months later the seasons come than in the north: 6 where July is winter. */
export const monthsLater = (timeZone: string): number => (SOUTHERN_ZONE.test(timeZone) ? 6 : 0);

/**
 * The air of the region that a computer's time zone tells, for a place whose nearest station is not known: the average of
 * the region's stations, with their standard deviation from month to month. Where the zone is none of the United States,
 * all stations of the 48 states stand for the mid-latitudes, half a year later in the south. Rough: forecasts widen by it.
 *
 * @param timeZone  IANA: "America/New_York"
 */
export function regionalAir(timeZone: string, { years }: StationList): { air: MonthlyAir; stations: number } {
  const states = statesOfZone.find(([zone]) => zone.test(timeZone))?.[1].split(',');
  const within = years.filter(({ station: { state } }) =>
    states ? states.includes(state) : !FAR_STATES.includes(state),
  );
  const later = monthsLater(timeZone);
  const air = Array.from({ length: 12 }, (_, month) => averageMonth(within, (month + later) % 12));
  return { air, stations: within.length };
}

function averageMonth(years: readonly StationYear[], month: number): MonthlyAir[number] {
  const months = years.map(({ air }) => air[month] as MonthlyAir[number]);
  const emcs = months.map(({ emcPct = 0 }) => emcPct);
  const emcPct = mean(emcs);
  return {
    tempC: mean(months.map(({ tempC }) => tempC)),
    rh: mean(months.map(({ rh }) => rh)),
    emcPct,
    emcSdPct: Math.sqrt(mean(emcs.map((each) => (each - emcPct) ** 2))),
  };
}
