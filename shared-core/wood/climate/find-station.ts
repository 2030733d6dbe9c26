import type { StationList, StationYear } from './station.ts';

/** No state has more stations, so that one can be chosen of them all. */
const MOST_FOUND = 80;
/** Nearest ones to coordinates: as many as a person takes in at a glance. */
const MOST_NEAR = 8;

/** Farther away a station tells little of a place's air, km. Common practice, no source. */
const FARTHEST_KM = 300;
const EARTH_RADIUS_KM = 6371;

/** Stations that a text may mean, best first. */
export interface FoundStations {
  years: StationYear[];
  /** How many more match. */
  more: number;
  /** Whether the first is meant and no other. */
  isClear: boolean;
  /** The state's name where no station has the name of the town before it: then these are the state's stations. */
  onlyState: string | null;
}

/**
 * Weather stations by name, by state ("NC", "North Carolina"), by both, or the nearest ones to a latitude and longitude,
 * within 300 km. All of the state's for a town that no station is named after ("Athens, Ohio").
 *
 * @example findStations('35.6, -82.5', list).years[0].station.name // 'Asheville'
 */
export function findStations(text: string, list: StationList): FoundStations {
  const place = coordinatesOf(text);
  if (place) {
    const years = nearest(place, list.years).slice(0, MOST_NEAR);
    return { years, more: 0, isClear: years.length > 0, onlyState: null };
  }
  const typed = wordsOf(text);
  if (typed.length === 0) return { years: [], more: 0, isClear: false, onlyState: null };
  const ranked = list.years
    .map((year) => ({ year, rank: rankOf(typed, year, list.states) }))
    .filter(({ rank }) => rank < Number.POSITIVE_INFINITY)
    .sort((a, b) => a.rank - b.rank || byName(a.year, b.year));
  if (ranked.length === 0) return ofStateAtEnd(typed, list);
  return {
    years: ranked.slice(0, MOST_FOUND).map(({ year }) => year),
    more: Math.max(0, ranked.length - MOST_FOUND),
    isClear: isFirstMeant(ranked),
    onlyState: null,
  };
}

const byName = (a: StationYear, b: StationYear): number => a.station.name.localeCompare(b.station.name, 'en');

/** All stations of the state that the words end with: "athens west virginia" is no town of Virginia. */
function ofStateAtEnd(typed: readonly string[], { years, states }: StationList): FoundStations {
  const [state] = typed.flatMap((_, from) => {
    const ending = typed.slice(from).join(' ');
    return Object.entries(states).filter(
      ([code, name]) => ending === code.toLowerCase() || ending === wordsOf(name).join(' '),
    );
  });
  return {
    years: years.filter(({ station }) => station.state === state?.[0]).toSorted(byName),
    more: 0,
    isClear: false,
    onlyState: state?.[1] ?? null,
  };
}

interface RankedYear {
  year: StationYear;
  rank: number;
}

/** It is the only one, or the only one of that very name where no other state has one that begins so. */
function isFirstMeant(ranked: readonly RankedYear[]): boolean {
  const [first, ...others] = ranked;
  if (first === undefined) return false;
  const isOther = ({ year, rank }: RankedYear): boolean =>
    rank === 0 || (rank === 1 && year.station.state !== first.year.station.state);
  return others.length === 0 || (first.rank === 0 && !others.some(isOther));
}

/** A name as words that can be compared: "St. Louis" and "saint louis" are the same, "O'Hare" and "ohare" too. */
function wordsOf(text: string): string[] {
  const written: Record<string, string> = { saint: 'st', ft: 'fort', mt: 'mount' };
  return text
    .toLowerCase()
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => written[word] ?? word);
}

/**
 * 0 where the words are the whole name, with its state or without; 1 they begin it, 2 they begin words of it or its state.
 * "North Carolina" is not North Myrtle Beach in South Carolina: words that are not in the name begin its state.
 */
function rankOf(typed: readonly string[], { station }: StationYear, states: StationList['states']): number {
  const name = wordsOf(station.name);
  const state = [station.state.toLowerCase(), ...wordsOf(states[station.state] ?? '')];
  const isState = (word: string): boolean => state.some((each) => each.startsWith(word));
  const begins = name.every((word, at) => at >= typed.length || word.startsWith(typed[at] as string));
  if (begins && typed.length >= name.length) {
    const rest = typed.slice(name.length);
    if (rest.every((word) => state.includes(word)) && name.every((word, at) => word === typed[at])) return 0;
  }
  const beyond = typed.filter((word) => !name.some((each) => each.startsWith(word)));
  const [code = '', ...stateName] = state;
  const beginsState =
    beyond.every((word, at) => stateName[at]?.startsWith(word)) ||
    (beyond.length === 1 && code.startsWith(beyond[0] as string));
  if (!typed.every(isState) && (beyond.length === typed.length || !beginsState))
    return Number.POSITIVE_INFINITY;
  return begins ? 1 : 2;
}

interface Coordinates {
  latitude: number;
  longitude: number;
}

/** "35.6, -82.5", "35.6 N 82.5 W", "35,6; -82,5"; null for any other text. */
function coordinatesOf(text: string): Coordinates | null {
  const found =
    /^\s*([-+−]?\d{1,2}(?:[.,]\d+)?)\s*°?\s*([NS]?)(?:\s*[,;]\s*|\s+)([-+−]?\d{1,3}(?:[.,]\d+)?)\s*°?\s*([EW]?)\s*$/i.exec(
      text,
    );
  if (!found) return null;
  const [, north = '', northSign = '', east = '', eastSign = ''] = found;
  const degrees = (digits: string, sign: string): number =>
    Number(digits.replace('−', '-').replace(',', '.')) * (/[SW]/i.test(sign) ? -1 : 1);
  const place = { latitude: degrees(north, northSign), longitude: degrees(east, eastSign) };
  return Math.abs(place.latitude) <= 90 && Math.abs(place.longitude) <= 180 ? place : null;
}

function nearest(place: Coordinates, years: readonly StationYear[]): StationYear[] {
  const from = onSphere(place);
  // The cosine of the angle between them: the nearest has the largest.
  const nearness = ({ station }: StationYear): number =>
    onSphere(station).reduce((sum, value, axis) => sum + value * (from[axis] as number), 0);
  return years
    .filter((year) => nearness(year) >= Math.cos(FARTHEST_KM / EARTH_RADIUS_KM))
    .toSorted((a, b) => nearness(b) - nearness(a));
}

function onSphere({ latitude, longitude }: Coordinates): number[] {
  const [north, east] = [latitude, longitude].map((degrees) => (degrees * Math.PI) / 180) as [number, number];
  return [Math.cos(north) * Math.cos(east), Math.cos(north) * Math.sin(east), Math.sin(north)];
}
