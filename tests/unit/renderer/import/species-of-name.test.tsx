// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { SpeciesOfName } from '../../../../renderer/features/import/SpeciesOfName.tsx';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

const open = (name: string, value = '') => {
  const onValue = vi.fn();
  render(
    <main>
      <SpeciesOfName name={name} rows={3} allSpecies={builtInSpecies} value={value} onValue={onValue} />
    </main>,
  );
  return onValue;
};

test('a name with a typing slip is offered as the nearest species, and chosen only on request', async () => {
  const onValue = open('red oke');
  expect(onValue).not.toHaveBeenCalled();
  await expectNoBarriers();
  await userEvent.click(screen.getByRole('button', { name: 'Use Red oak (any) for “red oke”' }));
  const redOak = builtInSpecies.find(({ name }) => name === 'Red oak (any)')!;
  expect(onValue).toHaveBeenCalledExactlyOnceWith(redOak.id);
});

test.each([
  ['that is near to none', 'Lignum vitae burl', ''],
  ['for which one is chosen', 'red oke', builtInSpecies[0]!.id],
])('for a name %s nothing is offered', (_, name, value) => {
  open(name, value);
  expect(screen.getByRole('combobox', { name: `${name} (3 rows)` })).toBeTruthy();
  expect(screen.queryByRole('button', { name: /^Use / })).toBeNull();
});
