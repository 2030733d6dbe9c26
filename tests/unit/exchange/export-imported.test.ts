/** What was exported as a table is understood when it comes in again, with nothing chosen by hand but the place. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tableInFile } from '../../../electron/app/importing/table-file.ts';
import type { CsvKind } from '../../../shared-core/contract/exchange.ts';
import { type ImportChoices, nothingChosen } from '../../../shared-core/contract/import.ts';
import { checkTable } from '../../../shared-core/import/check-table.ts';
import { guessTable } from '../../../shared-core/import/guess-columns.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { savePastRound } from './a-past-round.ts';
import { downloaded } from './downloaded.ts';

// Real threads on a busy computer.
withYardOfTwo();

const region = { locale: 'en-US', timeZone: 'America/Chicago' };

/** What an empty yard would get of an exported table. */
async function imported(kind: CsvKind) {
  const offered = await yard.command('exchange.beginExport', { kind, region, work: null });
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-csv-')), 'table.csv');
  writeFileSync(file, await downloaded(yard, offered));
  const table = tableInFile(file);
  const species = await yard.query('species.list', {});
  const guessed = guessTable(table, { today: '2026-06-01', units: 'metric', order: 'dmy', species });
  const choices: ImportChoices = {
    ...guessed,
    ...nothingChosen,
    stackName: null,
    place: { placeId: 1 },
    speciesId: 'walnut-black',
    thicknessMm: 20,
  };
  return checkTable(
    table,
    choices,
    {
      today: '2026-06-01',
      minutesNow: 1439,
      localOf: (time) => time,
      species,
      board: () => undefined,
      stacks: new Map(),
      places: new Map([['shop', 1]]),
      closedStacks: new Set(),
      closedPlaces: new Set(),
    },
    false,
  );
}

test.each(['metric', 'imperial'] as const)('boards and readings, in %s units', async (units) => {
  const [one] = yard.boards;
  await yard.command('settings.edit', { units });
  const known = { widthMm: 254, lengthMm: 2540, sawnOn: '2025-03-15', log: 'Ridge', layer: 2, note: 'Knot' };
  await yard.command('boards.edit', { id: one!.id, basedOn: 1, changed: known });
  await savePastRound([8, 'unknown'], [14, 15.5]);
  const { readings } = await yard.query('boards.get', { id: one!.id });
  const [, excluded] = readings;
  await yard.command('readings.exclude', { readingId: excluded!.id, why: { code: 'wrong-spot' } });

  const boards = await imported('boards');
  expect([boards.problems, boards.refused, boards.plan.days]).toEqual([[], [], []]);
  expect(boards.plan.boards).toMatchObject([
    { code: 'WAL-01', stackName: 'Walnut', speciesId: 'walnut-black', sawnOn: '2025-03-15' },
    { code: 'WAL-02' },
  ]);
  const [board] = boards.plan.boards;
  expect(board).toMatchObject({ log: 'Ridge', layer: 2, note: 'Knot' });
  expect(board!.thicknessMm).toBeCloseTo(16, 1);
  expect(board!.widthMm).toBeCloseTo(254, 1);
  expect(board!.lengthMm).toBeCloseTo(2540, 1);

  const read = await imported('readings');
  expect([read.problems, read.refused]).toEqual([[], []]);
  expect(read.plan.days).toMatchObject([{ code: 'WAL-01', day: '2026-05-02', minutes: null }]);
  // As the meter showed them, not as they were corrected.
  expect(read.plan.days[0]!.readings).toMatchObject([
    { raw: 14, unit: 'pct', excluded: null },
    { raw: 15.5, unit: 'pct', depthMm: null, excluded: 'Wrong board or spot' },
  ]);
  expect(read.plan.days[0]!.readings[0]!.depthMm).toBeCloseTo(8, 1);
  expect(read.plan.days[0]!.readings[0]!.tempC).toBeCloseTo(20, 1);
});
