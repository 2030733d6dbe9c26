// @vitest-environment jsdom
import '../parts/drawing-room.ts';
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SpeciesListScreen } from '../../../../renderer/screens/species/SpeciesListScreen.tsx';
import { useSpeciesSearch } from '../../../../renderer/stores/species-search.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/catalogue.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';

function open(more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'species.list': () =>
      builtInSpecies.map((species) => ({ ...species, builtIn: species.id !== 'alder-red' })),
    'species.save': (species) => ({ ...species }) as never,
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, builtIn: true })),
    'endUses.save': (endUse) => endUse,
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

describe('The woods', () => {
  test('are all listed, each leading to its page, the person’s own marked', async () => {
    open();
    const walnut = await screen.findByRole('link', { name: /^Black walnut/ });
    expect(walnut.getAttribute('href')).toBe('#/species/walnut-black');
    expect(screen.getByRole('link', { name: /^Red alder.*own$/ })).toBeTruthy();
    expect(screen.getByText(`${builtInSpecies.length} woods.`)).toBeTruthy();
    await expectNoBarriers();
  });

  test('are found by a sawyer’s word, and the search is still there on coming back', async () => {
    const { user, unmount } = open();
    await user.type(await screen.findByLabelText('Search'), 'linden');
    expect(screen.getAllByRole('link').map((link) => link.getAttribute('href'))).toEqual([
      '#/species/basswood-american',
    ]);
    unmount();
    open();
    expect(((await screen.findByLabelText('Search')) as HTMLInputElement).value).toBe('linden');
  });

  test('where none is found, it is added under the name searched for', async () => {
    const { machine, user } = open();
    await user.type(await screen.findByLabelText('Search'), 'Purple heartwood');
    expect(await screen.findByText('No wood goes by “Purple heartwood” here.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Add it' }));
    await user.click(screen.getByRole('button', { name: 'Save the wood' }));
    expect(screen.getByText(/Say which bay of the yard/)).toBeTruthy();
    await user.type(screen.getByLabelText('Group'), 'Exotics');
    await user.click(screen.getByRole('button', { name: 'Save the wood' }));
    expect(machine.inputsOf('species.save')).toEqual([
      expect.objectContaining({ id: 'purple-heartwood', group: 'Exotics', curveId: null }),
    ]);
  });

  test('that cannot be fetched say so', async () => {
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
  test('say their limits, and are changed with new ones', async () => {
    const { machine, user } = open();
    await user.click(screen.getByLabelText('Uses'));
    await user.click(await screen.findByRole('button', { name: 'Change Firewood' }));
    const most = screen.getByLabelText('Average to');
    await user.clear(most);
    await user.type(most, '18');
    await user.click(screen.getByRole('button', { name: 'Save the use' }));
    expect(machine.inputsOf('endUses.save')).toEqual([
      expect.objectContaining({ id: 'firewood', maxPct: 18 }),
    ]);
  });

  test('with limits turned round, nothing is saved', async () => {
    const { machine, user } = open();
    await user.click(screen.getByLabelText('Uses'));
    await user.click(await screen.findByRole('button', { name: 'Change Firewood' }));
    const least = screen.getByLabelText('Average from');
    await user.clear(least);
    await user.type(least, '30');
    await user.click(screen.getByRole('button', { name: 'Save the use' }));
    expect(screen.getByText('The upper limit must lie above the lower one.')).toBeTruthy();
    expect(machine.inputsOf('endUses.save')).toEqual([]);
    await expectNoBarriers();
  });
});
