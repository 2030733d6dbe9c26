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
      <SpeciesField
        label="Species"
        allSpecies={builtInSpecies}
        speciesId={speciesId}
        onSpecies={setSpeciesId}
      />
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
    expect(screen.getByRole('option', { selected: true }).textContent).toContain('Yellow-poplar');
    await expectNoBarriers();
    await user.keyboard('{Enter}');
    expect(chosen()).toBe('yellow-poplar');
    expect(field).toHaveProperty('value', 'Yellow-poplar');
    expect(screen.queryByRole('option')).toBeNull();
  });

  test('the arrow keys go through the list and round its ends', async () => {
    const user = userEvent.setup();
    render(<Alone />);
    await user.type(screen.getByRole('combobox'), 'oak');
    const options = screen.getAllByRole('option');
    await user.keyboard('{ArrowUp}');
    expect(options.at(-1)?.getAttribute('aria-selected')).toBe('true');
    await user.keyboard('{ArrowDown}{ArrowDown}{Enter}');
    expect(screen.getByRole('combobox')).toHaveProperty('value', options[1]?.firstChild?.textContent);
  });

  test('a click takes it too, and Escape leaves what was chosen', async () => {
    const user = userEvent.setup();
    render(<Alone start="walnut-black" />);
    const field = screen.getByRole('combobox');
    await user.clear(field);
    await user.type(field, 'cherry');
    await user.keyboard('{Escape}');
    expect(field).toHaveProperty('value', 'Black walnut');
    await user.clear(field);
    await user.type(field, 'cherry');
    await user.click(screen.getAllByRole('option')[0]!);
    expect(chosen()).toContain('cherry');
  });

  test('a word that no species has as a name says so, and Enter changes nothing', async () => {
    const user = userEvent.setup();
    render(<Alone start="walnut-black" />);
    await user.clear(screen.getByRole('combobox'));
    await user.type(screen.getByRole('combobox'), 'plastic');
    expect(screen.getByRole('status').textContent).toContain('No species has that name');
    await user.keyboard('{Enter}');
    expect(chosen()).toBe('walnut-black');
  });
});
