// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, describe, expect, test } from 'vitest';
import { SpeciesField } from '../../../../renderer/form/SpeciesField.tsx';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers } from '../shell/machine.ts';

afterEach(cleanup);

function Alone({ start = '' }: { start?: string }) {
  const [speciesId, setSpeciesId] = useState(start);
  return (
    <main>
      <SpeciesField label="Species" allSpecies={builtInSpecies} value={speciesId} onValue={setSpeciesId} />
      <span data-testid="chosen">{speciesId}</span>
    </main>
  );
}

const chosen = () => screen.getByTestId('chosen').textContent;

describe('Choosing a species by any of its names', () => {
  test('a sawyer’s word finds it, Enter takes it, and the field shows its proper name', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    const field = screen.getByRole('combobox', { name: 'Species' });
    await user.type(field, 'tulip pop');
    expect(screen.getAllByRole('option')[0]?.textContent).toContain('Yellow-poplar');
    await user.keyboard('{Enter}');
    expect(chosen()).toBe('yellow-poplar');
    expect(field).toHaveProperty('value', 'Yellow-poplar');
    expect(screen.queryByRole('option')).toBeNull();
    await expectNoBarriers();
  });

  test('the arrow keys go through the list, Enter takes what they are on', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    await user.type(screen.getByRole('combobox'), 'oak');
    const name = screen.getAllByRole('option')[1]?.textContent ?? '';
    await user.keyboard('{ArrowDown}{ArrowDown}{Enter}');
    const { value } = screen.getByRole<HTMLInputElement>('combobox');
    expect(value).not.toBe('');
    expect(name.startsWith(value)).toBe(true);
  });

  test('a click takes it, a whole name needs neither key nor click', async () => {
    const user = userEvent.setup();
    render(<Alone start="walnut-black" />);
    const field = screen.getByRole('combobox');
    await user.clear(field);
    await user.type(field, 'cherry');
    await user.click(screen.getAllByRole('option')[0]!);
    expect(chosen()).toContain('cherry');
    await user.clear(field);
    await user.type(field, 'white oak');
    await user.tab();
    expect(chosen()).toBe('oak-white');
  });

  // An alias and beginnings of names in `seeds/species.json`.
  test.each([
    ['cherry', 'Black cherry'],
    ['black ch', 'Black cherry'],
    ['linden', 'American basswood'],
    ['quercus alba', 'White oak'],
    ['red oak', 'Red oak (any)'],
    ['hetre', 'European beech'],
  ])(
    'leaving the field takes what “%s” can only mean, and shows it by its proper name',
    async (typed, name) => {
      const user = userEvent.setup();
      render(<Alone />);
      const field = screen.getByRole('combobox');
      await user.type(field, typed);
      expect(chosen()).toBe('');
      await user.tab();
      expect(field).toHaveProperty('value', name);
      expect(builtInSpecies.find(({ id }) => id === chosen())?.name).toBe(name);
      expect(field.getAttribute('aria-invalid')).toBeNull();
    },
  );

  test('a word that may mean several names them once the field was left, and chooses none', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    const field = screen.getByRole('combobox');
    await user.type(field, 'hemlock');
    expect(field.getAttribute('aria-invalid')).toBeNull();
    await user.tab();
    expect(
      screen.getByText('“hemlock” could be Eastern hemlock or Western hemlock. Choose one.'),
    ).toBeTruthy();
    expect(field).toHaveProperty('value', 'hemlock');
    expect(chosen()).toBe('');
    await expectNoBarriers();
  });

  test('all oaks can be chosen, what is sold by the group first, and the field says that there are more', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    const field = screen.getByRole('combobox');
    await user.type(field, 'oak');
    const names = screen.getAllByRole('option').map(({ textContent }) => textContent);
    expect(names.slice(0, 2)).toEqual([
      expect.stringMatching(/^Red oak \(any\)/),
      expect.stringMatching(/^White oak \(any\)/),
    ]);
    expect(names.length).toBeGreaterThan(18);
    expect(screen.getByText(`${names.length} match. Keep typing to narrow the list.`)).toBeTruthy();
    await user.tab();
    expect(screen.getByText('“oak” could be Red oak (any) or White oak (any). Choose one.')).toBeTruthy();
  });

  test('a list of a few does not ask to go on typing', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    await user.type(screen.getByRole('combobox'), 'soft maple');
    expect(screen.queryByText(/match\. Keep typing/)).toBeNull();
  });

  test('Enter goes to the first of several, and only the next Enter takes it', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    const field = screen.getByRole('combobox');
    await user.type(field, 'hemlock{Enter}');
    expect(chosen()).toBe('');
    await user.keyboard('{Enter}');
    expect(field).toHaveProperty('value', 'Eastern hemlock');
  });

  test('letters within a name are no name: “herr” is not taken for a cherry', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    await user.type(screen.getByRole('combobox'), 'herr');
    await user.tab();
    expect(chosen()).toBe('');
    expect(screen.getByText(/^“herr” could be Black cherry/)).toBeTruthy();
  });

  test('a word that no species has as a name says so, stays, and chooses nothing', async () => {
    const user = userEvent.setup();
    render(<Alone start="walnut-black" />);
    const field = screen.getByRole('combobox');
    await user.clear(field);
    await user.type(field, 'zzzz');
    expect(screen.getAllByText(/^No species has that name/).length).toBeGreaterThan(0);
    await user.keyboard('{Enter}');
    await user.tab();
    expect(field).toHaveProperty('value', 'zzzz');
    expect(chosen()).toBe('');
    expect(field.getAttribute('aria-invalid')).toBe('true');
    await expectNoBarriers();
  });
});
