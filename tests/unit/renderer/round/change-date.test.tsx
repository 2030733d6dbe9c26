// @vitest-environment jsdom
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { RoundsOfBoard } from '../../../../renderer/features/board/RoundsOfBoard.tsx';
import { RoundSummaryPage } from '../../../../renderer/features/round/RoundSummaryPage.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RoundDate } from '../../../../shared-core/contract/round.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { clearField, shownText, typeDay, typeTime } from '../form/type-day.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aRound } from './a-round.ts';

const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;
const local = (day: number, hour: number) => new Date(2026, 4, day, hour).toISOString();

const aDate: RoundDate = {
  id: 12,
  version: 2,
  startedAt: local(4, 8),
  isDated: false,
  finishedAt: local(4, 9),
};

/** The list of a board's rounds, with what the machine answers to another date. */
async function open(
  round: RoundDate,
  edited: (input: { changed: { startedAt?: string | undefined } }) => RoundDate,
) {
  const machine = playMachine({ 'rounds.ofBoard': () => [round], 'rounds.edit': edited });
  render(<RoundsOfBoard boardId={1} />, { wrapper: InMain });
  const user = userEvent.setup();
  await user.click(await screen.findByRole('button', { name: /^Change the date.*May.*4/s }));
  return { machine, user, dialog: screen.getByRole('dialog', { name: 'Date of the round' }) };
}
const start = 'Start of the round';
const save = () => screen.getByRole('button', { name: 'Save' });

beforeEach(forgetEverything);
afterEach(cleanup);

test('from the list of a board’s rounds, a round gets another date and time', async () => {
  const { machine, user, dialog } = await open(
    aDate,
    ({ changed }) => ({ ...aDate, ...changed, version: 3 }) as RoundDate,
  );
  expect(within(dialog).getByText(/All readings of the round get the new date/)).toBeTruthy();
  await expectNoBarriers();
  expect(shownText(start)).toBe('5/4/2026, 8:00 AM');
  await typeTime(user, start, '2026-05-02T10:30');
  await user.click(save());
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('rounds.edit')).toEqual([
    { id: 12, basedOn: 2, changed: { startedAt: new Date(2026, 4, 2, 10, 30).toISOString() } },
  ]);
  expect(useNotices.getState().notices[0]?.sentence).toMatch(/Round start changed from May 4.* to May 2/);
});

test('saved as it was, nothing is said to have changed', async () => {
  for (const isDated of [false, true]) {
    const { machine, user } = await open(
      { ...aDate, isDated },
      ({ changed }) => ({ ...aDate, ...changed }) as RoundDate,
    );
    await user.click(save());
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('rounds.edit')).toEqual([]);
    expect(useNotices.getState().notices).toEqual([]);
    cleanup();
  }
});

test('a round of which only the day is known gets another day', async () => {
  const { machine, user } = await open({ ...aDate, isDated: true }, () => aDate);
  await typeDay(user, 'Day the readings were taken', '2026-05-02');
  await user.click(save());
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('rounds.edit')).toEqual([
    { id: 12, basedOn: 2, changed: { startedAt: local(2, 12) } },
  ]);
});

test('a blank date is marked, and nothing is asked', async () => {
  const { machine, user, dialog } = await open(aDate, () => aDate);
  await clearField(user, start);
  await user.click(save());
  expect(within(dialog).getByText('Give the date and time.')).toBeTruthy();
  expect(machine.inputsOf('rounds.edit')).toEqual([]);
});

test('why it was refused is said, and what was typed stays', async () => {
  const { user, dialog } = await open(aDate, () => {
    throw new Refusal(message('refusal.redated-to-come'));
  });
  await typeTime(user, start, '2026-05-06T10:30');
  await user.click(save());
  expect(within(dialog).getByRole('alert').textContent).toContain('That time is in the future.');
  expect(shownText(start)).toBe('5/6/2026, 10:30 AM');
});

test('a year long before the stack is asked about once, and then is as the person says', async () => {
  const { machine, user, dialog } = await open(aDate, ({ changed }) => {
    if (!('isYearRight' in changed))
      throw new Refusal(message('round-date.long-before-stack', { years: 56, change: 'date' }));
    return { ...aDate, version: 3, startedAt: changed.startedAt! };
  });
  await typeTime(user, start, '1970-01-01T00:30');
  await user.click(save());
  expect(within(dialog).getByRole('status').textContent).toContain(
    'That is 56 years before this stack was added. Nothing was changed. Is the year right?',
  );
  // Another date is another question.
  await typeTime(user, start, '1970-01-02T00:30');
  await user.click(save());
  await user.click(screen.getByRole('button', { name: 'Yes, change it' }));
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('rounds.edit').map((each) => (each as { changed: object }).changed)).toEqual([
    { startedAt: new Date(1970, 0, 1, 0, 30).toISOString() },
    { startedAt: new Date(1970, 0, 2, 0, 30).toISOString() },
    { startedAt: new Date(1970, 0, 2, 0, 30).toISOString(), isYearRight: true },
  ]);
});

test('where another window changed it meanwhile, both are shown', async () => {
  let tries = 0;
  const { machine, user, dialog } = await open(aDate, () => {
    if (tries++ === 0) throw new Conflict({ ...aDate, version: 3, startedAt: local(3, 7) });
    return aDate;
  });
  await typeTime(user, start, '2026-05-02T10:30');
  await user.click(save());
  expect(within(dialog).getByText(/May 3/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Use what I typed' }));
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('rounds.edit')[1]).toMatchObject({ basedOn: 3 });
});

test('a running round has its date when it is finished', async () => {
  playMachine({ 'rounds.ofBoard': () => [{ ...aDate, finishedAt: null }] });
  render(<RoundsOfBoard boardId={1} />, { wrapper: InMain });
  expect(await screen.findByText('still running')).toBeTruthy();
  expect(screen.queryByRole('button', { name: /^Change the date/ })).toBeNull();
});

test('the summary of a round offers it, too', async () => {
  playMachine({});
  render(<RoundSummaryPage round={{ ...aRound(), ...aDate, aim: null, probed: null }} />, {
    wrapper: InMain,
  });
  await userEvent.setup().click(screen.getByRole('button', { name: /^Change the date/ }));
  expect(shownText(start)).toBe('5/4/2026, 8:00 AM');
});
