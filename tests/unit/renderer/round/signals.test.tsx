// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { setLink } from '../../../../renderer/stores/link.ts';
import { followMeter, showMeter } from '../../../../renderer/stores/meter.ts';
import { useRound } from '../../../../renderer/stores/round.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import type { ProbedBoard } from '../../../../shared-core/contract/round.ts';
import { type Settings, usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aLiveMeter, aLiveValue } from '../shell/a-meter.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';
import { fakeAudio, fakeVoice } from './fake-audio.ts';

const InMain = ({ children }: { children: ReactNode }) => <main>{children}</main>;
const here = { lang: 'en-US', localService: true };
const questionable: Partial<JudgedReading> = {
  suspicions: [
    {
      rule: 'jump-since-last-round',
      severity: 'questionable',
      why: message('suspicion.jump.wetter', { depth: 'core', beforePct: 8, mcPct: 12.1, days: 3 }),
      whatToDo: message('suspicion.jump.do'),
    },
  ],
};

async function open({ settings = {}, boards = [aBoard(1), aBoard(2)], voices = [here] } = {}) {
  const audio = fakeAudio();
  const voice = fakeVoice(voices);
  useSettings.setState({
    settings: { ...usualSettings, units: 'metric', ...(settings as Partial<Settings>) },
  });
  const machine = playMachine({ 'rounds.open': () => aRound(boards), 'rounds.aim': () => ({}) });
  act(() => setLink('open'));
  render(<RoundScreen id={12} />, { wrapper: InMain });
  await screen.findByRole('heading', { level: 1 });
  const tell = (board: ProbedBoard, spotIndex: number | null, savedReadingId: number | null) =>
    act(() =>
      machine.tell('round.changed', {
        roundId: 12,
        aim: { boardId: board.boardId, spotIndex },
        board,
        summary: aRound().summary,
        savedReadingId,
      }),
    );
  return { machine, tell, ...audio, ...voice };
}

/** The first board with readings at its first spots, the last of them like `last`. */
const readTo = (spots: number, last: Partial<JudgedReading> = {}) =>
  read(
    aBoard(1),
    Array.from({ length: spots }, (_, spotIndex) =>
      aReading(spotIndex + 1, { spotIndex, ...(spotIndex === spots - 1 ? last : {}) }),
    ),
  );

beforeEach(forgetEverything);
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

describe('A round sounds', () => {
  test('when a reading is saved, when one is questionable, and when the board is done', async () => {
    const { tell, heard } = await open();
    tell(readTo(1), 1, 1);
    expect(heard()).toEqual(['saved']);
    tell(readTo(2, questionable), 2, 2);
    expect(heard()).toEqual(['questionable']);
    tell(readTo(3), 3, 3);
    tell(readTo(4), null, 4);
    expect(heard()).toEqual(['saved', 'board-done']);
  });

  test('of a board that is done no second time', async () => {
    const { tell, heard } = await open();
    tell(readTo(4), null, 4);
    heard();
    const again = [...readTo(4).assessment!.readings, aReading(5, { spotIndex: 3 })];
    tell(read(aBoard(1), again), null, 5);
    expect(heard()).toEqual(['saved']);
  });

  test('otherwise where all boards are done', async () => {
    const done = { ...readTo(4), boardId: 102, code: 'WAL-02' };
    const { tell, heard } = await open({ boards: [aBoard(1), done] });
    tell(readTo(4), null, 4);
    expect(heard()).toEqual(['round-done']);
  });

  test('again where a reading is questionable only later, and not where another spot is chosen', async () => {
    const { tell, heard } = await open();
    tell(readTo(1), 1, 1);
    heard();
    tell(readTo(1), 2, null);
    expect(heard()).toEqual([]);
    tell(readTo(1, questionable), 2, null);
    expect(heard()).toEqual(['questionable']);
  });

  test('when the pins that are in are saved already, and Space saves nothing', async () => {
    const { machine, heard, said } = await open({ settings: { voice: 'normal' } });
    act(() => {
      followMeter();
      showMeter(aLiveMeter());
      machine.tell('meter.live', aLiveValue());
      const reading = { readingId: 7, roundId: 12, boardId: 101, spotIndex: 0 };
      machine.tell('meter.insertion', { reading, wasAway: false, isMissed: false, beganOn: null });
    });
    heard();
    const user = byHand();
    await user.keyboard(' ');
    expect(heard()).toEqual(['questionable']);
    expect(said().at(-1)).toMatch(/^The pins are still in, and their reading of WAL 01 is saved\./);
    act(() =>
      machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: false, beganOn: null }),
    );
    expect(heard()).toEqual([]);
    act(() => useRound.setState({ trouble: 'Nothing was saved.' }));
    expect(heard()).toEqual(['questionable']);
    act(() =>
      machine.tell('meter.insertion', { reading: null, wasAway: false, isMissed: true, beganOn: null }),
    );
    expect(heard()).toEqual(['questionable']);
  });

  test('when the meter is lost, and when nothing is saved any more', async () => {
    const { machine, heard } = await open();
    act(() => {
      followMeter();
      showMeter(aLiveMeter());
    });
    act(() => machine.tell('meter.state', aLiveMeter({ phase: 'reconnecting' })));
    expect(heard()).toEqual(['link-lost']);
    act(() => machine.tell('meter.state', aLiveMeter({ phase: 'failed' })));
    expect(heard()).toEqual([]);
    act(() => setLink('away'));
    expect(heard()).toEqual(['link-lost']);
  });

  test('when the meter is back, and when readings are saved again', async () => {
    const { machine, heard } = await open();
    act(() => {
      followMeter();
      showMeter(aLiveMeter());
    });
    expect(heard()).toEqual([]);
    act(() => machine.tell('meter.state', aLiveMeter({ phase: 'reconnecting' })));
    heard();
    act(() => machine.tell('meter.state', aLiveMeter()));
    expect(heard()).toEqual(['link-back']);
    act(() => setLink('away'));
    heard();
    act(() => setLink('open'));
    expect(heard()).toEqual(['link-back']);
  });

  test('no sound where sounds are off', async () => {
    const { tell, heard } = await open({ settings: { sound: false } });
    tell(readTo(1), 1, 1);
    expect(heard()).toEqual([]);
  });
});

describe('A voice', () => {
  const speaking = { settings: { voice: 'normal' as const } };

  test('is silent unless it was asked for, and says nothing over a voice elsewhere', async () => {
    const silent = await open();
    silent.tell(readTo(1), 1, 1);
    expect(silent.said()).toEqual([]);
    cleanup();
    forgetEverything();
    const elsewhere = await open({ ...speaking, voices: [{ lang: 'en-US', localService: false }] });
    elsewhere.tell(readTo(1), 1, 1);
    expect(elsewhere.said()).toEqual([]);
  });

  test('says the value and the next spot; the next value cuts it short', async () => {
    const { tell, said } = await open(speaking);
    tell(readTo(1), 1, 1);
    expect(said()).toEqual(['12.1 percent. Next: Core, 60 centimeters from the left end.']);
    tell(readTo(2), 2, 2);
    expect(said()).toEqual(['12.1 percent. Next: Shell, 60 centimeters from the right end.']);
  });

  test('says that a board is done and which one is next, and then its first spot', async () => {
    const { tell, said } = await open(speaking);
    tell(readTo(4), null, 4);
    expect(said()).toEqual(['12.1 percent. Board done: Keep drying. Next board: WAL 02.']);
    await byHand().keyboard('{Enter}');
    expect(said().at(-1)).toBe('WAL 02. Shell, 60 centimeters from the left end.');
  });

  test('says why the next board does not come by itself', async () => {
    const { tell, said } = await open({ settings: { voice: 'normal' as const, nextBoardAfterS: 0 } });
    const readings = [0, 1, 2, 3].map((spotIndex) =>
      aReading(spotIndex + 1, { spotIndex, ...(spotIndex === 1 ? questionable : {}) }),
    );
    tell(read(aBoard(1), readings), null, 4);
    expect(said()).toEqual(['12.1 percent. Board done: Keep drying. Waiting, as a reading is questionable.']);
  });

  test('says that the meter is back', async () => {
    const { said } = await open(speaking);
    act(() => {
      followMeter();
      showMeter(aLiveMeter());
      showMeter(aLiveMeter({ phase: 'reconnecting' }));
    });
    expect(said()).toEqual(['Connection lost.']);
    act(() => showMeter(aLiveMeter()));
    expect(said().at(-1)).toBe('Connected again.');
  });

  test('stops when pins go in or a number is typed', async () => {
    const { machine, tell, said } = await open(speaking);
    tell(readTo(1), 1, 1);
    await byHand().keyboard('1');
    expect(said()).toEqual([]);
    await byHand().keyboard('{Backspace}');
    act(() => {
      followMeter();
      showMeter(aLiveMeter());
    });
    tell(readTo(2), 2, 2);
    expect(said()).toHaveLength(1);
    act(() => machine.tell('meter.live', aLiveValue({ phase: 'drifting' })));
    expect(said()).toEqual([]);
  });
});
