// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent, { type UserEvent } from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { MeterScreen } from '../../../../renderer/features/meter/MeterScreen.tsx';
import { followMeter, loadMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useRound } from '../../../../renderer/stores/round.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { MeterState } from '../../../../shared-core/contract/meter.ts';
import { meterFileOf, meterFileText } from '../../../../shared-core/contract/meter-file.ts';
import { NO_FIELDS } from '../../../../shared-core/gatt/meter-description.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aRound } from '../round/a-round.ts';
import { aLiveMeter, aLiveValue, aMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack } from '../stacks/a-yard.ts';

const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

function open(state: MeterState | null, answers: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({ 'stacks.list': () => [], 'meters.list': () => [], ...answers });
  followMeter();
  if (state) showMeter(state);
  render(<MeterScreen />, { wrapper: InMain });
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('before its state is known, it shows that it is loading', async () => {
  open(null);
  expect(screen.getByText('Loading …')).toBeTruthy();
});

test('where its state cannot be asked for, it says why and asks again', async () => {
  let isInUse = true;
  const { user } = open(null, {
    'meter.state': () => {
      if (isInUse) throw fileInUse();
      return aMeter();
    },
  });
  await act(loadMeter);
  expect(screen.getByRole('alert').textContent).toContain('Another program is using the yard file.');
  expect(screen.queryByText('Loading …')).toBeNull();
  isInUse = false;
  await user.click(screen.getByRole('button', { name: 'Try again' }));
  expect(await screen.findByText('No meter is connected.')).toBeTruthy();
  expect(screen.queryByRole('alert')).toBeNull();
});

test('the own yard offers no simulated meter', async () => {
  open(aMeter());
  expect(screen.getByRole('button', { name: 'Look for Bluetooth meters' })).toBeTruthy();
  expect(screen.queryByRole('button', { name: /simulated/ })).toBeNull();
});

test('in the demo yard with no meter: look for one, or take the simulated one, one click each', async () => {
  const { machine, user } = open(aMeter({ canSimulate: true }), {
    'meter.simulate': () => aLiveMeter({ kind: 'simulated', deviceName: 'Simulated' }),
  });
  expect(screen.getByRole('status').textContent).toContain('No meter is connected.');
  expect(screen.getByRole('button', { name: 'Look for Bluetooth meters' })).toBeTruthy();
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Use the simulated meter' }));
  expect(machine.inputsOf('meter.simulate')).toEqual([{}]);
  expect(screen.getByRole('heading', { name: 'Simulated meter' })).toBeTruthy();
});

describe('whose radio is used', () => {
  const searching = aMeter({ kind: 'bluetooth', phase: 'scanning', radio: 'bluez' });
  const ofComputer = /This computer’s Bluetooth is used\. The browser needs no permission\./;
  const ofSystem = /Meters connect through the Bluetooth service of this computer \(BlueZ\)\./;
  afterEach(() => delete window.pintally);

  test('in a browser it is that of the computer, before and while it is used', () => {
    open(aMeter());
    expect(screen.getByText(ofComputer)).toBeTruthy();
    expect(screen.queryByText(ofSystem)).toBeNull();
    act(() => showMeter(searching));
    expect(screen.getByText(ofComputer).textContent).toMatch(ofSystem);
  });

  test('the app’s own window says only by what way it is reached', () => {
    window.pintally = { request: () => Promise.reject(new Error('unused')), on: () => () => undefined };
    open(searching);
    expect(screen.getByText(ofSystem)).toBeTruthy();
    expect(screen.queryByText(ofComputer)).toBeNull();
  });

  test('the simulated meter needs none', () => {
    open(aLiveMeter({ kind: 'simulated' }));
    expect(screen.queryByText(ofComputer)).toBeNull();
  });
});

describe('looking for meters', () => {
  const found = aMeter({
    kind: 'bluetooth',
    phase: 'scanning',
    message: message('meter.state.looking'),
    devices: [
      { deviceId: 'aa:bb', name: 'Yard meter', rssiDbm: -58, isKnown: true },
      { deviceId: 'cc:dd', name: '', rssiDbm: -91, isKnown: false },
      { deviceId: 'ee:ff', name: 'Far shed', rssiDbm: null, isKnown: false },
    ],
  });

  test('each device found is listed with its strength in words and dBm, and can be connected', async () => {
    const { machine, user } = open(found, { 'meter.connect': () => aLiveMeter() });
    const items = within(screen.getByRole('list', { name: 'Bluetooth devices found' })).getAllByRole(
      'listitem',
    );
    expect(items[0]!.textContent).toMatch(/Yard meter.*used before.*strong, −58 dBm/);
    expect(items[1]!.textContent).toMatch(/Unnamed device.*very weak, −91 dBm/);
    expect(items[2]!.textContent).toBe('Far shedsignal strength unknownConnect');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Connect Yard meter' }));
    expect(machine.inputsOf('meter.connect')).toEqual([{ deviceId: 'aa:bb' }]);
    expect(screen.getByRole('button', { name: 'Disconnect' })).toBeTruthy();
  });

  test('two of the same name are told apart by the end of their addresses, also by name of the button', () => {
    const twins = found.devices.map((device) => ({ ...device, name: 'Yard meter' }));
    open({ ...found, devices: twins });
    for (const end of ['aabb', 'ccdd', 'eeff']) {
      expect(screen.getByText(`Yard meter ${end}`)).toBeTruthy();
      expect(screen.getByRole('button', { name: `Connect Yard meter ${end}` })).toBeTruthy();
    }
  });

  test('while nothing is found, it shows what to try, and it can be stopped', async () => {
    const { machine, user } = open({ ...found, devices: [] }, { 'meter.disconnect': () => aMeter() });
    expect(screen.getByText(/Turn the meter on and hold it close/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Stop' }));
    expect(machine.inputsOf('meter.disconnect')).toEqual([{}]);
  });

  test('a machine without Bluetooth shows that at once', async () => {
    open(
      aMeter({
        kind: 'bluetooth',
        phase: 'failed',
        message: message('meter.adapter.missing'),
      }),
    );
    expect(screen.getByRole('alert').textContent).toContain('No Bluetooth adapter found.');
    await expectNoBarriers();
  });

  test('a refusal is shown', async () => {
    const { user } = open(aMeter(), {
      'meter.scan': () => {
        throw new Refusal(message('refusal.meter-not-found'));
      },
    });
    await user.click(screen.getByRole('button', { name: 'Look for Bluetooth meters' }));
    expect(useNotices.getState().notices.map((notice) => notice.sentence)).toEqual([
      'No meter of that name was found. Nothing was changed. Look for meters first.',
    ]);
  });
});

test('a live resistance is shown as it was sent', () => {
  const { machine } = open(aLiveMeter());
  act(() => machine.tell('meter.live', aLiveValue({ raw: 1_234_500, unit: 'ohm', corrected: null })));
  expect(screen.getByRole('region', { name: 'Live' }).textContent).toContain('1.2345 MΩ raw');
});

test('a live meter: its value first, what the pins do, and its battery', async () => {
  const { machine } = open(aLiveMeter());
  act(() => machine.tell('meter.live', aLiveValue({ corrected: null })));
  const regions = screen.getAllByRole('region').map((part) => part.querySelector('h2')?.textContent);
  expect(regions).toEqual(['Yard meter', 'Live', 'How the value is read']);
  const live = screen.getByRole('region', { name: 'Live' });
  expect(live.textContent).toContain('12.6% raw, as the meter shows');
  expect(live.textContent).toContain('Settled');
  expect(live.textContent).toContain('Battery 76%.');
  expect(screen.getByRole('region', { name: 'How the value is read' }).textContent).toContain(
    unbroken('The meter describes its own value.Unit% moisture contentCan show5–60%'),
  );
  await expectNoBarriers();
});

test('bytes, UUIDs and counters are behind Details, every notification accounted for', async () => {
  const { user } = open(aLiveMeter());
  const details = document.querySelector('details')!;
  expect(details.open).toBe(false);
  for (const hidden of ['2a6f', 'Received', '16 bits, unsigned']) {
    expect(details.contains(screen.getByText(hidden)), hidden).toBe(true);
  }
  await user.click(screen.getByText('Details'));
  expect(details.textContent).toContain('Format16 bits, unsignedPower of ten−1');
  expect(details.textContent).toContain('Received1,200Decoded1,058Pins out140Unreadable2');
  expect(details.textContent).toContain('Last unreadable: The meter sent 1 byte; its value needs 2.');
  expect(within(details).getByRole('row', { name: /2a6f/ }).textContent).toContain('7e00');
  await expectNoBarriers();
});

test('what is missing from a meter’s own description is shown beside its bytes', async () => {
  open(
    aLiveMeter({
      phase: 'needs-description',
      description: null,
      remarks: [message('meter.self.humidity-unconfirmed'), message('meter.self.several', { values: 2 })],
    }),
  );
  const bytes = screen.getByRole('region', { name: 'Set up this meter' });
  expect(bytes.textContent).toContain(
    'The meter sends the standard value for air humidity. If it means wood moisture, set it up below.',
  );
  expect(bytes.textContent).toContain(
    'The meter offers 2 values that could be the reading. Choose one below.',
  );
  await expectNoBarriers();
});

test('a meter that does not describe itself is set up on its live bytes', async () => {
  const silent = aLiveMeter({
    phase: 'needs-description',
    message: message('meter.state.needs-setup', { meterName: 'Yard meter' }),
    description: null,
  });
  const { machine, user } = open(silent, { 'meter.describe': () => aLiveMeter() });
  await user.click(screen.getByRole('button', { name: 'Set it yourself' }));
  const form = screen.getByRole('form', { name: 'Set up the meter' });
  expect(within(form).getByRole('status', { name: 'Preview' }).textContent).toContain('12.6%');
  await expectNoBarriers();

  const power = within(form).getByLabelText('Power of ten');
  await user.clear(power);
  await user.type(power, '-2');
  expect(within(form).getByRole('status', { name: 'Preview' }).textContent).toContain('1.26%');

  // Two bytes in the other order: 7e00 is 126 or 32,256.
  await user.selectOptions(within(form).getByLabelText('Byte order'), 'High byte first');
  expect(within(form).getByRole('status', { name: 'Preview' }).textContent).toContain('322.56%');

  await user.clear(within(form).getByLabelText('Highest value it can show'));
  await user.click(within(form).getByRole('button', { name: 'Save' }));
  expect(within(form).getByRole('alert').textContent).toContain(
    'Enter the highest value the meter can show.',
  );
  expect(machine.inputsOf('meter.describe')).toEqual([]);

  await user.type(within(form).getByLabelText('Highest value it can show'), '60');
  await user.click(within(form).getByRole('button', { name: 'Save' }));
  expect(machine.inputsOf('meter.describe')).toMatchObject([
    {
      value: { format: 6, byteOrder: 'high-first', exponent: -2 },
      range: { min: 0, max: 60 },
      origin: 'mapped-by-hand',
    },
  ]);
});

test('a meter that does not describe itself is set up by the file of one like it', async () => {
  const silent = aLiveMeter({ phase: 'needs-description', description: null, meterId: null });
  const described = aLiveMeter();
  const profile = { ...unknownProfile, sdPct: 2 };
  const { machine, user } = open(silent, {
    'meter.describe': () => described,
    'meters.list': () => [
      { id: 1, version: 3, kind: 'bluetooth', name: 'Yard meter', unit: 'pct', profile, isTypedFrom: false },
    ],
    'meterChecks.list': () => [],
    'species.list': () => [],
    'meters.edit': () => ({}) as never,
  });
  const file = meterFileOf(described.description, profile);
  const given = new File([meterFileText(file)], 'like.meter.json', { type: 'application/json' });
  await user.upload(screen.getByLabelText('Use a meter file'), given);
  // Undoing that one does not say that the file is no longer used.
  await waitFor(() =>
    expect(machine.inputsOf('meters.edit')).toEqual([{ id: 1, basedOn: 3, changed: { profile } }]),
  );
  expect(machine.inputsOf('meter.describe')).toEqual([described.description]);
});

test('a meter that is set to another species than it was set up at says so', async () => {
  const { description } = aLiveMeter();
  const at = { kind: 'letters' as const, byteOffset: 2, octets: 1 };
  const layout = { kind: 'number' as const, format: 4, byteOffset: 3, exponent: 0, scale: 1, offset: 0 };
  const fields = {
    ...NO_FIELDS,
    species: { at, expected: '7' },
    hold: { layout, equals: 1 },
    batteryPct: layout,
  };
  open(aLiveMeter({ description: { ...description!, fields }, speciesSetting: '12' }), {});
  expect(screen.getByText(/The meter is set to 12. You set it up at 7./)).toBeTruthy();
  expect(screen.getByText('its button, its species setting, and its battery')).toBeTruthy();
  await expectNoBarriers();
});

describe('the description that is saved', () => {
  const undescribed = aLiveMeter({ phase: 'needs-description', description: null });
  async function openForm(state: MeterState = undescribed) {
    const opened = open(state, { 'meter.describe': () => undescribed });
    await opened.user.click(screen.getByRole('button', { name: 'Set it yourself' }));
    return opened;
  }
  async function type(user: UserEvent, label: string, text: string): Promise<void> {
    await user.clear(screen.getByLabelText(label));
    await user.type(screen.getByLabelText(label), `${text}{Tab}`);
  }

  test.each([
    ['First byte', '1.5', 'Type a whole number.'],
    ['First byte', '600', 'At most 511.'],
    ['Multiply by', '0', 'Enter a number other than 0. 1 changes nothing.'],
    ['Then add', ' ', 'Enter a number. 0 changes nothing.'],
    ['Lowest value it can show', ' ', 'Enter the lowest value the meter can show.'],
    ['Highest value it can show', '0', 'The highest value must be above the lowest.'],
  ])('is not made while “%s” is “%s”', async (label, typed, problem) => {
    const { machine, user } = await openForm();
    await type(user, label, typed);
    expect(screen.getByRole('alert').textContent).toBe(unbroken(problem));
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('meter.describe')).toEqual([]);
  });

  test('is not made without a characteristic that sends', async () => {
    const { machine, user } = await openForm({
      ...undescribed,
      characteristics: undescribed.characteristics.map((each) => ({ ...each, canNotify: false })),
    });
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.getByRole('alert').textContent).toBe('Choose the characteristic that holds the reading.');
    expect(machine.inputsOf('meter.describe')).toEqual([]);
  });
});

test.each([
  ['bluetooth', 1],
  ['simulated', 0],
] as const)('a connected %s meter without answers is asked about %d times', async (kind, times) => {
  const live = aLiveMeter();
  const meter = {
    id: live.meterId!,
    version: 1,
    kind,
    name: 'Yard meter',
    unit: 'pct',
    profile: null,
    isTypedFrom: false,
  } as const;
  open(live, {
    'meters.list': () => [meter],
    'meters.use': () => ({ earlierReadings: 0, isUsed: false }),
    'species.list': () => [],
  });
  await screen.findByRole('heading', { name: 'Your meters' });
  expect(screen.queryAllByText(/^What species is Yard meter set to\?/)).toHaveLength(times);
});

describe('a meter that is not as it was', () => {
  const now = aLiveMeter();
  const before = { ...now.description!, value: { ...now.description!.value, exponent: -2 } };
  const changed = { ...now, toConfirm: { what: 'value', before } as const };

  test.each([
    ['12.6%', now.description],
    ['1.26%, as before', before],
  ])('one press says that its display shows %s', async (name, description) => {
    const { machine, user } = open(changed, { 'meter.describe': () => now });
    expect(screen.getByText(/This meter has changed, or is another one/)).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name }));
    expect(machine.inputsOf('meter.describe')).toEqual([description]);
    expect(screen.queryByText(/has changed, or is another one/)).toBeNull();
    expect(useNotices.getState().notices).toMatchObject([{ kind: 'done' }]);
  });

  test('with the pins out there is nothing to choose from yet', () => {
    open({ ...changed, characteristics: [{ ...now.characteristics[0]!, lastBytesHex: '0000' }] });
    expect(screen.getByText(/Push the pins into a board to check it/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: /%/ })).toBeNull();
  });

  test('where it reads the same as before, there is one number to confirm', () => {
    open({ ...now, toConfirm: { what: 'value', before: null } });
    expect(screen.getAllByRole('button', { name: /%/ }).map(({ textContent }) => textContent)).toEqual([
      '12.6%',
    ]);
  });
});

describe('a meter that may be a known one with a new address', () => {
  const asks = (...sameAs: { meterId: number; meterName: string }[]) =>
    aLiveMeter({ toConfirm: { what: 'meter', ownName: null, sameAs } });
  const act = 'a3e1c1de-7a5a-4a57-9d0c-0d5a0c1b2a3f';

  test('one press says that it is the same, which can be undone', async () => {
    const { machine, user } = open(asks({ meterId: 4, meterName: 'Yard meter' }), {
      'meters.recognize': () => ({ act }),
    });
    expect(screen.getByText(/This looks like Yard meter, with a new address/)).toBeTruthy();
    expect(screen.getByText(/Its readings are not saved until you confirm/)).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'It is the same' }));
    expect(machine.inputsOf('meters.recognize')).toEqual([{ meterId: 4, deviceId: 'aa:bb' }]);
    expect(useNotices.getState().notices).toMatchObject([{ kind: 'done', undo: expect.any(Function) }]);
  });

  test('a device with a known address and another name is asked about by both names', async () => {
    const sameAs = [{ meterId: 4, meterName: 'Yard meter' }];
    const state = aLiveMeter({ toConfirm: { what: 'meter', ownName: 'Odd meter', sameAs } });
    const { machine, user } = open(state, { 'meters.recognize': () => ({ act }) });
    expect(screen.getByText('This meter has changed, or is another one.')).toBeTruthy();
    expect(
      screen.getByText(/This meter calls itself Odd meter. Yard meter had the same address./),
    ).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'It is the same' }));
    expect(machine.inputsOf('meters.recognize')).toEqual([{ meterId: 4, deviceId: 'aa:bb' }]);
    expect(useNotices.getState().notices.at(-1)?.sentence).toContain('It is called Odd meter now.');
  });

  test('one of a known address that calls itself as an earlier meter is asked about by both', async () => {
    const sameAs = [
      { meterId: 4, meterName: 'Yard meter' },
      { meterId: 3, meterName: 'Odd meter' },
    ];
    const state = aLiveMeter({ toConfirm: { what: 'meter', ownName: 'Odd meter', sameAs } });
    const { machine, user } = open(state, { 'meters.recognize': () => ({ act }) });
    expect(
      screen.getByText(
        /This meter calls itself Odd meter. Yard meter had the same address. Which one is it\?/,
      ),
    ).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Odd meter' }));
    expect(machine.inputsOf('meters.recognize')).toEqual([{ meterId: 3, deviceId: 'aa:bb' }]);
    expect(useNotices.getState().notices.at(-1)?.sentence).toContain('Odd meter has its new address.');
  });

  test('another press says that it is another', async () => {
    const { machine, user } = open(asks({ meterId: 4, meterName: 'Yard meter' }), {
      'meter.isAnother': () => aLiveMeter(),
    });
    await user.click(screen.getByRole('button', { name: 'Another meter' }));
    expect(machine.inputsOf('meter.isAnother')).toEqual([{ deviceId: 'aa:bb' }]);
    expect(screen.queryByText(/This looks like/)).toBeNull();
  });

  test('of several it asks which one', async () => {
    const { machine, user } = open(
      asks({ meterId: 4, meterName: 'Yard meter' }, { meterId: 5, meterName: 'Yard meter 4f2a' }),
      { 'meters.recognize': () => ({ act }) },
    );
    expect(screen.getByText(/Which one is it\?/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Yard meter 4f2a' }));
    expect(machine.inputsOf('meters.recognize')).toEqual([{ meterId: 5, deviceId: 'aa:bb' }]);
  });
});

test('while its meter does not answer, a device of its name that no meter has the address of is offered', async () => {
  const heard = (deviceId: string, changes = {}) => ({
    deviceId,
    name: 'Yard meter',
    rssiDbm: -60,
    isKnown: false,
    ...changes,
  });
  const away = aLiveMeter({
    phase: 'reconnecting',
    devices: [
      heard('c0:ff:ee:00:4f:2a'),
      heard('aa:bb', { isKnown: true }),
      heard('aa:cc', { isKnown: true }),
      heard('aa:dd', { name: 'Speaker' }),
    ],
  });
  const { machine, user } = open(away, { 'meter.connect': () => aLiveMeter() });
  expect(screen.getAllByText(/is in reach/)).toHaveLength(1);
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Connect Yard meter 4f2a' }));
  expect(machine.inputsOf('meter.connect')).toEqual([{ deviceId: 'c0:ff:ee:00:4f:2a' }]);
});

test('while a round is open, it says that the round waits and leads back to it', async () => {
  open(aLiveMeter(), {
    'stacks.list': () => [
      aStack({ id: 3 }),
      aStack({ id: 4, name: 'Walnut from the lane', openRoundId: 12 }),
    ],
  });
  expect(
    await screen.findByText(
      'The round on Walnut from the lane is paused. Live readings are saved only in the round.',
    ),
  ).toBeTruthy();
  expect(screen.getByRole('link', { name: 'Back to the round' }).getAttribute('href')).toBe('#/round/12');
  await expectNoBarriers();
});

test('of several open rounds it leads back to the one that this window showed last', async () => {
  useRound.setState({ round: { ...aRound(), id: 12 } });
  open(aMeter(), {
    'stacks.list': () => [aStack({ id: 3, openRoundId: 14 }), aStack({ id: 4, openRoundId: 12 })],
  });
  const back = await screen.findByRole('link', { name: 'Back to the round' });
  expect(back.getAttribute('href')).toBe('#/round/12');
});

test('with no open round there is none to go back to', async () => {
  open(aLiveMeter(), { 'stacks.list': () => [aStack({ id: 3 })] });
  await act(async () => undefined);
  expect(screen.queryByRole('link', { name: 'Back to the round' })).toBeNull();
});
