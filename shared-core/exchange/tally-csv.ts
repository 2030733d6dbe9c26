import { KG_PER_POUND } from '../measures.ts';
import type { Tally, TallyBy, TallyRow } from '../tally/tally.ts';
import type { DisplayUnits } from '../units/length.ts';
import type { Say } from '../words/words.ts';
import { BYTE_ORDER_MARK, type Cell, csvRow } from './csv.ts';
import { inLengthUnit, lengthUnit, rounded } from './csv-tables.ts';

/** No weight or volume of boards that have none: a blank is not 0. */
const ifAny = (boards: number, amount: number): Cell => (boards === 0 ? null : rounded(amount));

/**
 * A tally as a CSV file: a row for each group, without the total, which a spreadsheet adds up. Columns are those that the
 * tally is split by, then the amounts, each with how many boards are in it.
 * @param units  of lengths and weights, which the head names; volumes are in board feet and in cubic meters
 */
export function tallyCsv({ rows }: Tally, by: readonly TallyBy[], units: DisplayUnits, say: Say): string {
  const inUnit = (headText: string, unitText: string) => say('unit.head-in', { headText, unitText });
  const weightUnit = units === 'metric' ? 'kg' : 'lb';
  const inWeightUnit = (kg: number) => (units === 'metric' ? kg : kg / KG_PER_POUND);
  const of: Record<TallyBy, readonly [head: string, cell: (row: TallyRow) => Cell]> = {
    species: [say('csv.species'), ({ speciesName }) => speciesName ?? null],
    thickness: [
      inUnit(say('csv.thickness'), lengthUnit(units)),
      ({ thickness }) => (thickness ? inLengthUnit(thickness.thicknessMm, units) : null),
    ],
    call: [say('csv.call'), ({ call }) => call ?? null],
    stack: [say('csv.stack'), ({ stackName }) => stackName ?? null],
  };
  const columns: (readonly [head: string, cell: (row: TallyRow) => Cell])[] = [
    ...by.map((each) => of[each]),
    [say('csv.boards'), ({ boards }) => boards],
    [say('csv.boards-measured'), ({ measured }) => measured],
    [say('csv.board-feet'), ({ measured, boardFeet }) => ifAny(measured, boardFeet)],
    [inUnit(say('csv.volume'), 'm³'), ({ measured, cubicMeters }) => ifAny(measured, cubicMeters)],
    [say('csv.boards-weighed'), ({ weighed }) => weighed],
    [inUnit(say('csv.weight-now'), weightUnit), ({ weighed, nowKg }) => ifAny(weighed, inWeightUnit(nowKg))],
    [
      inUnit(say('csv.weight-then'), weightUnit),
      ({ weighed, targetKg }) => ifAny(weighed, inWeightUnit(targetKg)),
    ],
  ];
  return [
    BYTE_ORDER_MARK,
    csvRow(columns.map(([head]) => head)),
    ...rows.map((row) => csvRow(columns.map(([, cell]) => cell(row)))),
  ].join('');
}
