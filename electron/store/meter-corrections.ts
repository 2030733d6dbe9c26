import { checkState, offBy } from '../../shared-core/probing/readings/meter-check.ts';
import {
  type CorrectionStep,
  correctionAt,
  correctionSteps,
} from '../../shared-core/probing/readings/meter-correction.ts';
import type { ReadingUnit } from '../../shared-core/wood/moisture/corrected.ts';
import { amendmentWrites } from './amendment-table.ts';
import { meterCheckReads } from './meter-check-table.ts';
import { meterReads, meterWrites, unitOf } from './meter-table.ts';
import type { ReadingOwnerRow } from './reading-table.ts';
import type { Db } from './yard-file.ts';

type Reads = {
  meters: Pick<ReturnType<typeof meterReads>, 'get' | 'version'>;
  meterChecks: Pick<ReturnType<typeof meterCheckReads>, 'counting' | 'correctedMeters' | 'readingsBetween'>;
};

/** What corrects the values of a meter: those that it gives in its unit now, and those that it gave in the other. */
export interface MeterCorrection {
  unit: ReadingUnit;
  steps: Record<ReadingUnit, CorrectionStep[]>;
}

/** A reading that is to be corrected by `off`, points or decades. */
export interface ToCorrect extends ReadingOwnerRow {
  profileId: number;
  off: number;
}

/** What corrects the values of a meter now, by its checks that count. */
export function correctionOf({ meters, meterChecks }: Reads, meterId: number, now: string): MeterCorrection {
  const unit = unitOf(meters.get(meterId) ?? { description: null, profile: null });
  const checks = meterChecks.counting(meterId, now).flatMap((check) => {
    const version = check.meterProfileId === null ? undefined : meters.version(check.meterProfileId);
    return version === undefined ? [] : [{ ...check, unit: unitOf(version) }];
  });
  const stepsIn = (by: ReadingUnit): CorrectionStep[] =>
    correctionSteps(
      checks
        .filter((check) => check.unit === by)
        .map((check) => ({
          at: check.at,
          off: checkState(by, check, 0) === 'right' ? 0 : offBy(by, check),
          correctedAt: check.correctedAt,
        })),
    );
  return { unit, steps: { pct: stepsIn('pct'), ohm: stepsIn('ohm') } };
}

/** Of all meters by a check of which readings were ever corrected. */
export const correctionsOf = (reads: Reads, now: string): Map<number, MeterCorrection> =>
  new Map(reads.meterChecks.correctedMeters().map((id) => [id, correctionOf(reads, id, now)]));

/** What a meter's next value is corrected by. */
export const correctionNow = ({ unit, steps }: MeterCorrection): number => steps[unit].at(-1)?.off ?? 0;

/**
 * Readings of a meter that are corrected by something else than its checks say.
 *
 * @param before  what it was corrected by: only what is another now is looked through; null for everything
 * @param alsoFrom  the instant of a check whose readings are looked through in any case
 */
export function toCorrect(
  { meters, meterChecks }: Reads,
  meterId: number,
  now: MeterCorrection,
  before: MeterCorrection | null,
  alsoFrom: string | null = null,
): ToCorrect[] {
  return (['pct', 'ohm'] as const).flatMap((unit) => {
    const steps = now.steps[unit];
    const was = before?.steps[unit];
    const changes = [...steps, ...(was ?? [])].map(({ at }) => at);
    // An empty text is before every instant.
    const starts = [...new Set(was ? changes : ['', ...changes])].sort();
    return starts.flatMap((from, index): ToCorrect[] => {
      const off = correctionAt(steps, from);
      if (was && from !== alsoFrom && correctionAt(was, from) === off) return [];
      return meterChecks.readingsBetween(meterId, from, starts[index + 1] ?? null).flatMap((reading) => {
        const version = meters.version(reading.profileId);
        const isSo = version === undefined || unitOf(version) !== unit || version.off === off;
        return isSo ? [] : [{ ...reading, off }];
      });
    });
  });
}

/** Corrects readings and meters as their checks say, after those of two yards came together. To be called within an act. */
export function correctAsChecked(db: Db, now: string): void {
  const reads = { meters: meterReads(db), meterChecks: meterCheckReads(db) };
  const meters = meterWrites(db, reads.meters);
  const { amendReading } = amendmentWrites(db);
  for (const [meterId, correction] of correctionsOf(reads, now)) {
    meters.setOff(meterId, correctionNow(correction), now);
    for (const { id, profileId, off } of toCorrect(reads, meterId, correction, null))
      amendReading(id, 'meterProfileId', meters.versionWithOff(profileId, off, now), now);
  }
}
