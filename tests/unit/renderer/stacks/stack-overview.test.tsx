// @vitest-environment jsdom
import '../parts/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StackOverview } from '../../../../renderer/screens/stacks/StackOverview.tsx';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import type { Call } from '../../../../shared-core/probing/calls/assessment.ts';
import type { StackPlan } from '../../../../shared-core/probing/plan/stack-plan.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack } from './a-yard.ts';

const plan = (more: Partial<StackPlan> = {}): StackPlan => ({
  call: 'bring-in',
  reasons: [
    message('stack-plan.some.bring-in', { boards: 5, probed: 8 }),
    message('stack-plan.ready-to-use', { boards: 1 }),
  ],
  boards: 60,
  probed: 8,
  certainty: 0.9,
  toKnowReady: 16,
  toKnowMean: { boards: 7, marginPct: 1, spreadPct: 1.7 },
  next: [{ boardId: 4, code: 'OAK-04', call: null, why: message('stack-plan.next.nothing-known') }],
  ...more,
});

/** Three courses of two; the upper right place is empty. */
const stackOrder = (): BoardRow[] =>
  [1, 2, 3, 4, 5].map((number) =>
    aBoardRow(number, { layer: Math.ceil(number / 2), column: number % 2 === 1 ? 1 : 2 }),
  );
const called = (board: BoardRow, call: Call, averagePct: number): BoardRow => ({
  ...board,
  latest: aFinding({ call, averagePct }),
});

function open(boards: BoardRow[], made: StackPlan | null = plan(), stack = aStack()) {
  const machine = playMachine({
    'stacks.plan': ({ certainty }) => made && { ...made, certainty },
    'boards.list': () => ({ total: boards.length, rows: boards }),
  });
  render(
    <main>
      <h1>Stack</h1>
      <StackOverview stack={stack} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('The pile', () => {
  test('is drawn from its end, the highest course on top, each board with letter and figure', async () => {
    const [first, second, ...rest] = stackOrder();
    open([called(first!, 'ready', 7.1), called(second!, 'keep-drying', 12.3), ...rest]);
    const table = await screen.findByRole('table', { name: 'The pile, seen from its end' });
    await screen.findByText('Bring in 5 of 8.');
    const rows = within(table)
      .getAllByRole('row')
      .map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows).toEqual([
      ['Course 3', 'OAK-05 not probed', ''],
      ['Course 2', 'OAK-03 not probed', 'OAK-04 not probed probe next'],
      ['Course 1', 'OAK-01 R Ready 7.1 %', 'OAK-02 K Keep drying 12.3 %'],
      ['', 'Column 1', 'Column 2'],
    ]);
    await expectNoBarriers();
  });

  test('one with nothing over it says that the sun reaches its top course', async () => {
    open(stackOrder(), plan(), aStack({ topCover: 'sun' }));
    expect(await screen.findByText(/outdoors, the sun reaches its top course/)).toBeTruthy();
  });

  test('each board says its call in words and leads to its page; those to probe next say so', async () => {
    const [first, ...rest] = stackOrder();
    open([called(first!, 'bring-in', 11), ...rest]);
    const board = await screen.findByRole('link', { name: 'OAK-01 Bring in 11.0 %' });
    expect(board.getAttribute('href')).toBe('#/boards/1');
    expect(await screen.findByRole('link', { name: 'OAK-04 not probed probe next' })).toBeTruthy();
  });

  test('is one stop for Tab; arrows go over it, past an empty place to the nearest board', async () => {
    const { user } = open(stackOrder());
    await screen.findByRole('table', { name: 'The pile, seen from its end' });
    await screen.findByText('Bring in 5 of 8.');
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

  test('what was said of a board’s end is drawn on it, and read out', async () => {
    const [first, second, ...rest] = stackOrder();
    open([
      { ...first!, sawing: 'flat', barkSide: 'up-bark-on' },
      // Which side the bark was is not known, so its rings may arch either way.
      { ...second!, sawing: 'flat', barkSide: 'unknown' },
      ...rest,
    ]);
    const said = await screen.findByRole('link', {
      name: 'OAK-01 not probed flat-sawn, bark side up, bark still on',
    });
    expect(said.querySelectorAll('.end-grain-rings circle').length).toBeGreaterThan(2);
    expect(said.querySelector('.end-grain-bark')).toBeTruthy();
    const unsaid = screen.getByRole('link', { name: /^OAK-02 not probed$/ });
    expect(unsaid.querySelector('svg.end-grain')).toBeNull();
    expect(screen.getByText(/a thick edge is bark still on/)).toBeTruthy();
    await expectNoBarriers();
  });

  test('boards whose place is not said stand beside', async () => {
    open([...stackOrder(), aBoardRow(9)]);
    const beside = within(
      await screen.findByRole('region', { name: 'Boards whose place in the pile is not said' }),
    );
    expect(beside.getByRole('link', { name: 'OAK-09 not probed' }).tabIndex).toBe(0);
  });

  test('where no board has a place, it says how to get the drawing', async () => {
    open([aBoardRow(1)]);
    expect(await screen.findByText(/how many lie in a course/)).toBeTruthy();
  });
});

describe('The plan', () => {
  test('says the call with its reasons, how many boards to probe, and which next with why', async () => {
    open(stackOrder());
    const sheet = within(await screen.findByRole('region', { name: 'What to do with it' }));
    expect(await sheet.findByText('Bring in')).toBeTruthy();
    expect(sheet.getByText('To call the stack ready').nextElementSibling?.textContent).toMatch(
      /^16 of 60 boards/,
    );
    expect(sheet.getByText('To know its average within 1 %').nextElementSibling?.textContent).toMatch(
      /^7 of 60 boards/,
    );
    const next = within(sheet.getByRole('region', { name: 'Probe next' }));
    expect(next.getByRole('listitem').textContent).toBe('OAK-04 No readings and no forecast yet.');
    expect(next.getByRole('link').getAttribute('href')).toBe('#/boards/4');
  });

  test('another certainty is asked for', async () => {
    const { machine, user } = open(stackOrder());
    await user.click(await screen.findByRole('radio', { name: '95 %' }));
    expect(machine.inputsOf('stacks.plan')).toEqual([
      { id: 1, certainty: 0.9 },
      { id: 1, certainty: 0.95 },
    ]);
    expect(await screen.findByRole('radio', { name: '95 %', checked: true })).toBeTruthy();
  });

  test('with no board in doubt it says that probing today would tell no more', async () => {
    open(stackOrder(), plan({ next: [] }));
    expect(await screen.findByText(/No board is so near to a limit/)).toBeTruthy();
  });
});
