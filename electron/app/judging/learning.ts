import type { JudgedOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { MeterFacts } from '../../../shared-core/probing/readings/evidence.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { mean } from '../../../shared-core/wood/maths/mean.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { openShares, USUAL_METER_SD_PCT } from '../../../shared-core/wood/moisture/correction-uncertainty.ts';
import { FIBER_SATURATION_PCT } from '../../../shared-core/wood/moisture/fiber-saturation.ts';
import {
  type KnownMoisture,
  type LearnedBias,
  learnedBias,
  type MeterOnSpecies,
  NEVER_OFF,
} from '../../../shared-core/wood/moisture/meter-bias.ts';
import { spotScatterPct } from '../../../shared-core/wood/moisture/spot-scatter.ts';
import type { YardReader } from '../../store/yard.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { OwnFits } from './own-fits.ts';
import { sampleBoardState } from './sample-boards.ts';

/** What a meter's values mean. */
export type MeterMeaning = Pick<MeterFacts, 'scale' | 'compensatesTemp' | 'meterSdPct' | 'meterOff'>;

/** What oven-drying leaves open: resin that goes too, the balance, the way to it, % MC. Common practice, no source. */
const OVEN_SD_PCT = 0.2;
/** The sections' mean where one section alone was cut, % MC. Common practice, no source. */
const ONE_SECTION_SD_PCT = 1;
/** A weight of another day than the readings is used up to this, and less sure by so much for each day between. */
const MOST_DAYS_APART = 5;
const PER_DAY_PCT = 0.2;
/** Only the newest are used: more of them do not narrow it. */
const MOST_KNOWN = 200;

/**
 * What the yard's own boards of known moisture content teach of its meters: pieces that were oven-dried, and sample boards
 * that were weighed. Nothing of it is saved.
 *
 * @param asRead  a round's readings of a board by the published corrections, as if its meter were never off
 */
export function createLearning(
  context: QueryContext,
  ownFits: OwnFits,
  asRead: (boardId: number, roundId: number) => Assessment,
  meaningOf: (meterId: number | null) => MeterMeaning,
) {
  /** What was found, of which yard as which act left it. */
  let cache: { yard: YardReader; actId: number | null; known: KnownMoisture[] } | null = null;
  const found = new Map<string, LearnedBias | null>();

  /** To be called after a change within an act. */
  function forget(): void {
    cache = null;
    found.clear();
  }

  function known(): KnownMoisture[] {
    const yard = context.yard();
    const actId = yard.acts.newestId();
    if (cache === null || cache.yard !== yard || cache.actId !== actId) {
      forget();
      cache = { yard, actId, known: [...ovenDried(), ...weighed()].slice(-MOST_KNOWN) };
    }
    return cache.known;
  }

  function meterOnSpecies(meterId: number | null, speciesId: string, meaning: MeterMeaning): MeterOnSpecies {
    const { scale, meterSdPct, meterOff = 0 } = meaning;
    const species = orRefuse(context.yard().species.get(speciesId), 'species');
    const unit = scale.kind === 'ohms' ? 'ohm' : 'pct';
    const meterScale = (meterSdPct ?? USUAL_METER_SD_PCT) / USUAL_METER_SD_PCT;
    return { meterId, meterOff, speciesId, meterScale, ...openShares({ unit, scale, species }) };
  }

  function ovenDried(): KnownMoisture[] {
    return context
      .yard()
      .ovenChecks.speciesIds()
      .flatMap((speciesId) =>
        ownFits.ofSpecies(speciesId).flatMap(({ meterId, checks }) => {
          return checks.flatMap((check) => {
            const meaning = { ...meaningOf(meterId), meterOff: check.meterOff };
            return knownPiece(check, meterOnSpecies(meterId, speciesId, meaning), meaning) ?? [];
          });
        }),
      );
  }

  function knownPiece(
    check: JudgedOvenCheck,
    whose: MeterOnSpecies,
    meaning: MeterMeaning,
  ): KnownMoisture | null {
    const { ovenDryMcPct: mcPct, excluded, dry, unit, woodTempC } = check;
    if (excluded !== null || !dry || mcPct === null || mcPct <= 0 || mcPct > FIBER_SATURATION_PCT)
      return null;
    const species = orRefuse(context.yard().species.get(whose.speciesId), 'species');
    const corrected = check.readings.flatMap((value) => {
      const read = correctReading({ value, unit, woodTempC, species, ...meaning, learned: NEVER_OFF });
      return read.mcPct === null || read.standardUncertaintyPct === null
        ? []
        : [{ mcPct: read.mcPct, sdPct: read.standardUncertaintyPct }];
    });
    if (corrected.length === 0) return null;
    return {
      ...whose,
      boardId: `piece ${check.id}`,
      mcPct,
      offPct: mean(corrected.map((read) => read.mcPct)) - mcPct,
      sdPct: Math.hypot(
        spotScatterPct(mcPct) / Math.sqrt(corrected.length),
        mean(corrected.map((read) => read.sdPct)),
        OVEN_SD_PCT,
      ),
      shared: null,
    };
  }

  function weighed(): KnownMoisture[] {
    const yard = context.yard();
    return yard.samples
      .boardIds()
      .filter((boardId) => yard.boards.judgedBy(boardId) !== undefined)
      .flatMap((boardId) =>
        yard.readings
          .roundsOfBoard(boardId)
          .filter((roundId) => yard.rounds.get(roundId)?.finishedAt != null)
          .flatMap((roundId) => weighedInRound(boardId, roundId) ?? []),
      );
  }

  function weighedInRound(boardId: number, roundId: number): KnownMoisture | null {
    const { reliable, readings } = asRead(boardId, roundId);
    const at = readings.at(-1)?.takenAt;
    const meterIds = new Set(readings.map(({ meterId }) => meterId));
    const [meterId = null] = meterIds;
    if (reliable === null || at === undefined || meterIds.size !== 1) return null;
    const weight = weightNear(boardId, at);
    if (weight === null || weight.mcPct > FIBER_SATURATION_PCT) return null;
    const { boards, meters } = context.yard();
    const { speciesId } = orRefuse(boards.get(boardId), 'board');
    const offs = new Set(
      readings.map(({ meterProfileId: id }) => (id === null ? 0 : (meters.version(id)?.off ?? 0))),
    );
    const [meterOff = 0] = offs;
    if (offs.size > 1) return null;
    return {
      ...meterOnSpecies(meterId, speciesId, { ...meaningOf(meterId), meterOff }),
      boardId: `board ${boardId}`,
      mcPct: weight.mcPct,
      offPct: reliable.averagePct - weight.mcPct,
      sdPct: Math.hypot(reliable.standardUncertaintyPct, weight.sdPct),
      shared: null,
    };
  }

  /** What a sample board's weight, or its sections, told nearest to an instant. */
  function weightNear(boardId: number, at: string): { mcPct: number; sdPct: number } | null {
    const { cuts, weights } = sampleBoardState(context.yard(), boardId);
    const estimates = cuts.flatMap((cut) => (cut.estimate ? [{ at: cut.at, ...cut.estimate }] : []));
    const told = [
      ...estimates.map((cut) => ({ at: cut.at, mcPct: cut.mcWhenCutPct })),
      ...weights.flatMap((weight) =>
        weight.excluded === null && weight.mcPct !== null && weight.mcPct > 0
          ? [{ at: weight.at, mcPct: weight.mcPct }]
          : [],
      ),
    ].map((each) => ({ ...each, daysApart: Math.abs(Date.parse(each.at) - Date.parse(at)) / DAY_MS }));
    const nearest = told.toSorted((p, q) => p.daysApart - q.daysApart)[0];
    if (nearest === undefined || nearest.daysApart > MOST_DAYS_APART) return null;
    const cut = estimates.findLast((each) => Date.parse(each.at) <= Date.parse(nearest.at));
    const sectionsPct = cut?.standardErrorPct ?? ONE_SECTION_SD_PCT;
    return { mcPct: nearest.mcPct, sdPct: Math.hypot(sectionsPct, PER_DAY_PCT * nearest.daysApart) };
  }

  /** For a meter whose values are typed, and which has taught nothing itself, those typed before it had a name hold. */
  function taughtAs(meterId: number | null, all: readonly KnownMoisture[]): number | null {
    if (meterId === null || all.some((each) => each.meterId === meterId)) return meterId;
    return context.yard().meters.get(meterId)?.kind === 'typed' ? null : meterId;
  }

  /** What is learned of a meter (null: typed) on a species; null where nothing is. */
  function of(speciesId: string, meterId: number | null, meaning: MeterMeaning): LearnedBias | null {
    const all = known();
    if (all.length === 0) return null;
    const key = JSON.stringify([speciesId, meterId, meaning]);
    const before = found.get(key);
    if (before !== undefined) return before;
    const learned = learnedBias(meterOnSpecies(taughtAs(meterId, all), speciesId, meaning), all);
    found.set(key, learned);
    return learned;
  }

  return { of, known, forget };
}
export type Learning = ReturnType<typeof createLearning>;
