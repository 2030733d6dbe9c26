import { type ImportChoices, nothingChosen } from '../../../shared-core/contract/import.ts';
import type { KnownYard } from '../../../shared-core/import/boards-of-table.ts';
import { checkTable } from '../../../shared-core/import/check-table.ts';
import { guessTable } from '../../../shared-core/import/guess-columns.ts';
import { reshapedTable } from '../../../shared-core/import/reshaped.ts';
import type { Reader } from '../../../shared-core/import/table.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const TODAY = '2026-06-01';
const american: Reader = { today: TODAY, units: 'imperial', order: 'mdy', species: builtInSpecies };
const { say } = createWords({
  catalog: english,
  locale: 'en-US',
  timeZone: 'UTC',
  units: 'imperial',
  today: null,
});

/** A yard without boards. */
const yard: KnownYard = {
  today: TODAY,
  minutesNow: 720,
  localOf: ({ day, minutes }) => ({ day, minutes }),
  species: builtInSpecies,
  board: () => undefined,
  stacks: new Map(),
  places: new Map(),
  closedStacks: new Set(),
  closedPlaces: new Set(),
};

/**
 * A table, read as it is guessed: what goes in, and what a person reads of the rest.
 *
 * @param text    cells between commas, one row a line
 * @param chosen  what a person chose
 */
export function asRead(text: string, chosen: Partial<ImportChoices> = {}, reader = american) {
  const rows = text.split('\n').map((line) => line.split(','));
  const width = Math.max(...rows.map((row) => row.length));
  const asWritten = rows.map((row) => [...row, ...Array<string>(width - row.length).fill('')]);
  const { table, reshaped } = reshapedTable(asWritten, reader);
  const guessed = guessTable(table, reader);
  const choices: ImportChoices = {
    ...guessed,
    ...nothingChosen,
    stackName: 'Imported',
    place: { placeId: 1 },
    ...chosen,
  };
  const checked = checkTable(table, choices, yard, reshaped === 'turned');
  return {
    reshaped,
    columns: guessed.columns,
    boards: checked.plan.boards,
    /** "A1 2025-05-01 14.2 shell 20" of each reading; the temperature in °C. */
    readings: checked.plan.days.flatMap(({ code, day, readings }) =>
      readings.map(({ raw, depth, tempC }) =>
        [code, day, raw, depth, tempC === null ? null : Math.round(tempC)]
          .filter((part) => part !== null)
          .join(' '),
      ),
    ),
    firstRows: checked.firstRows.map(say),
    speciesNames: checked.speciesNames,
    problems: checked.problems.map(say),
    remarks: checked.remarks.map(say),
    refused: checked.refused.map(({ row, problems }) => [
      row + 1,
      ...problems.map(({ problem }) => say(problem)),
    ]),
  };
}
