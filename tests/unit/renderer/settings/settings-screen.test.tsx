// @vitest-environment jsdom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SettingsScreen } from '../../../../renderer/features/settings/SettingsScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { useYard } from '../../../../renderer/stores/yard.ts';
import { type Settings, usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';
import { aYard } from '../shell/a-yard-file.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';

const settings: Settings = { ...usualSettings, units: 'metric' };

const info = aYard({ file: '/home/ann/.local/share/pintally/yard.sqlite', boards: 0 });

const inForce = (): Settings => useSettings.getState().settings ?? settings;

function open(more: Parameters<typeof playMachine>[0] = {}, yard: YardInfo = info) {
  useSettings.setState({ settings });
  useYard.setState({ info: yard });
  const machine = playMachine({ 'settings.edit': (changed) => ({ ...inForce(), ...changed }), ...more });
  render(
    <main>
      <SettingsScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('Settings', () => {
  test('take effect at once: units, sound, saving and going on by itself', async () => {
    const { machine, user } = open();
    await expectNoBarriers();
    await user.click(screen.getByRole('radio', { name: 'US (in, lb, °F)' }));
    const sounds = screen.getByRole('group', { name: 'Sounds in a round' });
    await user.click(within(sounds).getByRole('radio', { name: 'Loud' }));
    await user.click(within(sounds).getByRole('radio', { name: 'Off' }));
    await user.click(screen.getByLabelText('Save a reading as soon as it settles'));
    await user.click(screen.getByRole('radio', { name: 'After 5 s' }));
    expect(machine.inputsOf('settings.edit')).toEqual([
      { units: 'imperial' },
      { soundLevel: 'loud' },
      { sound: false },
      { saveWhenSettled: false },
      { nextBoardAfterS: 5 },
    ]);
  });

  test.each([
    ['own', 'It is backed up each day you open Pintally'],
    ['demo', 'The demo yard is not backed up.'],
  ] as const)('say what is true of backups of the %s yard', (kind, sentence) => {
    open({}, { ...info, kind });
    expect(screen.getByRole('main').textContent).toContain(sentence);
  });

  test('the units are those of the region until a person chooses', async () => {
    const { machine, user } = open();
    act(() => useSettings.setState({ settings: { ...settings, units: null } }));
    expect(screen.getByText('Taken from your computer’s region until you choose.')).toBeTruthy();
    expect(screen.getByRole('radio', { name: 'US (in, lb, °F)' })).toHaveProperty('checked', true);
    await user.click(screen.getByRole('radio', { name: 'Metric (mm, kg, °C)' }));
    expect(machine.inputsOf('settings.edit')).toEqual([{ units: 'metric' }]);
    expect(await screen.findByText('Chosen by you.')).toBeTruthy();
  });

  test('that cannot be saved go back to those in force, with a notice', async () => {
    const { user } = open({
      'settings.edit': () => {
        throw fileInUse();
      },
    });
    await user.click(screen.getByRole('radio', { name: 'US (in, lb, °F)' }));
    expect(screen.getByRole('radio', { name: 'Metric (mm, kg, °C)' })).toHaveProperty('checked', true);
    expect(useNotices.getState().notices).toMatchObject([
      { kind: 'problem', sentence: /using the yard file/ },
    ]);
  });

  test('the screen shows where the data are, and opens the demo yard', async () => {
    const { machine, user } = open({ 'yard.openDemo': () => ({ ...info, kind: 'demo' }) });
    expect(screen.getByText(info.file)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Open the demo yard' }));
    expect(machine.inputsOf('yard.openDemo')).toHaveLength(1);
    expect(screen.getByRole('button', { name: 'Remove the demo yard' })).toBeTruthy();
  });

  test('the demo yard is removed once that is confirmed, and the own one opens', async () => {
    const { machine, user } = open(
      { 'yard.removeDemo': () => ({ ...info, notRemoved: null }) },
      { ...info, kind: 'demo' },
    );
    await user.click(screen.getByRole('button', { name: 'Remove the demo yard' }));
    const dialog = screen.getByRole('dialog', { name: 'Remove the demo yard?' });
    await expectNoBarriers();
    expect(machine.inputsOf('yard.removeDemo')).toEqual([]);
    await user.click(within(dialog).getByRole('button', { name: 'Remove the demo yard' }));
    expect(machine.inputsOf('yard.removeDemo')).toHaveLength(1);
    expect(screen.getByText(/Your own yard is open/)).toBeTruthy();
  });

  test('the demo yard stays when the person thinks better of it', async () => {
    const { machine, user } = open(
      { 'yard.removeDemo': () => ({ ...info, notRemoved: null }) },
      { ...info, kind: 'demo' },
    );
    await user.click(screen.getByRole('button', { name: 'Remove the demo yard' }));
    await user.click(screen.getByRole('button', { name: 'Cancel' }));
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(machine.inputsOf('yard.removeDemo')).toEqual([]);
    expect(screen.getByText(/The demo yard is open/)).toBeTruthy();
  });

  test('the error report is shown over the screen where the computer opens no files, and can be saved', async () => {
    const log = {
      file: '/data/logs/pintally.log',
      text: '2026-11-26T08:00:00.000Z fault: RangeError\n',
      isWritten: true,
    };
    const { user } = open({ 'log.open': () => log });
    await user.click(screen.getByRole('button', { name: 'Open the error report' }));
    const dialog = await screen.findByRole('dialog', { name: 'Error report' });
    expect(within(dialog).getByText(log.file)).toBeTruthy();
    expect(within(dialog).getByRole('region', { name: 'Newest errors' }).textContent).toBe(log.text);
    expect(within(dialog).getByRole('button', { name: 'Save the error report' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('an error report that cannot be written says that, and not that nothing has gone wrong', async () => {
    const { user } = open({ 'log.open': () => ({ file: '/pintally.log', text: '', isWritten: false }) });
    await user.click(screen.getByRole('button', { name: 'Open the error report' }));
    expect(await screen.findByText(/^The error report cannot be written\./)).toBeTruthy();
    expect(screen.queryByText('Nothing has gone wrong yet.')).toBeNull();
  });

  test('an empty error report says so, and one that the computer opened is not shown twice', async () => {
    let text: string | null = '';
    const { user } = open({ 'log.open': () => ({ file: '/pintally.log', text, isWritten: true }) });
    await user.click(screen.getByRole('button', { name: 'Open the error report' }));
    expect(await screen.findByText('Nothing has gone wrong yet.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Save the error report' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Close' }));
    text = null;
    await user.click(screen.getByRole('button', { name: 'Open the error report' }));
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(useNotices.getState().notices).toMatchObject([{ sentence: 'Error report opened.' }]);
  });
});
