// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EditReading } from '../../../../renderer/features/records/EditReading.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../../../shared-core/contract/requests.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aReading } from '../round/a-round.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

test('a mark that the meter showed only more is shown, typed and taken away', async () => {
  const act = '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f';
  const machine = playMachine({
    'readings.correct': () => ({ act, readings: 1, boardIds: [101], roundIds: [12] }),
  });
  const user = userEvent.setup();
  render(<EditReading reading={aReading(1, { raw: 30, isAbove: true })} depth="shell" />);
  for (const typed of ['28+', '>28%', '30']) {
    await user.click(screen.getByRole('button', { name: 'Edit shell reading >30%' }));
    const form = within(screen.getByRole('dialog'));
    const value = form.getByLabelText(/^What the meter showed/);
    expect(value).toHaveProperty('value', '>30');
    await user.clear(value);
    await user.type(value, typed);
    await user.click(form.getByRole('button', { name: 'Save' }));
  }
  await user.click(screen.getByRole('button', { name: 'Edit shell reading >30%' }));
  const form = within(screen.getByRole('dialog'));
  await user.type(form.getByLabelText(/^What the meter showed/), ' wet');
  await user.click(form.getByRole('button', { name: 'Save' }));
  expect(form.getByText(/^“>30 wet” is not a number\./)).toBeTruthy();
  const saved = machine.inputsOf('readings.correct') as RequestInput<'readings.correct'>[];
  expect(saved.map(({ corrected }) => corrected)).toEqual([
    { raw: 28, isAbove: true },
    { raw: 28, isAbove: true },
    { raw: 30, isAbove: false },
  ]);
});

async function typeSlip() {
  const machine = playMachine({
    'readings.correct': ({ isAsMeant }) => {
      if (!isAsMeant)
        throw new Refusal(message('refusal.correction-slip', { rawPct: 126, rawMeantPct: 12.6 }));
      const act = '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f';
      return { act, readings: 1, boardIds: [101], roundIds: [12] };
    },
  });
  const user = userEvent.setup();
  render(<EditReading reading={aReading(1, { raw: 16.2 })} depth="shell" />);
  await user.click(screen.getByRole('button', { name: /^Edit shell reading 16.2%/ }));
  const form = within(screen.getByRole('dialog'));
  const value = form.getByLabelText(/^What the meter showed/);
  await user.clear(value);
  await user.type(value, '126');
  await user.click(form.getByRole('button', { name: 'Save' }));
  expect(await form.findByText(/^126% was typed, but 12.6% would fit\./)).toBeTruthy();
  const saved = () =>
    (machine.inputsOf('readings.correct') as RequestInput<'readings.correct'>[]).map(
      ({ corrected, isAsMeant }) => [corrected.raw, isAsMeant],
    );
  return { user, form, value, saved };
}

test('a correction that looks like a slip offers what would fit', async () => {
  const { user, form, saved } = await typeSlip();
  await expectNoBarriers();
  await user.click(form.getByRole('button', { name: 'Use 12.6%' }));
  expect(saved()).toEqual([
    [126, undefined],
    [12.6, true],
  ]);
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('it is saved as typed by a second press, and asked again of another value', async () => {
  const { user, form, value, saved } = await typeSlip();
  await user.type(value, '0');
  await user.click(form.getByRole('button', { name: 'Save' }));
  await user.click(await form.findByRole('button', { name: 'Save as typed' }));
  expect(saved()).toEqual([
    [126, undefined],
    [1260, undefined],
    [1260, true],
  ]);
});
