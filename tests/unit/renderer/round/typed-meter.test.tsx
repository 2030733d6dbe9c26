// @vitest-environment jsdom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { bridge } from '../../../../renderer/data/bridge.ts';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { showMeter } from '../../../../renderer/stores/meter.ts';
import type { MeterOfYard } from '../../../../shared-core/contract/meter.ts';
import type { RoundState } from '../../../../shared-core/contract/round.ts';
import { boardTopics } from '../../../../shared-core/contract/topics.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
import { aLiveMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';

// Typed at a hand's pace, on a computer that may be busy.

const aHandMeter = (id: number, changes: Partial<MeterOfYard> = {}): MeterOfYard => ({
  id,
  version: 1,
  kind: 'typed',
  name: `Hand meter ${id}`,
  unit: 'pct',
  profile: unknownProfile,
  isTypedFrom: false,
  ...changes,
});

const QUESTION = 'What species is your meter set to? How long are its pins?';

/** A round in a yard with these meters; what is typed is saved at once. */
async function open(meters: MeterOfYard[], round: Partial<RoundState> = {}) {
  const owner = { roundId: 12, boardId: 101, stackId: 4 };
  const machine = playMachine({
    'rounds.open': () => ({ ...aRound(), ...round }),
    'rounds.get': () => ({ ...aRound(), ...round }),
    'rounds.leave': () => ({}),
    'stacks.list': () => [],
    'meters.list': () => [...meters],
    'species.list': () => [],
    'meters.typeFrom': ({ meterId }) => {
      for (const [at, meter] of meters.entries())
        meters[at] = { ...meter, isTypedFrom: meter.id === meterId };
      return {};
    },
    'meters.add': () => {
      meters.push(aHandMeter(9, { isTypedFrom: true }));
      return {
        act: '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f',
        readings: 1,
        boardIds: [101],
        roundIds: [12],
        meterId: 9,
      };
    },
    'rounds.saveTyped': ({ raw, meterId = null }) => {
      const board = read(aBoard(1), [aReading(1, { raw, meterId })]);
      const { summary } = aRound();
      machine.tell('round.changed', {
        roundId: 12,
        aim: { boardId: 101, spotIndex: 1 },
        board,
        summary,
        savedReadingId: 1,
      });
      return owner;
    },
  });
  const user = byHand();
  render(<RoundScreen id={12} />);
  await screen.findByLabelText('Reading');
  return { machine, user };
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('nobody is asked about the meter before the first value is typed, and one press ends it', async () => {
  const { machine, user } = await open([]);
  expect(screen.queryByText(QUESTION)).toBeNull();
  await user.keyboard('12.4{Enter}');
  expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 12.4, meterId: null }]);
  expect(await screen.findByText(QUESTION)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'I don’t know' }));
  expect(machine.inputsOf('meters.add')).toEqual([
    { name: 'Hand meter', profile: unknownProfile, roundId: 12 },
  ]);
  machine.tell('changed', { yard: null, topics: ['meters', ...boardTopics([101])] });
  expect(await screen.findByRole('button', { name: /Meter: Hand meter 9/ })).toBeTruthy();
  expect(screen.queryByText(QUESTION)).toBeNull();
});

test('typing goes on while the question waits', async () => {
  const { machine, user } = await open([]);
  await user.keyboard('12.4{Enter}');
  await screen.findByText(QUESTION);
  await user.keyboard('13.1{Enter}');
  expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 12.4 }, { raw: 13.1 }]);
});

test('a value is of the meter that the round shows, and another one is chosen by key', async () => {
  const { machine, user } = await open([aHandMeter(4, { isTypedFrom: true }), aHandMeter(5)]);
  await screen.findByRole('button', { name: /Meter: Hand meter 4/ });
  await user.keyboard('12.4{Enter}');
  expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 12.4, meterId: 4 }]);
  expect(screen.queryByText(QUESTION)).toBeNull();

  await user.keyboard('m');
  const dialog = within(await screen.findByRole('dialog', { name: 'Meter for typed readings' }));
  await expectNoBarriers();
  await user.click(dialog.getByRole('radio', { name: 'Hand meter 5' }));
  expect(machine.inputsOf('meters.typeFrom')).toEqual([{ meterId: 5 }]);
});

describe('a meter that is connected', () => {
  const meter = (changes: Partial<MeterOfYard> = {}) =>
    aHandMeter(1, { kind: 'bluetooth', name: 'Yard meter', ...changes });
  const lost = () => act(() => showMeter(aLiveMeter({ phase: 'reconnecting' })));
  const typed = (machine: ReturnType<typeof playMachine>) => machine.inputsOf('rounds.saveTyped').at(-1);

  test('has the values typed while its link is lost, and nobody asks what it is set to', async () => {
    const { machine, user } = await open([meter(), aHandMeter(4, { isTypedFrom: true })]);
    lost();
    await screen.findByRole('button', { name: 'Meter: Yard meter' });
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ raw: 12.4, meterId: 1 });
    expect(screen.queryByText(QUESTION)).toBeNull();
    await expectNoBarriers();
  });

  test('has those typed by choice beside it', async () => {
    const { machine, user } = await open([meter()]);
    act(() => showMeter(aLiveMeter()));
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ raw: 12.4, meterId: 1 });
  });

  test('has none of those that the person says are of another meter, until it is chosen again', async () => {
    const { machine, user } = await open([meter(), aHandMeter(4, { isTypedFrom: true })]);
    lost();
    const choose = async (name: string) => {
      await user.keyboard('m');
      const dialog = within(await screen.findByRole('dialog', { name: 'Meter for typed readings' }));
      await user.click(dialog.getByRole('radio', { name }));
      machine.tell('changed', { yard: null, topics: ['meters'] });
      await user.click(dialog.getByRole('button', { name: 'Close' }));
      await screen.findByRole('button', { name: `Meter: ${name}` });
    };
    await choose('Hand meter 4');
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ meterId: 4 });
    await choose('Yard meter');
    await user.keyboard('12.6{Enter}');
    expect(typed(machine)).toMatchObject({ meterId: 1 });
  });

  test('has nothing that is typed in a window that another one holds it from', async () => {
    const { machine, user } = await open([meter(), aHandMeter(4, { isTypedFrom: true })]);
    act(() => showMeter(aLiveMeter({ heldBy: 'another-window' })));
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ meterId: 4 });
  });

  test('has none of a past day', async () => {
    const { machine, user } = await open([meter(), aHandMeter(4, { isTypedFrom: true })], { isDated: true });
    act(() => showMeter(aLiveMeter()));
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ meterId: 4 });
  });

  test('has those of a round that it was last read in, after it was left', async () => {
    const { machine, user } = await open([meter()], { lastMeterId: 1 });
    await screen.findByRole('button', { name: 'Meter: Yard meter' });
    await user.keyboard('12.4{Enter}');
    expect(typed(machine)).toMatchObject({ meterId: 1 });
    expect(screen.queryByText(QUESTION)).toBeNull();
  });

  test('is asked about at the first value typed for it, where that was not answered', async () => {
    const { user } = await open([meter({ profile: null })]);
    lost();
    await user.keyboard('12.4{Enter}');
    expect(await screen.findByText(/What species is Yard meter set to/)).toBeTruthy();
  });
});

describe('a meter that shows ohms', () => {
  const ohms = (changes: Partial<MeterOfYard> = {}) =>
    aHandMeter(4, { unit: 'ohm', profile: { ...unknownProfile, scale: { kind: 'ohms' } }, ...changes });

  test('is typed in megohms, or with a prefix, and sent in ohms', async () => {
    const { machine, user } = await open([ohms({ isTypedFrom: true })]);
    expect(await screen.findByLabelText('Reading on the meter, MΩ')).toBeTruthy();
    await user.keyboard('350{Enter}');
    await user.keyboard('800k{Enter}');
    await user.keyboard('2.2G{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([
      { raw: 350e6, unit: 'ohm', meterId: 4 },
      { raw: 800_000, unit: 'ohm' },
      { raw: 2.2e9, unit: 'ohm' },
    ]);
    expect(screen.queryByRole('dialog')).toBeNull();
    await expectNoBarriers();
  });

  test('a number typed for it is never sent as %, whichever meter is chosen meanwhile', async () => {
    const { machine, user } = await open([ohms({ isTypedFrom: true }), aHandMeter(5)]);
    await screen.findByLabelText('Reading on the meter, MΩ');
    await user.keyboard('35');
    await bridge().command('meters.typeFrom', { meterId: 5 });
    machine.tell('changed', { yard: null, topics: ['meters'] });
    await screen.findByRole('button', { name: /Meter: Hand meter 5/ });
    expect(screen.getByLabelText('Reading on the meter, MΩ')).toBeTruthy();
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 35e6, unit: 'ohm', meterId: 5 }]);
    // Changed by hand, it is what the field says now.
    await user.keyboard('12.4');
    expect(screen.getByLabelText('Reading on the meter, %')).toBeTruthy();
  });

  test('a number begun in % is finished in %, where an ohm meter is chosen meanwhile', async () => {
    const { machine, user } = await open([aHandMeter(5, { isTypedFrom: true }), ohms()]);
    await screen.findByLabelText('Reading on the meter, %');
    await user.keyboard('13.');
    await bridge().command('meters.typeFrom', { meterId: 4 });
    machine.tell('changed', { yard: null, topics: ['meters'] });
    await screen.findByRole('button', { name: /Meter: Hand meter 4/ });
    await user.keyboard('6');
    expect(screen.getByLabelText('Reading on the meter, %')).toBeTruthy();
    await user.keyboard('{Enter}');
    // The machine refuses it: that meter shows ohms.
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 13.6, unit: 'pct', meterId: 4 }]);
  });

  test('is asked about where the first number typed is no %', async () => {
    const { user } = await open([]);
    await user.keyboard('350{Enter}');
    expect(await screen.findByText('Does your meter show ohms, not %? How long are its pins?')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Answer' }));
    const dialog = within(await screen.findByRole('dialog', { name: 'Your meter' }));
    await user.click(dialog.getByRole('radio', { name: 'None: it shows ohms (MΩ)' }));
    expect(dialog.queryByRole('group', { name: 'Does it correct for temperature?' })).toBeNull();
  });
});
