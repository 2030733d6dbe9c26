import {
  givenGramsSchema,
  type JudgedOvenCheck,
  type OvenCheck,
  type OwnFit,
} from '../../../shared-core/contract/oven-checks.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import type { MeterFacts } from '../../../shared-core/probing/readings/evidence.ts';
import { scaleOf } from '../../../shared-core/probing/readings/meter-profile.ts';
import { HOUR_MS } from '../../../shared-core/time.ts';
import { mean } from '../../../shared-core/wood/maths/mean.ts';
import {
  type Calibration,
  fitCalibration,
  LEAST_FOR_A_LINE,
  onBasisScalePct,
} from '../../../shared-core/wood/moisture/calibration.ts';
import { correctReading, type OwnCalibration } from '../../../shared-core/wood/moisture/correction.ts';
import {
  constantMass,
  constantMassRules,
  ovenDryMcPct,
  type Weighing,
} from '../../../shared-core/wood/moisture/oven-dry.ts';
import { basisOfScale } from '../../../shared-core/wood/moisture/scale.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { message } from '../../../shared-core/words/message.ts';
import { NO_RECORD, unitOf } from '../../store/meter-table.ts';
import { orRefuse, type QueryContext } from '../context.ts';

/** What a shown value means. */
type Meaning = Pick<MeterFacts, 'scale' | 'compensatesTemp'>;

/** Of the published correction, to draw it. */
const DRAWN_POINTS = 25;

/**
 * What the user's oven-dry checks say: each check's moisture content, and for each wood with each meter the line
 * through them. Nothing here is saved: it is made from what was measured.
 */
export function createOwnFits(context: QueryContext) {
  /** What a meter's values mean (null: those that were typed). */
  function meaningOf(meterId: number | null): Meaning {
    const meter = (meterId === null ? undefined : context.yard().meters.get(meterId)) ?? NO_RECORD;
    return {
      scale: scaleOf(unitOf(meter), meter.profile),
      compensatesTemp: meter.profile?.compensatesTemp ?? null,
    };
  }

  /** One for each meter that has checks of the wood, the one with the newest check first. */
  function ofSpecies(speciesId: string): OwnFit[] {
    const yard = context.yard();
    const species = orRefuse(yard.species.get(speciesId), 'species');
    const chosen = yard.ovenChecks.chosen(speciesId);
    const checks = yard.ovenChecks.ofSpecies(speciesId);
    const meterIds = new Set(checks.map((check) => check.meterId).toReversed());
    return [...meterIds].map((meterId) => {
      const meaning = meaningOf(meterId);
      const own = checks
        .filter((check) => check.meterId === meterId)
        .map((check) => judgedCheck(check, species, meaning));
      const fitted = fitOf(own);
      const fit = fitted.ok ? fitted.value : null;
      const inUse = chosen.includes(meterId);
      return {
        meterId,
        meterName: meterId === null ? null : orRefuse(yard.meters.get(meterId), 'meter').name,
        checks: own,
        fit: fit && {
          a: fit.line.a,
          b: fit.line.b,
          model: fit.model,
          standardErrorPct: fit.line.standardErrorPct,
          publishedErrorPct: fit.publishedErrorPct,
          worthUsing: fit.worthUsing,
          leftOut: counting(own).map((check, index) => ({
            checkId: check.id,
            errorPct: fit.leaveOneOutPct[index] as number,
          })),
        },
        status: fitted.ok ? fitted.value.why : fitted.problem,
        inUse,
        applied: inUse && fit?.worthUsing === true,
        published: publishedLine(own, species, meaning),
      };
    });
  }

  /**
   * The meter whose checks hold for readings of a meter, among those whose checks were chosen; undefined where none do. Of
   * a hand meter without any, those that were typed before it had a name.
   */
  function checkedAs(meterId: number | null, chosen: readonly (number | null)[]): number | null | undefined {
    if (chosen.includes(meterId)) return meterId;
    if (meterId === null || !chosen.includes(null)) return undefined;
    return context.yard().meters.get(meterId)?.kind === 'typed' ? null : undefined;
  }

  /** Found again within one turn of the event loop, in which nothing changes: boards are judged by the dozen. */
  const found = new Map<string, OwnCalibration | null>();

  /** What corrects readings of a wood with a meter (null: typed); null where the user's checks do not. */
  function calibration(speciesId: string, meterId: number | null): OwnCalibration | null {
    const key = `${speciesId} ${meterId}`;
    const before = found.get(key);
    if (before !== undefined) return before;
    if (found.size === 0) queueMicrotask(() => found.clear());
    // Most woods have no checks, and that is quickly said.
    const chosen = context.yard().ovenChecks.chosen(speciesId);
    const by = checkedAs(meterId, chosen);
    const own = by === undefined ? undefined : ofSpecies(speciesId).find((each) => each.meterId === by);
    const line = own?.applied ? own.fit : null;
    found.set(key, line);
    return line;
  }

  return { ofSpecies, calibration, meaningOf };
}
export type OwnFits = ReturnType<typeof createOwnFits>;

/** The mean of what each reading comes to; null where one of them is refused. */
function meanOf(values: readonly (number | null)[]): number | null {
  return values.length === 0 || values.includes(null) ? null : mean(values as number[]);
}

function judgedCheck(check: OvenCheck, species: Species, meaning: Meaning): JudgedOvenCheck {
  const readings = check.readings.map((value) => ({
    value,
    unit: check.unit,
    woodTempC: check.woodTempC,
    species,
    ...meaning,
    meterOff: check.meterOff,
  }));
  return {
    ...check,
    ...dryness(check),
    readingPct: meanOf(readings.map(onBasisScalePct)),
    publishedMcPct: meanOf(readings.map((reading) => correctReading(reading).mcPct)),
  };
}

const isPossible = (grams: number): boolean => givenGramsSchema.safeParse(grams).success;

/** How far the drying of a piece is. */
function dryness(check: OvenCheck): Pick<JudgedOvenCheck, 'ovenDryMcPct' | 'dry' | 'status'> {
  const counting = check.weights.filter((weight) => weight.excluded === null);
  // Of two at one time, as where an excluded one is included again, the newer record holds.
  const weighed = counting.filter(
    ({ at }, index) => Date.parse(counting[index + 1]?.at ?? '') !== Date.parse(at),
  );
  const last = weighed.at(-1);
  const { hours } = constantMassRules[check.rule];
  if (last === undefined) {
    return { ovenDryMcPct: null, dry: false, status: message('oven-check.not-weighed', { hours }) };
  }
  const weighings = weighed.map(({ grams, at }): Weighing => ({ hours: Date.parse(at) / HOUR_MS, grams }));
  // An earlier Pintally saved weights that are refused now.
  if ([check.wetGrams, ...weighed.map(({ grams }) => grams)].some((grams) => !isPossible(grams))) {
    return { ovenDryMcPct: null, dry: false, status: message('oven-check.impossible') };
  }
  const { dry, changeGrams, allowedGrams } = constantMass(weighings, check.rule, check.balanceGrams);
  const ovenDryPct = ovenDryMcPct(check.wetGrams, last.grams);
  /** To one digit more than the balance shows, so that what is allowed can be told from what is seen. */
  const toTenthOfStep = (grams: number): number =>
    (Math.round((10 * grams) / check.balanceGrams) * check.balanceGrams) / 10;
  const status =
    changeGrams === null || allowedGrams === null
      ? message('oven-check.weigh-again', { ovenDryPct, hours })
      : message(dry ? 'oven-check.dry' : 'oven-check.not-dry', {
          ovenDryPct,
          hours,
          changeGrams: toTenthOfStep(changeGrams),
          allowedGrams: toTenthOfStep(allowedGrams),
          ruleName: check.rule,
        });
  return { ovenDryMcPct: ovenDryPct, dry, status };
}

/** Checks that a fit can use: dry, not excluded, and read. */
function counting(checks: readonly JudgedOvenCheck[]) {
  return checks.flatMap((check) =>
    check.excluded === null &&
    check.dry &&
    check.ovenDryMcPct !== null &&
    check.ovenDryMcPct > 0 &&
    check.readingPct !== null &&
    check.readingPct > 0
      ? [{ ...check, ovenDryMcPct: check.ovenDryMcPct, readingPct: check.readingPct }]
      : [],
  );
}

function fitOf(checks: readonly JudgedOvenCheck[]): Outcome<Calibration> {
  const usable = counting(checks);
  if (usable.length < LEAST_FOR_A_LINE) {
    const drying = checks.filter((check) => check.excluded === null && !check.dry).length;
    const few = { dry: usable.length, least: LEAST_FOR_A_LINE };
    const problem =
      drying === 0
        ? message('own-fit.too-few-dry', few)
        : message('own-fit.too-few-dry-yet', { ...few, drying });
    return { ok: false, problem };
  }
  return fitCalibration(
    usable.map(({ readingPct, ovenDryMcPct, publishedMcPct, readings }) => ({
      readingPct,
      ovenDryMcPct,
      publishedMcPct,
      readings: readings.length,
    })),
  );
}

/** The correction without the checks at the scale's own temperature, over the readings seen and a little beyond. */
function publishedLine(
  checks: readonly JudgedOvenCheck[],
  species: Species,
  { scale }: Meaning,
): OwnFit['published'] {
  const seen = counting(checks).map((check) => check.readingPct);
  if (seen.length === 0) return [];
  const from = Math.max(0, Math.min(...seen) - 1);
  const to = Math.max(...seen) + 1;
  const { tempC } = basisOfScale(scale);
  return Array.from({ length: DRAWN_POINTS }, (_, index) => {
    const readingPct = from + ((to - from) * index) / (DRAWN_POINTS - 1);
    const { mcPct } = correctReading({ value: readingPct, unit: 'pct', woodTempC: tempC, species, scale });
    return { readingPct, mcPct };
  }).flatMap(({ readingPct, mcPct }) => (mcPct === null ? [] : [{ readingPct, mcPct }]));
}
