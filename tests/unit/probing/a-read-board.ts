/** Boards of all thicknesses in all kinds of air, read with any pins, and judged as the app judges them. */
import { findingOf, foundOf } from '../../../electron/app/judging/finding.ts';
import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { Found } from '../../../shared-core/probing/calls/call-here.ts';
import { type Judgement, judge } from '../../../shared-core/probing/calls/judgement.ts';
import { spotsByDepth } from '../../../shared-core/probing/calls/spots-read.ts';
import { depthOf } from '../../../shared-core/probing/readings/estimate.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import { type CoreWay, usualBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { type Forecast, forecastBoard } from '../../../shared-core/wood/drying/forecast.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import type { Random } from '../../faults/random.ts';
import { worked } from '../worked.ts';
import { evidence, reading } from './a-board.ts';
import { dayOf, nowMs, onDay, place } from './a-judged-board.ts';

export interface ReadBoard {
  given: BoardEvidence;
  assessment: Assessment;
  finding: RoundFinding;
  found: Found;
  forecast: Forecast | null;
  judgement: Judgement;
}

const kinds = ['outdoors', 'open-shed', 'shop', 'heated-room'] as const;
const ways: readonly (CoreWay | null)[] = [null, null, 'fresh-cut', 'fresh-rip', 'long-pins'];

/** @param withForecast  a forecast takes some hundred times as long as a call */
export function randomRead(random: Random, withForecast: boolean): ReadBoard {
  const between = (low: number, high: number): number => low + (high - low) * random();
  const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const thicknessMm = one([19, 27, 38, 54, 80, 100]);
  const kind = one(kinds);
  const emcPct = kind === 'heated-room' ? between(5, 9) : between(9, 19);
  const pins = { lengthMm: one([5, 8, 15, 25]), insulated: random() < 0.5 };
  const usual = usualBasis(thicknessMm, pins);
  const planBasis = usual.faces === 'pairs' ? usual : { ...usual, core: one(ways) };
  const board = { thicknessMm, lengthMm: 3000, planBasis };
  const { plan } = planSpots(board);
  const shellPct = random() < 0.8 ? between(5, 20) : between(20, 40);
  const drop = Math.max(0, shellPct - emcPct) * between(0, 1.5);
  const takenAt = onDay(-one([0, 0, 20]));
  const readings = plan.map(({ spot }, index) => ({
    ...reading(index + 1, spot.depth, shellPct + between(-0.5, 0.5) + (spot.depth === 'core' ? drop : 0)),
    spotIndex: index,
    spot,
    takenAt,
  }));
  const given = evidence(readings, {
    board,
    plan: spotsByDepth(plan),
    endUse: one(builtInEndUses),
    place: { name: 'Here', kind, emcPct, month: 9 },
  });
  const assessment = judgeBoard(given);
  const forecast = withForecast ? forecastOf(given, assessment) : null;
  const found = foundOf(assessment)!;
  const judgement = judge({
    found,
    target: given.endUse,
    mayCheck: true,
    places: [place(1, 'Here', kind, emcPct, null)],
    forecast,
    whyNot: null,
    nowMs,
    dayOf,
  });
  return { given, assessment, finding: findingOf(1, board, assessment)!, found, forecast, judgement };
}

function forecastOf({ board, endUse, place, species }: BoardEvidence, { readings }: Assessment): Forecast {
  const air = Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5, emcPct: place.emcPct! }));
  const sawnMs = nowMs - 200 * DAY_MS;
  return worked(
    forecastBoard({
      nowMs,
      board: {
        thicknessMm: board.thicknessMm,
        basicSpecificGravity: species.basicSpecificGravity,
        start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
        stays: [{ fromMs: sawnMs, air }],
      },
      readings: readings.map((each) => ({
        atMs: Date.parse(each.takenAt),
        depthFraction: depthOf(each, board.thicknessMm) / board.thicknessMm,
        mcPct: each.corrected.mcPct!,
        standardUncertaintyPct: each.corrected.standardUncertaintyPct!,
      })),
      siblings: [],
      endUse,
      elsewhere: [],
      placeId: 1,
      horizonDays: 60,
    }),
  );
}
