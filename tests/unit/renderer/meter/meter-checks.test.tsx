// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { CheckOffer } from '../../../../renderer/features/meter-check/CheckOffer.tsx';
import { MeterChecks } from '../../../../renderer/features/meter-check/MeterChecks.tsx';
import { QuestionableMeter } from '../../../../renderer/features/meter-check/QuestionableMeter.tsx';
import { showMeter, useMeter } from '../../../../renderer/stores/meter.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import type { MeterOfYard } from '../../../../shared-core/contract/meter.ts';
import type { CheckedMeter, MeterCheck } from '../../../../shared-core/contract/meter-checks.ts';
import type { ReadingsMoved } from '../../../../shared-core/contract/requests/meters.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
import { aLiveMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const meter: MeterOfYard = {
  id: 1,
  version: 1,
  kind: 'typed',
  name: 'Old one',
  unit: 'pct',
  profile: { ...unknownProfile, scale: { kind: 'usual' } },
  isTypedFrom: true,
};
const aCheck = (changes: Partial<MeterCheck> = {}): MeterCheck => ({
  id: 7,
  blockId: 3,
  at: '2026-06-01T08:00:00.000Z',
  right: 12,
  tolerance: 0.5,
  shown: 12.2,
  tempC: null,
  off: 0.2,
  correctedBy: 0,
  state: 'right',
  excluded: null,
  isAhead: false,
  ...changes,
});
const off = aCheck({ shown: 13, off: 1, state: 'off' });
const checkedMeter = ({ checks = [], ...changes }: Partial<CheckedMeter> = {}): CheckedMeter => ({
  block: {
    id: 3,
    version: 1,
    meterId: 1,
    name: 'Block',
    expected: 12,
    unit: 'pct',
    tolerance: 0.5,
    checkEvery: 'day',
  },
  meterName: 'Old one',
  unit: 'pct',
  right: 12,
  checks,
  last: checks.find(({ excluded }) => excluded === null) ?? null,
  isDue: true,
  toCorrect: null,
  ...changes,
});
const live = {
  raw: 12.2,
  unit: 'pct' as const,
  corrected: null,
  spread: 0.1,
  tempC: null,
  silentS: null,
  trace: [12.2],
};
const moved: ReadingsMoved = {
  act: '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f',
  readings: 2,
  boardIds: [1],
  roundIds: [1],
};
const sentence = (text: string) => screen.findByText(unbroken(text));

function play(checked: CheckedMeter, found: MeterCheck = aCheck()) {
  return playMachine({
    'meters.list': () => [meter],
    'meterChecks.list': () => [checked],
    'meterChecks.add': () => found,
    'meterChecks.correct': () => ({ ...moved, checkId: 7 }),
    'meterChecks.exclude': () => moved,
    'meterChecks.include': () => moved,
    'testBlocks.add': () => checked.block,
    'meterChecks.ofRound': () => [
      {
        meterName: 'Old one',
        unit: 'pct',
        check: off,
        meterProfileId: 2,
        until: null,
        readings: 2,
        toCorrect: 2,
      },
    ],
  });
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('before a round', () => {
  test('a check that is due takes the settled value of the connected meter with one press', async () => {
    const machine = play(checkedMeter());
    showMeter(aLiveMeter());
    const user = userEvent.setup();
    render(<CheckOffer />);
    await user.click(await screen.findByRole('button', { name: 'Check Old one' }));
    expect(await screen.findByText(/Press both pins onto the contacts of Block/)).toBeTruthy();
    expect(screen.getByText(/^No number yet/)).toBeTruthy();
    await expectNoBarriers();
    act(() => useMeter.setState({ live: { ...live, raw: null, phase: 'pins-out' } }));
    act(() => useMeter.setState({ live: { ...live, phase: 'drifting' } }));
    expect(machine.inputsOf('meterChecks.add')).toEqual([]);
    act(() => useMeter.setState({ live: { ...live, phase: 'settled' } }));
    expect(await sentence('12.2%: right. It should show 12.0%.')).toBeTruthy();
    expect(machine.inputsOf('meterChecks.add')).toEqual([{ blockId: 3, shown: 12.2, tempC: null }]);
  });

  test.each([
    ['the pins were lifted', () => act(() => useMeter.setState({ live: { ...live, phase: 'pins-out' } }))],
    [
      'a person said so',
      () => userEvent.setup().click(screen.getByRole('button', { name: 'They are on the block' })),
    ],
  ])('what pins that were in already show is taken only once %s', async (_, tellOf) => {
    const machine = play(checkedMeter());
    showMeter(aLiveMeter());
    useMeter.setState({ live: { ...live, raw: 18.3, phase: 'settled' } });
    render(<CheckOffer />);
    await userEvent.setup().click(await screen.findByRole('button', { name: 'Check Old one' }));
    expect(await screen.findByText(/^Pull the pins first/)).toBeTruthy();
    await expectNoBarriers();
    expect(machine.inputsOf('meterChecks.add')).toEqual([]);
    await tellOf();
    act(() => useMeter.setState({ live: { ...live, phase: 'settled' } }));
    await sentence('12.2%: right. It should show 12.0%.');
    expect(machine.inputsOf('meterChecks.add')).toHaveLength(1);
  });

  test('with no meter connected it is typed, and one that is off is corrected only by a press', async () => {
    const machine = play(
      checkedMeter({ checks: [off], toCorrect: { checkId: 7, readings: 0 }, isDue: true }),
      off,
    );
    const user = userEvent.setup();
    render(<CheckOffer />);
    await user.click(await screen.findByRole('button', { name: 'Check Old one' }));
    await user.type(await screen.findByLabelText('The meter shows'), '13');
    await user.click(screen.getByRole('button', { name: 'Save the check' }));
    expect(await sentence('13.0%: off by 1.0 points. It should show 12.0%.')).toBeTruthy();
    expect(screen.getByText('Later readings are off, too, until you correct them.')).toBeTruthy();
    expect(machine.inputsOf('meterChecks.correct')).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Correct from now on' }));
    expect(await screen.findByText('Readings are corrected for it.')).toBeTruthy();
    expect(machine.inputsOf('meterChecks.correct')).toMatchObject([{ checkId: 7 }]);
  });

  test('a meter that was off says so also where no check is due, and is corrected from there', async () => {
    const machine = play(
      checkedMeter({ checks: [off], toCorrect: { checkId: 7, readings: 2 }, isDue: false }),
      off,
    );
    const user = userEvent.setup();
    render(
      <main>
        <CheckOffer />
      </main>,
    );
    expect(await screen.findByText(/^Old one was off by 1\.0.points when last checked, Jun/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Check Old one' })).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Correct readings' }));
    await expectNoBarriers();
    expect(machine.inputsOf('meterChecks.correct')).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Correct 2 readings' }));
    expect(machine.inputsOf('meterChecks.correct')).toMatchObject([{ checkId: 7 }]);
  });

  test('one that is corrected for it says nothing', async () => {
    play(checkedMeter({ checks: [off], toCorrect: null, isDue: false }));
    render(<CheckOffer />);
    await act(async () => undefined);
    expect(screen.queryByRole('status')).toBeNull();
  });

  test('one that was too far off to be corrected says what to look for', async () => {
    play(checkedMeter({ checks: [aCheck({ shown: 18, off: 6, state: 'too-far' })], isDue: false }));
    render(<CheckOffer />);
    expect(await screen.findByText(/Check the battery, pins, and setting/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Correct readings' })).toBeNull();
  });

  test('nothing is asked of a meter that was checked, or that no round is read from', async () => {
    play(checkedMeter({ isDue: false }));
    render(<CheckOffer />);
    await act(async () => undefined);
    expect(screen.queryByRole('button')).toBeNull();
  });
});

test('a questionable round says why, and its offer goes with "Not now"', async () => {
  const machine = play(checkedMeter());
  const user = userEvent.setup();
  render(
    <main>
      <QuestionableMeter roundId={9} />
    </main>,
  );
  expect(await sentence('13.0%: off by 1.0 points. It should show 12.0%.')).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Correct 2 readings' })).toBeTruthy();
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Not now' }));
  expect(screen.queryByRole('button', { name: 'Correct 2 readings' })).toBeNull();
  expect(screen.getByText(/may be wrong/)).toBeTruthy();
  expect(machine.inputsOf('meterChecks.correct')).toEqual([]);
});

test('a resistor of a meter in % says what it should show, by the scale of the meter', async () => {
  const machine = play(checkedMeter());
  const user = userEvent.setup();
  render(<MeterChecks meter={meter} checked={[]} />);
  await user.click(screen.getByRole('button', { name: 'Add a test block for Old one' }));
  await user.click(screen.getByRole('radio', { name: 'A resistor' }));
  await user.type(screen.getByLabelText('Resistance'), '120');
  // W. L. James, FPL-GTR-6 (1988), Table 1, Douglas-fir (coast): 120 megohms at 12 % and 26.7 °C, from memory; at 21 °C less than a point more.
  expect(screen.getByText(/^Old one should show about 12\.\d% on it\.$/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Save' }));
  expect(machine.inputsOf('testBlocks.add')).toMatchObject([
    { meterId: 1, name: 'Resistor', expected: 120e6, unit: 'ohm', tolerance: 0.5, checkEvery: 'day' },
  ]);
});

test('a check is excluded with a reason, and shown struck through, in the chart apart', async () => {
  const machine = play(checkedMeter());
  const user = userEvent.setup();
  const right = aCheck({ id: 6, at: '2026-05-20T08:00:00.000Z' });
  const { rerender } = render(
    <MeterChecks meter={meter} checked={[checkedMeter({ checks: [off, right] })]} />,
  );
  await user.click(screen.getByText('All 2 checks'));
  await user.click(screen.getAllByRole('button', { name: /^Exclude the check of/ })[0]!);
  await user.click(screen.getByRole('button', { name: 'Not on the block' }));
  expect(machine.inputsOf('meterChecks.exclude')).toMatchObject([
    { checkId: 7, why: { code: 'not-on-block' } },
  ]);
  const checks = [{ ...off, excluded: { code: 'not-on-block' as const } }, right];
  rerender(<MeterChecks meter={meter} checked={[checkedMeter({ checks })]} />);
  expect(screen.getByText('Excluded: Not on the block')).toBeTruthy();
  expect(screen.getByText('13%', { selector: 's' })).toBeTruthy();
  expect(screen.getAllByText('Not used').length).toBeGreaterThan(0);
  expect(await sentence('12.2%: right. It should show 12.0%.')).toBeTruthy();
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: /^Include the check of/ }));
  expect(machine.inputsOf('meterChecks.include')).toEqual([{ checkId: 7 }]);
});

test('one that was made while the clock was ahead says so', () => {
  play(checkedMeter());
  const of = { ...checkedMeter({ checks: [aCheck({ isAhead: true })] }), last: null };
  render(<MeterChecks meter={meter} checked={[of]} />);
  expect(screen.getByText('No check is used now.')).toBeTruthy();
  expect(screen.getByText('Not used: the clock was ahead when it was made.')).toBeTruthy();
});

test('the checks of a meter are listed and drawn, and what is typed wrong is named at its field', async () => {
  const machine = play(checkedMeter());
  const user = userEvent.setup();
  const checks = [off, aCheck({ id: 6, at: '2026-05-20T08:00:00.000Z' })];
  render(<MeterChecks meter={meter} checked={[checkedMeter({ checks })]} />);
  await user.click(screen.getByText('All 2 checks'));
  expect((await screen.findAllByText('Off')).length).toBeGreaterThan(0);
  expect(screen.getByText('Checks of Old one over time')).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Check Old one' }));
  await user.click(await screen.findByRole('button', { name: 'Save the check' }));
  expect(await screen.findByText('Enter the number that the meter shows.')).toBeTruthy();
  expect(machine.inputsOf('meterChecks.add')).toEqual([]);
});
