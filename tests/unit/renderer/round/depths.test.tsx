// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, expect, test } from 'vitest';
import { Notices } from '../../../../renderer/app/Notices.tsx';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import type { ProbedBoard } from '../../../../shared-core/contract/round.ts';
import type { PlanBasis } from '../../../../shared-core/probing/readings/plan-basis.ts';
import type { Suspicion } from '../../../../shared-core/probing/readings/reading.ts';
import { EXTRA_SPOTS } from '../../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';

afterEach(() => {
  cleanup();
  forgetEverything();
});

const InMain = ({ children }: { children: ReactNode }) => (
  <main>
    {children}
    <Notices />
  </main>
);
const ACT = '11111111-1111-4111-8111-111111111111';
const moved = { act: ACT, readings: 1, boardIds: [101], roundIds: [12] };
const shell: PlanBasis = { faces: 'shell', core: null, pins: { lengthMm: 8, insulated: false } };

async function open(first: ProbedBoard, more: Parameters<typeof playMachine>[0] = {}) {
  const round = { ...aRound([first, aBoard(2)]), aim: { boardId: 101, spotIndex: 0 }, probed: first };
  const machine = playMachine({
    'rounds.open': () => round,
    'rounds.aim': () => ({}),
    'rounds.get': () => round,
    'rounds.planCore': () => ({}),
    'readings.setDepth': () => moved,
    'readings.undoDepth': () => moved,
    ...more,
  });
  const user = byHand();
  render(<RoundScreen id={12} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  return { machine, user };
}

const spots = () => screen.getByRole('region', { name: 'Spots' });

test('a core that the pins do not reach is offered and not asked for, with the how-to of each way', async () => {
  const { machine, user } = await open(aBoard(1, { planBasis: shell }));
  expect(within(spots()).queryByText(/^Core,/)).toBeNull();
  expect(within(spots()).getByText('Core not read.')).toBeTruthy();
  await user.click(within(spots()).getByRole('button', { name: /Read the core/ }));
  const dialog = await screen.findByRole('dialog', { name: 'Core of WAL-01' });
  expect(dialog.textContent).toContain('8 mm pins don’t reach the core, 25 mm deep.');
  await user.click(within(dialog).getByRole('radio', { name: 'Fresh rip cut' }));
  expect(dialog.textContent).toContain('Rip the board at least 50 mm from an edge.');
  await user.click(within(dialog).getByRole('radio', { name: 'Fresh crosscut' }));
  expect(dialog.textContent).toContain('Cut the board at least 50 cm from an end. Read the cut at once.');
  expect(dialog.textContent).toContain('saw and pins are sharp');
  await expectNoBarriers();
  await user.click(within(dialog).getByRole('checkbox', { name: /For the whole round/ }));
  await user.click(within(dialog).getByRole('button', { name: 'Save' }));
  await waitFor(() =>
    expect(machine.inputsOf('rounds.planCore')).toEqual([
      { roundId: 12, boardId: 101, core: 'fresh-cut', forRound: true },
    ]),
  );
});

test('a fresh cut says at its spot where to cut, and that saw and pins are sharp', async () => {
  const planBasis: PlanBasis = { ...shell, core: 'fresh-cut' };
  const { user } = await open(aBoard(1, { planBasis }));
  expect(spots().textContent).not.toContain('Read the cut at once.');
  await user.click(within(spots()).getByRole('button', { name: /Core, fresh crosscut, left half/ }));
  expect(spots().textContent).toContain('Read the cut at once. Clamp the board: saw and pins are sharp.');
  expect(within(spots()).getByText('Core: Fresh crosscut')).toBeTruthy();
});

test('the plan says that it assumed the pins', async () => {
  await open(aBoard(1, { planBasis: { ...shell, pins: null } }));
  expect(spots().textContent).toContain('Pin length unknown: 8 mm assumed.');
});

test('pins of unknown length are never said not to reach the core', async () => {
  const { user } = await open(aBoard(1, { planBasis: { ...shell, pins: null } }));
  await user.click(within(spots()).getByRole('button', { name: /Read the core/ }));
  const dialog = await screen.findByRole('dialog', { name: 'Core of WAL-01' });
  expect(dialog.textContent).toContain('Pin length unknown. If 8 mm, they don’t reach the core, 25 mm deep.');
});

test('what is true of all readings is said once, above the spots', async () => {
  const frozen: Suspicion = {
    rule: 'below-freezing',
    severity: 'note',
    why: message('suspicion.below-freezing', { woodTempC: -2 }),
    whatToDo: message('suspicion.below-freezing.do'),
  };
  const end: Suspicion = {
    rule: 'near-end',
    severity: 'note',
    why: message('suspicion.near-end', { fromEndDistanceMm: 100 }),
    whatToDo: message('suspicion.near-end.do', { clearDistanceMm: 300 }),
  };
  const readings = [0, 1, 2, 3].map((spotIndex) =>
    aReading(spotIndex + 1, { spotIndex, suspicions: spotIndex === 0 ? [frozen, end] : [frozen] }),
  );
  await open(read(aBoard(1), readings));
  const remark = within(spots()).getAllByText(/Readings below freezing are less exact/);
  expect(remark).toHaveLength(1);
  expect(remark[0]!.closest('li')).toBeNull();
  expect(
    within(spots())
      .getByText(/Ends dry first/)
      .closest('li'),
  ).toBeTruthy();
});

test('one more reading elsewhere is typed for a depth of choice, also once every spot is read', async () => {
  const all = [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex }));
  const { machine, user } = await open(read(aBoard(1), all));
  await user.click(within(spots()).getByRole('button', { name: '+ Core' }));
  await waitFor(() =>
    expect(machine.inputsOf('rounds.aim').at(-1)).toEqual({
      roundId: 12,
      boardId: 101,
      spotIndex: EXTRA_SPOTS.core,
    }),
  );
  expect(
    within(spots())
      .getByRole('button', { name: /Core, elsewhere on the board/ })
      .getAttribute('aria-current'),
  ).toBe('step');
});

test('a reading of another plan is shown elsewhere on the board, and never at a spot', async () => {
  const cut = aReading(1, {
    spotIndex: 1,
    spot: { depth: 'core', depthMm: 25, fromEndMm: 500, face: 'fresh-cut' },
    raw: 17.7,
  });
  await open(read(aBoard(1), [cut]));
  const item = within(spots()).getByText('Elsewhere on the board').closest('li')!;
  expect(item.textContent).toContain('17.7%');
  expect(within(spots()).getAllByText(/^17.7%/)).toHaveLength(1);
});

test('how deep a reading was is corrected, for all of its round at that depth, and undone', async () => {
  const planned = aReading(1, { depthFrom: 'plan' });
  const { machine, user } = await open(read(aBoard(1), [planned]));
  expect(within(spots()).getByText('5 mm planned')).toBeTruthy();
  await user.click(within(spots()).getByRole('button', { name: /^Change depth/ }));
  const dialog = await screen.findByRole('dialog', { name: 'Depth of the reading' });
  const field = within(dialog).getByRole('textbox', { name: 'Pin tips below the face' });
  await user.clear(field);
  await user.type(field, '8');
  await user.click(within(dialog).getByRole('radio', { name: 'All shell readings of this round' }));
  await expectNoBarriers();
  await user.click(within(dialog).getByRole('button', { name: 'Save' }));
  await waitFor(() =>
    expect(machine.inputsOf('readings.setDepth')).toEqual([{ readingId: 1, depthMm: 8, wholeRound: true }]),
  );
  await user.click(await screen.findByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(machine.inputsOf('readings.undoDepth')).toEqual([{ act: ACT }]));
});
