// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { App } from '../../../../renderer/app/App.tsx';
import { setLink } from '../../../../renderer/stores/link.ts';
import { go } from '../../../../renderer/stores/navigation.ts';
import type { MeterState } from '../../../../shared-core/contract/meter.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import { aRound } from '../round/a-round.ts';
import { aStack } from '../stacks/a-yard.ts';
import { aLiveMeter } from './a-meter.ts';
import { aYard, backupsAre } from './a-yard-file.ts';
import { bringAllScreens } from './all-screens.ts';
import { expectNoBarriers, forgetEverything, playMachine } from './machine.ts';

/** The whole window on an open round, with a live meter. */
async function open(meter: MeterState = aLiveMeter()) {
  location.hash = '#/round/12';
  const machine = playMachine({
    'yard.info': () => aYard(),
    'meter.state': () => meter,
    'settings.get': () => usualSettings,
    'stacks.list': () => [aStack({ id: 4, name: 'Walnut from the lane', openRoundId: 12 })],
    'backups.state': () => backupsAre(),
    'rounds.open': () => aRound(),
    'rounds.leave': () => ({}),
  });
  setLink('open');
  render(<App />);
  act(() => dispatchEvent(new HashChangeEvent('hashchange')));
  await screen.findByRole('heading', { level: 1, name: /WAL-01/ });
  return machine;
}

async function goTo(...[route]: Parameters<typeof go>): Promise<void> {
  await act(async () => {
    go(route);
    await new Promise((resolve) => addEventListener('hashchange', resolve, { once: true }));
  });
}
const chip = () => screen.getByRole('link', { name: /^Meter:/ });

bringAllScreens();
beforeEach(forgetEverything);
afterEach(cleanup);

test('leaving the round pauses it, the bar says that nothing is saved, and back on the round it goes on', async () => {
  const machine = await open();
  expect(chip().textContent).toMatch(/^Meter: Live/);
  expect(machine.inputsOf('rounds.leave')).toEqual([]);
  await goTo({ name: 'meter' });
  expect(machine.inputsOf('rounds.leave')).toEqual([{ roundId: 12 }]);
  expect(chip().textContent).toBe('Meter: Round paused. Nothing is saved.');
  await expectNoBarriers();
  await goTo({ name: 'round', id: 12 });
  expect(machine.inputsOf('rounds.open')).toHaveLength(2);
  expect(machine.inputsOf('rounds.leave')).toHaveLength(1);
  expect(chip().textContent).toMatch(/^Meter: Live/);
});

test('where another window has the meter, the bar does not speak for it', async () => {
  await open(aLiveMeter({ heldBy: 'another-window' }));
  await goTo({ name: 'meter' });
  expect(chip().textContent).toMatch(/^Meter: Live/);
});

test('a tab or a lid in front of the round does not leave it', async () => {
  const machine = await open();
  document.dispatchEvent(new Event('visibilitychange'));
  dispatchEvent(new Event('blur'));
  expect(machine.inputsOf('rounds.leave')).toEqual([]);
});
