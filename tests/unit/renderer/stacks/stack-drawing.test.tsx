// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StackDrawing } from '../../../../renderer/features/stacks/StackDrawing.tsx';
import { StackPlan } from '../../../../renderer/features/stacks/StackPlan.tsx';
import { unbroken } from '../../../../renderer/unbroken.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import type { Call } from '../../../../shared-core/probing/calls/assessment.ts';
import type { StackPlan as Plan } from '../../../../shared-core/probing/plan/stack-plan.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack } from './a-yard.ts';

const plan = (more: Partial<Plan> = {}): Plan => ({
  boards: 60,
  probed: 8,
  certainty: 0.9,
  toKnowReady: 16,
  toKnowMean: { boards: 7, marginPct: 1, spreadPct: 1.7 },
  allProbed: null,
  next: [{ boardId: 4, code: 'OAK-04', call: null, why: message('stack-plan.next.nothing-known') }],
  whyNone: message('stack-plan.next.none'),
  ...more,
});

/** Three layers of two, with a gap at the upper right. */
const stackOrder = (): BoardRow[] =>
  [1, 2, 3, 4, 5].map((number) =>
    aBoardRow(number, { layer: Math.ceil(number / 2), column: number % 2 === 1 ? 1 : 2 }),
  );
const called = (board: BoardRow, call: Call, averagePct: number): BoardRow => ({
  ...board,
  latest: aFinding({ call, averagePct }),
});

function open(boards: BoardRow[], made: Plan | null = plan(), stack = aStack()) {
  const machine = playMachine({
    'stacks.plan': ({ certainty }) => made && { ...made, certainty },
    'boards.list': () => ({ total: boards.length, rows: boards }),
  });
  render(
    <main>
      <h1>Stack</h1>
      <StackDrawing stack={stack} />
      <StackPlan stackId={stack.id} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('The drawing of a stack', () => {
  test('is from its end, the top layer first, each board with its call and MC', async () => {
    const [first, second, ...rest] = stackOrder();
    open([called(first!, 'ready', 7.1), called(second!, 'keep-drying', 12.3), ...rest]);
    const table = await screen.findByRole('table', { name: 'The stack, from its end' });
    await screen.findByRole('link', { name: /probe next/ });
    const rows = within(table)
      .getAllByRole('row')
      .map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows).toEqual([
      ['', 'Column 1', 'Column 2'],
      ['3', 'OAK-05 –not probed yet', ''],
      ['2', 'OAK-03 –not probed yet', 'OAK-04 –not probed yet probe next'],
      ['1', 'OAK-01 Ready 7.1%', 'OAK-02 Keep drying 12.3%'],
    ]);
    expect(within(table).getByRole('rowheader', { name: 'Layer 3' })).toBeTruthy();
    expect(within(table).getByRole('columnheader', { name: 'Column 2' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('one with nothing above it warns of the sun on its top layer', async () => {
    open(stackOrder(), plan(), aStack({ topCover: 'sun' }));
    expect(
      await screen.findByText(/Nothing covers it\. Outdoors, the sun reaches the top layer\./),
    ).toBeTruthy();
  });

  test('each board has its call in words and leads to its page; those to probe next are marked', async () => {
    const [first, ...rest] = stackOrder();
    open([called(first!, 'bring-in', 11), ...rest]);
    const board = await screen.findByRole('link', { name: 'OAK-01 Bring in 11.0%' });
    expect(board.getAttribute('href')).toBe('#/boards/1');
    expect(await screen.findByRole('link', { name: 'OAK-04 not probed yet probe next' })).toBeTruthy();
  });

  test('is one stop for Tab; arrows move over it, past a gap to the nearest board', async () => {
    const { user } = open(stackOrder());
    await screen.findByRole('table', { name: 'The stack, from its end' });
    const at = () => document.activeElement?.textContent?.slice(0, 6);
    const board = (code: string) =>
      within(screen.getByRole('table')).getByRole('link', { name: new RegExp(`^${code} `) });
    expect(['OAK-01', 'OAK-02', 'OAK-03', 'OAK-04', 'OAK-05'].map((code) => board(code).tabIndex)).toEqual([
      -1, -1, -1, -1, 0,
    ]);
    board('OAK-05').focus();
    await user.keyboard('{ArrowRight}');
    expect(at()).toBe('OAK-05');
    await user.keyboard('{ArrowDown}{ArrowRight}');
    expect(at()).toBe('OAK-04');
    await user.keyboard('{ArrowDown}');
    expect(at()).toBe('OAK-02');
    await user.keyboard('{ArrowUp}{ArrowUp}');
    expect(at()).toBe('OAK-05');
    expect(board('OAK-05').tabIndex).toBe(0);
  });

  test('the end grain that was entered is drawn on its board, and read out', async () => {
    const [first, second, ...rest] = stackOrder();
    open([
      { ...first!, sawing: 'flat', barkSide: 'up-bark-on' },
      // Which side the bark was is not known, so its rings may arch either way.
      { ...second!, sawing: 'flat', barkSide: 'unknown' },
      ...rest,
    ]);
    const entered = await screen.findByRole('link', {
      name: 'OAK-01 not probed yet flat-sawn, bark side up, bark still on',
    });
    expect(entered.querySelectorAll('svg circle').length).toBeGreaterThan(2);
    expect(entered.querySelector('svg path')).toBeTruthy();
    const notEntered = screen.getByRole('link', { name: /^OAK-02 not probed yet$/ });
    expect(notEntered.querySelector('svg')).toBeNull();
    expect(screen.getByText(/A thick edge is bark still on/)).toBeTruthy();
    await expectNoBarriers();
  });

  test('boards without a layer are listed below it', async () => {
    open([...stackOrder(), aBoardRow(9)]);
    const beside = within(await screen.findByRole('region', { name: 'Layer and column missing' }));
    expect(beside.getByRole('link', { name: 'OAK-09 not probed yet' }).tabIndex).toBe(0);
  });

  test('where no board has a layer, it explains how to get the drawing', async () => {
    open([aBoardRow(1)]);
    expect(await screen.findByText(/enter how many lie in a layer/)).toBeTruthy();
  });
});

describe('How many to probe', () => {
  test('is folded away: how many for which certainty, and which next with why', async () => {
    const { user } = open(stackOrder());
    await user.click(await screen.findByText('How many to probe?'));
    expect((await screen.findByText('To call the stack ready')).nextElementSibling?.textContent).toBe(
      '16 of 60 boards If all are ready, you can be 90% sure that at most 1 in 10 is not.',
    );
    expect(screen.getByText('To know the average within 1.0 points').nextElementSibling?.textContent).toBe(
      '7 of 60 boards The boards differ by about 1.7 points (standard deviation).',
    );
    const next = within(screen.getByRole('region', { name: 'Probe next' }));
    expect(next.getByRole('listitem').textContent).toBe('OAK-04 No readings and no forecast yet.');
    expect(next.getByRole('link').getAttribute('href')).toBe('#/boards/4');
  });

  test('another certainty is asked for', async () => {
    const { machine, user } = open(stackOrder());
    await user.click(await screen.findByText('How many to probe?'));
    await user.click(await screen.findByRole('radio', { name: '95%' }));
    expect(machine.inputsOf('stacks.plan')).toContainEqual({ id: 1, certainty: 0.95 });
    expect(await screen.findByRole('radio', { name: '95%', checked: true })).toBeTruthy();
  });

  // A sample says nothing more where every board was probed.
  test('with all probed, their average and range, and how many are ready, instead of a sample', async () => {
    const averagesInterval = { minPct: 6.4, maxPct: 9.1 };
    const allProbed = message('stack-plan.all-probed', {
      boards: 6,
      averaged: 6,
      averagePct: 7.7,
      averagesInterval,
      unaveraged: 0,
      ready: 4,
    });
    open(stackOrder(), plan({ probed: 6, boards: 6, next: [], allProbed }));
    expect(
      await screen.findByText(unbroken('All 6 are probed. Average 7.7%, boards 6.4–9.1%. 4 ready.')),
    ).toBeTruthy();
    expect(screen.queryByRole('radio', { name: '95%' })).toBeNull();
  });

  test('with no board due, none needs probing', async () => {
    open(stackOrder(), plan({ next: [] }));
    expect(await screen.findByText(/No board needs probing today/)).toBeTruthy();
  });
});
