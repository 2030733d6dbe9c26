/** What the app's own forecast tells of a drawn board's core, made after earlier rounds: for `calls-by-harm.bench.ts`. */
import { profileAt } from '../../shared-core/probing/readings/core-history.ts';
import type { HistoryProfile } from '../../shared-core/probing/readings/profile-posterior.ts';
import type { PlannedSpot } from '../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../shared-core/time.ts';
import { forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import type { FitReading } from '../../shared-core/wood/drying/history-fit.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { TAKEN_AT } from '../unit/probing/a-board.ts';
import { METER_SD_PCT, type Pins, shownPct, type Truth } from './calls-truth.ts';
import type { Random } from './rounds-with-faults.ts';

const AT_MS = Date.parse(TAKEN_AT);
/** How sure what a board had at first is: standard deviation of its logarithm, as `board-to-forecast.ts` has it. */
const START_LOG_SD = 0.3;
/** From one round to the next, days. */
const GAP_DAYS = { least: 20, most: 90 };

/**
 * Of a board that came to its place, or was sawn there, on a day that is known, and was read by the same pins and the same
 * meter, from the faces alone, in so many rounds before; null where it was not there so long, or history tells too little.
 *
 * @param facePlan  the spots that these pins are planned from the faces
 * @param meterPct  the meter's error on this board, % MC
 */
export function historyOf(
  truth: Truth,
  pins: Pins,
  facePlan: readonly PlannedSpot[],
  rounds: number,
  { emcPct, meterPct }: { emcPct: number; meterPct: number },
  random: Random,
): HistoryProfile | null {
  const { thicknessMm, gravity, startPct, days, earlier, endUse } = truth;
  let daysAgo = 0;
  const readings: FitReading[] = [];
  for (let round = 0; round < rounds; round += 1) {
    daysAgo += Math.round(GAP_DAYS.least + (GAP_DAYS.most - GAP_DAYS.least) * random.uniform());
    if (daysAgo >= days) return null;
    const at = earlier(daysAgo);
    for (const { spot } of facePlan) {
      const tipMm = Math.min(spot.depthMm ?? 0, pins.lengthMm);
      const pct = shownPct(at, pins, tipMm);
      readings.push({
        atMs: AT_MS - daysAgo * DAY_MS,
        depthFraction: tipMm / thicknessMm,
        mcPct: Math.max(0.5, pct + meterPct + spotScatterPct(pct) * random.normal()),
        standardUncertaintyPct: METER_SD_PCT,
      });
    }
  }
  const nowMs = Math.max(...readings.map(({ atMs }) => atMs));
  const startMs = AT_MS - days * DAY_MS;
  const made = forecastBoard({
    nowMs,
    board: {
      thicknessMm,
      basicSpecificGravity: gravity,
      start: { atMs: startMs, mcPct: startPct, logSd: START_LOG_SD, shellRatio: 1 },
      stays: [{ fromMs: startMs, air: Array(12).fill({ tempC: 17, rh: 0.5, emcPct }) }],
    },
    readings: readings.toReversed(),
    siblings: [],
    endUse,
    elsewhere: [],
    placeId: 1,
    horizonDays: 120,
  });
  return made.ok ? profileAt(made.value.places[0]!.coreAhead, AT_MS) : null;
}
