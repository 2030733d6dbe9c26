// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, expect, test } from 'vitest';
import { Notices } from '../../../../renderer/app/Notices.tsx';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { ProbedBoard, RoundState } from '../../../../shared-core/contract/round.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
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
const undone = { id: ACT, at: '2026-06-01T08:00:00.000Z', line: message('act.title'), isUndone: true };
const moved = { act: ACT, readings: 1, boardIds: [101], roundIds: [12] };
const shell: PlanBasis = { faces: 'shell', core: null, pins: { lengthMm: 8, insulated: false } };

async function open(
  first: ProbedBoard,
  more: Parameters<typeof playMachine>[0] = {},
  ofRound: Partial<RoundState> = {},
) {
  const round = {
    ...aRound([first, aBoard(2)]),
    ...ofRound,
    aim: { boardId: 101, spotIndex: 0 },
    probed: first,
  };
  const machine = playMachine({
    'rounds.open': () => round,
    'rounds.aim': () => ({}),
    'rounds.get': () => round,
    'rounds.planCore': () => ({}),
    'readings.setDepth': () => moved,
    'readings.givenDepths': () => ({ readings: 0 }),
    'boards.get': () => new Promise(() => undefined),
    'meters.list': () => [],
    'acts.undo': () => undone,
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
  // Whoever asks to read it does not skip it.
  expect(within(dialog).getByRole<HTMLInputElement>('radio', { name: 'Fresh crosscut' }).checked).toBe(true);
  await user.click(within(dialog).getByRole('radio', { name: 'Fresh rip cut' }));
  expect(dialog.textContent).toContain('Rip the board at least 50 mm from an edge.');
  await user.click(within(dialog).getByRole('radio', { name: 'Fresh crosscut' }));
  expect(dialog.textContent).toContain('Cut the board at least 50 cm from an end. Read the cut at once.');
  expect(dialog.textContent).toContain('Point both pins along the faces.');
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
  expect(spots().textContent).toContain(
    'Read the cut at once. Point both pins along the faces. Clamp the board: saw and pins are sharp.',
  );
  expect(within(spots()).getByText('Core: Fresh crosscut')).toBeTruthy();
});

test('firewood is offered a fresh split, and no rip cut', async () => {
  const planBasis: PlanBasis = { ...shell, core: 'fresh-split' };
  const { user } = await open(aBoard(1, { planBasis }), {}, { usualCoreWay: 'fresh-split' });
  await user.click(within(spots()).getByRole('button', { name: /Core, fresh split face, .* left end/ }));
  expect(spots().textContent).toContain('Split the piece. Read the middle of the fresh face at once.');
  expect(within(spots()).getByText('Core: Fresh split')).toBeTruthy();
  await user.keyboard('c');
  const dialog = await screen.findByRole('dialog', { name: 'Core of WAL-01' });
  expect(within(dialog).getByRole<HTMLInputElement>('radio', { name: 'Fresh split' }).checked).toBe(true);
  expect(within(dialog).queryByRole('radio', { name: 'Fresh rip cut' })).toBeNull();
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

test('an unlikely temperature is asked about once, and given again where it is right', async () => {
  const doubt: Suspicion = {
    rule: 'temperature-unlikely',
    severity: 'questionable',
    why: message('suspicion.temperature-unlikely', { woodTempC: -5, airTempC: 15, placeName: 'Shed' }),
    whatToDo: message('suspicion.temperature-unlikely.do'),
  };
  const one = read(aBoard(1, { woodTempC: -5 }), [aReading(1, { suspicions: [doubt] })]);
  const { machine, user } = await open(one, { 'rounds.setTemperature': () => ({}), 'stacks.list': () => [] });
  expect(
    within(spots()).getAllByText(
      /^You entered .* for the wood\. In that month the air in Shed is usually about/,
    ),
  ).toHaveLength(1);
  await user.click(within(spots()).getByRole('button', { name: 'Confirm' }));
  const right = { roundId: 12, boardId: null, woodTempC: -5 };
  expect(machine.inputsOf('rounds.setTemperature')).toEqual([right]);
  await user.click(await screen.findByRole('button', { name: 'Undo' }));
  await waitFor(() =>
    expect(machine.inputsOf('rounds.setTemperature')).toEqual([right, { ...right, woodTempC: null }, right]),
  );
});

test.each([
  ['of the round is corrected for all of it', false],
  ['that is this board’s own is corrected on this board only', true],
])('an unlikely temperature %s', async (_, ownTemp) => {
  const doubt: Suspicion = {
    rule: 'temperature-unlikely',
    severity: 'questionable',
    why: message('suspicion.temperature-unlikely', { woodTempC: -16, airTempC: 15, placeName: 'Shed' }),
    whatToDo: message('suspicion.temperature-unlikely.do'),
  };
  const one = read(aBoard(1, { woodTempC: -16, ownTemp }), [aReading(1, { suspicions: [doubt] })]);
  const { machine, user } = await open(one, { 'rounds.setTemperature': () => ({}), 'stacks.list': () => [] });
  await user.click(within(spots()).getByRole('button', { name: 'Correct' }));
  const dialog = within(await screen.findByRole('dialog'));
  await user.clear(dialog.getByLabelText('Wood temperature'));
  await user.type(dialog.getByLabelText('Wood temperature'), '3');
  await user.click(dialog.getByRole('button', { name: 'Save' }));
  await waitFor(() =>
    expect(machine.inputsOf('rounds.setTemperature')).toEqual([
      { roundId: 12, boardId: ownTemp ? 101 : null, woodTempC: 3 },
    ]),
  );
});

test('an unlikely temperature that a probe measured is the board’s once it is confirmed', async () => {
  const doubt: Suspicion = {
    rule: 'temperature-unlikely',
    severity: 'questionable',
    why: message('suspicion.temperature-unlikely.probe', {
      sensorName: 'Spike',
      woodTempC: 45,
      airTempC: 15,
      placeName: 'Shed',
    }),
    whatToDo: message('suspicion.temperature-unlikely.do'),
  };
  const one = read(aBoard(1), [aReading(1, { woodTempC: 45, probeName: 'Spike', suspicions: [doubt] })]);
  const { machine, user } = await open(one, { 'rounds.setTemperature': () => ({}), 'stacks.list': () => [] });
  expect(spots().textContent).toContain('Spike measured');
  await user.click(within(spots()).getByRole('button', { name: 'Confirm' }));
  const given = { roundId: 12, boardId: 101, woodTempC: 45 };
  await waitFor(() => expect(machine.inputsOf('rounds.setTemperature')).toEqual([given, given]));
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

test('a note of several readings is said of the newest alone', async () => {
  const dry = (mcPct: number): Suspicion => ({
    rule: 'outside-curve-range',
    severity: 'note',
    why: message('suspicion.outside-curve-range.dry', { mcPct, leastLimitPct: 6 }),
    whatToDo: message('suspicion.outside-curve-range.dry.do'),
  });
  const readings = [4.5, 4.6, 4.4].map((mcPct, spotIndex) =>
    aReading(spotIndex + 1, { spotIndex, suspicions: [dry(mcPct)] }),
  );
  await open(read(aBoard(1), readings));
  const notes = within(spots()).getAllByText(/where pin meters are not reliable/);
  expect(notes.map((note) => note.closest('[data-reading]')?.getAttribute('data-reading'))).toEqual(['3']);
});

test('a reading whose depth was changed is named by that, and its spot is open again', async () => {
  const deep = aReading(1);
  deep.spot = { ...deep.spot, depth: 'shell', depthMm: 25 };
  await open(read(aBoard(1), [{ ...deep, depthFrom: 'person' }, aReading(2, { spotIndex: 1 })]));
  const shellSpot = within(spots()).getByRole('button', { name: /^Shell, 60 cm from the left end/ });
  expect(shellSpot.closest('li')!.querySelector('[data-reading]')).toBeNull();
  expect(shellSpot.getAttribute('aria-current')).toBe('step');
  const deeper = document.querySelector('[data-reading="1"]')!.closest('li')!;
  expect(within(deeper).getByText('Core, 60 cm from the left end')).toBeTruthy();
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
  await user.click(within(spots()).getByRole('button', { name: /^More for/ }));
  await user.click(screen.getByRole('menuitem', { name: 'Change depth' }));
  const dialog = await screen.findByRole('dialog', { name: 'Depth of the reading' });
  const field = within(dialog).getByRole('textbox', { name: 'Pin tips below the face' });
  await user.clear(field);
  await user.type(field, '8');
  await user.click(within(dialog).getByRole('radio', { name: 'All shell readings of this round' }));
  await expectNoBarriers();
  await user.click(within(dialog).getByRole('button', { name: 'Save' }));
  await waitFor(() =>
    expect(machine.inputsOf('readings.setDepth')).toMatchObject([
      {
        readingId: 1,
        depthMm: 8,
        shown: { depthMm: 5, depthFrom: 'plan' },
        wholeRound: true,
        givenToo: false,
      },
    ]),
  );
  await user.click(await screen.findByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(machine.inputsOf('acts.undo')).toMatchObject([{ act: ACT }]));
});

test('changing the depth of a large round and undoing it show how far they are, and can be stopped', async () => {
  const progressOf = (request: 'readings.setDepth' | 'acts.undo') => {
    const [{ work }] = machine.inputsOf(request) as [{ work: string }];
    act(() => machine.tell('work.progress', { work, done: 250, total: 4000 }));
    return work;
  };
  let saved = (_: typeof moved): void => undefined;
  let stopped = (_: Refusal): void => undefined;
  const { machine, user } = await open(read(aBoard(1), [aReading(1)]), {
    'readings.setDepth': () => new Promise((resolve) => (saved = resolve)),
    'acts.undo': () => new Promise((_, reject) => (stopped = reject)),
    'work.cancel': () => ({}),
  });
  const dialog = await depthDialog(user, '8');
  await user.click(saveIn(dialog));
  expect(within(dialog).queryByRole('progressbar')).toBeNull();
  progressOf('readings.setDepth');
  expect(within(dialog).getByRole('progressbar', { name: 'Changing depths …' })).toBeTruthy();
  await act(async () => saved(moved));

  await user.click(await screen.findByRole('button', { name: 'Undo' }));
  expect(screen.queryByRole('progressbar')).toBeNull();
  const work = progressOf('acts.undo');
  const bar = screen.getByRole('progressbar', { name: 'Undoing …' });
  expect([bar.getAttribute('value'), bar.getAttribute('max')]).toEqual(['250', '4000']);
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Cancel' }));
  expect(machine.inputsOf('work.cancel')).toEqual([{ work }]);
  await act(async () => stopped(new Refusal(message('refusal.stopped'))));
  expect(screen.queryByRole('progressbar')).toBeNull();
  expect(screen.getByText('Stopped. Nothing was undone.')).toBeTruthy();
});

const depthDialog = async (user: ReturnType<typeof byHand>, typed: string) => {
  await user.click(within(spots()).getByRole('button', { name: /^More for/ }));
  await user.click(screen.getByRole('menuitem', { name: 'Change depth' }));
  const dialog = await screen.findByRole('dialog', { name: 'Depth of the reading' });
  const field = within(dialog).getByRole('textbox', { name: 'Pin tips below the face' });
  await user.clear(field);
  await user.type(field, typed);
  return dialog;
};
const saveIn = (dialog: HTMLElement) => within(dialog).getByRole('button', { name: 'Save' });

test('depths given to single readings stay unless the person has them changed, too', async () => {
  const board = read(aBoard(1), [aReading(1)]);
  const { machine, user } = await open(board, { 'readings.givenDepths': () => ({ readings: 2 }) });
  const dialog = await depthDialog(user, '8');
  await user.click(within(dialog).getByRole('radio', { name: 'All shell readings of this round' }));
  expect(dialog.textContent).not.toContain('lose the depths');
  await user.click(
    within(dialog).getByRole('checkbox', { name: /^Also change 2 readings whose depth you gave/ }),
  );
  expect(dialog.textContent).toContain('They lose the depths you gave them.');
  await user.click(saveIn(dialog));
  await waitFor(() =>
    expect(machine.inputsOf('readings.setDepth')).toMatchObject([{ wholeRound: true, givenToo: true }]),
  );
});

test('a depth that was changed meanwhile is shown, and saved over only when asked to', async () => {
  const now = { depthMm: 4, depthFrom: 'person' } as const;
  const { machine, user } = await open(read(aBoard(1), [aReading(1)]), {
    'readings.setDepth': ({ shown }) => {
      if (shown.depthFrom !== 'person') throw new Conflict(now);
      return moved;
    },
  });
  const dialog = await depthDialog(user, '8');
  await user.click(saveIn(dialog));
  await within(dialog).findByText(/4/, { selector: '.field-saved' });
  await user.click(within(dialog).getByRole('button', { name: 'Use what I typed' }));
  await waitFor(() => expect(machine.inputsOf('readings.setDepth').at(-1)).toMatchObject({ shown: now }));
});

test('a depth beyond the meter’s pins is asked about once', async () => {
  const meter = { id: 5, version: 1, kind: 'typed', name: 'Old', unit: 'pct', isTypedFrom: true } as const;
  const profile = { ...unknownProfile, pins: { lengthMm: 8, insulated: false } };
  const { machine, user } = await open(read(aBoard(1), [aReading(1, { meterId: 5 })]), {
    'meters.list': () => [{ ...meter, profile }],
  });
  const dialog = await depthDialog(user, '25');
  await user.click(saveIn(dialog));
  expect(await within(dialog).findByText('Your pins are 8 mm long. Did you use other pins?')).toBeTruthy();
  expect(machine.inputsOf('readings.setDepth')).toEqual([]);
  await user.click(within(dialog).getByRole('button', { name: 'Yes, other pins' }));
  await waitFor(() => expect(machine.inputsOf('readings.setDepth')).toMatchObject([{ depthMm: 25 }]));
});

test('a depth past the middle is asked about, and one near the other face is refused with the thickness', async () => {
  const { machine, user } = await open(read(aBoard(1), [aReading(1)]), {
    'boards.get': () => ({ board: { thicknessMm: 50, thicknessQuarters: null } }) as never,
  });
  const dialog = await depthDialog(user, '1016');
  await user.click(saveIn(dialog));
  expect((await within(dialog).findByText(/^The board is only/)).textContent).toContain('50 mm thick');
  const field = within(dialog).getByRole('textbox', { name: 'Pin tips below the face' });
  await user.clear(field);
  await user.type(field, '46');
  await user.click(saveIn(dialog));
  expect(await within(dialog).findByText(/^The board is only/)).toBeTruthy();
  await user.clear(field);
  await user.type(field, '40');
  await user.click(saveIn(dialog));
  expect(await within(dialog).findByText(/^The middle of the board is 25 mm deep\./)).toBeTruthy();
  expect(machine.inputsOf('readings.setDepth')).toEqual([]);
  await user.click(within(dialog).getByRole('button', { name: 'Yes, that deep' }));
  await waitFor(() => expect(machine.inputsOf('readings.setDepth')).toMatchObject([{ depthMm: 40 }]));
});

test('0 and a depth beyond every board say what is possible, and blank is another thing', async () => {
  const { machine, user } = await open(read(aBoard(1), [aReading(1)]));
  const dialog = await depthDialog(user, '0');
  await user.click(saveIn(dialog));
  expect(await within(dialog).findByText('At least 1 mm.')).toBeTruthy();
  const field = within(dialog).getByRole('textbox', { name: 'Pin tips below the face' });
  await user.clear(field);
  expect(await within(dialog).findByText('Fill this in.')).toBeTruthy();
  await user.type(field, '1524');
  expect(await within(dialog).findByText('At most 500 mm.')).toBeTruthy();
  expect(machine.inputsOf('readings.setDepth')).toEqual([]);
});

test('in a cut, the depth is named as the distance from the face', async () => {
  const spot = { depth: 'core', depthMm: 25, fromEndMm: 500, face: 'fresh-cut' } as const;
  await open(read(aBoard(1), [aReading(1, { spot, depthFrom: 'person' })]));
  expect(within(spots()).getByText('mid-thickness, on the cut')).toBeTruthy();
});

test('once a cut was read, the other spot on it asks for no other cut', async () => {
  const board = aBoard(1, { planBasis: { ...shell, core: 'fresh-cut' } });
  const spot = { depth: 'core', depthMm: 25, fromEndMm: 500, face: 'fresh-cut' } as const;
  const { user } = await open(read(board, [aReading(1, { spotIndex: 2, spot, depthFrom: 'person' })]));
  await user.click(within(spots()).getByRole('button', { name: /Core, fresh crosscut, right half/ }));
  expect(spots().textContent).toContain('Read the same cut.');
  expect(spots().textContent).not.toContain('Cut the board');
});

test('finishing names the boards that have open spots', async () => {
  const { user } = await open(read(aBoard(1), [aReading(1), aReading(2, { spotIndex: 1 })]));
  await user.click(screen.getByRole('button', { name: /^Finish/ }));
  const dialog = await screen.findByRole('dialog', { name: 'Finish the round?' });
  expect(dialog.textContent).toContain('WAL-01 has 2 open spots.');
});
