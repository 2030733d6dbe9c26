// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ImportTable } from '../../../../renderer/features/import/ImportTable.tsx';
import type { RequestOutput } from '../../../../shared-core/contract/requests.ts';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';

type Checked = RequestOutput<'imports.check'>;

beforeEach(forgetEverything);
afterEach(cleanup);

const nothing: Checked = {
  plan: '00000000-0000-4000-8000-000000000001',
  counts: { boards: 0, stacks: 0, places: 0, readings: 0, airValues: 0, ovenChecks: 0 },
  knownReadings: 0,
  rows: 0,
  leftOut: 0,
  otherInYard: 0,
  refused: 0,
  refusedRows: [],
  problems: [],
  remarks: [],
  isOrderAsked: false,
  firstRows: [],
  speciesNames: [],
  unknownPlaces: [],
};
const refused = {
  refused: 1,
  refusedRows: [{ row: 1, cells: ['B1'], problems: [{ column: 0, problem: message('import.no-species') }] }],
};
const unknown = (name: string) => ({ name, rows: 1, speciesId: null });

test.each<[string, Partial<Checked>, string]>([
  [
    'a name whose species is to be chosen',
    { ...refused, speciesNames: [unknown('old barn wood')] },
    'Nothing can be imported yet. Choose above what this name means: old barn wood.',
  ],
  [
    'names of species and places to be chosen, and none that is known',
    {
      ...refused,
      speciesNames: [unknown('old barn wood'), { name: 'walnut', rows: 2, speciesId: builtInSpecies[0]!.id }],
      unknownPlaces: [{ name: 'Back lot', rows: 3 }],
    },
    'Nothing can be imported yet. Choose above what these names mean: old barn wood and Back lot.',
  ],
  [
    'no more names than a person reads',
    { ...refused, speciesNames: ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map(unknown) },
    'Nothing can be imported yet. Choose above what these names mean: a, b, c, d, e, and 2 more names.',
  ],
  ['rows to correct', refused, 'Nothing can be imported yet. Correct or skip the rows below.'],
  ['that all is here', { knownReadings: 2 }, 'Nothing in this table is new. 2 readings are here already.'],
])('a table of which nothing goes in says %s', async (_, checked, said) => {
  playMachine({
    'imports.check': () => ({ ...nothing, ...checked }),
    'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
    'places.list': () => [],
    'endUses.list': () => [],
    'meters.list': () => [],
  });
  render(
    <main>
      <ImportTable
        table={{
          table: '00000000-0000-4000-8000-000000000002',
          fileName: 'barn.csv',
          rows: 2,
          reshaped: null,
          heads: ['Board'],
          sample: [{ row: 1, cells: ['B1'] }],
          guessed: { kind: 'boards', headerRow: 0, decimalMark: '.', columns: [] },
        }}
        onClose={() => undefined}
      />
    </main>,
  );
  expect((await screen.findByText(/^Nothing /)).textContent?.trim()).toBe(said);
});
