// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { MeterScreen } from '../../../../renderer/features/meter/MeterScreen.tsx';
import { followMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import { followWatching } from '../../../../renderer/stores/watching.ts';
import type { MeterState } from '../../../../shared-core/contract/meter.ts';
import type { PacketFrom } from '../../../../shared-core/gatt/source.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aLiveMeter, aMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const offered = (characteristicUuid: string, userDescription: string | null) => ({
  serviceUuid: 'fff0',
  characteristicUuid,
  canNotify: true,
  canWrite: characteristicUuid === 'fff1',
  userDescription,
  lastBytesHex: null,
});
const unknown = aMeter({
  kind: 'bluetooth',
  phase: 'needs-description',
  message: message('meter.state.needs-setup', { meterName: 'Odd meter' }),
  deviceId: 'aa:bb',
  deviceName: 'Odd meter',
  characteristics: [offered('fff1', 'Uptime'), offered('fff2', null), offered('fff3', null)],
});
const value: PacketFrom = { kind: 'characteristic', serviceUuid: 'fff0', characteristicUuid: 'fff2' };
const uptime: PacketFrom = { ...value, characteristicUuid: 'fff1' };

const stops: (() => void)[] = [];
function open(state: MeterState = unknown) {
  const machine = playMachine({
    'stacks.list': () => [],
    'meters.list': () => [],
    'meter.describe': () => aLiveMeter(),
    'meter.hold': () => unknown,
    'meter.connect': () => unknown,
    'meter.listen': () => ({
      ...unknown,
      message: message('meter.state.heard-needs-setup', { meterName: 'Odd meter' }),
    }),
    'meter.tryStart': () => unknown,
    // It comes to a stop a moment after it has lost its description.
    'meter.watch': () => aLiveMeter({ description: null }),
  });
  stops.push(followMeter(), followWatching());
  showMeter(state);
  render(
    <main>
      <MeterScreen />
    </main>,
  );
  return { machine, user: userEvent.setup({ delay: null }) };
}

type Machine = ReturnType<typeof open>['machine'];
const hex = (bytes: number[]) => Buffer.from(bytes).toString('hex');

/** Tenths of a percent and a flag, ten a second for 3 s up to now, and an uptime that counts. */
function send(machine: Machine, tenths: (at: number) => number, isHeld = false): void {
  const nowMs = performance.now();
  const packets = Array.from({ length: 30 }, (_, at) => {
    const atMs = nowMs - 100 * (29 - at);
    return [
      { from: uptime, atMs, bytesHex: hex([at]) },
      { from: value, atMs, bytesHex: hex([tenths(at) & 255, tenths(at) >> 8, isHeld ? 1 : 0]) },
    ];
  });
  act(() => machine.tell('meter.packets', { nowMs, packets: packets.flat() }));
}
const pushedIn = (at: number) => (at < 5 ? 0 : 134);

type User = ReturnType<typeof open>['user'];
const field = () => screen.getByRole('textbox', { name: 'Number on its display' });
/** Of what was watched; setting up by hand has its own. */
const saves = () =>
  screen.queryAllByRole('button', { name: 'Save' }).filter((button) => button.closest('form') === null);
/** It is found in turns, between which the window draws. */
async function typeNumber(user: User, text: string): Promise<void> {
  await user.type(field(), `${text}{Enter}`);
  await waitFor(() => expect(screen.queryByText('Looking for it …')).toBeNull());
}
/** What the display shows in one board, and in another. */
async function typeTwo({ machine, user }: { machine: Machine; user: User }): Promise<void> {
  send(machine, pushedIn);
  await typeNumber(user, '13.4');
  send(machine, () => 217);
  await typeNumber(user, '21.7');
}

const places = () =>
  within(screen.getByRole('list', { name: 'What the meter sends' }))
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent);

beforeEach(forgetEverything);
afterEach(() => {
  cleanup();
  for (const stop of stops.splice(0)) stop();
});

test('what moves with the pins comes first, a counter and what is silent after it', async () => {
  const { machine } = open();
  expect(screen.getByText('Connected to Odd meter. It is not set up yet. Set it up below.')).toBeTruthy();
  expect(screen.getByText(/^Nothing moves yet/)).toBeTruthy();
  send(machine, pushedIn);
  expect(places()).toEqual(['Value 2↕ Moves', 'Uptime↑ Counts up', 'Value 3· Nothing yet']);
  expect(screen.queryByText(/^Nothing moves yet/)).toBeNull();
  await expectNoBarriers();
});

test('bytes are shown when asked for', async () => {
  const { machine, user } = open();
  send(machine, pushedIn);
  expect(places()[0]).not.toContain('8600');
  await user.click(screen.getByRole('checkbox', { name: 'Show bytes' }));
  expect(places()[0]).toContain('860000');
});

test('two numbers on its display find how it is read, live, and Save says so', async () => {
  const { machine, user } = open();
  send(machine, pushedIn);
  await typeNumber(user, '13.4');
  const first = () => screen.getAllByRole('radio')[0] as HTMLInputElement;
  const text = () => first().closest('label')!.textContent;
  expect(first().checked).toBe(true);
  expect(text()).toBe('13.4% now. It fit your number.');
  expect(screen.getByText('Before you save, type a number from wetter or drier wood.')).toBeTruthy();
  expect(saves()).toEqual([]);
  await expectNoBarriers();

  send(machine, () => 217);
  expect(text()).toBe('21.7% now. It fit your number.');
  await typeNumber(user, '21.7');
  expect(text()).toBe('21.7% now. It fit both numbers.');
  await expectNoBarriers();
  await user.click(saves()[0]!);
  expect(machine.inputsOf('meter.describe')).toMatchObject([
    {
      source: { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff2' },
      value: { kind: 'number', format: 6, byteOffset: 0, exponent: -1 },
      match: null,
      fields: { hold: null },
      unit: 'pct',
      origin: 'mapped-by-hand',
    },
  ]);
});

test('a number that does not fit with the others is named, and nothing is saved until it is deleted', async () => {
  const { machine, user } = open();
  await typeTwo({ machine, user });
  await typeNumber(user, '57.2');
  expect(screen.getByText(/^57.2% does not fit/)).toBeTruthy();
  expect(saves()).toEqual([]);
  await user.click(screen.getByRole('button', { name: 'Delete 57.2%' }));
  await waitFor(() => expect(saves()).toHaveLength(1));
});

test('a number still fits after a long walk to wetter wood', async () => {
  const { machine, user } = open();
  send(machine, pushedIn);
  await typeNumber(user, '13.4');
  for (let times = 0; times < 31; times++) send(machine, () => 0);
  send(machine, () => 217);
  await typeNumber(user, '21.7');
  expect(saves()).toHaveLength(1);
});

test('a number that nothing fits can be deleted, and one that is none is asked for', async () => {
  const { machine, user } = open();
  send(machine, pushedIn);
  await user.click(screen.getByRole('button', { name: 'Find it' }));
  expect(screen.getByRole('alert').textContent).toBe('Type the number on the meter’s display.');
  await typeNumber(user, '99.93');
  expect(screen.getByText(/^Nothing that it sent fits/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Delete 99.93%' }));
  expect(screen.queryByText(/^Nothing that it sent fits/)).toBeNull();
});

test('its button is found by pressing it, and saved with the rest', async () => {
  const { machine, user } = open();
  await typeTwo({ machine, user });
  await user.click(screen.getByRole('button', { name: 'Find the meter’s button' }));
  expect(screen.getByText('Press the button on the meter now.')).toBeTruthy();
  const nowMs = performance.now();
  act(() =>
    machine.tell('meter.packets', {
      nowMs,
      packets: [{ from: value, atMs: nowMs + 1, bytesHex: '860001' }],
    }),
  );
  expect(screen.getByText('Button found. Pressed now: yes.')).toBeTruthy();
  await expectNoBarriers();
  await user.click(saves()[0]!);
  expect(machine.inputsOf('meter.describe')).toMatchObject([
    { fields: { hold: { layout: { kind: 'bits', firstBit: 16, bits: 1 }, equals: 1 } } },
  ]);
});

test('a meter that another window uses is set up there, or here after one press', async () => {
  const { machine, user } = open({ ...unknown, heldBy: 'another-window' });
  expect(screen.queryByRole('textbox', { name: 'Number on its display' })).toBeNull();
  await user.click(screen.getByRole('button', { name: 'Use it here' }));
  expect(machine.inputsOf('meter.hold')).toEqual([{}]);
  expect(screen.getByRole('textbox', { name: 'Number on its display' })).toBeTruthy();
});

test('while nothing moves, what it advertises can be watched, and a start command sent', async () => {
  const { machine, user } = open();
  await user.click(screen.getByRole('button', { name: 'Watch what it broadcasts' }));
  expect(machine.inputsOf('meter.listen')).toEqual([{ deviceId: 'aa:bb' }]);
  await user.click(screen.getByRole('button', { name: 'Connect to it instead' }));
  expect(machine.inputsOf('meter.connect')).toEqual([{ deviceId: 'aa:bb' }]);
  const form = screen.getByRole('form', { name: 'Start command' });
  await user.type(within(form).getByLabelText('Bytes'), '01 A');
  await user.click(within(form).getByRole('button', { name: 'Send it' }));
  expect(within(form).getByRole('alert').textContent).toBe('Type pairs of 0–9 and A–F.');
  expect(machine.inputsOf('meter.tryStart')).toEqual([]);

  await user.type(within(form).getByLabelText('Bytes'), '0{Enter}');
  const start = { serviceUuid: 'fff0', characteristicUuid: 'fff1', bytesHex: '01a0', withResponse: true };
  expect(machine.inputsOf('meter.tryStart')).toEqual([start]);
  await expectNoBarriers();

  // It is part of how the meter is read.
  await typeTwo({ machine, user });
  await user.click(saves()[0]!);
  expect(machine.inputsOf('meter.describe')).toMatchObject([{ start }]);
});

test('a meter that is read already is watched again when asked for, and can stay as it was', async () => {
  const before = aLiveMeter();
  const { machine, user } = open(before);
  await user.click(screen.getByRole('button', { name: 'Set up by watching' }));
  expect(machine.inputsOf('meter.watch')).toEqual([{}]);
  act(() => machine.tell('meter.state', { ...unknown, deviceId: before.deviceId }));
  expect(screen.getByRole('textbox', { name: 'Number on its display' })).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Keep it as it was' }));
  expect(machine.inputsOf('meter.describe')).toEqual([before.description]);
  expect(screen.queryByRole('textbox', { name: 'Number on its display' })).toBeNull();
});

test('of two that show the same number now, each is named by its format', async () => {
  const { machine, user } = open();
  send(machine, (at) => (at < 5 ? 0 : at < 9 ? 2120 : 2000));
  await typeNumber(user, '20.0');
  send(machine, () => 1510);
  await typeNumber(user, '15.1');
  expect(screen.getAllByRole('radio').map((radio) => radio.closest('label')!.textContent)).toEqual([
    '15.1% now. It fit both numbers. (16 bits, unsigned)',
    '15.1% now. It fit both numbers. (16-bit SFLOAT (IEEE 11073))',
  ]);
  await expectNoBarriers();
});

test('setting it up by hand begins with what was found, and there is one Save', async () => {
  const { machine, user } = open();
  await typeTwo({ machine, user });
  await user.click(screen.getByRole('button', { name: 'Set it yourself' }));
  const form = screen.getByRole('form', { name: 'Set up the meter' });
  expect(within(form).getByRole('status', { name: 'Preview' }).textContent).toContain('21.7%');
  expect(screen.getAllByRole('button', { name: 'Save' })).toHaveLength(1);
  await expectNoBarriers();

  await user.click(within(form).getByRole('button', { name: 'Cancel' }));
  expect(await screen.findByText(/It fit both numbers/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Set it yourself' }));
  await user.selectOptions(screen.getByLabelText('Format'), 'Bits');
  await user.clear(screen.getByLabelText('Number of bits'));
  await user.type(screen.getByLabelText('Number of bits'), '10');
  await user.clear(screen.getByLabelText('Power of ten'));
  await user.type(screen.getByLabelText('Power of ten'), '-1');
  expect(screen.getByRole('status', { name: 'Preview' }).textContent).toContain('21.7%');
  await user.click(screen.getByRole('button', { name: 'Save' }));
  expect(machine.inputsOf('meter.describe')).toMatchObject([
    {
      source: { kind: 'sent', characteristicUuid: 'fff2' },
      value: { kind: 'bits', firstBit: 0, bits: 10, exponent: -1 },
    },
  ]);
});

test('its species setting is found by changing it, and saved as it is set then', async () => {
  const { machine, user } = open();
  await typeTwo({ machine, user });
  const sendSetting = (setting: number) => {
    const nowMs = performance.now();
    const packets = [{ from: value, atMs: nowMs + 1, bytesHex: hex([217, 0, setting]) }];
    act(() => machine.tell('meter.packets', { nowMs, packets }));
  };
  await user.click(screen.getByRole('button', { name: 'Find its species setting' }));
  await user.click(screen.getByRole('button', { name: 'Changed' }));
  expect(screen.getByText(/^Nothing changed in what it sends/)).toBeTruthy();

  await user.click(screen.getByRole('button', { name: 'Find its species setting' }));
  sendSetting(7);
  await user.click(screen.getByRole('button', { name: 'Changed' }));
  expect(screen.getByText(/^Species setting found. It is 7 now/)).toBeTruthy();
  await expectNoBarriers();
  sendSetting(4);
  await user.click(saves()[0]!);
  expect(machine.inputsOf('meter.describe')).toMatchObject([
    { fields: { species: { at: { kind: 'number', format: 4, byteOffset: 2 }, expected: '4' } } },
  ]);
});

test('what was typed is still there after a look at another page', async () => {
  const { machine, user } = open();
  await typeTwo({ machine, user });
  cleanup();
  render(
    <main>
      <MeterScreen />
    </main>,
  );
  expect(screen.getByText('13.4%')).toBeTruthy();
  expect(await screen.findByText(/It fit both numbers/)).toBeTruthy();
});
