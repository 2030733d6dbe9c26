// @vitest-environment jsdom

import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { CheckScreen } from '../../../../renderer/features/reports/CheckScreen.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { ReportCheck } from '../../../../shared-core/contract/report.ts';
import { EXAMPLE_CHECK_CODE } from '../../../../shared-core/reports/check-code.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const aCheck = (more: Partial<ReportCheck> = {}): ReportCheck => ({
  kind: 'buyer',
  boardId: 7,
  boardCode: 'OAK-07',
  speciesName: 'Northern red oak',
  printedAt: '2026-09-20T17:05:00.000Z',
  matches: true,
  stated: { at: '2026-09-01T12:00:00.000Z', call: 'ready', averagePct: 7.4, shellPct: 7.2 },
  roundsSince: 0,
  ...more,
});

function open(answer: () => ReportCheck, code = '') {
  const machine = playMachine({ 'reports.check': answer });
  render(
    <main>
      <CheckScreen code={code} />
    </main>,
  );
  return machine;
}
beforeEach(forgetEverything);
afterEach(cleanup);

test('a sheet that matches shows what it must state', async () => {
  const user = userEvent.setup();
  const machine = open(() => aCheck());
  // A scanner types where the focus is.
  await user.keyboard(`${EXAMPLE_CHECK_CODE}{Enter}`);
  expect(await screen.findByText('This report matches what is in this yard.')).toBeTruthy();
  expect(machine.inputsOf('reports.check')).toEqual([{ checkCode: EXAMPLE_CHECK_CODE }]);
  for (const fact of ['OAK-07', 'Ready', '7.4%']) expect(screen.getByText(fact)).toBeTruthy();
  await expectNoBarriers();
});

test('one that does not match says so, with what is in the yard now', async () => {
  open(() => aCheck({ matches: false, roundsSince: 2 }), EXAMPLE_CHECK_CODE);
  expect(await screen.findByText('This report does not match what is in this yard.')).toBeTruthy();
  expect(screen.getByText('2 rounds of this board are newer than the report.')).toBeTruthy();
  expect(screen.queryByText('This report matches what is in this yard.')).toBeNull();
});

test('what a scanner gave is checked at once', async () => {
  const machine = open(() => aCheck(), EXAMPLE_CHECK_CODE);
  expect(await screen.findByText('This report matches what is in this yard.')).toBeTruthy();
  expect(machine.inputsOf('reports.check')).toEqual([{ checkCode: EXAMPLE_CHECK_CODE }]);
});

test('a code that is refused says why at its field, and nothing is asked without one', async () => {
  const user = userEvent.setup();
  const machine = open(() => {
    throw new Refusal(message('check.mistyped'));
  });
  await user.click(screen.getByRole('button', { name: 'Check' }));
  expect(screen.getByText('Scan or type a check code.')).toBeTruthy();
  expect(machine.inputsOf('reports.check')).toEqual([]);
  await user.type(screen.getByRole('textbox', { name: 'Check code' }), `${EXAMPLE_CHECK_CODE}{Enter}`);
  expect(
    await screen.findByText('A character of that code is wrong. Compare it with the report.'),
  ).toBeTruthy();
  expect(screen.getByRole('textbox').getAttribute('aria-invalid')).toBe('true');
});
