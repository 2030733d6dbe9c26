// @vitest-environment jsdom
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent, { type UserEvent } from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { AskProfile } from '../../../../renderer/features/meter/AskProfile.tsx';
import { MetersSheet } from '../../../../renderer/features/meter/MetersSheet.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import type { MeterOfYard } from '../../../../shared-core/contract/meter.ts';
import { meterFileOf, meterFileText } from '../../../../shared-core/contract/meter-file.ts';
import type { ReadingsMoved } from '../../../../shared-core/contract/requests/meters.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const handMeter: MeterOfYard = {
  id: 4,
  version: 1,
  kind: 'typed',
  name: 'Old one',
  unit: 'pct',
  profile: unknownProfile,
  isTypedFrom: true,
};
const moved: ReadingsMoved = {
  act: '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f',
  readings: 12,
  boardIds: [1],
  roundIds: [1],
};

function play(meters: MeterOfYard[], earlier = 0) {
  return playMachine({
    'meters.list': () => meters,
    'meters.use': () => ({ earlierReadings: earlier, isUsed: earlier > 0 }),
    'meters.add': () => ({ ...moved, meterId: 5 }),
    'meters.edit': ({ changed }) => ({ ...handMeter, ...changed, version: 2 }),
    'meters.updateEarlier': () => moved,
    'meters.typeFrom': () => ({}),
    'meters.delete': () => ({}),
    'meters.file': () => meterFileOf(null, unknownProfile),
    'meters.useFile': () => handMeter,
    'species.list': () =>
      builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })) as never,
  });
}
const choose = (user: UserEvent, question: string, answer: string) =>
  user.click(within(screen.getByRole('group', { name: question })).getByRole('radio', { name: answer }));

beforeEach(() => {
  forgetEverything();
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
});
afterEach(cleanup);

describe('the question at the first reading', () => {
  test('is passed with one press: nobody knows', async () => {
    const machine = play([]);
    const user = userEvent.setup();
    render(<AskProfile meter={null} roundId={7} />);
    expect(screen.getByText('What species is your meter set to? How long are its pins?')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'I don’t know' }));
    expect(machine.inputsOf('meters.add')).toEqual([
      { name: 'Hand meter', profile: unknownProfile, roundId: 7 },
    ]);
    expect(useNotices.getState().notices).toMatchObject([{ kind: 'done' }]);
  });

  test('is answered in one short form, in the person’s units', async () => {
    const machine = play([]);
    const user = userEvent.setup();
    render(<AskProfile meter={null} roundId={7} />);
    await user.click(screen.getByRole('button', { name: 'Answer' }));
    await choose(user, 'What is it set to?', 'A species');
    await user.type(await screen.findByLabelText('Species'), 'black walnut');
    await user.click(await screen.findByRole('option', { name: /Black walnut/ }));
    await choose(user, 'Does it correct for temperature?', 'No');
    await user.selectOptions(
      screen.getByLabelText('How long are the pins?'),
      screen.getByRole('option', { name: unbroken('5/16 in') }),
    );
    await choose(user, 'Are the pins insulated?', 'No, bare metal');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('meters.add')).toEqual([
      {
        name: 'Hand meter',
        roundId: 7,
        isTypedFrom: true,
        profile: {
          // About 70 °F, which the person may change.
          scale: {
            kind: 'species',
            speciesId: 'walnut-black',
            curveId: 'walnut-black',
            tempC: expect.closeTo(21.1, 1),
          },
          compensatesTemp: false,
          pins: { lengthMm: 8, insulated: false },
          sdPct: null,
        },
      },
    ]);
  });

  test('of a meter that is connected: the answer is its profile', async () => {
    const machine = play([]);
    const user = userEvent.setup();
    render(<AskProfile meter={{ ...handMeter, kind: 'bluetooth', profile: null }} />);
    await user.click(screen.getByRole('button', { name: 'I don’t know' }));
    expect(machine.inputsOf('meters.edit')).toEqual([
      { id: 4, basedOn: 1, changed: { profile: unknownProfile } },
    ]);
  });
});

describe('the file of a meter', () => {
  const file = meterFileOf(null, { ...unknownProfile, sdPct: 2 });
  const picker = () => screen.getByLabelText('Use a meter file for Old one');
  async function give(text: string) {
    const machine = play([handMeter]);
    render(<MetersSheet />);
    await screen.findByRole('heading', { name: 'Old one' });
    await userEvent.upload(picker(), new File([text], 'other.meter.json', { type: 'application/json' }));
    return machine;
  }

  test('is used as it is, and the notice says so', async () => {
    const machine = await give(meterFileText(file));
    await waitFor(() => expect(machine.inputsOf('meters.useFile')).toEqual([{ meterId: 4, file }]));
    await waitFor(() =>
      expect(useNotices.getState().notices.at(-1)?.sentence).toBe('Old one is set up as in the file.'),
    );
  });

  test('is refused with what is wrong, and nothing is sent', async () => {
    const machine = await give(meterFileText(file).replace('"version": 2', '"version": 9'));
    await waitFor(() =>
      expect(useNotices.getState().notices.at(-1)?.sentence).toBe(
        'other.meter.json was not used. Its version is 9. This Pintally reads version 2. Nothing was changed.',
      ),
    );
    expect(machine.inputsOf('meters.useFile')).toEqual([]);
  });
});

describe('the meters of the yard', () => {
  test('each says what it is set to and which one is typed from', async () => {
    const scale = { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 } as const;
    const pins = { lengthMm: 8, insulated: true };
    play([
      handMeter,
      {
        ...handMeter,
        id: 5,
        isTypedFrom: false,
        name: 'New one',
        profile: { scale, pins, compensatesTemp: true, sdPct: 0.5 },
      },
    ]);
    render(<MetersSheet />);
    const [one, other] = await screen.findAllByRole('listitem');
    expect(one!.textContent).toContain('In use for typed readings.');
    expect(one!.textContent).toContain('Unknown (default assumed)');
    expect(other!.textContent).toContain('Black walnut');
    expect(other!.textContent).toContain('Corrected by the meter');
    expect(other!.textContent).toContain(unbroken('5/16 in, insulated'));
    expect(other!.textContent).toContain('±1.0 points');
    await expectNoBarriers();
  });

  test('one that is added is not typed from unasked while another is in use', async () => {
    const machine = play([handMeter]);
    const user = userEvent.setup();
    render(<MetersSheet />);
    await user.click(await screen.findByRole('button', { name: 'Add a hand meter' }));
    await user.click(await screen.findByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('meters.add')).toMatchObject([{ isTypedFrom: false }]);
    await waitFor(() =>
      expect(useNotices.getState().notices).toMatchObject([
        { sentence: 'Hand meter added. Old one stays in use for typed readings.' },
      ]),
    );
    await user.click(screen.getByRole('button', { name: 'Add a hand meter' }));
    await screen.findByRole('button', { name: 'Save' });
    await choose(user, 'Meter for typed readings', 'Hand meter');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('meters.add')).toMatchObject([{ isTypedFrom: false }, { isTypedFrom: true }]);
  });

  test('one that is added is given a name that no meter has', async () => {
    play([
      { ...handMeter, name: 'Hand meter' },
      { ...handMeter, id: 5, isTypedFrom: false, name: 'hand meter 2' },
    ]);
    const user = userEvent.setup();
    render(<MetersSheet />);
    await user.click(await screen.findByRole('button', { name: 'Add a hand meter' }));
    const name = await screen.findByRole<HTMLInputElement>('textbox', { name: 'Name' });
    expect(name.value).toBe('Hand meter 3');
  });

  test('another one is typed from by one press', async () => {
    const machine = play([handMeter, { ...handMeter, id: 5, isTypedFrom: false, name: 'New one' }]);
    const user = userEvent.setup();
    render(<MetersSheet />);
    await user.click(await screen.findByRole('button', { name: 'Use for typed readings: New one' }));
    expect(machine.inputsOf('meters.typeFrom')).toEqual([{ meterId: 5 }]);
  });

  test('readings that keep what was known before are moved by one press', async () => {
    const machine = play([handMeter], 12);
    const user = userEvent.setup();
    render(<MetersSheet />);
    expect(await screen.findByText(/12 earlier readings still use the old settings\./)).toBeTruthy();
    // Readings were taken with it.
    expect(screen.queryByRole('button', { name: 'Delete Old one' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Use this for them too' }));
    expect(machine.inputsOf('meters.updateEarlier')).toEqual([{ meterId: 4, work: expect.any(String) }]);
    expect(useNotices.getState().notices).toMatchObject([{ sentence: '12 readings are corrected again.' }]);
  });

  test.each([
    ['Accuracy, ±', '20', 'Enter a number from 0.4 to 8, or leave it blank.'],
    ['Name', ' ', 'Give it a name.'],
  ])('one is not saved while “%s” is “%s”', async (label, typed, problem) => {
    const machine = play([handMeter]);
    const user = userEvent.setup();
    render(<MetersSheet />);
    await user.click(await screen.findByRole('button', { name: 'Edit Old one' }));
    await user.click(await screen.findByText('Accuracy'));
    await user.clear(screen.getByLabelText(label));
    await user.type(screen.getByLabelText(label), typed);
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.getByText(problem)).toBeTruthy();
    expect(machine.inputsOf('meters.edit')).toEqual([]);
  });

  test('a pin length of its own is asked for, and a species that is set', async () => {
    const machine = play([handMeter]);
    const user = userEvent.setup();
    render(<MetersSheet />);
    await user.click(await screen.findByRole('button', { name: 'Edit Old one' }));
    await choose(user, 'What is it set to?', 'A species');
    await user.selectOptions(await screen.findByLabelText('How long are the pins?'), 'Another length');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.getByText('Enter the pin length.')).toBeTruthy();
    expect(machine.inputsOf('meters.edit')).toEqual([]);
  });
});
