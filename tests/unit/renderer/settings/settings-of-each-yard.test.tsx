// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { App } from '../../../../renderer/app/App.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { openDemoYard } from '../../../../renderer/stores/yard.ts';
import { type Settings, usualSettings } from '../../../../shared-core/contract/settings.ts';
import { aMeter } from '../shell/a-meter.ts';
import { aYard } from '../shell/a-yard-file.ts';
import { bringAllScreens } from '../shell/all-screens.ts';
import { fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';

bringAllScreens();
beforeEach(forgetEverything);
afterEach(cleanup);

const own = aYard({ file: '/own.sqlite', boards: 0 });
const emptyYard = {
  'meter.state': () => aMeter(),
  'stacks.list': () => [],
  'species.list': () => [],
  'stations.find': () => ({ years: [], more: 0, isClear: false, onlyState: null }),
};

test('a notice says that settings cannot be read, and they are read again', async () => {
  let isInUse = true;
  playMachine({
    ...emptyYard,
    'yard.info': () => own,
    'settings.get': () => {
      if (isInUse) throw fileInUse();
      return { ...usualSettings, units: 'imperial' };
    },
  });
  render(<App />);
  expect((await screen.findByRole('alert')).textContent).toContain('Another program is using the yard file.');
  isInUse = false;
  await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
  await waitFor(() => expect(useSettings.getState().settings.units).toBe('imperial'));
  expect(screen.queryByRole('alert')).toBeNull();
});

test('the settings in force are those of the yard that is open', async () => {
  const settings: Settings = { ...usualSettings, units: 'metric' };
  let demoIsOpen = false;
  playMachine({
    'yard.info': () => own,
    'yard.openDemo': () => {
      demoIsOpen = true;
      return { ...own, uuid: '0a3f7f1b-9d53-4c3b-8f55-0b5c1d4e8f10', kind: 'demo', file: '/demo.sqlite' };
    },
    'settings.get': () => ({ ...settings, units: demoIsOpen ? 'imperial' : 'metric' }),
    ...emptyYard,
  });
  render(<App />);
  await waitFor(() => expect(useSettings.getState().settings.units).toBe('metric'));
  await act(openDemoYard);
  await waitFor(() => expect(useSettings.getState().settings.units).toBe('imperial'));
  expect(screen.getByText(/Demo yard: invented data/)).toBeTruthy();
});
