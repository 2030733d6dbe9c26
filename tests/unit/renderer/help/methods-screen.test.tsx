// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { MethodsScreen } from '../../../../renderer/help/MethodsScreen.tsx';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

/** A few are enough: the core's test has all of them on the page. */
const few = builtInSpecies.filter(({ id }) => ['walnut-black', 'apple'].includes(id));

function open(part: string | null = null) {
  playMachine({
    'species.list': () => few.map((species) => ({ ...species, version: 1, builtIn: true })),
    'endUses.list': () => builtInEndUses.slice(0, 2).map((use) => ({ ...use, version: 1, builtIn: true })),
  });
  render(
    <main>
      <MethodsScreen part={part} />
    </main>,
  );
  return userEvent.setup();
}

beforeEach(() => {
  forgetEverything();
  Element.prototype.scrollIntoView = vi.fn();
});
afterEach(cleanup);

describe('The methods page', () => {
  test('has a heading for each part, and a list of them that leads there', async () => {
    open();
    expect(await screen.findByRole('heading', { name: 'EMC of air' })).toBeTruthy();
    const link = screen.getByRole('link', { name: 'Drying model and forecast' });
    expect(link.getAttribute('href')).toBe('#/methods?part=drying');
  });

  test('can be searched by heading', async () => {
    const user = open();
    await user.type(await screen.findByLabelText('Find a heading'), 'shrinkage');
    expect(screen.getByRole('heading', { name: 'Shrinkage, size and weight' })).toBeTruthy();
    expect(screen.queryByRole('heading', { name: 'EMC of air' })).toBeNull();
    // All parts at once take too long here; `no-barriers.spec.ts` looks at them in a browser.
    await expectNoBarriers();
    await user.type(screen.getByLabelText('Find a heading'), ' zzz');
    expect(screen.getByText('No part has “shrinkage zzz”.')).toBeTruthy();
  });

  test('opens at the part that a link leads to, which then has the focus', async () => {
    open('species');
    const part = await screen.findByRole('region', { name: 'Sources of species' });
    expect(within(part).getAllByText(/Wood Handbook/).length).toBeGreaterThan(0);
    expect(document.activeElement?.contains(part)).toBe(true);
    expect(document.activeElement).not.toBe(document.body);
  });

  test('prints', async () => {
    window.print = vi.fn();
    const user = open();
    await user.click(await screen.findByRole('button', { name: 'Print' }));
    expect(window.print).toHaveBeenCalledOnce();
  });
});
