// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { followMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { ProbedBoard, RoundState } from '../../../../shared-core/contract/round.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import { noPedalKeys } from '../../../../shared-core/hands-free/pedal-keys.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aLiveMeter, aLiveValue } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand, scan } from './by-hand.ts';

const owner = { roundId: 12, boardId: 101, stackId: 3 };
const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

async function open(round: RoundState = aRound(), more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'rounds.open': () => round,
    'rounds.aim': () => ({}),
    'rounds.saveTyped': () => owner,
    'rounds.saveLive': () => owner,
    'readings.exclude': () => owner,
    ...more,
  });
  render(<RoundScreen id={round.id} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  return { machine, user: byHand() };
}

/** The machine says what is so on the first board now. */
function tell(
  machine: ReturnType<typeof playMachine>,
  board: ProbedBoard,
  spotIndex: number | null,
  savedReadingId: number | null = null,
) {
  act(() =>
    machine.tell('round.changed', {
      roundId: 12,
      aim: { boardId: 101, spotIndex },
      board,
      summary: aRound().summary,
      savedReadingId,
    }),
  );
}
/** The pins that are in are saved, at the first spot of the first board. */
const pinsSaved = (machine: ReturnType<typeof playMachine>) =>
  act(() =>
    machine.tell('meter.insertion', {
      reading: { readingId: 1, roundId: 12, boardId: 101, spotIndex: 0 },
      wasAway: false,
      isMissed: false,
      beganOn: null,
    }),
  );
const liveMeter = (machine: ReturnType<typeof playMachine>) =>
  act(() => {
    followMeter();
    showMeter(aLiveMeter());
    machine.tell('meter.live', aLiveValue());
  });

const field = () => screen.getByLabelText<HTMLInputElement>('Reading on the meter, %');
const region = () => screen.getByRole('region', { name: 'Round' });
/** A reading at each of the four spots. */
const allSpots = (last: Partial<JudgedReading> = {}) =>
  [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex, ...(spotIndex === 3 ? last : {}) }));

beforeEach(forgetEverything);
afterEach(cleanup);

describe('after a reading is excluded', () => {
  const oneRead = () => aRound([read(aBoard(1), [aReading(1)]), aBoard(2)]);
  const excludedNow = read(aBoard(1), [aReading(1, { excluded: { code: 'wet-face' }, counts: false })]);

  test('the hands are in the value field again, and no digit is lost', async () => {
    const { machine, user } = await open(oneRead());
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    tell(machine, excludedNow, 0);
    await waitFor(() => expect(document.activeElement).toBe(field()));
    await user.keyboard('12.4{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ boardId: 101, spotIndex: 0, raw: 12.4 }]);
  });

  test('the hands are in the value field where the dialog was only closed', async () => {
    const { user } = await open(oneRead());
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Cancel' }));
    await waitFor(() => expect(document.activeElement).toBe(field()));
  });

  test('with a live meter they are on the round, and Space saves', async () => {
    const { machine, user } = await open(oneRead());
    liveMeter(machine);
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    tell(machine, excludedNow, 0);
    await waitFor(() => expect(document.activeElement).toBe(region()));
    await user.keyboard(' ');
    expect(machine.inputsOf('rounds.saveLive')).toHaveLength(1);
  });
});

test('Esc from typing beside a live meter leads back to the round', async () => {
  const { machine, user } = await open();
  liveMeter(machine);
  await user.keyboard('12{Escape}');
  await waitFor(() => expect(document.activeElement).toBe(region()));
});

describe('a scanned label', () => {
  test('leads to its board, whatever letters it has, and is never a value', async () => {
    const boards = [aBoard(1), aBoard(2, { code: 'GTR-N2' }), aBoard(3, { code: '1204' })];
    const { machine } = await open(aRound(boards));
    await scan('GTR-N2');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board GTR-N2');
    await scan('1204');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board 1204');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(field().value).toBe('');
  });

  test('of a board elsewhere says so, and leaves what was typed', async () => {
    const { machine, user } = await open();
    await user.keyboard('12');
    await new Promise((wait) => setTimeout(wait, 60));
    await scan('1313');
    expect(screen.getByRole('alert').textContent).toContain('has no board 1313. Check the ID.');
    expect(field().value).toBe('12');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
  });

  test('of a board elsewhere leaves no message once the round is left and resumed', async () => {
    await open();
    await scan('1313');
    expect(screen.getByText(/has no board 1313/)).toBeTruthy();
    cleanup();
    await open();
    expect(screen.queryByText(/has no board 1313/)).toBeNull();
  });

  test('saves nothing live either', async () => {
    const { machine } = await open(aRound([aBoard(1), aBoard(2, { code: 'W 2' })]));
    liveMeter(machine);
    await scan('W 2');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board W 2');
    expect(machine.inputsOf('rounds.saveLive')).toEqual([]);
    expect(screen.queryByRole('textbox')).toBeNull();
  });
});

describe('Enter on a board with spots open', () => {
  const WARNING = '2 spots are open. Press Enter again to leave them.';
  const halfRead = () => {
    const half = read(aBoard(1), [aReading(1), aReading(2, { spotIndex: 1 })]);
    return { ...aRound([half, aBoard(2)]), aim: { boardId: 101, spotIndex: 2 } };
  };

  test('says so first, and the second one leaves them', async () => {
    const { machine, user } = await open(halfRead());
    await user.keyboard('{Enter}');
    expect(screen.getByText(WARNING)).toBeTruthy();
    expect(machine.inputsOf('rounds.aim')).toEqual([]);
    await expectNoBarriers();
    await new Promise((wait) => setTimeout(wait, 320));
    await user.keyboard('{Enter}');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  });

  test('a key that bounces does not leave them', async () => {
    const { user } = await open(halfRead());
    await user.keyboard('{Enter}{Enter}');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-01');
    expect(screen.getByText(WARNING)).toBeTruthy();
  });

  test('a value typed after it takes the warning away and is saved', async () => {
    const { machine, user } = await open(halfRead());
    await user.keyboard('{Enter}');
    await user.keyboard('12.1');
    expect(screen.queryByText(WARNING)).toBeNull();
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toHaveLength(1);
  });

  test('goes on at once where all are read', async () => {
    const done = read(aBoard(1), allSpots());
    const { user } = await open({ ...aRound([done, aBoard(2)]), aim: { boardId: 101, spotIndex: null } });
    await user.keyboard('{Enter}');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  });
});

test('Enter leaves a board whose last reading is on its way, and a spot that it leaves open is said', async () => {
  const three = allSpots().slice(0, 3);
  const round = { ...aRound([read(aBoard(1), three), aBoard(2)]), aim: { boardId: 101, spotIndex: 3 } };
  let answer: () => void = () => undefined;
  const { machine, user } = await open(round, {
    'rounds.saveTyped': () => new Promise((resolve) => (answer = () => resolve(owner))),
  });
  await user.keyboard('145{Enter}{Enter}');
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  tell(machine, read(aBoard(1), allSpots({ counts: false })), 3, 4);
  await act(async () => answer());
  expect(screen.getByRole('alert').textContent).toContain('WAL-01 has 1 open spot: a reading was not used.');
});

describe('a slip of the keys', () => {
  const slip = aReading(7, {
    raw: 145,
    counts: false,
    suspicions: [
      {
        rule: 'typing-slip',
        severity: 'refused',
        why: message('suspicion.typing-slip', { rawPct: 145, rawMeantPct: 14.5 }),
        whatToDo: message('suspicion.typing-slip.do', { rawMeantPct: 14.5 }),
      },
    ],
  });

  test('is put right with one key', async () => {
    const { machine, user } = await open();
    tell(machine, read(aBoard(1), [slip]), 0, 7);
    expect(screen.getByRole('button', { name: 'Use 14.5%' })).toBeTruthy();
    await user.keyboard('u');
    await waitFor(() =>
      expect(machine.inputsOf('rounds.saveTyped')).toEqual([
        {
          roundId: 12,
          boardId: 101,
          spotIndex: 0,
          newestReadingId: 7,
          replaces: 7,
          raw: 14.5,
          unit: 'pct',
          meterId: null,
        },
      ]),
    );
  });

  test('offers what was meant until it was typed at the same spot', async () => {
    const { machine } = await open();
    tell(machine, read(aBoard(1), [slip, aReading(8, { spotIndex: 1, raw: 15 })]), 0, 8);
    expect(screen.getByRole('button', { name: 'Use 14.5%' })).toBeTruthy();
    tell(machine, read(aBoard(1), [slip, aReading(8, { raw: 14.5 })]), 1, 8);
    expect(screen.queryByRole('button', { name: 'Use 14.5%' })).toBeNull();
  });
});

test('the far view marks a questionable reading with another sign than a sound one', async () => {
  const { machine, user } = await open();
  await user.keyboard('f');
  tell(machine, read(aBoard(1), [aReading(1), aReading(2, { spotIndex: 1, suspicions: [jump] })]), 2, 2);
  const marks = [...document.querySelectorAll('[data-far] [data-mark]')].map((each) =>
    each.getAttribute('data-mark'),
  );
  expect(marks).toEqual(['sound', 'questionable']);
});

// The list of spots says it near by.
test.each([
  ['frozen', 'read by a meter', 'Frozen: let it thaw.'],
  ['frozen', 'typed', 'Frozen: let it thaw.'],
  ['not-a-reading', 'read by a meter', 'Not possible: probe again.'],
  // The value that was meant is offered beside it.
  ['typing-slip', 'typed', 'Typed wrong?'],
] as const)('the far view says why a reading is not used: %s, %s', async (rule, how, why) => {
  const { machine, user } = await open();
  if (how !== 'typed') act(() => showMeter(aLiveMeter()));
  const suspicion = {
    rule,
    severity: 'refused' as const,
    why: message('suspicion.damaged'),
    whatToDo: message('suspicion.damaged.do'),
  };
  tell(machine, read(aBoard(1), [aReading(1, { counts: false, suspicions: [suspicion] })]), 0, 1);
  const reading = within(screen.getByRole('region', { name: 'Reading' }));
  expect(reading.queryByText(why)).toBeNull();
  await user.keyboard('f');
  expect(reading.getByText(why)).toBeTruthy();
  tell(machine, read(aBoard(1), [aReading(2)]), 1, 2);
  expect(reading.queryByText(why)).toBeNull();
});

test('F5 of a presenter does not load the window again, over a dialog neither', async () => {
  const { user } = await open();
  const isPrevented = () => !fireEvent.keyDown(document.activeElement ?? document.body, { key: 'F5' });
  expect(isPrevented()).toBe(true);
  await user.keyboard('t');
  expect(screen.getByRole('dialog').contains(document.activeElement)).toBe(true);
  expect(isPrevented()).toBe(true);
});

test('a reading of a meter that was off when checked is marked as questionable', async () => {
  const check = {
    id: 7,
    blockId: 3,
    at: '2026-05-04T08:00:00.000Z',
    right: 12,
    tolerance: 0.5,
    shown: 13,
    tempC: null,
    off: 1,
    correctedBy: 0,
    state: 'off',
    excluded: null,
    isAhead: false,
  } as const;
  const found = { meterName: 'Old one', unit: 'pct', check, meterProfileId: 2, until: null } as const;
  localStorage.setItem('pintally.far-view', 'yes');
  const { machine, user } = await open(aRound(), {
    'meterChecks.ofRound': () => [{ ...found, readings: 1, toCorrect: 1 }],
  });
  liveMeter(machine);
  pinsSaved(machine);
  tell(machine, read(aBoard(1), [aReading(1, { meterProfileId: 2 })]), 1, 1);
  expect(await screen.findByText('? Meter off by 1.0 points')).toBeTruthy();
  expect(screen.getByText('Shell, 60 cm from the left end: questionable. Pull the pins.')).toBeTruthy();
  expect(document.querySelector('[data-mark=sound]')).toBeNull();
  expect(document.querySelector('[data-mark=questionable]')).toBeTruthy();
  await user.keyboard('f');
  expect(screen.getByText('? Questionable. Pull the pins.')).toBeTruthy();
  expect(screen.getByText('? The meter was off when checked.')).toBeTruthy();
  expect(screen.getByText(/Questionable\. The meter was off when checked\./)).toBeTruthy();
});

test('while the pins are in, the spot they are at is named and stands out', async () => {
  const { machine } = await open();
  liveMeter(machine);
  pinsSaved(machine);
  tell(machine, read(aBoard(1), [aReading(1)]), 1, 1);
  expect(screen.getByText('Shell, 60 cm from the left end: saved. Pull the pins.')).toBeTruthy();
  const current = () =>
    within(screen.getByRole('region', { name: 'Spots' })).getByRole('button', { current: 'step' });
  expect(current().textContent).toContain('✓ Saved. Pull the pins.');
  act(() =>
    machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: null }),
  );
  expect(current().textContent).toContain('Core, 60 cm from the left end');
});

const jump = {
  rule: 'jump-since-last-round',
  severity: 'questionable',
  why: message('suspicion.jump.wetter', { depth: 'core', beforePct: 8, mcPct: 12.1, days: 3 }),
  whatToDo: message('suspicion.jump.do'),
} as const;

describe('the next board by itself', () => {
  const COUNTING = /Next board in \d s\. Any key stops this\./;
  const board = () => screen.getByRole('heading', { level: 1 }).textContent;
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'requestAnimationFrame'] });
    useSettings.setState({ settings: { ...usualSettings, sound: false, nextBoardAfterS: 2 } });
  });
  afterEach(() => vi.useRealTimers());
  const pass = (seconds: number) => act(async () => vi.advanceTimersByTime(seconds * 1000));

  async function finishBoard(last: Partial<JudgedReading> = {}, boards = [aBoard(1), aBoard(2)]) {
    const opened = await open(aRound(boards));
    tell(opened.machine, read(aBoard(1), allSpots(last)), null, 4);
    return opened;
  }

  test('comes once its spots are read, after a countdown in sight', async () => {
    await finishBoard();
    expect(screen.getByText(/Next board in 2 s\./)).toBeTruthy();
    await expectNoBarriers();
    await pass(1);
    expect(screen.getByText(/Next board in 1 s\./)).toBeTruthy();
    await pass(1);
    expect(board()).toBe('Board WAL-02');
  });

  test('does not come once any key was pressed', async () => {
    const { user } = await finishBoard();
    await user.keyboard('{Shift}');
    expect(screen.queryByText(COUNTING)).toBeNull();
    await pass(9);
    expect(board()).toBe('Board WAL-01');
  });

  test('does not come once a digit was typed, which is in the field', async () => {
    const { user } = await finishBoard();
    await user.keyboard('9');
    await pass(9);
    expect(board()).toBe('Board WAL-01');
    expect(field().value).toBe('9');
  });

  test('does not come over a question that is open, however it was opened', async () => {
    await finishBoard();
    act(() => screen.getAllByRole('button', { name: /^Exclude/ })[0]?.click());
    expect(screen.getByRole('dialog')).toBeTruthy();
    await pass(9);
    expect(document.querySelector('h1')?.textContent).toBe('Board WAL-01');
  });

  test('does not come while a questionable reading asks for attention', async () => {
    await finishBoard({
      suspicions: [jump],
    });
    expect(screen.queryByText(COUNTING)).toBeNull();
    await pass(9);
    expect(board()).toBe('Board WAL-01');
  });

  test('comes once that spot was probed again', async () => {
    const { machine } = await open(aRound([aBoard(1), aBoard(2)]));
    const again = aReading(5, { spotIndex: 3 });
    tell(machine, read(aBoard(1), [...allSpots({ suspicions: [jump] }), again]), null, 5);
    await pass(2);
    expect(board()).toBe('Board WAL-02');
  });

  test('comes at once where that was chosen', async () => {
    useSettings.setState({ settings: { ...usualSettings, sound: false, nextBoardAfterS: 0 } });
    await finishBoard();
    expect(board()).toBe('Board WAL-02');
    expect(screen.getByText('Now on WAL-02.').getAttribute('aria-live')).toBe('polite');
  });

  test('waits until the pins are out', async () => {
    const { machine } = await open();
    liveMeter(machine);
    const reading = { readingId: 4, roundId: 12, boardId: 101, spotIndex: 3 };
    act(() => machine.tell('meter.insertion', { reading, wasAway: false, isMissed: false, beganOn: null }));
    tell(machine, read(aBoard(1), allSpots()), null, 4);
    await pass(9);
    expect(board()).toBe('Board WAL-01');
    act(() => {
      machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: null });
      machine.tell('meter.live', aLiveValue({ phase: 'pins-out', raw: null, corrected: null, spread: null }));
    });
    await pass(2);
    expect(board()).toBe('Board WAL-02');
  });

  test('never ends the round', async () => {
    await finishBoard({}, [aBoard(1)]);
    await pass(9);
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(screen.getByText(/Last board\. Press Enter when you are done\./)).toBeTruthy();
  });

  test('does not come where it is switched off, which the dialog of keys can do', async () => {
    const { machine, user } = await open(aRound(), {
      'settings.edit': (changed) => ({ ...usualSettings, ...changed }),
    });
    await user.keyboard('?');
    await user.click(await screen.findByRole('radio', { name: 'When I press a key' }));
    expect(machine.inputsOf('settings.edit')).toEqual([{ nextBoardAfterS: null }]);
    await user.click(screen.getByRole('button', { name: 'Close' }));
    tell(machine, read(aBoard(1), allSpots()), null, 4);
    expect(screen.queryByText(COUNTING)).toBeNull();
  });
});

describe('a finished round', () => {
  const done = { ...aRound(), finishedAt: '2026-05-04T09:00:00.000Z', aim: null, probed: null };

  test('is reopened, and the hands are in the value field', async () => {
    let isOpen = false;
    const { machine, user } = await open(done, {
      'rounds.open': () => (isOpen ? aRound() : done),
      'rounds.reopen': () => {
        isOpen = true;
        return {};
      },
    });
    await user.click(screen.getByRole('button', { name: 'Reopen' }));
    expect(machine.inputsOf('rounds.reopen')).toEqual([{ roundId: 12 }]);
    await waitFor(() => expect(document.activeElement).toBe(field()));
  });

  test('that another window reopened takes readings here, too', async () => {
    let isOpen = false;
    const { machine } = await open(done, { 'rounds.open': () => (isOpen ? aRound() : done) });
    isOpen = true;
    await act(async () => machine.tell('changed', { yard: null, topics: ['round:12'] }));
    expect(machine.inputsOf('rounds.open')).toHaveLength(2);
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-01');
  });

  test('says why it stays finished', async () => {
    const { user } = await open(done, {
      'rounds.reopen': () => {
        throw new Refusal(message('refusal.round-running', { stackName: 'Walnut from the lane' }));
      },
    });
    await user.click(screen.getByRole('button', { name: 'Reopen' }));
    expect(screen.getByRole('alert').textContent).toContain(
      'Another round of Walnut from the lane is running.',
    );
    await expectNoBarriers();
  });
});

describe('a pedal', () => {
  const withPedal = () =>
    useSettings.setState({
      settings: { ...usualSettings, pedalKeys: { ...noPedalKeys, 'go-on': 'PageDown' } },
    });
  const board = () => screen.getByRole('heading', { level: 1 }).textContent;

  test('saves the live value, and nothing twice where the pins are still in', async () => {
    withPedal();
    const { machine, user } = await open();
    liveMeter(machine);
    await user.keyboard('{PageDown}');
    expect(machine.inputsOf('rounds.saveLive')).toHaveLength(1);
    const reading = { readingId: 1, roundId: 12, boardId: 101, spotIndex: 0 };
    act(() => machine.tell('meter.insertion', { reading, wasAway: false, isMissed: false, beganOn: null }));
    await user.keyboard('{PageDown}');
    expect(machine.inputsOf('rounds.saveLive')).toHaveLength(1);
    expect(screen.getByText('This reading is saved. Pull the pins.')).toBeTruthy();
    expect(board()).toBe('Board WAL-01');
  });

  test('asks before it leaves open spots, and does nothing to a question on screen', async () => {
    withPedal();
    const half = read(aBoard(1), [aReading(1), aReading(2, { spotIndex: 1 }), aReading(3, { spotIndex: 2 })]);
    const { user } = await open({ ...aRound([half, aBoard(2)]), aim: { boardId: 101, spotIndex: 3 } });
    await user.keyboard('{PageDown}');
    expect(board()).toBe('Board WAL-01');
    expect(screen.getByText('1 spot is open. Press the pedal again to leave it.')).toBeTruthy();
    await user.keyboard('?');
    expect(screen.getByText('Pedal: Page ↓')).toBeTruthy();
    await new Promise((wait) => setTimeout(wait, 320));
    await user.keyboard('{PageDown}');
    expect(screen.getByRole('dialog')).toBeTruthy();
    expect(document.querySelector('h1')?.textContent).toBe('Board WAL-01');
  });

  describe('at the end of a round', () => {
    const allSpots = [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex }));
    const done = read(aBoard(1), allSpots, 'ready');
    const atTheEnd = (boards: ProbedBoard[], probed: number) => ({
      ...aRound(boards),
      aim: { boardId: 101, spotIndex: null },
      probed: done,
      summary: { ...aRound(boards).summary, boards: boards.length, probed },
    });
    const pressAt = async (user: ReturnType<typeof byHand>, ms: number) => {
      const clock = vi.spyOn(performance, 'now').mockReturnValue(ms);
      await user.keyboard('{PageDown}');
      clock.mockRestore();
    };
    const finished = (machine: Awaited<ReturnType<typeof open>>['machine']) =>
      machine.inputsOf('rounds.finish');

    test('is named, and ends it; pressed twice at once, it only asks', async () => {
      withPedal();
      const { machine, user } = await open(atTheEnd([done], 1));
      expect(screen.getByText(/Press the pedal when you are done/)).toBeTruthy();
      await pressAt(user, 5000);
      await pressAt(user, 5100);
      expect(screen.getByRole('dialog', { name: 'Finish the round?' })).toBeTruthy();
      expect(screen.getByRole('button', { name: /^Finish the round/ }).textContent).toContain('Page ↓');
      await expectNoBarriers();
      expect(finished(machine)).toEqual([]);
      await pressAt(user, 5500);
      expect(finished(machine)).toEqual([{ roundId: 12 }]);
    });

    test('with spots still open it ends it only a while after they were shown', async () => {
      withPedal();
      const half = atTheEnd([done], 0);
      const { machine, user } = await open(half);
      await pressAt(user, 5000);
      await pressAt(user, 5900);
      expect(finished(machine)).toEqual([]);
      await pressAt(user, 6600);
      expect(finished(machine)).toEqual([{ roundId: 12 }]);
    });

    test('the one that goes back keeps on probing', async () => {
      useSettings.setState({
        settings: {
          ...usualSettings,
          pedalKeys: { ...noPedalKeys, 'go-on': 'PageDown', 'go-back': 'PageUp' },
        },
      });
      const { machine, user } = await open(atTheEnd([done], 1));
      await pressAt(user, 5000);
      await user.keyboard('{PageUp}');
      expect(screen.queryByRole('dialog')).toBeNull();
      expect(finished(machine)).toEqual([]);
    });
  });
});

test('where the screen may turn off, the round says so, and its keys and options what to do', async () => {
  const { user } = await open();
  expect(await screen.findByText('The screen may turn off.')).toBeTruthy();
  await user.keyboard('?');
  const keys = await screen.findByRole('dialog');
  expect(keys.textContent).toContain('Change it in the computer’s power settings.');
});
