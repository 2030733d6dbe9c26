/**
 * How much one reading in a heated room tells of 4/4 oak. Run it with
 *
 *     npx node tests/bench/heated-room.bench.ts
 *
 * The evidence conflicts: practice has 3 to 8 weeks from 15 to 8 %, dated records of still rooms have months (common practice,
 * no source). Goals: before any reading there the days from the 10 to the 90 % point hold five weeks and six months; one
 * reading there, on any day, halves them. The reading is what the likeliest board would show.
 */
import { DAY_MS } from '../../shared-core/time.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { type ForecastInput, forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  type FitReading,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { worked } from '../unit/worked.ts';
import { figure } from './figure.ts';
import { steadyAir, unsure } from './typical-years.ts';

const broughtInMs = Date.UTC(2025, 3, 10);
const HORIZON_DAYS = 1500;
const READ_ON = [7, 14, 21, 28, 42, 56];

const oakIn = (air: MonthlyAir): DryingBoard => ({
  thicknessMm: 28,
  basicSpecificGravity: 0.56,
  dryingClass: 'upland-oak',
  start: { atMs: broughtInMs, mcPct: 15, logSd: 0.05, shellRatio: 1 },
  stays: [{ fromMs: broughtInMs, air, movement: 'still-room' }],
});

function readingOn(day: number, board: DryingBoard): FitReading {
  const atMs = broughtInMs + day * DAY_MS;
  const likeliest = dryingPrior(board).mean;
  const { averagePct } = runBoard(
    boardModel(board),
    likeliest,
    board.stays,
    broughtInMs,
    atMs,
    null,
    [atMs],
    [],
  );
  return { atMs, depthFraction: 0.21, mcPct: averagePct[0]!, standardUncertaintyPct: 0.85 };
}

/** Days from when it was brought in; infinite beyond the horizon. */
function daysOf(board: DryingBoard, readings: FitReading[]): [number, number, number] {
  const input: ForecastInput = {
    nowMs: readings[0]?.atMs ?? broughtInMs,
    board,
    readings,
    siblings: [],
    endUse: { minPct: 0, maxPct: 8, maxShellCorePct: 20 },
    elsewhere: [],
    placeId: 1,
    horizonDays: HORIZON_DAYS,
  };
  const { earlyMs, likelyMs, lateMs } = worked(forecastBoard(input)).places[0]!.reach;
  const day = (ms: number | null): number =>
    ms === null ? Number.POSITIVE_INFINITY : Math.round((ms - broughtInMs) / DAY_MS);
  return [day(earlyMs), day(likelyMs), day(lateMs)];
}

const said = (days: readonly number[]): string =>
  days.map((each) => (Number.isFinite(each) ? String(each) : 'open').padStart(6)).join('');

for (const [name, air] of [
  ['its own air, 21 °C and 35 %', steadyAir(21, 0.35)],
  ['air assumed, 21 °C and 35 %', unsure(steadyAir(21, 0.35))],
] as const) {
  const board = oakIn(air);
  const before = daysOf(board, []);
  const width = before[2] - before[0];
  console.log(`\n${name}: days to 8 %, 10, 50 and 90 %`);
  console.log(`  before a reading ${said(before)}`);
  const shares: number[] = [];
  for (const day of READ_ON) {
    const after = daysOf(board, [readingOn(day, board)]);
    const share = (after[2] - after[0]) / width;
    if (!Number.isNaN(share)) shares.push(share);
    const asWide = Number.isNaN(share) ? 'open' : share.toFixed(2);
    console.log(`  read on day ${String(day).padEnd(5)}${said(after)}   as wide as before: ${asWide}`);
  }
  const oak = `oak in a room, ${name.replace(/,.*/, '')}`;
  figure({
    what: `${oak}: days to 8 %, 10 % point`,
    value: Math.min(before[0], HORIZON_DAYS),
    unit: '',
    goal: { most: 35 },
  });
  figure({
    what: `${oak}: days to 8 %, 90 % point`,
    value: Math.min(before[2], HORIZON_DAYS),
    unit: '',
    goal: { least: 182 },
  });
  // Where both are open, there is no share.
  if (shares.length > 0)
    figure({
      what: `${oak}: width after a reading`,
      value: Math.max(...shares),
      unit: '',
      goal: { most: 0.5 },
    });
}
