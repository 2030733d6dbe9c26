// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { useDrafts } from '../../../../renderer/stores/drafts.ts';
import { setLink } from '../../../../renderer/stores/link.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RoundState } from '../../../../shared-core/contract/round.ts';
import type { Suspicion } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand, passTime, scan } from './by-hand.ts';

const owner = { roundId: 12, boardId: 101, stackId: 3 };
const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

async function open(round: RoundState = aRound(), more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'rounds.open': () => round,
    'rounds.get': () => round,
    'rounds.aim': () => ({}),
    'rounds.saveTyped': () => owner,
    'rounds.undo': () => owner,
    'readings.exclude': () => owner,
    ...more,
  });
  const { unmount } = render(<RoundScreen id={round.id} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  return { machine, user: byHand(), unmount };
}
const field = () => screen.getByLabelText<HTMLInputElement>('Reading on the meter, %');
const board = () => screen.getByRole('heading', { level: 1 }).textContent;
const spot = (boardId: number, spotIndex: number) => ({
  roundId: 12,
  boardId,
  spotIndex,
  newestReadingId: null,
  unit: 'pct',
});
const later = () => new Promise((wait) => setTimeout(wait, 80));
const oneRead = () => aRound([read(aBoard(1), [aReading(1)]), aBoard(2)]);
const allRead = (after = [aBoard(2)]) => {
  const done = read(
    aBoard(1),
    [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex })),
  );
  return { ...aRound([done, ...after]), aim: { boardId: 101, spotIndex: null } };
};

beforeEach(forgetEverything);
afterEach(cleanup);

describe('a typed value belongs to the board and the spot where it was typed', () => {
  const leaves: [string, () => Promise<void>][] = [
    ['a scan', () => scan('WAL-02')],
    [
      'a press in the strip',
      () => byHand().click(within(screen.getByRole('navigation')).getByRole('button', { name: /WAL-02/ })),
    ],
    ['Page down', () => byHand().keyboard('{PageDown}')],
  ];
  test.each(leaves)('%s does not take it to another board', async (_, leave) => {
    const { machine, user } = await open();
    await user.keyboard('12.4');
    await later();
    await leave();
    expect(board()).toBe('Board WAL-02');
    expect(field().value).toBe('');
    expect(screen.getByText('“12.4” for WAL-01 is not saved yet.')).toBeTruthy();
    await expectNoBarriers();
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Go to it' }));
    expect(board()).toBe('Board WAL-01');
    expect(field().value).toBe('12.4');
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([{ ...spot(101, 0), raw: 12.4 }]);
  });

  test('the arrows do not take it to another spot', async () => {
    const { machine, user } = await open();
    await user.keyboard('12{ArrowDown}');
    expect(field().value).toBe('');
    await user.keyboard('13{Enter}{ArrowUp>2/}{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { ...spot(101, 1), raw: 13 },
      { ...spot(101, 0), raw: 12 },
    ]);
  });

  test('it is there again after another screen and after a reload, and can be discarded', async () => {
    const { user, unmount } = await open();
    await user.keyboard('12.');
    unmount();
    // A reload forgets the store, and the window's session is what is left.
    const session = sessionStorage.getItem('pintally.drafts') ?? '';
    useDrafts.setState({ drafts: [] });
    sessionStorage.setItem('pintally.drafts', session);
    await useDrafts.persist.rehydrate();
    await open();
    expect(field().value).toBe('12.');
    await user.keyboard('{PageDown}');
    await user.click(screen.getByRole('button', { name: 'Discard' }));
    await user.keyboard('{PageUp}');
    expect(field().value).toBe('');
  });
});

test('a second value typed at a spot while the first is on its way there is saved after it', async () => {
  const answers: (() => void)[] = [];
  const { machine, user } = await open(aRound(), {
    'rounds.saveTyped': () => new Promise((resolve) => answers.push(() => resolve(owner))),
  });
  await user.keyboard('13{Enter}{ArrowUp}13.4');
  act(() =>
    machine.tell('round.changed', {
      roundId: 12,
      aim: { boardId: 101, spotIndex: 1 },
      board: read(aBoard(1), [aReading(7, { raw: 13 })]),
      summary: aRound().summary,
      savedReadingId: 7,
    }),
  );
  await user.keyboard('{Enter}');
  await act(async () => answers[0]!());
  await waitFor(() =>
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { ...spot(101, 0), raw: 13 },
      { ...spot(101, 0), newestReadingId: 7, raw: 13.4 },
    ]),
  );
  await act(async () => answers[1]!());
});

describe('a value typed once all spots of a board are read', () => {
  test('is saved by Enter as the first reading of the next board, which is in hand then', async () => {
    const { machine, user } = await open(allRead());
    await user.keyboard('12.4');
    expect(screen.getByText(/Enter saves this as the first reading of WAL-02\./)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Save for WAL-02' })).toBeTruthy();
    await expectNoBarriers();
    await user.keyboard('{Enter}13.1{Enter}');
    expect(board()).toBe('Board WAL-02');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { ...spot(102, 0), raw: 12.4 },
      { ...spot(102, 1), raw: 13.1 },
    ]);
  });

  test('is in the field of that board where it is not saved', async () => {
    const { user } = await open(allRead(), {
      'rounds.saveTyped': () => {
        throw new Refusal(message('refusal.machine-away'));
      },
    });
    await user.keyboard('12.4{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Pintally is not responding.');
    expect([board(), field().value]).toEqual(['Board WAL-02', '12.4']);
  });
});

describe('a value typed on a board that is to be probed again, all its spots being read', () => {
  const probeAgain = (after = [aBoard(2)]) => {
    const readings = [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex }));
    const done = read(aBoard(1), readings, 'probe-again');
    return { ...aRound([done, ...after]), aim: { boardId: 101, spotIndex: null } };
  };

  test('stays there, asks for its spot, and is saved at the one that is chosen', async () => {
    const { machine, user } = await open(probeAgain());
    await user.keyboard('12.4');
    expect(screen.getByText(/Choose the spot to read again\./)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Save for WAL-02' })).toBeNull();
    await user.keyboard('{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Every spot of WAL-01 has its reading.');
    expect([board(), field().value]).toEqual(['Board WAL-01', '12.4']);
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    await expectNoBarriers();
    await user.keyboard('{ArrowUp}');
    expect(field().value).toBe('12.4');
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { ...spot(101, 3), newestReadingId: 4, raw: 12.4 },
    ]);
  });

  test('goes to a spot that is pressed in the list, too', async () => {
    const { machine, user } = await open(probeAgain());
    await user.keyboard('12.4');
    await user.click(screen.getByRole('button', { name: /^Shell, 60 cm from the left end/ }));
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { ...spot(101, 0), newestReadingId: 1, raw: 12.4 },
    ]);
  });

  test('is replaced by what is typed next, and never added to', async () => {
    const { user } = await open(probeAgain([]));
    await user.keyboard('14.1{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Every spot of WAL-01 has its reading.');
    await user.keyboard('14.2');
    expect(field().value).toBe('14.2');
  });
});

describe('a frozen board', () => {
  const frozen: Suspicion = {
    rule: 'frozen',
    severity: 'refused',
    why: message('suspicion.frozen', { woodTempC: -5, frozenLimitPct: 22 }),
    whatToDo: message('suspicion.frozen.do'),
  };
  const beyond = (mcPct: number): Suspicion => ({
    rule: 'outside-curve-range',
    severity: 'note',
    why: message('suspicion.outside-curve-range.beyond', { mcPct }),
    whatToDo: message('suspicion.outside-curve-range.beyond.do'),
  });
  const readings = [24, 25, 26, 27].map((raw, spotIndex) =>
    aReading(spotIndex + 1, { spotIndex, raw, counts: false, suspicions: [frozen, beyond(raw)] }),
  );

  test('leads from spot to spot, and never back to one that was tried', async () => {
    const { machine, user } = await open(aRound([read(aBoard(1), readings.slice(0, 3), null), aBoard(2)]));
    await user.keyboard('{ArrowDown>3/}27{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ boardId: 101, spotIndex: 3, raw: 27 }]);
    await user.keyboard('24');
    expect(screen.getByText(/Enter saves this as the first reading of WAL-02\./)).toBeTruthy();
  });

  test('says so once, and nothing of how exact its readings are', async () => {
    await open(aRound([read(aBoard(1), readings, 'probe-again'), aBoard(2)]));
    expect(screen.getAllByText(/the water in wood freezes/)).toHaveLength(1);
    expect(screen.queryByText(/beyond the published data/)).toBeNull();
  });
});

describe('a value that was not saved', () => {
  const refuse = () => {
    throw new Refusal(message('refusal.machine-away'));
  };
  test('is in the field again, with the reason', async () => {
    const { machine, user } = await open(aRound(), { 'rounds.saveTyped': refuse });
    await user.keyboard('12.4{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Pintally is not responding.');
    expect(field().value).toBe('12.4');
    machine.answers['rounds.saveTyped'] = () => owner;
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toHaveLength(2);
    expect(field().value).toBe('');
  });

  test('does not mix with the next one, which is typed by then', async () => {
    let answer: (why: Error) => void = () => undefined;
    const { user } = await open(aRound(), {
      'rounds.saveTyped': () => new Promise((_, reject) => (answer = reject)),
    });
    await user.keyboard('12.4{Enter}13');
    await act(async () => answer(new Refusal(message('refusal.machine-stopped'))));
    expect(field().value).toBe('13');
    expect(screen.getByText('“12.4” for WAL-01 is not saved yet.')).toBeTruthy();
    await user.keyboard('.1');
    expect(field().value).toBe('13.1');
  });

  test('goes from the field once the machine is back and has it', async () => {
    const { machine, user } = await open(aRound(), {
      'rounds.saveTyped': () => {
        throw new Refusal(message('refusal.machine-stopped'));
      },
    });
    await user.keyboard('12.4{Enter}');
    expect(field().value).toBe('12.4');
    act(() =>
      machine.tell('round.changed', {
        roundId: 12,
        aim: { boardId: 101, spotIndex: 1 },
        board: read(aBoard(1), [aReading(7, { raw: 12.4 })]),
        summary: aRound().summary,
        savedReadingId: 7,
      }),
    );
    expect(field().value).toBe('');
  });

  test('as the board and those after it are all read stays, too', async () => {
    const { machine, user } = await open(allRead([]));
    await user.keyboard('12.4{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('Every spot of WAL-01 has its reading.');
    expect(field().value).toBe('12.4');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
  });

  test('where another window filled the spot, that window is named', async () => {
    const { machine, user } = await open();
    await user.keyboard('12.4');
    act(() =>
      machine.tell('round.changed', {
        roundId: 12,
        aim: { boardId: 101, spotIndex: 0 },
        board: read(aBoard(1), [aReading(7, { raw: 22.2 })]),
        summary: aRound().summary,
        savedReadingId: null,
      }),
    );
    expect(screen.getByText('Another window saved 22.2% here while you typed.')).toBeTruthy();
    expect(field().value).toBe('12.4');
  });

  test('waits where another window finishes the round, and reopening it leads there', async () => {
    const finished = { ...aRound(), finishedAt: '2026-05-04T09:00:00.000Z', aim: null, probed: null };
    let isFinished = false;
    const { machine, user } = await open(aRound(), {
      'rounds.get': () => (isFinished ? finished : aRound()),
      'rounds.reopen': () => {
        isFinished = false;
        return {};
      },
    });
    await user.keyboard('{PageDown}12.4');
    isFinished = true;
    await act(async () => machine.tell('round.outdated', { roundId: 12, why: null }));
    const note = screen.getByText(
      'The round was finished before “12.4” for WAL-02 was saved. Reopen the round to save it.',
    );
    await expectNoBarriers();
    const banner = within(note.closest<HTMLElement>('[role="status"]')!);
    await user.click(banner.getByRole('button', { name: 'Reopen' }));
    expect(board()).toBe('Board WAL-02');
    expect(field().value).toBe('12.4');
  });

  test('is named before the round is finished', async () => {
    const { user } = await open(aRound([aBoard(1)]));
    await user.keyboard('12.4{PageDown}');
    expect(screen.getByRole('dialog').textContent).toContain('1 typed value is not saved.');
  });
});

test('what was saved last is not shown any more once another window finished and reopened the round', async () => {
  const finished = { ...aRound(), finishedAt: '2026-05-04T09:00:00.000Z', aim: null, probed: null };
  let answer = aRound();
  const { machine } = await open(aRound(), { 'rounds.get': () => answer, 'rounds.open': () => answer });
  const saved = read(aBoard(1), [aReading(7)]);
  act(() =>
    machine.tell('round.changed', {
      roundId: 12,
      aim: { boardId: 101, spotIndex: 1 },
      board: saved,
      summary: aRound().summary,
      savedReadingId: 7,
    }),
  );
  expect(screen.getByText('Shell 12.1% saved')).toBeTruthy();
  for (answer of [finished, aRound([aBoard(2), saved])]) {
    await act(async () => machine.tell('changed', { yard: null, topics: ['stacks'] }));
  }
  expect(board()).toBe('Board WAL-02');
  expect(screen.queryByText(/12\.1% saved/)).toBeNull();
});

describe('digits', () => {
  test('typed as soon as a reason to exclude is chosen are all in the field, in order', async () => {
    let answer: (owner: { roundId: number; boardId: number; stackId: number }) => void = () => undefined;
    const { user } = await open(oneRead(), {
      'readings.exclude': () => new Promise((resolve) => (answer = resolve)),
    });
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    await user.keyboard('7.1');
    expect(field().value).toBe('7.1');
    await act(async () => answer(owner));
    expect(field().value).toBe('7.1');
  });

  test('typed while a button has the focus go to the end of what is typed', async () => {
    const { user } = await open();
    await user.keyboard('12');
    field().setSelectionRange(0, 0);
    act(() => screen.getByRole('button', { name: /Undo last/ }).focus());
    await user.keyboard('.4');
    expect(field().value).toBe('12.4');
  });
});

describe('what is no reading', () => {
  test.each([
    ['0', /^✕?0 is not a reading\. A meter shows a blank or a dash instead\./],
    ['0.0', /^✕?0 is not a reading/],
    ['0.0000001', /^✕?0 is not a reading.* or probe it again\. Nothing was saved\.$/],
    ['1,200', /“1,200” could mean two different numbers/],
    ['12.400', /“12.400” could mean two different numbers/],
    ['twelve', /“welve” is not a number|“twelve” is not a number/],
  ])('%s is not saved, and the reason is said', async (typed, reason) => {
    const { machine, user } = await open();
    act(() => field().focus());
    await user.click(field());
    await user.paste(typed);
    await user.keyboard('{Enter}');
    expect(screen.getByRole('alert').textContent).toMatch(reason);
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    expect(field().value).toBe(typed);
    // The next key, or the next scan, takes its place.
    expect([field().selectionStart, field().selectionEnd]).toEqual([0, typed.length]);
  });

  test('the ID of a board typed as slowly as a hand leads there and is not saved', async () => {
    const { machine, user } = await open(aRound([aBoard(1), aBoard(2, { code: '1204' })]));
    await user.keyboard('1204{Enter}');
    expect(board()).toBe('Board 1204');
    expect(screen.getByText('1204 is a board ID. This is board 1204; no reading was saved.')).toBeTruthy();
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
  });

  test('an ID that may well be a reading is one', async () => {
    const { machine, user } = await open(aRound([aBoard(1), aBoard(2, { code: '12' })]));
    await user.keyboard('12{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([{ ...spot(101, 0), raw: 12 }]);
  });
});

describe('keys', () => {
  test('Delete asks why the last reading is excluded', async () => {
    const { machine, user } = await open(oneRead());
    await user.keyboard('{Delete}');
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    expect(machine.inputsOf('readings.exclude')).toEqual([{ readingId: 1, why: { code: 'wet-face' } }]);
  });

  test('Backspace that empties the field undoes nothing, however often it is pressed', async () => {
    const two = read(aBoard(1), [aReading(1), aReading(2, { spotIndex: 1 })]);
    const { machine, user } = await open(aRound([two, aBoard(2)]));
    await user.keyboard('19{Backspace>1/}{Backspace>1/}{Backspace>1/}{Backspace>1/}');
    expect(field().value).toBe('');
    expect(machine.inputsOf('rounds.undo')).toEqual([]);
    const elapsed = passTime(1050);
    await user.keyboard('{Backspace}{Backspace}{Backspace}');
    elapsed.mockRestore();
    expect(machine.inputsOf('rounds.undo')).toEqual([{ readingId: 2 }]);
  });

  test('Backspace with nothing to undo does nothing', async () => {
    const { machine, user } = await open();
    await user.keyboard('{Backspace}');
    await later();
    expect(machine.inputsOf('rounds.undo')).toEqual([]);
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('a reading that is excluded is said, with the way back', async () => {
    const { user } = await open(oneRead());
    await user.keyboard('{Delete}');
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    const said = await screen.findByText('Shell 11.4% excluded. Include brings it back.');
    expect(said.closest('[aria-live="polite"]')).toBeTruthy();
  });

  test('Backspace says what it undid', async () => {
    const { user } = await open(oneRead());
    await user.keyboard('{Backspace}');
    const said = await screen.findByText('Shell 11.4% undone. Probe this spot again.');
    expect(said.closest('[aria-live="polite"]')).toBeTruthy();
  });

  test('the hint on Enter says what it does now, and does not say twice where it leads', async () => {
    await open();
    expect(field().getAttribute('aria-describedby')).toBe(
      screen.getByText('Type a reading, then press Enter.').id,
    );
    cleanup();
    forgetEverything();
    const { user } = await open(allRead());
    expect(screen.queryByText('Type a reading, then press Enter.')).toBeNull();
    expect(screen.getAllByText(/Enter/, { selector: 'p' })).toHaveLength(1);
    await user.keyboard('1');
    expect(screen.getByText('Type a reading, then press Enter.')).toBeTruthy();
  });

  test('the list of keys has those for a slip and for excluding', async () => {
    const { user } = await open();
    await user.keyboard('?');
    await waitFor(() => expect(screen.getByRole('dialog').textContent).toMatch(/DeleteExclude.*UUse the/));
  });
});

describe('G', () => {
  const boards = () => aRound([aBoard(1), aBoard(2), aBoard(3, { code: 'OAK-12' })]);
  test.each([
    ['2', 'Board WAL-02'],
    ['oak', 'Board OAK-12'],
  ])('takes %s for the one board that it can mean', async (part, heading) => {
    const { user } = await open(boards());
    await user.keyboard(`g`);
    await user.type(await screen.findByRole('textbox', { name: 'Board ID' }), `${part}{Enter}`);
    await waitFor(() => expect(board()).toBe(heading));
  });
  test('names the boards where it can mean several', async () => {
    const { user } = await open(boards());
    await user.keyboard('g');
    await user.type(await screen.findByRole('textbox', { name: 'Board ID' }), 'wal{Enter}');
    expect(screen.getByRole('alert').textContent).toContain('2 boards have “wal” in their ID, like WAL-01');
  });
});

describe('while Pintally is not responding', () => {
  test('what cannot work is off, what is typed stays, and is saved when it is back', async () => {
    const { machine, user } = await open();
    act(() => setLink('away'));
    await user.keyboard('12.4{Enter}');
    expect(field().value).toBe('12.4');
    for (const name of ['Save', 'Undo last', 'Next board', 'Go to …', 'Finish']) {
      expect(screen.getByRole<HTMLButtonElement>('button', { name }).disabled).toBe(true);
    }
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Keys and options' }).disabled).toBe(false);
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    await expectNoBarriers();

    await act(async () => setLink('open'));
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([{ ...spot(101, 0), raw: 12.4 }]);
    expect(field().value).toBe('');
  });

  test('a value whose answer was lost is in the field, without a notice of its own', async () => {
    const { user } = await open(aRound(), {
      'rounds.saveTyped': () => {
        setLink('away');
        throw new Refusal(message('refusal.machine-stopped'));
      },
    });
    await user.keyboard('12.4{Enter}');
    expect(field().value).toBe('12.4');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('the field says that nothing is saved, and says it again at each Enter', async () => {
    const { user } = await open();
    act(() => setLink('away'));
    const hint = () => document.getElementById(field().getAttribute('aria-describedby') ?? '');
    expect(hint()?.textContent).toBe('Nothing is saved now. Waiting for Pintally.');
    await user.keyboard('12.4');
    const before = hint();
    expect(before?.textContent).toBe('Not saved. Waiting for Pintally.');
    await user.keyboard('{Enter}');
    expect(screen.getByRole('alert')).toBe(hint());
    expect(hint()?.textContent).toBe('Not saved. Waiting for Pintally.');
    expect(hint()).not.toBe(before);
    await act(async () => setLink('open'));
    expect(hint()?.textContent).toBe('Type a reading, then press Enter.');
  });

  test('a value whose answer was lost says by itself that it is not saved, and nothing else does', async () => {
    const { user } = await open(aRound(), {
      'rounds.saveTyped': () => {
        setLink('away');
        throw new Refusal(message('refusal.machine-stopped'));
      },
    });
    await user.keyboard('12.4{Enter}');
    await act(async () => setLink('open'));
    expect(screen.queryByText(/Check your last change/)).toBeNull();
    expect(field().value).toBe('12.4');
    await user.keyboard('{PageDown}');
    expect(screen.getByText('“12.4” for WAL-01 is not saved yet.')).toBeTruthy();
    expect(screen.queryByText(/Check your last change/)).toBeNull();
  });

  test('a value on its way to a machine that answers nothing is not saved yet, and is once it goes on', async () => {
    let answer: () => void = () => undefined;
    const { user } = await open(aRound(), {
      'rounds.saveTyped': () =>
        new Promise((resolve) => {
          answer = () => resolve({ roundId: 12, boardId: 101, stackId: 3 });
        }),
    });
    await user.keyboard('12.4{Enter}');
    expect(screen.queryByText(/is not saved yet/)).toBeNull();
    act(() => setLink('silent'));
    expect(screen.getByText('“12.4” for WAL-01 is not saved yet.')).toBeTruthy();
    await act(async () => setLink('open'));
    await act(async () => answer());
    expect(screen.queryByText(/is not saved yet/)).toBeNull();
  });
});
