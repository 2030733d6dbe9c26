// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RoundStartScreen } from '../../../../renderer/features/round/RoundStartScreen.tsx';
import { showMeter } from '../../../../renderer/stores/meter.ts';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { StackRow } from '../../../../shared-core/contract/yard.ts';
import { type Message, message } from '../../../../shared-core/words/message.ts';
import { typeDay } from '../form/type-day.ts';
import { aLiveMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack as aStackRow } from '../stacks/a-yard.ts';
import { aRound } from './a-round.ts';

const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

const aStack = (id: number, changes: Partial<StackRow> = {}): StackRow =>
  aStackRow({
    id,
    name: `Stack ${id}`,
    placeName: 'Open shed',
    probed: 0,
    lastProbedAt: null,
    ...changes,
  });

async function open(stacks: StackRow[], stackId: number | null = null, placeId: number | null = null) {
  const machine = playMachine({
    'stacks.list': () => stacks,
    'rounds.clock': () => ({ problem: null }),
    'rounds.start': () => aRound(),
  });
  render(<RoundStartScreen stackId={stackId} placeId={placeId} />, { wrapper: InMain });
  await act(async () => undefined);
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('with no boards anywhere, it says what to do first', async () => {
  await open([aStack(1, { boards: 0 })]);
  expect(screen.getByText(/No stack has boards yet/)).toBeTruthy();
  expect(screen.getByRole('link', { name: 'Go to stacks' }).getAttribute('href')).toBe('#/stacks');
  await expectNoBarriers();
});

test('stacks that cannot be loaded say why', async () => {
  playMachine({
    'stacks.list': () => {
      throw fileInUse();
    },
  });
  render(<RoundStartScreen stackId={null} placeId={null} />, { wrapper: InMain });
  expect((await screen.findByRole('alert')).textContent).toContain('Another program is using the yard file');
});

test('the stack the person came from is chosen, the pins’ caution is read, the temperature is asked', async () => {
  const { machine, user } = await open([aStack(1), aStack(2)], 2);
  expect((screen.getByLabelText('Stack') as HTMLSelectElement).value).toBe('2');
  expect(screen.getByText(/Pins are sharp/)).toBeTruthy();
  await expectNoBarriers();

  // Left empty, as to check the meter first, it is not asked for yet.
  await user.click(screen.getByLabelText('Stack'));
  expect(screen.queryByRole('alert')).toBeNull();
  await user.click(screen.getByRole('button', { name: 'Start the round' }));
  expect(screen.getByRole('alert').textContent).toContain('Type the wood temperature');
  // At the field alone: a notice would lie over the round that starts next.
  expect(useNotices.getState().notices).toEqual([]);
  expect(machine.inputsOf('rounds.start')).toEqual([]);

  await user.type(screen.getByLabelText('Wood temperature'), '14,5{Enter}');
  expect(machine.inputsOf('rounds.start')).toEqual([{ stackId: 2, woodTempC: 14.5, startedOn: null }]);
  expect(location.hash).toBe('#/round/12');
});

test('boards of the stack that stand elsewhere are a choice of their own', async () => {
  const places = [{ placeId: 7, placeName: 'Pole shed', boards: 5, toProbe: 5 }];
  const stack = aStack(1, { boards: 1, elsewhere: { boards: 5, ready: 0, places } });
  const { machine, user } = await open([stack], 1, 7);
  const select = screen.getByLabelText('Stack') as HTMLSelectElement;
  expect([...select.options].map(({ text }) => text)).toEqual([
    'Stack 1 (1 board, Open shed)',
    'Stack 1 (5 boards, Pole shed)',
  ]);
  expect(select.selectedOptions[0]?.text).toContain('Pole shed');
  await user.type(screen.getByLabelText('Wood temperature'), '14,5{Enter}');
  expect(machine.inputsOf('rounds.start')).toEqual([
    { stackId: 1, placeId: 7, woodTempC: 14.5, startedOn: null },
  ]);
});

test('the place that was asked for is chosen once a list is there that has it', async () => {
  const places = [{ placeId: 7, placeName: 'Pole shed', boards: 1, toProbe: 1 }];
  let stack = aStack(1);
  const machine = playMachine({ 'stacks.list': () => [stack], 'rounds.clock': () => ({ problem: null }) });
  render(<RoundStartScreen stackId={1} placeId={7} />, { wrapper: InMain });
  const select = (await screen.findByLabelText('Stack')) as HTMLSelectElement;
  expect(select.selectedOptions[0]?.text).toContain('Open shed');
  stack = aStack(1, { elsewhere: { boards: 1, ready: 0, places } });
  act(() => machine.tell('changed', { yard: null, topics: ['stacks'] }));
  await waitFor(() => expect(select.selectedOptions[0]?.text).toContain('Pole shed'));
});

test('a stack whose boards were added just now is chosen once the list has them', async () => {
  let added = aStack(2, { boards: 0 });
  const machine = playMachine({
    'stacks.list': () => [aStack(1), added],
    'rounds.clock': () => ({ problem: null }),
  });
  render(<RoundStartScreen stackId={2} placeId={null} />, { wrapper: InMain });
  const select = (await screen.findByLabelText('Stack')) as HTMLSelectElement;
  expect(select.value).toBe('');
  added = aStack(2);
  act(() => machine.tell('changed', { yard: null, topics: ['stacks'] }));
  await waitFor(() => expect(select.value).toBe('2'));
});

test('a live meter that another window uses is said, and can be used here', async () => {
  const { machine, user } = await open([aStack(1)]);
  machine.answers['meter.hold'] = () => aLiveMeter();
  // A hand meter is a meter, too, and its round is typed.
  expect(screen.getByText('Type the readings of your meter, or connect one at any time.')).toBeTruthy();
  act(() => showMeter(aLiveMeter({ heldBy: 'another-window' })));
  expect(screen.queryByText(/^Type the readings/)).toBeNull();
  await user.click(screen.getByRole('button', { name: 'Use it here' }));
  expect(screen.getByText(/The meter is live/)).toBeTruthy();
});

test('the keys begin with how a reading gets in: typed, or off the live meter', async () => {
  await open([aStack(1)]);
  const keys = () => screen.getAllByRole('definition').map(({ textContent }) => textContent);
  expect(keys()).toHaveLength(4);
  expect(keys()[0]).toMatch(/^Type a reading\. Enter saves it/);
  expect(keys()).not.toContain('Save the live reading now, settled or not');
  act(() => showMeter(aLiveMeter()));
  expect(keys()).toHaveLength(4);
  expect(keys()[0]).toBe('Save the live reading now, settled or not');
});

describe('what it says of the live meter is so', () => {
  const said = (): string => screen.getByRole('main').textContent ?? '';

  test('what settles is saved once the round has started', async () => {
    await open([aStack(1)]);
    act(() => showMeter(aLiveMeter()));
    expect(said()).toContain('Once the round has started, push the pins in and hold still.');
    expect(said()).toContain('The reading is saved when it settles.');
  });

  test('or when Space is pressed, for whom it does not save itself', async () => {
    useSettings.setState({ settings: { ...usualSettings, saveWhenSettled: false } });
    await open([aStack(1)]);
    act(() => showMeter(aLiveMeter()));
    expect(said()).toContain('Press Space to save the reading.');
    expect(said()).not.toContain('saved when it settles');
  });

  test('the simulated meter makes its values up', async () => {
    await open([aStack(1)]);
    act(() => showMeter(aLiveMeter({ kind: 'simulated' })));
    expect(said()).toContain('The simulated meter is live. Its values are made up.');
  });

  test('nothing is saved of a meter that is to be confirmed', async () => {
    await open([aStack(1)]);
    act(() => showMeter(aLiveMeter({ toConfirm: { what: 'value', before: null } })));
    expect(said()).toContain('Its readings are not saved until you confirm.');
    expect(said()).not.toContain('saved when it settles');
  });

  test('readings of an earlier day come from no meter', async () => {
    const { user } = await open([aStack(1)]);
    act(() => showMeter(aLiveMeter()));
    await user.click(screen.getByText('Change the date'));
    await typeDay(user, 'Day the readings were taken', '2026-05-04');
    expect(said()).toContain('Type the readings of an earlier day.');
    expect(said()).not.toContain('The meter is live');
  });
});

test('in Fahrenheit for whom that is the unit', async () => {
  useSettings.setState({ settings: { ...usualSettings, units: 'imperial' } });
  const { machine, user } = await open([aStack(1)]);
  await user.type(screen.getByLabelText('Wood temperature'), '59{Enter}');
  expect(machine.inputsOf('rounds.start')).toEqual([{ stackId: 1, woodTempC: 15, startedOn: null }]);
});

test('not knowing the temperature is allowed, and its cost is shown', async () => {
  const { machine, user } = await open([aStack(1)]);
  await user.click(screen.getByRole('checkbox', { name: 'I don’t know' }));
  expect(screen.getByText(/Readings are corrected for the air here/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Start the round' }));
  expect(machine.inputsOf('rounds.start')).toEqual([{ stackId: 1, woodTempC: null, startedOn: null }]);
});

test('the hands are in the temperature field', async () => {
  await open([aStack(1)]);
  expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'Wood temperature' }));
});

test('readings from paper have the day they were taken on', async () => {
  const { machine, user } = await open([aStack(1)]);
  await user.type(screen.getByLabelText('Wood temperature'), '12');
  await user.click(screen.getByText('Change the date'));
  await typeDay(user, 'Day the readings were taken', '2026-05-04');
  await user.click(screen.getByRole('button', { name: 'Start the round' }));
  expect(machine.inputsOf('rounds.start')).toEqual([{ stackId: 1, woodTempC: 12, startedOn: '2026-05-04' }]);
});

test('readings cannot be of a day still to come: the field says so, and no round starts', async () => {
  const { machine, user } = await open([aStack(1)]);
  await user.type(screen.getByLabelText('Wood temperature'), '12');
  await user.click(screen.getByText('Change the date'));
  await typeDay(user, 'Day the readings were taken', '2999-05-04');
  await user.click(screen.getByRole('button', { name: 'Start the round' }));
  expect(screen.getByText(/^No later than /)).toBeTruthy();
  expect(machine.inputsOf('rounds.start')).toEqual([]);
});

test('a round below freezing says which boards can be read', async () => {
  const { user } = await open([aStack(1)]);
  await user.type(screen.getByLabelText('Wood temperature'), '-2');
  expect(
    screen.getByText(
      'Below freezing, readings are less exact. Boards above 22% cannot be read until they thaw.',
    ),
  ).toBeTruthy();
});

test('an unfinished round is resumed, not started twice', async () => {
  await open([aStack(1, { openRoundId: 7 })]);
  expect(screen.getByRole('link', { name: 'Resume the round' }).getAttribute('href')).toBe('#/round/7');
  expect(screen.queryByRole('button', { name: 'Start the round' })).toBeNull();
});

describe('a date that is likely wrong is asked about, and nothing typed is lost by that', () => {
  const asking = async (problem: Message, clock: Message | null) => {
    const machine = playMachine({
      'stacks.list': () => [aStack(1)],
      'rounds.clock': () => ({ problem: clock }),
      'rounds.start': ({ isDateRight }) => {
        if (!isDateRight) throw new Refusal(problem);
        return aRound();
      },
    });
    render(<RoundStartScreen stackId={null} placeId={null} />, { wrapper: InMain });
    await screen.findByLabelText('Wood temperature');
    const user = userEvent.setup();
    await user.type(screen.getByLabelText('Wood temperature'), '9');
    return { machine, user };
  };

  test('that of a clock with a flat battery, which is said before, too', async () => {
    const [nowAt, lastAt] = ['2020-01-01T08:00:00.000Z', '2026-05-04T08:00:00.000Z'];
    const problem = message('clock.before-last-act', { nowAt, lastAt });
    const { machine, user } = await asking(problem, problem);
    const sentence = /This computer’s clock says .* 2020.*Set the clock before you start/;
    expect(await screen.findByText(sentence)).toBeTruthy();
    await user.keyboard('{Enter}');
    expect(screen.getAllByText(sentence)).toHaveLength(1);
    expect(screen.queryByRole('alert')).toBeNull();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Start anyway' }));
    const asked = { stackId: 1, woodTempC: 9, startedOn: null };
    expect(machine.inputsOf('rounds.start')).toEqual([asked, { ...asked, isDateRight: true }]);
  });

  test('a typed one, and the next one again', async () => {
    const { machine, user } = await asking(
      message('round-date.long-before-stack', { years: 56, change: 'start' }),
      null,
    );
    await user.click(screen.getByText('Change the date'));
    await typeDay(user, 'Day the readings were taken', '1970-05-04');
    await user.click(screen.getByRole('button', { name: 'Start the round' }));
    expect(screen.getByText(/No round was started\. Is the year right\?$/)).toBeTruthy();
    expect(screen.queryByRole('alert')).toBeNull();
    await typeDay(user, 'Day the readings were taken', '1971-05-04');
    await user.click(screen.getByRole('button', { name: 'Start the round' }));
    await user.click(screen.getByRole('button', { name: 'Yes, start the round' }));
    const asked = { stackId: 1, woodTempC: 9 };
    expect(machine.inputsOf('rounds.start')).toEqual([
      { ...asked, startedOn: '1970-05-04' },
      { ...asked, startedOn: '1971-05-04' },
      { ...asked, startedOn: '1971-05-04', isDateRight: true },
    ]);
  });
});
