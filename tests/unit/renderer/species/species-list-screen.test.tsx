// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SpeciesListScreen } from '../../../../renderer/features/species/SpeciesListScreen.tsx';
import { useSpeciesSearch } from '../../../../renderer/stores/species-search.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';

function open(more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'species.list': () =>
      builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: species.id !== 'alder-red' })),
    'species.add': (species) => ({ ...species, version: 1, builtIn: false }),
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    'endUses.edit': () => ({ ...builtInEndUses[0]!, version: 2, builtIn: false }),
    ...more,
  });
  const { unmount } = render(
    <main>
      <SpeciesListScreen />
    </main>,
  );
  return { machine, unmount, user: userEvent.setup() };
}

beforeEach(() => {
  forgetEverything();
  useSpeciesSearch.setState(useSpeciesSearch.getInitialState(), true);
});
afterEach(cleanup);

describe('The species', () => {
  test('are on a screen that has the name of the way to it', () => {
    open();
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Species');
  });

  test('are all listed, each leading to its page, the person’s own marked', async () => {
    open();
    const walnut = await screen.findByRole('link', { name: /^Black walnut/ });
    expect(walnut.getAttribute('href')).toBe('#/species/walnut-black');
    expect(screen.getByRole('link', { name: /^Red alder.*yours$/ })).toBeTruthy();
    const all = builtInSpecies.length;
    expect(screen.getByRole('status').textContent).toContain(`${all} of ${all} species.`);
    await expectNoBarriers();
  });

  test('are in groups, and where readings are not corrected for the species that is said', async () => {
    open();
    const maples = (await screen.findByRole('heading', { name: 'Hard maples' })).closest('li')!;
    expect(within(maples).getByRole('link', { name: /^Sugar maple/ })).toBeTruthy();
    expect(within(maples).queryByRole('link', { name: /oak/ })).toBeNull();
    const names = screen.getAllByRole('heading', { level: 3 }).map(({ textContent }) => textContent);
    expect(names).toEqual(names.toSorted((a, b) => a!.localeCompare(b!)));
    expect(new Set(names).size).toBe(names.length);
    // No resistance curve is published for red alder in our sources.
    expect(screen.getByRole('link', { name: /^Red alder/ }).textContent).toContain('temperature only');
    expect(screen.getByRole('link', { name: /^Black walnut/ }).textContent).not.toContain('temperature only');
  });

  test('are found by a sawyer’s word, and the search is still there on coming back', async () => {
    const { user, unmount } = open();
    await user.type(await screen.findByLabelText('Search'), 'linden');
    expect(screen.getAllByRole('link').map((link) => link.getAttribute('href'))).toEqual([
      '#/species/basswood-american',
      '#/species/lime-european',
    ]);
    unmount();
    open();
    expect(((await screen.findByLabelText('Search')) as HTMLInputElement).value).toBe('linden');
  });

  test('where none is found, it is added under the name searched for', async () => {
    const { machine, user } = open();
    await user.type(await screen.findByLabelText('Search'), 'Purple heartwood');
    expect(await screen.findByText('No species is called “Purple heartwood”.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Add it' }));
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(screen.getByText(/Type a group/)).toBeTruthy();
    await user.type(screen.getByLabelText('Group'), 'Exotics');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('species.add')).toEqual([
      expect.objectContaining({ id: 'purple-heartwood', group: 'Exotics', curveId: null }),
    ]);
  });

  test('that cannot be loaded show why', async () => {
    open({
      'species.list': () => {
        throw fileInUse();
      },
    });
    expect(await screen.findByText(/Another program is using the yard file/)).toBeTruthy();
    await expectNoBarriers();
  });
});

describe('The uses', () => {
  test('show their limits, and are edited with new ones', async () => {
    const { machine, user } = open();
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    await user.click(await screen.findByRole('button', { name: 'Edit Firewood' }));
    const most = screen.getByLabelText('Highest average');
    await user.clear(most);
    await user.type(most, '18');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('endUses.edit')).toEqual([
      { id: 'firewood', basedOn: 1, changed: { maxPct: 18 } },
    ]);
  });

  test('have a tolerance, and a lower limit that can be advice only', async () => {
    const { machine, user } = open();
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    await user.click(await screen.findByRole('button', { name: /^Edit Furniture/ }));
    const tolerance = screen.getByLabelText('Tolerance');
    await user.clear(tolerance);
    await user.type(tolerance, '1.5');
    await user.click(screen.getByRole('checkbox', { name: 'Drier is fine' }));
    await user.clear(screen.getByLabelText('Shell–core difference, at most'));
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('endUses.edit')).toEqual([
      {
        id: 'furniture',
        basedOn: 1,
        changed: { tolerancePoints: 1.5, minIsAdvice: true, maxShellCorePct: null },
      },
    ]);
  });

  test('show their target, and lead to its source', async () => {
    const { user } = open();
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    const row = within(await screen.findByRole('row', { name: /^Furniture/ }));
    expect(row.getByText(unbroken('6–8%'))).toBeTruthy();
    expect(row.getAllByText('2.0 points').length).toBe(2);
    const firewood = within(screen.getByRole('row', { name: /^Firewood/ }));
    expect(firewood.getByText('Any')).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Sources' }).getAttribute('href')).toBe('#/methods?part=calls');
    expect(screen.queryByText(/no source|EN 942|from memory/)).toBeNull();
  });

  test('copied from another keep its limits and its cautions', async () => {
    const { machine, user } = open({
      'endUses.add': (endUse) => ({ ...endUse, version: 1, builtIn: false }),
    });
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    await user.click(await screen.findByRole('button', { name: 'Add a use' }));
    const framing = builtInEndUses.find(({ id }) => id === 'framing')!;
    await user.selectOptions(screen.getByLabelText('Begin with'), framing.name);
    await user.type(screen.getByLabelText('Name'), 'Barn posts');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('endUses.add')).toEqual([
      { ...framing, id: 'barn-posts', name: 'Barn posts', note: '', source: '' },
    ]);
  });

  test('of a person’s own have the cautions that the person chooses', async () => {
    const { machine, user } = open();
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    await user.click(await screen.findByRole('button', { name: /^Edit Outdoor furniture/ }));
    await user.click(screen.getByRole('checkbox', { name: 'Caution for structural use' }));
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('endUses.edit')).toMatchObject([{ changed: { cautions: ['structural'] } }]);
  });

  test('with the lowest average above the highest, nothing is saved', async () => {
    const { machine, user } = open();
    await user.click(screen.getByRole('tab', { name: 'Uses' }));
    await user.click(await screen.findByRole('button', { name: 'Edit Firewood' }));
    const least = screen.getByLabelText('Lowest average');
    await user.clear(least);
    await user.type(least, '30');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.getByText('Type more than the lowest average.')).toBeTruthy();
    expect(machine.inputsOf('endUses.edit')).toEqual([]);
    await expectNoBarriers();
  });
});
