import { saidLongLength, saidShortLength, saidTemperature, saidTemperatureStep } from '../../units/said.ts';
import type { CorrectionWarning } from '../../wood/moisture/corrected.ts';
import type { BoardEvidence, MeterFacts } from '../calls/evidence.ts';
import { pct } from '../calls/wording.ts';
import type { Reading, Suspicion } from '../readings/reading.ts';
import { endClearanceMm } from '../readings/spots.ts';
import { intendedValue, isTypedPct } from '../readings/typing-slip.ts';
import type { CorrectedReading } from './suspicion.ts';

/** A core reading must come from at least this part of the thickness: 91 % of the way from face to centre value. */
const CORE_FROM = 0.35;

type Rule = (each: CorrectedReading, evidence: BoardEvidence) => Suspicion | null;

/** What can be said against one reading without looking at others, except for a typing slip. */
export function readingSuspicions(each: CorrectedReading, evidence: BoardEvidence): Suspicion[] {
  const found = RULES.map((rule) => rule(each, evidence)).filter((one) => one !== null);
  // A slip explains whatever else is odd about the value.
  const slip = found.find((one) => one.rule === 'typing-slip');
  return slip === undefined ? found : [slip];
}

/** The meter's facts that hold for a reading. */
export function meterOf(reading: Reading, { meters, typedBasis }: BoardEvidence): MeterFacts {
  return (reading.meterId === null ? undefined : meters[reading.meterId]) ?? typedBasis;
}

const typingSlip: Rule = ({ reading }, { readings, previous }) => {
  if (!isTypedPct(reading)) return null;
  const others = readings.filter(
    (other) => other.id !== reading.id && other.unit === 'pct' && other.excluded === null,
  );
  const beside = others.map((other) => other.raw);
  const meant = intendedValue(
    reading.raw,
    beside.length > 0 ? beside : previous === null ? [] : [previous.estimate.averagePct],
  );
  if (meant === null) return null;
  return {
    rule: 'typing-slip',
    severity: 'refused',
    why: `${reading.raw} was typed, and ${meant} would fit: the decimal point looks misplaced.`,
    whatToDo: `If you meant ${meant}, set this one aside and type ${meant}; otherwise probe the spot again.`,
  };
};

const notAReading: Rule = ({ reading, corrected }) => {
  if (corrected.mcPct !== null && !corrected.warnings.includes('not-a-reading')) return null;
  if (corrected.warnings.includes('frozen')) return null;
  const value = `${reading.raw}${reading.unit === 'pct' ? ' %' : ' Ω'}`;
  return {
    rule: 'not-a-reading',
    severity: 'refused',
    why: `${value} cannot be the moisture content of this wood.`,
    whatToDo: 'It is kept on record and left out. Check the pins and the spot, and probe it again.',
  };
};

const frozen: Rule = ({ reading, corrected }) =>
  corrected.warnings.includes('frozen')
    ? {
        rule: 'frozen',
        severity: 'refused',
        why: `The wood is at ${reading.woodTempC === null ? 'an unknown temperature' : saidTemperature(reading.woodTempC)}: ice hardly conducts, so no pin reading of frozen wood is valid.`,
        whatToDo: 'Let the board thaw through, or wait for a milder day, and probe it again.',
      }
    : null;

const notSettled: Rule = ({ reading }) =>
  reading.settled === false
    ? {
        rule: 'not-settled',
        severity: 'questionable',
        why: `${shown(reading)} was taken before the value had come to rest.`,
        whatToDo: 'Push the pins in again and wait until the value stands still.',
      }
    : null;

const outsideMeterRange: Rule = ({ reading }, evidence) => {
  const { range } = meterOf(reading, evidence);
  if (range === null || (reading.raw > range.min && reading.raw < range.max)) return null;
  const low = reading.raw <= range.min;
  const end = shown({ ...reading, raw: low ? range.min : range.max });
  return {
    rule: 'outside-meter-range',
    // Past the wet end the wood is wet all the same; past the dry end nobody knows.
    severity: low === (reading.unit === 'pct') ? 'questionable' : 'note',
    why: `${shown(reading)} lies at or past the ${low ? 'lower' : 'upper'} end of the meter's scale, ${end}: the true value may lie well beyond it.`,
    whatToDo:
      'Check that both pins are firmly in sound wood. If it repeats, the meter cannot tell this board.',
  };
};

const CURVE_ENDS: { warning: CorrectionWarning; why: (mcPct: number) => string; whatToDo: string }[] = [
  {
    warning: 'above-fibre-saturation',
    why: (mc) =>
      `${pct(mc)} is above fibre saturation: there a pin meter says that the wood is wet, not how wet.`,
    whatToDo: 'Nothing for now. For the true figure, weigh and oven-dry a sample.',
  },
  {
    warning: 'below-meter-range',
    why: (mc) => `${pct(mc)} is below about 6 %, where pin meters no longer tell well.`,
    whatToDo: 'Take it as "very dry". For the true figure, weigh and oven-dry a sample.',
  },
  {
    warning: 'outside-curve',
    why: (mc) =>
      `${pct(mc)} lies past the end of the published curve of this wood, which was extended for it.`,
    whatToDo: 'Take it as a rough figure.',
  },
];

const outsideCurveRange: Rule = ({ corrected }) => {
  const { mcPct } = corrected;
  const end = CURVE_ENDS.find(({ warning }) => corrected.warnings.includes(warning));
  if (mcPct === null || end === undefined) return null;
  return { rule: 'outside-curve-range', severity: 'note', why: end.why(mcPct), whatToDo: end.whatToDo };
};

const temperatureUnknown: Rule = ({ reading }) =>
  reading.woodTempC === null
    ? {
        rule: 'temperature-unknown',
        severity: 'note',
        why: `The wood's temperature is not known, so the reading is not corrected for it: about 1 % for each ${saidTemperatureStep(10)}.`,
        whatToDo: 'Measure the temperature of the wood and enter it for the round.',
      }
    : null;

const temperatureOutOfRange: Rule = ({ reading, corrected }) =>
  corrected.warnings.includes('temperature-out-of-range')
    ? {
        rule: 'temperature-out-of-range',
        severity: 'questionable',
        why: `The wood's temperature of ${reading.woodTempC === null ? 'an unknown temperature' : saidTemperature(reading.woodTempC)} is outside the range that the correction was published for.`,
        whatToDo: 'Check the temperature that was entered; probe the board in the shade or on a milder day.',
      }
    : null;

/** Sun, frost and the hour of the day take wood so far from the month's mean air temperature, °C (common practice, no source). */
const USUAL_TEMP_RANGE_C = { outdoors: 18, 'open-shed': 15, shop: 12, 'heated-room': 8 } as const;

const temperatureUnlikely: Rule = ({ reading: { woodTempC } }, { place }) => {
  const airTempC = place.airTempC ?? null;
  if (woodTempC === null || airTempC === null) return null;
  if (Math.abs(woodTempC - airTempC) <= USUAL_TEMP_RANGE_C[place.kind]) return null;
  return {
    rule: 'temperature-unlikely',
    severity: 'questionable',
    why: `The wood's temperature was entered as ${saidTemperature(woodTempC)}, and the air in ${place.name} is about ${saidTemperature(airTempC)} at this time of the year: a wrong temperature shifts a reading by about 1 % for each ${saidTemperatureStep(10)}.`,
    whatToDo: 'Measure the wood again, in the units that the field asks for, and correct the entry.',
  };
};

const nearEnd: Rule = ({ reading }, { board }) => {
  const clearance = endClearanceMm(board.lengthMm);
  const { fromEndMm } = reading.spot;
  if (fromEndMm === null || fromEndMm >= clearance) return null;
  return {
    rule: 'near-end',
    severity: 'questionable',
    why: `The pins were ${saidLongLength(fromEndMm)} from an end, which dries ahead of the rest.`,
    whatToDo: `Probe at least ${saidLongLength(clearance)} from both ends.`,
  };
};

const endGrain: Rule = ({ reading }) =>
  reading.spot.face === 'end-grain'
    ? {
        rule: 'end-grain',
        severity: 'questionable',
        why: 'The pins went into end grain, which dries and wets far faster than the faces.',
        whatToDo: 'Probe on a face, or cut the board well in from the end and probe the fresh cut.',
      }
    : null;

const pinsShallow: Rule = ({ reading }, { board }) => {
  const { depth, depthMm, face } = reading.spot;
  if (depth !== 'core' || depthMm === null || face === 'fresh-cut') return null;
  if (depthMm >= CORE_FROM * board.thicknessMm) return null;
  return {
    rule: 'pins-shallow',
    severity: 'questionable',
    why: `The pins were ${saidShortLength(depthMm)} deep; the core of this board is ${saidShortLength(board.thicknessMm / 2)} below the face.`,
    whatToDo: 'Drive longer, insulated pins to mid-thickness, or probe the middle of a fresh crosscut.',
  };
};

const RULES: readonly Rule[] = [
  typingSlip,
  notAReading,
  frozen,
  notSettled,
  outsideMeterRange,
  outsideCurveRange,
  temperatureUnknown,
  temperatureOutOfRange,
  temperatureUnlikely,
  nearEnd,
  endGrain,
  pinsShallow,
];

/** The raw value as the meter shows it. */
function shown({ raw, unit }: Pick<Reading, 'raw' | 'unit'>): string {
  return unit === 'pct' ? pct(raw) : `${Number((raw / 1e6).toPrecision(3))} MΩ`;
}
