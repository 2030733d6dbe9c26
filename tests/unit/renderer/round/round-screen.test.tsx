// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { followMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RoundState } from '../../../../shared-core/contract/round.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { found } from '../board/open-board.tsx';
import { aLiveMeter, aLiveValue, aMeter } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';

/** The frame gives every screen the page's main landmark. */
const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

/** Whose reading was saved or excluded. */
const owner = { roundId: 12, boardId: 101, stackId: 3 };
/** The first spot of the first board, as a value names it while nothing was read there. */
const firstSpot = { roundId: 12, boardId: 101, spotIndex: 0, newestReadingId: null };
const nothing = {
  'rounds.aim': () => ({}),
  'rounds.saveTyped': () => owner,
  'rounds.saveLive': () => owner,
  'rounds.undo': () => owner,
};

async function open(round: RoundState = aRound(), more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({ 'rounds.open': () => round, ...nothing, ...more });
  const user = byHand();
  render(<RoundScreen id={round.id} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  return { machine, user };
}

/** The meter is on and the pins are where they are. */
function meterIsLive(machine: ReturnType<typeof playMachine>, live = aLiveValue()) {
  act(() => {
    followMeter();
    showMeter(aLiveMeter());
    machine.tell('meter.live', live);
  });
}

/** The machine says that it saved a reading on the first board. */
function save(machine: ReturnType<typeof playMachine>, reading: JudgedReading, spotIndex: number | null = 1) {
  const round = aRound();
  act(() =>
    machine.tell('round.changed', {
      roundId: round.id,
      aim: { boardId: 101, spotIndex },
      board: read(aBoard(1), [reading]),
      summary: { ...round.summary, probed: 1 },
      savedReadingId: reading.id,
    }),
  );
}

const questionable = aReading(1, {
  suspicions: [
    {
      rule: 'jump-since-last-round',
      severity: 'questionable',
      why: message('suspicion.jump.wetter', { depth: 'shell', beforePct: 8, mcPct: 12.1, days: 3 }),
      whatToDo: message('suspicion.jump.do'),
    },
  ],
});

const isFinished = { finishedAt: '2026-05-04T09:00:00.000Z', aim: null, probed: null };
/** A reading at each of the four spots. */
const allSpots = () => [0, 1, 2, 3].map((spotIndex) => aReading(spotIndex + 1, { spotIndex }));

beforeEach(forgetEverything);
afterEach(cleanup);

describe('before the round is there', () => {
  test('it says that it is loading', async () => {
    playMachine({ 'rounds.open': () => new Promise(() => undefined) });
    render(<RoundScreen id={12} />, { wrapper: InMain });
    expect(screen.getByRole('status').textContent).toBe('Loading …');
    await expectNoBarriers();
  });

  test('a round that cannot be had says why, and can be tried again', async () => {
    let there = false;
    playMachine({
      'rounds.open': () => {
        if (!there) throw new Refusal(message('refusal.not-found', { what: 'round' }));
        return aRound();
      },
    });
    render(<RoundScreen id={12} />, { wrapper: InMain });
    expect((await screen.findByRole('alert')).textContent).toContain('That round is not in this yard.');
    await expectNoBarriers();
    there = true;
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe('Board WAL-01');
  });
});

describe('with no meter, values are typed', () => {
  test('the board, what to do and the field that waits for the value', { tags: 'core' }, async () => {
    await open();
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-01');
    expect(screen.getByText('Shell, 60 cm from the left end: pins 5 mm deep.')).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByLabelText('Reading on the meter, %'));
    expect(document.title).toBe('WAL-01, round on Walnut from the lane · Pintally');
    await expectNoBarriers();
  });

  test.each([
    ['metric', '50 mm', null],
    ['imperial', '1\u00A015/16\u00A0in', null],
    ['metric', '8/4', 8],
    ['imperial', '8/4', 8],
  ] as const)(
    'the board in %s units is %s, given in quarters: %s',
    async (units, text, thicknessQuarters) => {
      useSettings.setState({ settings: { ...usualSettings, units } });
      const board = aBoard(1, {
        thicknessMm: thicknessQuarters ? 50.8 : 50,
        thicknessQuarters,
        lengthMm: null,
      });
      await open(aRound([board]));
      expect(screen.getByText('Black walnut').closest('p')?.textContent).toBe(`Black walnut${text}`);
    },
  );

  test('a value with a comma and Enter is sent, and the field is free again', { tags: 'core' }, async () => {
    const { machine, user } = await open();
    await user.keyboard('12,4{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([{ ...firstSpot, raw: 12.4, unit: 'pct' }]);
    expect((screen.getByRole('textbox') as HTMLInputElement).value).toBe('');
    expect(document.activeElement).toBe(screen.getByRole('textbox'));
  });

  test('a digit typed while a button has the focus goes into the field', async () => {
    const { user } = await open();
    act(() => screen.getByRole('button', { name: /Undo last/ }).focus());
    await user.keyboard('14.5');
    const field = screen.getByLabelText<HTMLInputElement>(/Reading on the meter/);
    expect(field.value).toBe('14.5');
    expect(document.activeElement).toBe(field);
  });

  test('what is not a number is not saved, stays in the field, and is called so', async () => {
    const { machine, user } = await open();
    await user.keyboard('1.2.6{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    expect(screen.getByRole('alert').textContent).toContain('“1.2.6” is not a number. Nothing was saved.');
    expect((screen.getByRole('textbox') as HTMLInputElement).value).toBe('1.2.6');
  });

  test('Page down is the next board, twice is the one after, Shift and Enter goes back', {
    tags: 'core',
  }, async () => {
    const { machine, user } = await open();
    await user.keyboard('{PageDown}{PageDown}{Shift>}{Enter}{/Shift}');
    expect(machine.inputsOf('rounds.aim')).toEqual([
      { roundId: 12, boardId: 102, spotIndex: null },
      { roundId: 12, boardId: 103, spotIndex: null },
      { roundId: 12, boardId: 102, spotIndex: null },
    ]);
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  });

  test('what the machine tells of a board just left does not lead back to it', async () => {
    const answers: (() => void)[] = [];
    const { machine, user } = await open(aRound(), {
      'rounds.aim': () => new Promise((answer) => answers.push(() => answer({}))),
    });
    const tellAim = (boardIndex: number) =>
      act(async () => {
        machine.tell('round.changed', {
          roundId: 12,
          aim: { boardId: 101 + boardIndex, spotIndex: 0 },
          board: aBoard(boardIndex + 1),
          summary: aRound().summary,
          savedReadingId: null,
        });
        answers.shift()?.();
      });
    await user.keyboard('{PageDown}{PageDown}');
    const heading = screen.getByRole('heading', { level: 1 });
    expect(heading.textContent).toBe('Board WAL-03');
    await tellAim(1);
    expect(heading.textContent).toBe('Board WAL-03');
    await tellAim(2);
    expect(heading.textContent).toBe('Board WAL-03');
    await tellAim(0);
    expect(heading.textContent).toBe('Board WAL-01');
  });

  test('an answer from before the newest aim does not lead back either', async () => {
    const answers: (() => void)[] = [];
    const { machine, user } = await open(aRound(), {
      'rounds.get': () => aRound(),
      'rounds.aim': () => new Promise((answer) => answers.push(() => answer({}))),
    });
    await user.keyboard('{PageDown}');
    await act(async () => machine.tell('changed', { yard: null, topics: ['stacks'] }));
    expect(machine.inputsOf('rounds.get')).toHaveLength(1);
    act(() =>
      machine.tell('round.changed', {
        roundId: 12,
        aim: { boardId: 102, spotIndex: 0 },
        board: aBoard(2),
        summary: aRound().summary,
        savedReadingId: null,
      }),
    );
    await act(async () => answers[0]?.());
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  });

  test.each([
    ['forecasts were made', ['outlooks']],
    ['another round was compared in the background', ['round:3', 'stacks']],
    ['a value was saved here', ['boards', 'board:101', 'stack:1', 'round:12', 'acts']],
  ] as const)('is not asked for again, with a thousand boards, where %s', async (_, topics) => {
    const { machine } = await open(aRound(), { 'rounds.get': () => aRound() });
    await act(async () => machine.tell('changed', { yard: null, topics: [...topics] }));
    expect(machine.inputsOf('rounds.get')).toEqual([]);
    await act(async () => machine.tell('round.outdated', { roundId: 12, why: null }));
    expect(machine.inputsOf('rounds.get')).toHaveLength(1);
  });

  test('the arrows choose the spot and stop at the ends', async () => {
    const { machine, user } = await open();
    await user.keyboard('{ArrowDown>4/}{ArrowUp}');
    expect(machine.inputsOf('rounds.aim').map((input) => (input as { spotIndex: number }).spotIndex)).toEqual(
      [1, 2, 3, 3, 2],
    );
  });

  test('Backspace on the empty field undoes the last reading', { tags: 'core' }, async () => {
    const { machine, user } = await open(aRound([read(aBoard(1), [aReading(7)]), aBoard(2)]));
    await user.keyboard('{Backspace}');
    expect(machine.inputsOf('rounds.undo')).toEqual([{ readingId: 7 }]);
  });

  test('a meter that went away says so beside the field', async () => {
    await open();
    act(() =>
      showMeter(
        aMeter({
          kind: 'bluetooth',
          phase: 'reconnecting',
          message: message('meter.state.back', { meterName: 'Yard meter' }),
        }),
      ),
    );
    expect(screen.getByText('Connected to Yard meter again. Starting its readings …')).toBeTruthy();
  });
});

describe('with the meter live', () => {
  test('the value is shown corrected and raw, both named, with what the pins are doing in words', async () => {
    const { machine } = await open();
    meterIsLive(machine);
    const value = screen.getByRole('region', { name: 'Reading' });
    expect(value.textContent).toContain('13.4% MCcorrected');
    expect(value.textContent).toContain('12.6%raw, as the meter shows');
    expect(within(value).getByText('Settled')).toBeTruthy();
    await expectNoBarriers();
  });

  test('Space takes it at once', async () => {
    const { machine, user } = await open();
    meterIsLive(machine, aLiveValue({ phase: 'drifting' }));
    expect(screen.getByText('Drifting: hold still')).toBeTruthy();
    await user.keyboard(' ');
    expect(machine.inputsOf('rounds.saveLive')).toEqual([firstSpot]);
  });

  test('a digit begins typing instead; once saved, or on Escape, the meter is back', async () => {
    const { machine, user } = await open();
    meterIsLive(machine);
    await user.keyboard('9');
    expect((screen.getByRole('textbox') as HTMLInputElement).value).toBe('9');
    await user.keyboard('.8{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([{ ...firstSpot, raw: 9.8, unit: 'pct' }]);
    expect(screen.queryByRole('textbox')).toBeNull();
    await user.keyboard('3{Escape}');
    expect(screen.queryByRole('textbox')).toBeNull();
  });

  test('why nothing was saved is shown until something is', async () => {
    const { machine, user } = await open(aRound(), {
      'rounds.saveLive': () => {
        throw new Refusal(message('refusal.no-value'));
      },
    });
    meterIsLive(machine, aLiveValue({ phase: 'pins-out', raw: null, corrected: null, spread: null }));
    await user.keyboard(' ');
    expect(screen.getByRole('alert').textContent).toContain('The meter shows no value.');
    save(machine, aReading(1));
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('with the pins out, the reading saved last stays large and is named as saved', async () => {
    const { machine } = await open();
    meterIsLive(machine, aLiveValue({ phase: 'pins-out', raw: null, corrected: null, spread: null }));
    save(machine, aReading(1));
    const value = screen.getByRole('region', { name: 'Reading' });
    expect(within(value).getByText('✓ Shell saved:')).toBeTruthy();
    expect(value.textContent).toContain('12.1% MCcorrected');
    expect(value.textContent).toContain('11.4%raw');
  });
});

describe('a round over a thousand boards', () => {
  const many = () => aRound(Array.from({ length: 1000 }, (_, index) => aBoard(index + 1)));
  const strip = () => within(screen.getByRole('navigation', { name: 'Boards of this round' }));
  const current = () => strip().getByRole('button', { current: 'step' });

  test('draws only the part of the strip in sight, and says how long it is', async () => {
    await open(many());
    expect(strip().getAllByRole('button').length).toBeLessThan(40);
    const [first] = strip().getAllByRole('listitem');
    expect([first!.getAttribute('aria-posinset'), first!.getAttribute('aria-setsize')]).toEqual([
      '1',
      '1000',
    ]);
    await expectNoBarriers();
  });

  test('End and Home lead to its ends, and the board there is in the strip', async () => {
    const { machine, user } = await open(many());
    await user.keyboard('{End}');
    expect(machine.inputsOf('rounds.aim').at(-1)).toEqual({ roundId: 12, boardId: 1100, spotIndex: null });
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-01000');
    expect(current().textContent).toContain('WAL-01000');
    await user.keyboard('{Home}');
    expect(current().textContent).toContain('WAL-01');
  });

  test('the strip is one stop for Tab, and the arrows walk along it', async () => {
    const { user } = await open(many());
    expect(
      strip()
        .getAllByRole('button')
        .filter((button) => button.tabIndex === 0),
    ).toEqual([current()]);
    act(() => current().focus());
    await user.keyboard('{ArrowRight}{ArrowRight}');
    expect(document.activeElement).toBe(current());
    expect(current().textContent).toContain('WAL-03');
  });
});

describe('a board that was read before', () => {
  const two = read(aBoard(2), [aReading(1), aReading(2, { spotIndex: 1 })]);
  const twoRead = () => aRound([aBoard(1), two, aBoard(3)]);

  test('shows how far it is and its next spot at once, and its readings when they come', async () => {
    const round = twoRead();
    const { machine, user } = await open(round);
    await user.keyboard('{PageDown}');
    expect(screen.getByRole('region', { name: 'Call so far' }).textContent).toBe('2 of 4 spots read');
    expect(screen.getByRole('button', { name: /^WAL-02/ }).textContent).toBe('WAL-022 of 4');
    expect(screen.getByText(/^Shell, 60 cm from the right end: pins 5 mm deep/)).toBeTruthy();
    const spots = screen.getByRole('region', { name: 'Spots' });
    expect(spots.getAttribute('aria-busy')).toBe('true');
    await expectNoBarriers();
    act(() =>
      machine.tell('round.changed', {
        roundId: round.id,
        aim: { boardId: 102, spotIndex: 2 },
        board: two,
        summary: round.summary,
        savedReadingId: null,
      }),
    );
    expect(spots.getAttribute('aria-busy')).toBe('false');
    expect(within(spots).getAllByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveLength(2);
  });

  test('and is being judged says so, and has its call once the machine has', async () => {
    const judged = read(aBoard(2), allSpots(), 'ready');
    let isJudged = false;
    const answer = () =>
      aRound([aBoard(1), isJudged ? judged : { ...judged, finding: null, assessment: null }]);
    const { machine } = await open(answer(), { 'rounds.get': answer });
    const chip = () => screen.getByRole('button', { name: /^WAL-02/ }).textContent;
    expect(chip()).toBe('WAL-02being judged');
    isJudged = true;
    await act(async () => machine.tell('changed', { yard: null, topics: ['boards', 'round:12'] }));
    expect(chip()).toMatch(/Ready/);
  });

  test('to the end shows its call, its estimates and its reason', async () => {
    await open(aRound([read(aBoard(1), allSpots(), 'bring-in'), aBoard(2)]));
    expect(screen.getByRole('region', { name: 'Call so far' }).textContent).toMatch(
      /Bring in.*12.6%.*11.4–\u206013.8%.*Too wet: 12\.6%\. Target 6–\u20608%\./,
    );
  });

  test('with an average at the end of its readings says why', async () => {
    const board = read(aBoard(1), allSpots(), 'bring-in');
    const whyAverage = message('board.why-average', { where: 'below', how: 'drier', part: 'faces' });
    await open(aRound([{ ...board, finding: { ...board.finding!, whyAverage } }]));
    expect(screen.getByRole('region', { name: 'Call so far' }).textContent).toMatch(
      /The average is below the readings\./,
    );
  });

  test('of which all readings are questionable has its average marked so, and says the remedy once', async () => {
    const why = message('suspicion.dry-too-soon', {
      depth: 'shell',
      readPct: 10,
      expectedInterval: { minPct: 19.2, maxPct: 42.4 },
    });
    const whatToDo = message('suspicion.dry-too-soon.pins.do');
    const suspicions = [{ rule: 'dry-too-soon', severity: 'questionable', why, whatToDo } as const];
    const board = read(
      aBoard(1),
      allSpots().map((reading) => ({ ...reading, suspicions })),
      'probe-again',
    );
    const finding = {
      ...board.finding!,
      averageIs: 'estimated',
      isQuestionable: true,
      lowPct: null,
      highPct: null,
    } as const;
    const unreliable = message('call.shell-questionable', { shellPct: 10 });
    await open(
      aRound([
        { ...board, finding, assessment: { ...board.assessment!, reasons: [unreliable, why, whatToDo] } },
        aBoard(2),
      ]),
    );
    expect(screen.getByRole('region', { name: 'Call so far' }).textContent).toMatch(
      /Estimated average12\.6% Questionable/,
    );
    expect(screen.getAllByText(/Read the core/)).toHaveLength(1);
  });

  test('and is drier than it can be offers the way out, as its page does', async () => {
    const suspicion = {
      rule: 'drier-than-its-air',
      severity: 'questionable',
      why: message('suspicion.drier-than-its-air', { readPct: 7.4, lowestEmcPct: 10.8 }),
      whatToDo: message('suspicion.drier-than-its-air.do'),
    } as const;
    const readings = allSpots().map((reading) => ({ ...reading, suspicions: [suspicion] }));
    const board = aBoardRow(101, { latest: aFinding({ roundId: 12 }) });
    const { machine, user } = await open(aRound([read(aBoard(1), readings, 'probe-again'), aBoard(2)]), {
      'boards.get': () => ({ ...found, board }),
      'boards.edit': () => ({ ...board, driedBy: 'kiln', version: 2 }),
      'species.list': () => [],
    });
    const spots = within(screen.getByRole('region', { name: 'Spots' }));
    expect(await spots.findByText('Did it come from a kiln or drier air?')).toBeTruthy();
    expect(spots.getAllByText(/is drier than its places get/)).toHaveLength(1);
    await expectNoBarriers();
    await user.click(spots.getByRole('button', { name: 'Yes' }));
    expect(machine.inputsOf('boards.edit')).toEqual([{ id: 101, basedOn: 1, changed: { driedBy: 'kiln' } }]);
    await user.click(spots.getByRole('button', { name: 'No, correct date or species' }));
    expect(await screen.findByRole('dialog')).toBeTruthy();
  });

  test('has a button for what was meant at every reading that is a slip', async () => {
    const slip = (rawPct: number) =>
      ({
        rule: 'typing-slip',
        severity: 'questionable',
        why: message('suspicion.typing-slip', { rawPct, rawMeantPct: rawPct / 10 }),
        whatToDo: message('suspicion.typing-slip.do', { rawMeantPct: rawPct / 10 }),
      }) as const;
    const readings = [140, 138].map((raw, spotIndex) =>
      aReading(spotIndex + 1, { spotIndex, raw, suspicions: [slip(raw)] }),
    );
    const { machine, user } = await open(aRound([read(aBoard(1), readings), aBoard(2)]));
    await user.click(screen.getByRole('button', { name: 'Use 14%' }));
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 14, replaces: 1, spotIndex: 0 }]);
    expect(screen.getByRole('button', { name: 'Use 13.8%' })).toBeTruthy();
  });

  test('shows at each spot what the last round found there, with its day', async () => {
    const lastRound = { at: '2026-04-12T12:00:00.000Z', spotPcts: [null, 15.7, null, null] };
    await open(aRound([{ ...aBoard(1), lastRound }, aBoard(2)]));
    const spots = within(screen.getByRole('region', { name: 'Spots' })).getAllByRole('listitem');
    expect(spots.map((spot) => /Apr 12.*: (\S+%)/.exec(spot.textContent ?? '')?.[1])).toEqual([
      undefined,
      '15.7%',
      undefined,
      undefined,
    ]);
  });

  test('is opened again when its yard is, so that values go where the window shows', async () => {
    const { machine } = await open(twoRead());
    const before = machine.inputsOf('rounds.open').length;
    await act(async () => machine.tell('changed', { yard: null, topics: ['yard'] }));
    expect(machine.inputsOf('rounds.open')).toHaveLength(before + 1);
  });

  test('and is called by the spots that are read has its call, and says that the others make it surer', async () => {
    const wet = read(aBoard(2), [aReading(1)], 'keep-drying');
    const { user } = await open(aRound([aBoard(1), wet, aBoard(3)]));
    expect(screen.getByRole('button', { name: /^WAL-02/ }).textContent).toContain('Keep drying');
    await user.keyboard('{PageDown}');
    const call = screen.getByRole('region', { name: 'Call so far' }).textContent;
    expect(call).toMatch(
      /^Keep drying.*1 of 4 spots read: enough for a call\. Read the others to be surer, or go on\./,
    );
    await user.click(screen.getByRole('button', { name: /^Finish/ }));
    expect(screen.getByRole('dialog', { name: 'Finish the round?' }).textContent).not.toContain('open spot');
  });

  test('and is to be probed again has its open spots shown first', async () => {
    const again = read(aBoard(2), [aReading(1)], 'probe-again');
    await open(aRound([aBoard(1), again, aBoard(3)]));
    expect(screen.getByRole('button', { name: /^WAL-02/ }).textContent).toBe('WAL-021 of 4');
  });

  test('is not asked for again when a board of it was read', async () => {
    const { machine } = await open(twoRead());
    await act(async () =>
      machine.tell('changed', { yard: null, topics: ['boards', 'board:101', 'round:12'] }),
    );
    expect(machine.inputsOf('rounds.get')).toEqual([]);
  });
});

describe('a reading that was saved', () => {
  test('is read aloud and is at its spot, and the next spot is asked for', async () => {
    const { machine } = await open();
    save(machine, aReading(1));
    expect(screen.getByText('Shell 12.1% saved').closest('[aria-live]')?.getAttribute('aria-live')).toBe(
      'polite',
    );
    expect(screen.getByText(/^Core, 60 cm from the left end: pins 25 mm/)).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Spots' }).textContent).toContain('12.1% MCcorrected11.4%raw');
    expect(screen.getByRole('region', { name: 'Call so far' }).textContent).toBe('1 of 4 spots read');
  });

  // What was typed or sent is never rounded: 1.45 is not 1.4.
  test.each([
    [1.45, 'pct', '1.45%'],
    [14.25, 'pct', '14.25%'],
    [1_234_500, 'ohm', '1.2345 MΩ'],
  ] as const)('shows its raw value %f %s whole: %s', async (raw, unit, text) => {
    const { machine } = await open();
    meterIsLive(machine, aLiveValue({ phase: 'pins-out', raw: null, corrected: null, spread: null }));
    save(machine, aReading(1, { raw, unit }));
    expect(screen.getByText(`(raw ${text})`)).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Spots' }).textContent).toContain(`${text}raw`);
    expect(screen.getByRole('region', { name: 'Reading' }).textContent).toContain(`${text}raw`);
    meterIsLive(machine, aLiveValue({ raw, unit }));
    expect(screen.getByRole('region', { name: 'Reading' }).textContent).toContain(`${text}raw, as the meter`);
  });

  test('and is drier than its sawing allows says so in short, its figures being at the spot', async () => {
    const { machine } = await open();
    const why = message('suspicion.dry-too-soon', {
      depth: 'shell',
      readPct: 10,
      expectedInterval: { minPct: 19.2, maxPct: 42.4 },
    });
    const whatToDo = message('suspicion.dry-too-soon.pins.do');
    save(
      machine,
      aReading(1, { suspicions: [{ rule: 'dry-too-soon', severity: 'questionable', why, whatToDo }] }),
    );
    expect(screen.getByText(/Questionable\. Unlikely this soon after sawing\.$/)).toBeTruthy();
    expect(screen.getAllByText(/Shell expected: /)).toHaveLength(1);
  });

  test('and is questionable says why and what to do', async () => {
    const { machine } = await open();
    save(machine, questionable);
    expect(screen.getByText(/Questionable. The shell went from 8\.0% to 12\.1% in 3 days\./)).toBeTruthy();
    const spots = screen.getByRole('region', { name: 'Spots' });
    expect(spots.textContent).toContain('Questionable.');
    expect(spots.textContent).toContain('Check the board ID, the species, and the temperature.');
    await expectNoBarriers();
  });

  test('but cannot be a moisture content says that it is not used', async () => {
    const { machine } = await open();
    save(
      machine,
      aReading(1, {
        raw: 126,
        counts: false,
        corrected: { mcPct: null, steps: [], standardUncertaintyPct: null, warnings: ['not-a-reading'] },
        suspicions: [
          {
            rule: 'typing-slip',
            severity: 'refused',
            why: message('suspicion.typing-slip', { rawPct: 126, rawMeantPct: 12.6 }),
            whatToDo: message('suspicion.typing-slip.do', { rawMeantPct: 12.6 }),
          },
        ],
      }),
      0,
    );
    expect(screen.getByText('Shell saved, not used')).toBeTruthy();
    const spots = screen.getByRole('region', { name: 'Spots' });
    expect(spots.textContent).toContain('Not used.');
    // Its raw value alone, and no dash where the moisture content would be.
    expect(spots.textContent).toContain('126%raw');
    expect(spots.textContent).not.toContain('–');
  });

  const uncorrected: [JudgedReading['corrected']['steps'], string][] = [
    [[{ step: 'species-curve', pct: 12.1 }], '12.1% MCcorrected for species only'],
    [[], '12.1% MCnot corrected'],
  ];
  test.each(uncorrected)(
    'of wood of unknown temperature, with %j, says what it is corrected for, and no more on each reading',
    async (steps, shown) => {
      const { machine } = await open();
      save(
        machine,
        aReading(1, {
          woodTempC: null,
          corrected: { ...aReading(1).corrected, steps, warnings: ['temperature-unknown'] },
          suspicions: [
            {
              rule: 'temperature-unknown',
              severity: 'note',
              why: message('suspicion.temperature-unknown', { perStepK: 10 }),
              whatToDo: message('suspicion.temperature-unknown.do'),
            },
          ],
        }),
        1,
      );
      const spots = screen.getByRole('region', { name: 'Spots' });
      expect(spots.textContent).toContain(shown);
      expect(spots.textContent).not.toContain('Wood temperature unknown');
    },
  );

  test('and excluded stays in sight, says why, and can be included again', async () => {
    const excluded = aReading(1, { excluded: { text: 'Knot, pitch or bark' }, counts: false });
    const { machine, user } = await open(aRound([read(aBoard(1), [excluded]), aBoard(2)]), {
      'readings.include': () => owner,
    });
    expect(screen.getByText('Excluded: Knot, pitch or bark')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Include shell reading 11.4%' }));
    expect(machine.inputsOf('readings.include')).toEqual([{ readingId: 1 }]);
  });

  test('is excluded by hand with a reason', async () => {
    const { machine, user } = await open(aRound([read(aBoard(1), [aReading(1)]), aBoard(2)]), {
      'readings.exclude': () => owner,
    });
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await expectNoBarriers();
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Wet face' }));
    expect(machine.inputsOf('readings.exclude')).toEqual([{ readingId: 1, why: { code: 'wet-face' } }]);
  });

  test('changes only its own board; news of another round changes nothing', async () => {
    const { machine } = await open();
    save(machine, aReading(1));
    const strip = screen.getByRole('navigation', { name: 'Boards of this round' });
    expect(
      within(strip)
        .getAllByRole('button')
        .map((each) => each.textContent),
    ).toEqual(['WAL-011 of 4', 'WAL-02not probed', 'WAL-03not probed']);
    const other = aRound();
    act(() =>
      machine.tell('round.changed', {
        roundId: 99,
        aim: { boardId: 103, spotIndex: 0 },
        board: aBoard(3),
        summary: other.summary,
        savedReadingId: null,
      }),
    );
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-01');
  });
});

describe('round and about', () => {
  test('T asks for this board’s wood temperature and gives the field back', async () => {
    const { machine, user } = await open(aRound(), { 'rounds.setTemperature': () => ({}) });
    await user.keyboard('t');
    const dialog = screen.getByRole('dialog', { name: 'Wood temperature of WAL-01' });
    await expectNoBarriers();
    const field = within(dialog).getByRole('textbox', { name: 'Wood temperature' });
    await user.clear(field);
    await user.type(field, '9,5{Enter}');
    expect(machine.inputsOf('rounds.setTemperature')).toEqual([
      { roundId: 12, boardId: 101, woodTempC: 9.5 },
    ]);
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(document.activeElement).toBe(screen.getByLabelText('Reading on the meter, %'));
  });

  test('a meter that sends the wood temperature offers it, and it is saved once it is taken', async () => {
    const { machine, user } = await open(aRound(), { 'rounds.setTemperature': () => ({}) });
    meterIsLive(machine, aLiveValue({ tempC: 9.5 }));
    await user.keyboard('t');
    const dialog = screen.getByRole('dialog', { name: 'Wood temperature of WAL-01' });
    await user.click(within(dialog).getByRole('button', { name: /from the meter$/ }));
    await user.click(within(dialog).getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('rounds.setTemperature')).toEqual([
      { roundId: 12, boardId: 101, woodTempC: 9.5 },
    ]);
  });

  test('what a probe measures is shown with its name, unless a person gave this board its own', async () => {
    const { user } = await open(aRound(), { 'sensors.probe': () => ({ name: 'Spike', tempC: 10 }) });
    const button = await screen.findByRole('button', { name: /^Wood 10\D.*, Spike/ });
    await user.click(button);
    const dialog = screen.getByRole('dialog', { name: 'Wood temperature of WAL-01' });
    expect(dialog.textContent).toMatch(/Readings take 10\D+ from Spike, unless this board has its own\./);
    cleanup();
    await open(aRound([aBoard(1, { ownTemp: true, woodTempC: 3 })]), {
      'sensors.probe': () => ({ name: 'Spike', tempC: 10 }),
    });
    expect(await screen.findByRole('button', { name: /^Wood 3\D.*, this board/ })).toBeTruthy();
  });

  test('G goes to the board whose ID is typed or whose label is scanned; one that is not there changes nothing', async () => {
    const { machine, user } = await open(aRound([aBoard(1), aBoard(2)]), { 'rounds.aim': () => ({}) });
    await user.keyboard('g');
    const dialog = screen.getByRole('dialog', { name: 'Go to a board' });
    const field = within(dialog).getByRole('textbox', { name: 'Board ID' });
    await user.type(field, 'OAK-99{Enter}');
    expect(within(dialog).getByText(/has no board OAK-99\. Check the ID\./)).toBeTruthy();
    await expectNoBarriers();
    expect(machine.inputsOf('rounds.aim')).toEqual([]);
    await user.clear(field);
    await user.type(field, ' wal-02 {Enter}');
    expect(machine.inputsOf('rounds.aim')).toEqual([{ roundId: 12, boardId: 102, spotIndex: null }]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('what is typed in a dialog is no shortcut of the round behind it', async () => {
    const { machine, user } = await open(aRound([read(aBoard(1), [aReading(1)]), aBoard(2)]));
    await user.click(screen.getByRole('button', { name: /^Exclude shell reading/ }));
    await user.type(screen.getByRole('textbox', { name: 'Another reason' }), 'tt?');
    expect(screen.getAllByRole('dialog')).toHaveLength(1);
    expect(machine.inputsOf('rounds.undo')).toEqual([]);
  });

  test('? lists the keys from the top, ready to be closed', async () => {
    const { user } = await open();
    const focus = vi.spyOn(HTMLElement.prototype, 'focus');
    await user.keyboard('?');
    const close = screen.getByRole('button', { name: 'Close' });
    expect(document.activeElement).toBe(close);
    // Its button is at the end: what scrolls to it hides the title.
    const focused = focus.mock.calls.filter((_, call) => focus.mock.contexts[call] === close);
    expect(focused).toEqual([[{ preventScroll: true }]]);
    focus.mockRestore();
    expect(screen.getByRole('dialog').textContent).toContain('Save the live reading now, settled or not');
    await expectNoBarriers();
  });

  test('Enter on the last board asks whether to finish; with boards unread, another Enter never does', async () => {
    const done = read(aBoard(2), allSpots(), 'ready');
    const round = { ...aRound([aBoard(1), done]), aim: { boardId: 102, spotIndex: null }, probed: done };
    let finished = false;
    const { machine, user } = await open(round, {
      'rounds.get': () => (finished ? { ...round, ...isFinished } : round),
      'rounds.finish': () => {
        finished = true;
        return round.summary;
      },
    });
    await user.keyboard('{Enter}');
    expect(screen.getByRole('dialog').textContent).toContain('1 board has no readings.');
    await user.keyboard('{Enter}{Enter}');
    expect(screen.getByRole('dialog')).toBeTruthy();
    expect(machine.inputsOf('rounds.finish')).toEqual([]);
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('dialog')).toBeNull();
    await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('textbox')));
    await user.keyboard('{Enter}');
    await user.click(screen.getByRole('button', { name: 'Finish the round' }));
    expect(machine.inputsOf('rounds.finish')).toEqual([{ roundId: 12 }]);
    expect(await screen.findByRole('heading', { name: 'Board by board' })).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1 }));
  });
});

test('with every spot read, Enter finishes the round; pressed twice at once, it only asks', async () => {
  const done = read(aBoard(1), allSpots(), 'ready');
  const round = {
    ...aRound([done]),
    aim: { boardId: 101, spotIndex: null },
    probed: done,
    summary: { ...aRound([done]).summary, boards: 1, probed: 1 },
  };
  let finished = false;
  const { machine, user } = await open(round, {
    'rounds.get': () => (finished ? { ...round, ...isFinished } : round),
    'rounds.finish': () => {
      finished = true;
      return round.summary;
    },
  });
  const clock = vi.spyOn(performance, 'now');
  clock.mockReturnValue(5000);
  await user.keyboard('{Enter}{Enter}');
  expect(screen.getByRole('dialog', { name: 'Finish the round?' })).toBeTruthy();
  expect(machine.inputsOf('rounds.finish')).toEqual([]);
  clock.mockReturnValue(5500);
  await user.keyboard('{Enter}');
  clock.mockRestore();
  expect(machine.inputsOf('rounds.finish')).toEqual([{ roundId: 12 }]);
});

describe('a finished round', () => {
  const finished = (
    boards = [read(aBoard(1), [aReading(1)], 'ready'), read(aBoard(2), [aReading(2)]), aBoard(3)],
  ) => ({
    ...aRound(boards),
    ...isFinished,
    summary: {
      boards: boards.length,
      probed: 2,
      calls: { ready: 1, 'bring-in': 0, 'keep-drying': 1, 'too-dry': 0, 'probe-again': 0 },
      message: message('round-summary.calls', {
        counts: [
          message('round-summary.ready', { ready: 1, boards: 3 }),
          message('round-summary.keep-drying', { boards: 1 }),
          message('round-summary.not-probed', { boards: 1 }),
        ],
      }),
    },
  });

  test('counts the calls, gives every board its call with the reason, and leads to the labels', async () => {
    await open(finished());
    expect(screen.getByText(/1 of 3 ready, 1 to keep drying, and 1 not probed\./)).toBeTruthy();
    const rows = screen.getAllByRole('row').map((row) => row.textContent);
    expect(rows[1]).toMatch(/WAL-01.*12.6.*Ready.*Too wet/);
    expect(rows[3]).toMatch(/WAL-03.*Not probed/);
    expect(screen.getByRole('link', { name: 'Labels for both probed boards' }).getAttribute('href')).toBe(
      '#/labels?boards=101,102',
    );
    expect(screen.getByRole('link', { name: 'Labels for the ready board' }).getAttribute('href')).toBe(
      '#/labels?boards=101',
    );
    await expectNoBarriers();
  });

  test('of an earlier day offers the next page of the notebook', async () => {
    await open({ ...finished(), isDated: true });
    expect(screen.getByRole('link', { name: 'Type the next page' }).getAttribute('href')).toMatch(
      /^#\/past-round\/\d+$/,
    );
  });

  test('says of a board of which only the shell was read that its core was not', async () => {
    const board = read(aBoard(1), [aReading(1)], 'ready');
    const { user } = await open(finished([{ ...board, finding: { ...board.finding!, corePct: null } }]));
    await user.click(screen.getByLabelText('Shell / core'));
    expect(screen.getAllByRole('row')[1]!.textContent).toContain('12.1% / not read');
  });

  test('over a thousand boards draws the rows in sight, and says which of how many they are', async () => {
    const boards = Array.from({ length: 1000 }, (_, n) => read(aBoard(n), [aReading(n + 1)]));
    await open(finished(boards));
    const table = screen.getByRole('table');
    expect(table.getAttribute('aria-rowcount')).toBe('1001');
    const rows = [...table.querySelectorAll('tr[aria-rowindex]')];
    expect(rows.length).toBeLessThan(60);
    expect(rows.slice(0, 3).map((row) => row.getAttribute('aria-rowindex'))).toEqual(['1', '2', '3']);
    expect(screen.getByRole('link', { name: 'Labels for all 1,000 probed boards' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('shows what is found of it afterwards, when its boards were held against each other', async () => {
    const boards = [read(aBoard(1), [aReading(1)], 'ready'), aBoard(2)];
    const { machine } = await open(finished(boards), {
      'rounds.open': () => finished(boards),
    });
    boards[0] = read(aBoard(1), [aReading(1)], 'probe-again');
    await act(async () => machine.tell('changed', { yard: null, topics: ['boards', 'round:12'] }));
    expect(screen.getAllByRole('row')[1]?.textContent).toMatch(/WAL-01.*Probe again/);
  });

  test('in which nothing was probed says so', async () => {
    await open(finished([aBoard(1), aBoard(2)]));
    expect(screen.getByText(/No board was probed in this round/)).toBeTruthy();
    await expectNoBarriers();
  });
});
