import type { Corrected } from '../../wood/moisture/corrected.ts';
import { correctedByEach, correctReading, type ReadingToCorrect } from '../../wood/moisture/correction.ts';
import { assumedTempIn } from './assumed-temp.ts';
import type { BoardEvidence, MeterFacts } from './evidence.ts';
import type { Reading } from './reading.ts';

/** The meter's facts that hold for a reading. */
export function meterOf(reading: Reading, { meters, typedBasis }: BoardEvidence): MeterFacts {
  return (reading.meterProfileId === null ? undefined : meters[reading.meterProfileId]) ?? typedBasis;
}

/** What a reading of the board comes to, by all that is known of its meter, species and temperature. */
export const correctedIn = (reading: Reading, evidence: BoardEvidence): Corrected =>
  correctReading(toCorrect(reading, evidence));

/** The same by each of the published temperature corrections, % MC. */
export const correctedByEachIn = (reading: Reading, evidence: BoardEvidence): number[] =>
  correctedByEach(toCorrect(reading, evidence));

function toCorrect(reading: Reading, evidence: BoardEvidence): ReadingToCorrect {
  const meter = meterOf(reading, evidence);
  const { scale, compensatesTemp, meterSdPct, meterOff = 0, ownCalibration, learned } = meter;
  return {
    value: reading.raw,
    unit: reading.unit,
    woodTempC: reading.woodTempC,
    airTemp: assumedTempIn(evidence.place),
    species: evidence.species,
    scale,
    compensatesTemp,
    meterSdPct,
    meterOff,
    ownCalibration,
    learned,
  };
}
