// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import * as fc from 'fast-check';
import { afterEach, expect, test, vi } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { useDrafts } from '../../../../renderer/stores/drafts.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../../../shared-core/contract/requests.ts';
import type { Aim, ProbedBoard } from '../../../../shared-core/contract/round.ts';
import { openSpot } from '../../../../shared-core/probing/readings/open-spot.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';

/** What comes of a value that is sent: it is saved, saved and not used, or not saved as the disk is full. */
type Outcome = 'saved' | 'not-used' | 'failed';

/** A machine that does what it is asked in the order asked, but only when the test lets it. */
function aSlowMachine(outcomes: readonly Outcome[]) {
  const waiting: (() => void)[] = [];
  const readings: JudgedReading[] = [];
  let aim: Aim = { boardId: 101, spotIndex: 0 };
  const boardNow = (boardId: number): ProbedBoard => {
    const of = readings.filter((each) => each.boardId === boardId);
    const board = aBoard(boardId - 100);
    return of.length === 0 ? board : read(board, of);
  };
  const openFrom = (boardId: number, from: number) =>
    openSpot(
      aBoard(1),
      readings.filter((each) => each.boardId === boardId),
      from,
    );
  function tell(boardId: number, savedReadingId: number | null) {
    machine.tell('round.changed', {
      roundId: 12,
      aim,
      board: boardNow(boardId),
      summary: aRound().summary,
      savedReadingId,
    });
  }
  function save(
    { boardId, spotIndex, raw, newestReadingId }: RequestInput<'rounds.saveTyped'>,
    outcome: Outcome,
  ) {
    if (outcome === 'failed') throw new Refusal(message('refusal.machine-stopped'));
    const here = readings.filter((each) => each.boardId === boardId && each.spotIndex === spotIndex);
    if ((here.at(-1)?.id ?? null) !== newestReadingId) {
      throw new Refusal(message('refusal.spot-changed', { boardCode: `WAL-0${boardId - 100}` }));
    }
    const counts = outcome === 'saved';
    const id = readings.length + 1;
    readings.push(aReading(id, { boardId, spotIndex, raw, counts }));
    const isThere = aim.boardId === boardId && aim.spotIndex === spotIndex;
    if (isThere) aim = { boardId, spotIndex: counts ? openFrom(boardId, spotIndex + 1) : spotIndex };
    tell(boardId, id);
    return { roundId: 12, boardId, stackId: 4 };
  }
  const inTurn = <T,>(work: () => T): Promise<T> =>
    new Promise((resolve, reject) => {
      waiting.push(() => {
        try {
          resolve(work());
        } catch (error) {
          reject(error);
        }
      });
    });
  let sent = 0;
  const machine = playMachine({
    'rounds.open': () => aRound(),
    'rounds.aim': ({ boardId, spotIndex }) =>
      inTurn(() => {
        aim = { boardId, spotIndex: spotIndex ?? openFrom(boardId, 0) };
        tell(boardId, null);
        return {};
      }),
    'rounds.saveTyped': (input) => {
      const outcome = outcomes[sent++] ?? 'saved';
      return inTurn(() => save(input, outcome));
    },
  });
  return {
    readings,
    isBusy: () => waiting.length > 0,
    answer: () => act(async () => waiting.shift()?.()),
  };
}

let timeMs = 0;
const field = () => screen.getByLabelText<HTMLInputElement>('Reading on the meter, %');
/** A key at the pace of a quick hand, in no time. */
function press(key: string) {
  timeMs += 60;
  const wasHandled = !fireEvent.keyDown(document.activeElement ?? document.body, { key });
  if (!wasHandled && key !== 'Enter') {
    fireEvent.change(field(), { target: { value: field().value + key } });
  }
}

/** Types without a look at the screen: four numbers a board, each with its Enter, and one Enter more for the next board. */
async function typeBlind(
  numbers: readonly string[],
  answersAfterKey: readonly number[],
  outcomes: readonly Outcome[],
) {
  forgetEverything();
  vi.spyOn(Event.prototype, 'timeStamp', 'get').mockImplementation(() => timeMs);
  const machine = aSlowMachine(outcomes);
  render(<RoundScreen id={12} />);
  await screen.findByRole('heading', { level: 1 });
  const keys = numbers.flatMap((number, index) => [
    ...number,
    'Enter',
    ...(index % 4 === 3 && index < numbers.length - 1 ? ['Enter'] : []),
  ]);
  for (const [index, key] of keys.entries()) {
    press(key);
    for (let answers = answersAfterKey[index] ?? 0; answers > 0; answers--) await machine.answer();
  }
  do await machine.answer();
  while (machine.isBusy());
  const unsaved = useDrafts.getState().drafts.map(({ text }) => text);
  cleanup();
  vi.restoreAllMocks();
  return { saved: machine.readings, unsaved };
}

afterEach(cleanup);

const NUMBERS = ['11.9', '12.6', '12.1', '12.8', '15.2', '13.1', '14.3', '13.7', '10.4', '16.5'];
const timings = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 60, maxLength: 60 });

test('however late the machine answers, every number is saved whole at its own spot', async () => {
  await fc.assert(
    fc.asyncProperty(timings, async (answersAfterKey) => {
      const { saved, unsaved } = await typeBlind(NUMBERS, answersAfterKey, []);
      expect(unsaved).toEqual([]);
      expect(saved.map(({ boardId, spotIndex, raw }) => [boardId, spotIndex, raw])).toEqual(
        NUMBERS.map((number, index) => [101 + Math.floor(index / 4), index % 4, Number(number)]),
      );
    }),
    { numRuns: 8 },
  );
}, 120_000);

test('where values are not used or not saved, every number is still whole, and there once', async () => {
  const outcomes = fc.array(fc.constantFrom<Outcome>('saved', 'saved', 'saved', 'not-used', 'failed'), {
    minLength: 12,
    maxLength: 12,
  });
  await fc.assert(
    fc.asyncProperty(timings, outcomes, async (answersAfterKey, outcome) => {
      const { saved, unsaved } = await typeBlind(NUMBERS, answersAfterKey, outcome);
      expect([...saved.map(({ raw }) => String(raw)), ...unsaved].toSorted()).toEqual(NUMBERS.toSorted());
    }),
    { numRuns: 8 },
  );
}, 120_000);
