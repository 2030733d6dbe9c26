import type { BuyerSheet, Passport } from '../contract/report.ts';
import type { LatestFinding } from '../contract/yard.ts';
import type { Call } from '../probing/calls/assessment.ts';

/** What a sheet states about a board, as far as its check code is of it. */
export type SheetFacts =
  | ({ kind: 'buyer' } & Pick<BuyerSheet, 'board' | 'endUse'>)
  | ({ kind: 'passport' } & Pick<Passport, 'board' | 'endUse' | 'readings' | 'moves' | 'samples'>);

/** As it is printed: to a tenth of a percent. */
const tenth = (pct: number | null): number | null => (pct === null ? null : Math.round(pct * 10) / 10);
const hundredth = (mm: number | null): number | null => (mm === null ? null : Math.round(mm * 100) / 100);

/**
 * What a sheet about a board states, in one form for whatever units and language: its check code is a digest of it.
 * Forecasts are not in it, because they are made again every day.
 *
 * @param untilMs  what was saved later is left out, UTC, ms
 * @param found    the finding that it states; null before the first
 * @param call     the call that it states
 */
export function printedFacts(
  facts: SheetFacts,
  untilMs: number,
  found: LatestFinding | null,
  call: Call | null,
): string {
  const isThen = (instant: string) => Date.parse(instant) <= untilMs;
  const { board, endUse } = facts;
  const ofBoth = [
    facts.kind,
    board.code,
    board.speciesName,
    hundredth(board.thicknessMm),
    hundredth(board.widthMm),
    hundredth(board.lengthMm),
    [endUse.name, endUse.minPct, endUse.maxPct],
    found && [
      found.at,
      tenth(found.averagePct),
      found.averageIs,
      tenth(found.shellPct),
      tenth(found.corePct),
    ],
    call,
  ];
  if (facts.kind === 'buyer') return JSON.stringify(ofBoth);
  const { readings, moves, samples } = facts;
  return JSON.stringify([
    ...ofBoth,
    board.sawnOn,
    board.log,
    readings
      .filter(({ takenAt }) => isThen(takenAt))
      .map(({ takenAt, spot, raw, unit, woodTempC, corrected, excluded, note = '' }) => [
        takenAt,
        spot.depth,
        hundredth(spot.depthMm),
        raw,
        unit,
        woodTempC,
        tenth(corrected.mcPct),
        excluded === null,
        note,
      ]),
    moves.filter(({ since }) => isThen(since)).map(({ since, placeName }) => [since, placeName]),
    samples.cuts
      .filter(({ at }) => isThen(at))
      .map(({ at, boardKg, sections, excluded }) => [
        at,
        boardKg,
        sections.map(({ wetGrams, dryGrams }) => [wetGrams, dryGrams]),
        excluded === null,
      ]),
    samples.weights.filter(({ at }) => isThen(at)).map(({ at, kg, excluded }) => [at, kg, excluded === null]),
  ]);
}
