import type { Corrected } from '../../wood/moisture/corrected.ts';
import { correctReading } from '../../wood/moisture/correction.ts';
import { assumedTempIn } from './assumed-temp.ts';
import type { BoardEvidence, MeterFacts } from './evidence.ts';
import type { Reading } from './reading.ts';

/** The meter's facts that hold for a reading. */
export function meterOf(reading: Reading, { meters, typedBasis }: BoardEvidence): MeterFacts {
  return (reading.meterProfileId === null ? undefined : meters[reading.meterProfileId]) ?? typedBasis;
}

/** What a reading of the board comes to, by all that is known of its meter, species and temperature. */
export function correctedIn(reading: Reading, evidence: BoardEvidence): Corrected {
  const { scale, compensatesTemp, meterSdPct, ownCalibration, learned } = meterOf(reading, evidence);
  return correctReading({
    value: reading.raw,
    unit: reading.unit,
    woodTempC: reading.woodTempC,
    airTemp: assumedTempIn(evidence.place),
    species: evidence.species,
    scale,
    compensatesTemp,
    meterSdPct,
    ownCalibration,
    learned,
  });
}
