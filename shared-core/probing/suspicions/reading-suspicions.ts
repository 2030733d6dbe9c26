import type { CorrectionWarning } from '../../wood/moisture/corrected.ts';
import { LEAST_METER_PCT } from '../../wood/moisture/correction-uncertainty.ts';
import { FROZEN_FROM_PCT } from '../../wood/moisture/fiber-saturation.ts';
import { type Message, message, thicknessOf } from '../../words/message.ts';
import { USUAL_TEMP_RANGE_C } from '../readings/assumed-temp.ts';
import { meterOf } from '../readings/corrected-reading.ts';
import { reachesOtherFace, tells } from '../readings/depth-read.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { DOUBT_SDS, type PriorNow, wettestBy } from '../readings/prior-now.ts';
import type { Reading, Suspicion } from '../readings/reading.ts';
import { endClearanceMm, plannedDepthMm } from '../readings/spots.ts';
import { intendedValue, isOrdinaryByNature } from '../readings/typing-slip.ts';
import { ohmSlip } from './ohm-slip.ts';
import type { CorrectedReading } from './suspicion.ts';

/** The scales of pin meters end here or before, %. From memory. */
const MOST_SHOWN_PCT = 100;
/** Whether no meter in % shows a number. */
export const isBeyondScales = (rawPct: number): boolean => rawPct > MOST_SHOWN_PCT;

/** Whatever else is odd about it may be the disk's doing too. */
export const DAMAGED: Suspicion = {
  rule: 'damaged',
  severity: 'refused',
  why: message('suspicion.damaged'),
  whatToDo: message('suspicion.damaged.do'),
};

type Rule = (each: CorrectedReading, evidence: BoardEvidence) => Suspicion | null;

/** What speaks against one reading by itself; only a typing slip is found by comparing. */
export function readingSuspicions(each: CorrectedReading, evidence: BoardEvidence): Suspicion[] {
  if (each.reading.isDamaged) return [DAMAGED];
  const found = RULES.map((rule) => rule(each, evidence)).filter((one) => one !== null);
  // A slip explains whatever else is odd about the value.
  const slip = found.find((one) => one.rule === 'typing-slip' && one.severity === 'refused');
  // Of frozen wood nothing else is worth saying.
  const whole = slip ?? found.find(({ rule }) => rule === 'frozen');
  return whole === undefined ? found : [whole];
}

/** What no board can be that was sawn then and dried in that air, but is one without the decimal point lost: a slip, whatever its other readings are. */
const isExcluded = (prior: PriorNow, raw: number): boolean =>
  raw > wettestBy(prior) && (intendedValue(raw, []) ?? raw) <= wettestBy(prior);

/** How far one reading may be off by its meter and its spot, % MC. Common practice, no source. */
const READING_SD_PCT = 1.5;
/** Boards dried in air read so far from its lowest EMC, or nearer, % MC. Common practice, no source. */
const AIR_DRIED = { below: 1, above: 6 } as const;

/** What no air makes of wood where it has been, but 10 or 100 times as much is what it does make: a slip likewise. */
function isTenthOfDry(raw: number, { driestAir = null, prior = null }: BoardEvidence): boolean {
  const meant = intendedValue(raw, []);
  if (driestAir === null || meant === null) return false;
  const { emcPct, sdPct } = driestAir;
  return (
    emcPct - raw > DOUBT_SDS * Math.hypot(READING_SD_PCT, sdPct) &&
    meant >= emcPct - AIR_DRIED.below &&
    meant <= emcPct + AIR_DRIED.above &&
    (prior === null || meant <= wettestBy(prior))
  );
}

/** Boards in a heated room are seldom wetter than its EMC by more than this, % MC. Common practice, no source. */
const ROOM_ABOVE_EMC_PCT = 6;

/** What was meant by a value of a board in a heated room, where a tenth of it is about what the air there makes of wood; null where it is not. */
function meantInRoom(raw: number, { kind, emcPct }: BoardEvidence['place']): number | null {
  const meant = intendedValue(raw, []);
  if (kind !== 'heated-room' || emcPct === null || meant === null) return null;
  return meant < raw && meant <= emcPct + ROOM_ABOVE_EMC_PCT ? meant : null;
}

const typingSlip: Rule = ({ reading }, evidence) => {
  if (reading.how !== 'typed' || reading.unit !== 'pct') return ohmSlip(reading, evidence);
  const { readings, previous, place, prior = null } = evidence;
  const others = readings.filter(
    (other) => other.id !== reading.id && other.unit === 'pct' && other.excluded === null,
  );
  const beside = others.map((other) => other.raw);
  const before = previous === null ? [] : [previous.estimate.averagePct];
  // All typed with the same slip, they agree with each other: then the last round tells, or that no meter shows so much,
  // or when the board was sawn.
  const mayAllBeSlips =
    (!beside.some(isOrdinaryByNature) && (previous !== null || reading.raw > MOST_SHOWN_PCT)) ||
    (prior !== null && isExcluded(prior, reading.raw)) ||
    isTenthOfDry(reading.raw, evidence);
  const meant =
    intendedValue(reading.raw, beside.length > 0 ? beside : before) ??
    (mayAllBeSlips ? intendedValue(reading.raw, before) : null);
  // Nothing else tells: the wood may be green.
  const maybe =
    meant ?? (previous !== null || beside.some(isOrdinaryByNature) ? null : meantInRoom(reading.raw, place));
  if (maybe === null) return null;
  return {
    rule: 'typing-slip',
    severity: meant === null ? 'note' : 'refused',
    why: message('suspicion.typing-slip', { rawPct: reading.raw, rawMeantPct: maybe }),
    whatToDo: message('suspicion.typing-slip.do', { rawMeantPct: maybe }),
  };
};

const notAReading: Rule = ({ reading, corrected }) => {
  if (corrected.mcPct !== null && !corrected.warnings.includes('not-a-reading')) return null;
  return {
    rule: 'not-a-reading',
    severity: 'refused',
    why: message('suspicion.not-a-reading', { reading: shown(reading) }),
    whatToDo: message('suspicion.not-a-reading.do'),
  };
};

/** What it was corrected for, be it measured or that of the air. */
const tempOf = ({ reading: { woodTempC } }: CorrectedReading, { place }: BoardEvidence): number | null =>
  woodTempC ?? place.airTempC ?? null;

const frozen: Rule = (each, evidence) => {
  const woodTempC = tempOf(each, evidence);
  const { mcPct, warnings } = each.corrected;
  return woodTempC !== null && mcPct !== null && warnings.includes('frozen')
    ? {
        rule: 'frozen',
        severity: 'refused',
        why: message('suspicion.frozen', { woodTempC, frozenLimitPct: FROZEN_FROM_PCT }),
        whatToDo: message('suspicion.frozen.do'),
      }
    : null;
};

const belowFreezing: Rule = (each, evidence) => {
  const woodTempC = tempOf(each, evidence);
  // Whether it is so cold is asked first.
  return woodTempC !== null &&
    temperatureUnlikely(each, evidence) === null &&
    each.corrected.warnings.includes('below-freezing')
    ? {
        rule: 'below-freezing',
        severity: 'note',
        why: message('suspicion.below-freezing', { woodTempC }),
        whatToDo: message('suspicion.below-freezing.do'),
      }
    : null;
};

const notSettled: Rule = ({ reading }) =>
  reading.settled === false
    ? {
        rule: 'not-settled',
        severity: 'questionable',
        why: message('suspicion.not-settled', { reading: shown(reading) }),
        whatToDo: message('suspicion.not-settled.do'),
      }
    : null;

/** So far above the low end of a scale another spot says the same, in the meter's unit. Common practice, no source. */
const NEAR_THE_END = 1;

const outsideMeterRange: Rule = ({ reading }, evidence) => {
  if (reading.isAbove) {
    return {
      rule: 'outside-meter-range',
      // More ohms are drier wood.
      severity: reading.unit === 'pct' ? 'note' : 'questionable',
      why: message('suspicion.outside-meter-range.above', { reading: shown(reading) }),
      whatToDo: message('suspicion.outside-meter-range.above.do'),
    };
  }
  const { range } = meterOf(reading, evidence);
  if (range === null || (reading.raw > range.min && reading.raw < range.max)) return null;
  const isLow = reading.raw <= range.min;
  // Poor contact reads too dry, but not at one spot after another.
  const isRepeated =
    isLow &&
    evidence.readings.some(
      (other) =>
        other.id !== reading.id &&
        other.excluded === null &&
        other.unit === reading.unit &&
        (other.spotIndex === null || other.spotIndex !== reading.spotIndex) &&
        other.raw <= range.min + NEAR_THE_END,
    );
  const facts = {
    reading: shown(reading),
    end: shown({ ...reading, raw: isLow ? range.min : range.max }),
  };
  return {
    rule: 'outside-meter-range',
    // Past the wet end the wood is wet all the same; past the dry end the true value is open.
    severity: isLow === (reading.unit === 'pct') && !isRepeated ? 'questionable' : 'note',
    why: isLow
      ? message('suspicion.outside-meter-range.low', facts)
      : message('suspicion.outside-meter-range.high', facts),
    whatToDo: message(
      isRepeated ? 'suspicion.outside-meter-range.repeated.do' : 'suspicion.outside-meter-range.do',
    ),
  };
};

/** Past which end a reading is, the gravest first; each has its sentences. */
const CURVE_ENDS: [CorrectionWarning, (mcPct: number) => Pick<Suspicion, 'why' | 'whatToDo'>][] = [
  [
    'above-fiber-saturation',
    (mcPct) => ({
      why: message('suspicion.outside-curve-range.wet', { mcPct }),
      whatToDo: message('suspicion.outside-curve-range.wet.do'),
    }),
  ],
  [
    'below-meter-range',
    (mcPct) => ({
      why: message('suspicion.outside-curve-range.dry', { mcPct, leastLimitPct: LEAST_METER_PCT }),
      whatToDo: message('suspicion.outside-curve-range.dry.do'),
    }),
  ],
  [
    'outside-curve',
    (mcPct) => ({
      why: message('suspicion.outside-curve-range.beyond', { mcPct }),
      whatToDo: message('suspicion.outside-curve-range.beyond.do'),
    }),
  ],
];

const outsideCurveRange: Rule = ({ corrected: { mcPct, warnings } }) => {
  const end = CURVE_ENDS.find(([warning]) => warnings.includes(warning));
  if (mcPct === null || end === undefined) return null;
  const [, sentences] = end;
  return { rule: 'outside-curve-range', severity: 'note', ...sentences(mcPct) };
};

/** Wood colder or warmer by this reads about 1 % MC lower or higher, K (common practice, no source). */
const ABOUT_A_POINT_K = 10;

const temperatureUnknown: Rule = ({ corrected }) =>
  corrected.warnings.includes('temperature-unknown')
    ? {
        rule: 'temperature-unknown',
        severity: 'note',
        why: message('suspicion.temperature-unknown', { perStepK: ABOUT_A_POINT_K }),
        whatToDo: message('suspicion.temperature-unknown.do'),
      }
    : null;

const temperatureOfAir: Rule = ({ corrected }, { place: { name, airTempC = null, isAirMeasured } }) =>
  airTempC !== null && corrected.warnings.includes('temperature-of-air')
    ? {
        rule: 'temperature-of-air',
        severity: 'note',
        why: message(
          isAirMeasured ? 'suspicion.temperature-of-measured-air' : 'suspicion.temperature-of-air',
          { airTempC, placeName: name, perStepK: ABOUT_A_POINT_K },
        ),
        whatToDo: message('suspicion.temperature-unknown.do'),
      }
    : null;

const temperatureOutOfRange: Rule = (each, evidence) => {
  const tempC = tempOf(each, evidence);
  if (tempC === null || !each.corrected.warnings.includes('temperature-out-of-range')) return null;
  const isOfAir = each.reading.woodTempC === null;
  return {
    rule: 'temperature-out-of-range',
    severity: 'questionable',
    why: isOfAir
      ? message('suspicion.temperature-out-of-range.air', {
          airTempC: tempC,
          placeName: evidence.place.name,
        })
      : message('suspicion.temperature-out-of-range', { woodTempC: tempC }),
    whatToDo: isOfAir
      ? message('suspicion.temperature-out-of-range.air.do')
      : message('suspicion.temperature-out-of-range.do'),
  };
};

const temperatureUnlikely: Rule = ({ reading: { woodTempC, probeName, isTempRight = false } }, { place }) => {
  const airTempC = place.airTempC ?? null;
  if (woodTempC === null || airTempC === null || isTempRight) return null;
  if (Math.abs(woodTempC - airTempC) <= USUAL_TEMP_RANGE_C[place.kind]) return null;
  return {
    rule: 'temperature-unlikely',
    severity: 'questionable',
    why:
      probeName === undefined
        ? message(
            place.isAirMeasured
              ? 'suspicion.temperature-unlikely.measured'
              : 'suspicion.temperature-unlikely',
            { woodTempC, airTempC, placeName: place.name },
          )
        : message('suspicion.temperature-unlikely.probe', {
            sensorName: probeName,
            woodTempC,
            airTempC,
            placeName: place.name,
          }),
    whatToDo: message('suspicion.temperature-unlikely.do'),
  };
};

const nearEnd: Rule = ({ reading }, { board }) => {
  const clearDistanceMm = endClearanceMm(board.lengthMm);
  const { fromEndMm } = reading.spot;
  if (fromEndMm === null || fromEndMm >= clearDistanceMm) return null;
  return {
    rule: 'near-end',
    severity: 'questionable',
    why: message('suspicion.near-end', { fromEndDistanceMm: fromEndMm }),
    whatToDo: message('suspicion.near-end.do', { clearDistanceMm }),
  };
};

const endGrain: Rule = ({ reading }) =>
  reading.spot.face === 'end-grain'
    ? {
        rule: 'end-grain',
        severity: 'questionable',
        why: message('suspicion.end-grain'),
        whatToDo: message('suspicion.end-grain.do'),
      }
    : null;

/** Pins less deep than this read the skin of the wood, mm. Common practice, no source. */
const SURFACE_MM = 1.5;

const pinsShallow: Rule = ({ reading }, { board: { thicknessMm } }) => {
  const { depth, depthMm, face } = reading.spot;
  if (depthMm === null || face === 'fresh-cut') return null;
  if (depthMm < Math.min(SURFACE_MM, plannedDepthMm('shell', thicknessMm))) {
    return {
      rule: 'pins-shallow',
      severity: 'questionable',
      why: message('suspicion.pins-shallow.surface', { depthMm }),
      whatToDo: message('suspicion.pins-shallow.surface.do'),
    };
  }
  if (depth !== 'core' || tells.core(depthMm / thicknessMm)) return null;
  return {
    rule: 'pins-shallow',
    severity: 'questionable',
    why: message('suspicion.pins-shallow', { depthMm, coreDepthMm: thicknessMm / 2 }),
    whatToDo: message('suspicion.pins-shallow.do'),
  };
};

/** The thickness was edited since, or is wrong: nobody knows what such a reading tells. */
const deeperThanBoard: Rule = ({ reading: { spot, depthFrom } }, { board }) => {
  const { depthMm, face } = spot;
  // A fresh crosscut is read in its middle, however thick the board was thought to be.
  if (depthFrom !== 'person' || face === 'fresh-cut') return null;
  if (depthMm === null || !reachesOtherFace(depthMm, board.thicknessMm)) return null;
  return {
    rule: 'deeper-than-board',
    severity: 'questionable',
    why: message('suspicion.deeper-than-board', { depthMm, boardThickness: thicknessOf(board) }),
    whatToDo: message('suspicion.deeper-than-board.do'),
  };
};

const RULES: readonly Rule[] = [
  typingSlip,
  notAReading,
  frozen,
  belowFreezing,
  notSettled,
  outsideMeterRange,
  outsideCurveRange,
  temperatureUnknown,
  temperatureOfAir,
  temperatureOutOfRange,
  temperatureUnlikely,
  nearEnd,
  endGrain,
  pinsShallow,
  deeperThanBoard,
];

/** A raw value as the meter showed it. */
export function shown({ raw, unit }: Pick<Reading, 'raw' | 'unit'>): Message {
  return unit === 'pct'
    ? message('suspicion.reading-pct', { rawPct: raw })
    : message('suspicion.reading-ohm', { rawOhm: raw });
}
