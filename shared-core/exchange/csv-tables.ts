/** What a person can have as a spreadsheet, and what is in each row of it. */
import type { Archived } from '../contract/archive.ts';
import type { CsvKind } from '../contract/exchange.ts';
import { FAHRENHEIT_AT_ZERO_CELSIUS, FAHRENHEIT_PER_CELSIUS, MM_PER_INCH } from '../measures.ts';
import type { Call } from '../probing/calls/assessment.ts';
import type { Ready } from '../probing/calls/ready-in.ts';
import { isAlongUnknown, isDepthUnknown } from '../probing/readings/depth-read.ts';
import type { AverageIs } from '../probing/readings/estimate.ts';
import type { Exclusion } from '../probing/readings/exclusion.ts';
import type { Reading } from '../probing/readings/reading.ts';
import { whyArchived } from '../record-words/why-archived.ts';
import type { DisplayUnits } from '../units/length.ts';
import { temperatureUnit } from '../units/temperature.ts';
import type { UnusedWhy } from '../wood/climate/measured-air.ts';
import type { Corrected } from '../wood/moisture/corrected.ts';
import { boardFeetIfMeasured } from '../wood/movement/volume.ts';
import type { Code } from '../words/en/index.ts';
import type { Message } from '../words/message.ts';
import type { Say } from '../words/words.ts';
import type { Cell } from './csv.ts';

/** A board with what is known of it today. */
export interface BoardForCsv {
  uuid: string;
  code: string;
  /** The ID of the board that it was cut from; null where it was not cut from one. */
  cutFrom: string | null;
  stackName: string;
  placeName: string;
  /** UTC instant. */
  placeSince: string;
  speciesName: string;
  endUseName: string;
  thicknessMm: number;
  widthMm: number | null;
  lengthMm: number | null;
  sawnOn: string | null;
  driedBy: string;
  sawing: string;
  ringRadiusMm: number | null;
  barkSide: string;
  barkOffOn: string | null;
  log: string;
  layer: number | null;
  column: number | null;
  note: string;
  call: Call | null;
  averagePct: number | null;
  /** UTC instant, or the local day where only that is known; null before the first round. */
  readAt: string | null;
  /** Null for a board that is there. */
  archived: Archived | null;
}

/** A reading with what it comes to, and how. Where only the day of its round is known, its dates are local days. */
export interface ReadingForCsv extends Reading {
  uuid: string;
  code: string;
  stackName: string;
  roundStartedAt: string;
  meterName: string | null;
  profileVersion: number | null;
  corrected: Corrected;
}

/** What one round found on one board. Where only the day of the round is known, its dates are local days. */
export interface CallForCsv {
  code: string;
  stackName: string;
  roundStartedAt: string;
  at: string;
  call: Call | null;
  averagePct: number | null;
  averageIs: AverageIs;
  lowPct: number | null;
  highPct: number | null;
  shellPct: number | null;
  corePct: number | null;
  isQuestionable: boolean;
  reason: Message;
}

/** When one board is ready in one place, by its newest forecast. */
export interface ForecastForCsv {
  code: string;
  stackName: string;
  /** Local ISO day. */
  madeOn: string;
  averagePct: number;
  standardUncertaintyPct: number;
  placeName: string;
  isHere: boolean;
  isBest: boolean;
  ready: Ready | null;
}

/** What was measured of the air of a place once. */
export interface AirForCsv {
  placeName: string;
  /** UTC instant. */
  at: string;
  tempC: number;
  /** Fraction, 0 to 1. */
  rh: number;
  emcPct: number;
  /** `merged`: it came with another place or yard. */
  source: 'sensor' | 'typed' | 'imported' | 'merged';
  sensorName: string | null;
  /** Why it is not used; null where it is. */
  unused: UnusedWhy | null;
}

interface RowOf {
  boards: BoardForCsv;
  readings: ReadingForCsv;
  calls: CallForCsv;
  forecasts: ForecastForCsv;
  air: AirForCsv;
}
export type CsvRowOf<K extends CsvKind> = RowOf[K];

type HeadCode = Extract<Code, `csv.${string}`>;
/** What the head has in parentheses. */
type Unit = 'length' | 'temperature' | '%';

interface Column<R> {
  head: HeadCode;
  unit?: Unit;
  cell(row: R, say: Say): Cell;
}

const yes = (is: boolean | null): Cell => (is === null ? null : is ? 'yes' : 'no');
const inAll = (codes: readonly string[]): string => codes.join('; ');
const blankIfNone = (text: string): Cell => (text === '' ? null : text);
const whyExcluded = (why: Exclusion | null, say: Say): Cell =>
  why === null ? null : 'text' in why ? why.text : say(`exclusion.${why.code}`);

const columns: { [K in CsvKind]: readonly Column<CsvRowOf<K>>[] } = {
  boards: [
    { head: 'csv.board', cell: ({ code }) => code },
    { head: 'csv.parent', cell: ({ cutFrom }) => cutFrom },
    { head: 'csv.stack', cell: ({ stackName }) => stackName },
    { head: 'csv.place', cell: ({ placeName }) => placeName },
    { head: 'csv.place-since', cell: ({ placeSince }) => placeSince },
    { head: 'csv.species', cell: ({ speciesName }) => speciesName },
    { head: 'csv.use', cell: ({ endUseName }) => endUseName },
    { head: 'csv.thickness', unit: 'length', cell: ({ thicknessMm }) => thicknessMm },
    { head: 'csv.width', unit: 'length', cell: ({ widthMm }) => widthMm },
    { head: 'csv.length', unit: 'length', cell: ({ lengthMm }) => lengthMm },
    { head: 'csv.board-feet', cell: boardFeetIfMeasured },
    { head: 'csv.sawn-on', cell: ({ sawnOn }) => sawnOn },
    { head: 'csv.dried-by', cell: ({ driedBy }) => driedBy },
    { head: 'csv.sawing', cell: ({ sawing }) => sawing },
    { head: 'csv.ring-radius', unit: 'length', cell: ({ ringRadiusMm }) => ringRadiusMm },
    { head: 'csv.bark-side', cell: ({ barkSide }) => barkSide },
    { head: 'csv.bark-off-on', cell: ({ barkOffOn }) => barkOffOn },
    { head: 'csv.log', cell: ({ log }) => blankIfNone(log) },
    { head: 'csv.layer', cell: ({ layer }) => layer },
    { head: 'csv.column', cell: ({ column }) => column },
    { head: 'csv.note', cell: ({ note }) => blankIfNone(note) },
    { head: 'csv.call', cell: ({ call }) => call },
    { head: 'csv.average', unit: '%', cell: ({ averagePct }) => averagePct },
    { head: 'csv.read-at', cell: ({ readAt }) => readAt },
    { head: 'csv.archived-at', cell: ({ archived }) => archived?.at ?? null },
    { head: 'csv.why-left', cell: ({ archived }, say) => archived && whyArchived(archived, say) },
    { head: 'csv.left-note', cell: ({ archived }) => blankIfNone(archived?.note ?? '') },
    { head: 'csv.uuid', cell: ({ uuid }) => uuid },
  ],
  readings: [
    { head: 'csv.board', cell: ({ code }) => code },
    { head: 'csv.stack', cell: ({ stackName }) => stackName },
    { head: 'csv.round', cell: ({ roundStartedAt }) => roundStartedAt },
    { head: 'csv.taken-at', cell: ({ takenAt }) => takenAt },
    {
      head: 'csv.spot',
      cell: (reading) =>
        reading.spotIndex === null || isAlongUnknown(reading) ? null : reading.spotIndex + 1,
    },
    { head: 'csv.meant-for', cell: (reading) => (isDepthUnknown(reading) ? null : reading.spot.depth) },
    { head: 'csv.depth', unit: 'length', cell: ({ spot }) => spot.depthMm },
    {
      head: 'csv.depth-known',
      cell: (reading) => (isDepthUnknown(reading) ? 'unknown' : reading.depthFrom),
    },
    {
      head: 'csv.from-end',
      unit: 'length',
      cell: (reading) => (isAlongUnknown(reading) ? null : reading.spot.fromEndMm),
    },
    { head: 'csv.face', cell: ({ spot }) => spot.face },
    { head: 'csv.shown', cell: ({ raw }) => raw },
    { head: 'csv.shown-unit', cell: ({ unit }) => (unit === 'pct' ? '%' : 'ohm') },
    { head: 'csv.above-scale', cell: ({ isAbove }) => yes(isAbove === true) },
    { head: 'csv.saved-as', cell: ({ savedRaw }) => savedRaw ?? null },
    { head: 'csv.wood-temperature', unit: 'temperature', cell: ({ woodTempC }) => woodTempC },
    { head: 'csv.meter', cell: ({ meterName }) => meterName },
    { head: 'csv.profile-version', cell: ({ profileVersion }) => profileVersion },
    { head: 'csv.how', cell: ({ how }) => how },
    { head: 'csv.settled', cell: ({ settled }) => yes(settled) },
    { head: 'csv.mc', unit: '%', cell: ({ corrected }) => corrected.mcPct },
    { head: 'csv.uncertainty', unit: '%', cell: ({ corrected }) => corrected.standardUncertaintyPct },
    { head: 'csv.method', cell: ({ corrected }) => inAll(corrected.steps.map(({ step }) => step)) },
    { head: 'csv.cautions', cell: ({ corrected }) => inAll(corrected.warnings) },
    { head: 'csv.excluded', cell: ({ excluded }) => yes(excluded !== null) },
    { head: 'csv.why-excluded', cell: ({ excluded }, say) => whyExcluded(excluded, say) },
    { head: 'csv.damaged', cell: ({ isDamaged }) => yes(isDamaged === true) },
    { head: 'csv.uuid', cell: ({ uuid }) => uuid },
  ],
  calls: [
    { head: 'csv.board', cell: ({ code }) => code },
    { head: 'csv.stack', cell: ({ stackName }) => stackName },
    { head: 'csv.round', cell: ({ roundStartedAt }) => roundStartedAt },
    { head: 'csv.read-at', cell: ({ at }) => at },
    { head: 'csv.call', cell: ({ call }) => call },
    { head: 'csv.average', unit: '%', cell: ({ averagePct }) => averagePct },
    { head: 'csv.average-is', cell: ({ averageIs }) => averageIs },
    { head: 'csv.likely-least', unit: '%', cell: ({ lowPct }) => lowPct },
    { head: 'csv.likely-most', unit: '%', cell: ({ highPct }) => highPct },
    { head: 'csv.shell', unit: '%', cell: ({ shellPct }) => shellPct },
    { head: 'csv.core', unit: '%', cell: ({ corePct }) => corePct },
    { head: 'csv.questionable', cell: ({ isQuestionable }) => yes(isQuestionable) },
    { head: 'csv.reason', cell: ({ reason }, say) => say(reason) },
  ],
  forecasts: [
    { head: 'csv.board', cell: ({ code }) => code },
    { head: 'csv.stack', cell: ({ stackName }) => stackName },
    { head: 'csv.forecast-on', cell: ({ madeOn }) => madeOn },
    { head: 'csv.average-then', unit: '%', cell: ({ averagePct }) => averagePct },
    { head: 'csv.uncertainty', unit: '%', cell: ({ standardUncertaintyPct }) => standardUncertaintyPct },
    { head: 'csv.place', cell: ({ placeName }) => placeName },
    { head: 'csv.is-here', cell: ({ isHere }) => yes(isHere) },
    { head: 'csv.is-best', cell: ({ isBest }) => yes(isBest) },
    { head: 'csv.ready', cell: ({ ready }) => ready?.kind ?? null },
    { head: 'csv.ready-likely', cell: ({ ready }) => (ready?.kind === 'likely' ? ready.when.likely : null) },
    { head: 'csv.ready-earliest', cell: ({ ready }) => (ready?.kind === 'likely' ? ready.when.from : null) },
    { head: 'csv.ready-latest', cell: ({ ready }) => (ready?.kind === 'likely' ? ready.when.to : null) },
    {
      head: 'csv.driest',
      unit: '%',
      cell: ({ ready }) => (ready !== null && 'driestPct' in ready ? ready.driestPct : null),
    },
  ],
  air: [
    { head: 'csv.place', cell: ({ placeName }) => placeName },
    { head: 'csv.measured-at', cell: ({ at }) => at },
    { head: 'csv.temperature', unit: 'temperature', cell: ({ tempC }) => tempC },
    { head: 'csv.humidity', unit: '%', cell: ({ rh }) => 100 * rh },
    { head: 'csv.emc', unit: '%', cell: ({ emcPct }) => emcPct },
    { head: 'csv.source', cell: ({ source }) => source },
    { head: 'csv.sensor', cell: ({ sensorName }) => sensorName },
    { head: 'csv.used', cell: ({ unused }) => yes(unused === null) },
    { head: 'csv.why-unused', cell: ({ unused }) => unused },
  ],
};

export const lengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'mm' : 'in');
const nameOf = (unit: Unit, units: DisplayUnits): string => {
  if (unit === 'length') return lengthUnit(units);
  return unit === 'temperature' ? temperatureUnit(units) : unit;
};

/** No digit that means anything is lost, and none is shown that only the computer made. */
const DIGITS = 4;
export const rounded = (value: number): number => Number(value.toFixed(DIGITS));

export const inLengthUnit = (mm: number, units: DisplayUnits): number =>
  rounded(units === 'metric' ? mm : mm / MM_PER_INCH);

function inUnits(cell: Cell, unit: Unit | undefined, units: DisplayUnits): Cell {
  if (typeof cell !== 'number') return cell;
  // As it was shown or counted.
  if (unit === undefined) return cell;
  if (unit === 'length') return inLengthUnit(cell, units);
  if (units === 'metric' || unit === '%') return rounded(cell);
  return rounded(cell * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS);
}

/**
 * The head and the rows of a table: lengths and temperatures in the person's units, which the head names; days and instants
 * as in ISO 8601, instants in UTC; decimal points, whatever the person's locale.
 */
export function csvTable<K extends CsvKind>(kind: K, units: DisplayUnits, say: Say) {
  const all: readonly Column<CsvRowOf<K>>[] = columns[kind];
  return {
    head: all.map(({ head, unit }): string =>
      unit === undefined
        ? say(head)
        : say('unit.head-in', { headText: say(head), unitText: nameOf(unit, units) }),
    ),
    row: (of: CsvRowOf<K>): Cell[] => all.map(({ cell, unit }) => inUnits(cell(of, say), unit, units)),
  };
}
