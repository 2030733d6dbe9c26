import type { StationList, StationYear } from './station.ts';

/** As many as a person takes in at a glance. */
const MOST_FOUND = 8;

/** Farther away a station tells little of a place's air, km. Common practice, no source. */
const FARTHEST_KM = 300;
const EARTH_RADIUS_KM = 6371;

/** Stations that a text may mean, best first. */
export interface FoundStations {
  years: StationYear[];
  /** Whether the first is meant and no other. */
  isClear: boolean;
}

/**
 * Weather stations by name, by state ("NC", "North Carolina"), by both, or the nearest ones to a latitude and longitude,
 * within 300 km.
 *
 * @example findStations('35.6, -82.5', list).years[0].station.name // 'Asheville'
 */
export function findStations(text: string, list: StationList): FoundStations {
  const place = coordinatesOf(text);
  if (place) {
    const years = nearest(place, list.years).slice(0, MOST_FOUND);
    return { years, isClear: years.length > 0 };
  }
  const typed = wordsOf(text);
  if (typed.length === 0) return { years: [], isClear: false };
  const ranked = list.years
    .map((year) => ({ year, rank: rankOf(typed, year, list.states) }))
    .filter(({ rank }) => rank < Number.POSITIVE_INFINITY)
    .sort((a, b) => a.rank - b.rank || a.year.station.name.localeCompare(b.year.station.name, 'en'));
  return { years: ranked.slice(0, MOST_FOUND).map(({ year }) => year), isClear: isFirstMeant(ranked) };
}

/** It is the only one, or the only one of that very name where no other state has one that begins so. */
function isFirstMeant(ranked: readonly { year: StationYear; rank: number }[]): boolean {
  const [first, ...others] = ranked;
  if (first === undefined) return false;
  const isOther = ({ year, rank }: { year: StationYear; rank: number }): boolean =>
    rank === 0 || (rank === 1 && year.station.state !== first.year.station.state);
  return others.length === 0 || (first.rank === 0 && !others.some(isOther));
}

/** A name as words that can be compared: "St. Louis" and "saint louis" are the same. */
function wordsOf(text: string): string[] {
  const written: Record<string, string> = { saint: 'st', ft: 'fort', mt: 'mount' };
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => written[word] ?? word);
}

/** 0 where the words are the whole name, with its state or without; 1 they begin it, 2 they begin words of it or its state. */
function rankOf(typed: readonly string[], { station }: StationYear, states: StationList['states']): number {
  const name = wordsOf(station.name);
  const state = [station.state.toLowerCase(), ...wordsOf(states[station.state] ?? '')];
  const isState = (word: string): boolean => state.some((each) => each.startsWith(word));
  const begins = name.every((word, at) => at >= typed.length || word.startsWith(typed[at] as string));
  if (begins && typed.length >= name.length) {
    const rest = typed.slice(name.length);
    if (rest.every((word) => state.includes(word)) && name.every((word, at) => word === typed[at])) return 0;
  }
  const known = typed.every((word) => isState(word) || name.some((each) => each.startsWith(word)));
  if (!known) return Number.POSITIVE_INFINITY;
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
