// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { SpeciesField } from '../../../../renderer/form/SpeciesField.tsx';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';

afterEach(cleanup);

function Shown({ onChosen }: { onChosen: (id: string) => void }) {
  const [value, setValue] = useState('');
  return (
    <SpeciesField
      label="Species"
      allSpecies={builtInSpecies}
      value={value}
      onValue={(id) => {
        setValue(id);
        onChosen(id);
      }}
    />
  );
}

test('a name that is nearly right is asked about, and chosen only by the person', async () => {
  const chosen: string[] = [];
  const user = userEvent.setup();
  render(<Shown onChosen={(id) => chosen.push(id)} />);
  const field = screen.getByRole<HTMLInputElement>('combobox', { name: 'Species' });
  await user.type(field, 'black chery');
  const question = 'No species has that name. Did you mean Black cherry?';
  expect(screen.getAllByText(question).length).toBeGreaterThan(0);
  expect(screen.getAllByRole('option')).toHaveLength(1);
  await user.tab();
  expect(chosen).toEqual([]);
  expect(field.value).toBe('black chery');
  await user.type(field, '{ArrowDown}{Enter}');
  expect(chosen).toEqual(['cherry-black']);
});

test('a name that is nearly right is taken by a press', async () => {
  const chosen: string[] = [];
  const user = userEvent.setup();
  render(<Shown onChosen={(id) => chosen.push(id)} />);
  const field = screen.getByRole<HTMLInputElement>('combobox', { name: 'Species' });
  await user.type(field, 'black chery');
  await user.tab();
  await user.click(screen.getByRole('button', { name: 'Use Black cherry for “black chery”' }));
  expect(chosen).toEqual(['cherry-black']);
  expect(field.value).toBe('Black cherry');
  expect(screen.queryByRole('button', { name: /^Use / })).toBeNull();
});
