// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, within } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { followMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import type { MeterState } from '../../../../shared-core/contract/meter.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aLiveMeter, aLiveValue } from '../shell/a-meter.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';

const owner = { roundId: 12, boardId: 101, stackId: 3 };

const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;

/** A round on screen with a live meter. */
async function open(heldBy: MeterState['heldBy'] = 'this-window') {
  const machine = playMachine({
    'rounds.open': () => aRound(),
    'rounds.get': () => aRound(),
    'rounds.aim': () => ({}),
    'rounds.saveLive': () => owner,
    'rounds.saveTyped': () => owner,
    'meter.hold': () => aLiveMeter(),
  });
  render(<RoundScreen id={12} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  act(() => {
    followMeter();
    showMeter(aLiveMeter({ heldBy }));
    if (heldBy === 'this-window') machine.tell('meter.live', aLiveValue());
  });
  return { machine, user: byHand() };
}

/** The meter saved 11.4% by itself at the first spot of the first board, and the pins are still in. */
function meterSaves(machine: ReturnType<typeof playMachine>) {
  act(() => {
    machine.tell('meter.insertion', {
      reading: { readingId: 7, roundId: 12, boardId: 101, spotIndex: 0 },
      wasAway: false,
      isMissed: false,
      beganOn: null,
    });
    machine.tell('round.changed', {
      roundId: 12,
      aim: { boardId: 101, spotIndex: 1 },
      board: read(aBoard(1), [aReading(7, { how: 'settled', settled: true, meterId: 1 })]),
      summary: aRound().summary,
      savedReadingId: 7,
    });
  });
}
const inReading = () => within(screen.getByRole('region', { name: 'Reading' }));
const PINS_STILL_IN =
  'The pins are still in, and their reading of WAL-01 is saved. Pull the pins for the next spot.';

beforeEach(forgetEverything);
afterEach(cleanup);

test('after the meter was away with the pins in, it says what to do, until they are out', async () => {
  const { machine } = await open();
  meterSaves(machine);
  act(() => {
    machine.tell('meter.insertion', { reading: null, wasAway: true, isMissed: false, beganOn: null });
    showMeter(aLiveMeter({ phase: 'reconnecting' }));
    showMeter(aLiveMeter());
    machine.tell('meter.live', aLiveValue());
  });
  const said = 'The connection or the setup changed. Pull the pins once, or press Space to save.';
  expect(inReading().getByText(said)).toBeTruthy();
  act(() => {
    machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: null });
    machine.tell('meter.live', aLiveValue());
  });
  expect(inReading().queryByText(said)).toBeNull();
});

test('a value that settled while the round was not open says that it is not saved', async () => {
  const { machine } = await open();
  act(() =>
    machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: true, beganOn: null }),
  );
  expect(inReading().getByText('Not saved: the round was not open then. Press Space to save.')).toBeTruthy();
});

test('Space is refused where the pins went in on another board, and pressed again it saves', async () => {
  const { machine, user } = await open();
  act(() =>
    machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: 102 }),
  );
  const clock = vi.spyOn(performance, 'now').mockReturnValue(1000);
  await user.keyboard(' ');
  clock.mockReturnValue(1100);
  await user.keyboard(' ');
  clock.mockReturnValue(3000);
  await user.keyboard(' ');
  clock.mockRestore();
  await vi.waitFor(() =>
    expect(
      machine.inputsOf('rounds.saveLive').map((input) => Object.hasOwn(input as object, 'isOtherPush')),
    ).toEqual([false, true]),
  );
});

test('a meter that went silent says for how long in place of “Settled”, until the next value', async () => {
  const { machine } = await open();
  act(() => machine.tell('meter.live', aLiveValue({ silentS: 3 })));
  expect(await inReading().findByText('No new value for 3 s.')).toBeTruthy();
  expect(inReading().queryByText('Settled')).toBeNull();
  act(() => machine.tell('meter.live', aLiveValue()));
  expect(await inReading().findByText('Settled')).toBeTruthy();
  expect(inReading().queryByText(/No new value/)).toBeNull();
});

describe('after the meter was away with pins in that are saved', () => {
  const MAYBE = 'This may be the reading already saved on WAL-01. Pull the pins for the next spot.';
  const reading = { readingId: 7, roundId: 12, boardId: 101, spotIndex: 0 };

  async function comeBack() {
    const opened = await open();
    meterSaves(opened.machine);
    act(() => {
      opened.machine.tell('meter.insertion', { reading, wasAway: true, isMissed: false, beganOn: null });
      showMeter(aLiveMeter({ phase: 'reconnecting' }));
      showMeter(aLiveMeter());
      opened.machine.tell('meter.live', aLiveValue());
    });
    return opened;
  }

  test('Space asks; a bounce saves nothing, and pressed again it saves at the spot aimed at', async () => {
    const { machine, user } = await comeBack();
    const saves = () => machine.inputsOf('rounds.saveLive');
    const at = performance.now();
    const clock = vi.spyOn(performance, 'now').mockReturnValue(at);
    await user.keyboard(' ');
    expect(inReading().getByText(MAYBE)).toBeTruthy();
    expect(screen.getByText('Same pins as on WAL-01? Pull them, or press Space.')).toBeTruthy();
    expect(inReading().getByRole('button', { name: /Save here too/ })).toBeTruthy();
    await expectNoBarriers();
    clock.mockReturnValue(at + 100);
    await user.keyboard(' ');
    expect(saves()).toEqual([]);
    clock.mockReturnValue(at + 2000);
    await user.keyboard(' ');
    clock.mockRestore();
    await vi.waitFor(() =>
      expect(saves()).toEqual([
        { roundId: 12, boardId: 101, spotIndex: 1, newestReadingId: null, isOtherPush: true },
      ]),
    );
  });

  test('the button on the meter asks, and does not answer', async () => {
    const { machine } = await comeBack();
    for (let n = 0; n < 3; n++) act(() => machine.tell('meter.pressed', {}));
    expect(inReading().getByText(MAYBE)).toBeTruthy();
    expect(machine.inputsOf('rounds.saveLive')).toEqual([]);
  });

  test('R replaces their reading', async () => {
    const { machine, user } = await comeBack();
    await user.keyboard(' r');
    await vi.waitFor(() => expect(machine.inputsOf('rounds.saveLive')).toMatchObject([{ replaces: 7 }]));
  });
});

describe('Space with the pins still in', () => {
  test('saves nothing at the next spot, says so, and R replaces the reading at its own', async () => {
    const { machine, user } = await open();
    meterSaves(machine);
    await user.keyboard(' ');
    expect(inReading().getByText(PINS_STILL_IN)).toBeTruthy();
    expect(machine.inputsOf('rounds.saveLive')).toEqual([]);
    await expectNoBarriers();
    await user.keyboard('r');
    expect(machine.inputsOf('rounds.saveLive')).toEqual([
      { roundId: 12, boardId: 101, spotIndex: 0, newestReadingId: 7, replaces: 7 },
    ]);
    expect(inReading().queryByText(PINS_STILL_IN)).toBeNull();
  });

  test('the button does the same, and the keys are the round’s again', async () => {
    const { machine, user } = await open();
    meterSaves(machine);
    await user.keyboard(' ');
    await user.click(screen.getByRole('button', { name: 'Replace' }));
    expect(machine.inputsOf('rounds.saveLive')).toHaveLength(1);
    expect(document.activeElement).toBe(screen.getByRole('region', { name: 'Round' }));
    await user.keyboard('{PageDown}');
    expect(machine.inputsOf('rounds.aim')).toEqual([{ roundId: 12, boardId: 102, spotIndex: null }]);
  });

  test('once they go in again, Space saves at the next spot', async () => {
    const { machine, user } = await open();
    meterSaves(machine);
    await user.keyboard(' ');
    act(() =>
      machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: null }),
    );
    expect(inReading().queryByText(PINS_STILL_IN)).toBeNull();
    await user.keyboard('r ');
    expect(machine.inputsOf('rounds.saveLive')).toEqual([
      { roundId: 12, boardId: 101, spotIndex: 1, newestReadingId: null },
    ]);
  });
});

describe('the button on the meter', () => {
  const press = (machine: ReturnType<typeof playMachine>) => act(() => machine.tell('meter.pressed', {}));

  test('saves the value at the spot aimed at, as Space does', async () => {
    const { machine } = await open();
    press(machine);
    await vi.waitFor(() =>
      expect(machine.inputsOf('rounds.saveLive')).toEqual([
        { roundId: 12, boardId: 101, spotIndex: 0, newestReadingId: null },
      ]),
    );
  });

  test('with the pins still in, saves nothing at the next spot and says so', async () => {
    const { machine } = await open();
    meterSaves(machine);
    press(machine);
    expect(inReading().getByText(PINS_STILL_IN)).toBeTruthy();
    expect(machine.inputsOf('rounds.saveLive')).toEqual([]);
  });
});

describe('digits typed while the meter saves its own value', () => {
  const FILLED = 'The meter saved 11.4% at this spot while you typed.';
  const typed = () => (screen.getByRole('textbox') as HTMLInputElement).value;

  async function typeMeanwhile() {
    const opened = await open();
    await opened.user.keyboard('12');
    meterSaves(opened.machine);
    await opened.user.keyboard('.6');
    return opened;
  }

  test('do not land one spot on: the window says so, and Enter saves nothing', async () => {
    const { machine, user } = await typeMeanwhile();
    expect(inReading().getByText(FILLED)).toBeTruthy();
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([]);
    expect(typed()).toBe('12.6');
    expect(document.activeElement).toBe(screen.getByRole('textbox'));
    await expectNoBarriers();
  });

  test('replace it with R', async () => {
    const { machine, user } = await typeMeanwhile();
    await user.keyboard('r');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { roundId: 12, boardId: 101, spotIndex: 0, newestReadingId: 7, replaces: 7, raw: 12.6, unit: 'pct' },
    ]);
    expect(screen.queryByRole('textbox')).toBeNull();
  });

  test('are saved at the next spot with N', async () => {
    const { machine, user } = await typeMeanwhile();
    await user.keyboard('n');
    expect(machine.inputsOf('rounds.saveTyped')).toEqual([
      { roundId: 12, boardId: 101, spotIndex: 1, newestReadingId: null, raw: 12.6, unit: 'pct' },
    ]);
  });
});

describe('two values typed one right after the other', () => {
  test('go to two spots, faster than the machine answers', async () => {
    const { machine, user } = await open();
    const answers: (() => void)[] = [];
    machine.answers['rounds.saveTyped'] = () => new Promise((answer) => answers.push(() => answer(owner)));
    await user.keyboard('12{Enter}12{Enter}');
    expect(
      machine.inputsOf('rounds.saveTyped').map((input) => (input as { spotIndex: number }).spotIndex),
    ).toEqual([0, 1]);
    await act(async () => {
      for (const answer of answers) answer();
    });
  });
});

describe('a window that does not have the meter', () => {
  test('says who has it, lets values be typed, and takes it by a press', async () => {
    const { machine, user } = await open('another-window');
    expect(screen.getByText('Another window is using the meter.')).toBeTruthy();
    await expectNoBarriers();
    await user.keyboard('12.4{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toHaveLength(1);
    await user.click(screen.getByRole('button', { name: 'Use it here' }));
    expect(machine.inputsOf('meter.hold')).toEqual([{}]);
    expect(screen.queryByText('Another window is using the meter.')).toBeNull();
    expect(screen.getByRole('button', { name: /^Save now/ })).toBeTruthy();
  });

  test('says where no window has it', async () => {
    await open('nobody');
    expect(screen.getByText('No window is using the meter.')).toBeTruthy();
  });

  test('shows why its aim moved on, and the round as it is now', async () => {
    const { machine } = await open();
    const why = message('round.board-left', { boardCode: 'WAL-01', nextCode: 'WAL-02' });
    machine.answers['rounds.get'] = () => aRound([aBoard(2), aBoard(3)]);
    await act(async () => machine.tell('round.outdated', { roundId: 12, why }));
    expect(screen.getByRole('alert').textContent).toContain(
      'WAL-01 is no longer in this stack. Next is WAL-02.',
    );
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board WAL-02');
  });
});

describe('a meter that is not as it was', () => {
  const now = aLiveMeter();
  const before = { ...now.description!, value: { ...now.description!.value, exponent: -2 } };

  test('is confirmed in the round by one press, and readings can be typed meanwhile', async () => {
    const { machine, user } = await open();
    machine.answers['meter.describe'] = () => now;
    act(() => showMeter({ ...now, toConfirm: { what: 'value', before } }));
    expect(inReading().getByText(/What does its display show\?/)).toBeTruthy();
    await expectNoBarriers();
    await user.keyboard('12.1{Enter}');
    expect(machine.inputsOf('rounds.saveTyped')).toMatchObject([{ raw: 12.1 }]);
    await user.click(inReading().getByRole('button', { name: '1.26%, as before' }));
    expect(machine.inputsOf('meter.describe')).toEqual([before]);
    expect(inReading().queryByText(/What does its display show\?/)).toBeNull();
  });
});
