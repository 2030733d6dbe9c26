// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { App } from '../../../../renderer/app/App.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { openDemoYard } from '../../../../renderer/stores/yard.ts';
import { type Settings, usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';
import { aMeter } from '../shell/a-meter.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

test('the settings in force are those of the yard that is open', async () => {
  const own: YardInfo = {
    uuid: '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10',
    kind: 'own',
    file: '/own.sqlite',
    problem: null,
    canStartAfresh: false,
    boards: 0,
    version: '0.1.0',
  };
  const settings: Settings = { ...usualSettings, units: 'metric' };
  let demoIsOpen = false;
  playMachine({
    'yard.info': () => own,
    'yard.openDemo': () => {
      demoIsOpen = true;
      return { ...own, uuid: '0a3f7f1b-9d53-4c3b-8f55-0b5c1d4e8f10', kind: 'demo', file: '/demo.sqlite' };
    },
    'settings.get': () => ({ ...settings, units: demoIsOpen ? 'imperial' : 'metric' }),
    'meter.state': () => aMeter(),
    'stacks.list': () => [],
    'species.list': () => [],
    'stations.find': () => ({ years: [], isClear: false }),
  });
  render(<App />);
  await waitFor(() => expect(useSettings.getState().settings?.units).toBe('metric'));
  await act(openDemoYard);
  await waitFor(() => expect(useSettings.getState().settings?.units).toBe('imperial'));
  expect(screen.getByText(/Demo yard: invented data/)).toBeTruthy();
});
