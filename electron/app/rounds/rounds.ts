import { Refusal } from '../../../shared-core/contract/answer.ts';
import {
  type Aim,
  firstOpenSpot,
  type ProbedBoard,
  type RoundBoard,
  type RoundState,
  type RoundSummary,
} from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import { faultMessage } from '../fault-message.ts';
import type { Judging } from '../judging/judging.ts';
import type { LiveValue, MeterDesk } from '../meter/meter-desk.ts';
import { createRoundView, summaryOf } from './round-view.ts';

/** The round that the meter's values go to. */
interface ActiveRound {
  roundId: number;
  boards: RoundBoard[];
  aim: Aim;
  /** The board aimed at. */
  probed: ProbedBoard;
  /** A value was kept since the pins last went in: the next one needs a new insertion. */
  taken: boolean;
}

/**
 * Rounds: which spot of which board the next value belongs to, and keeping it. A reading is committed before the
 * window hears of it.
 */
export function roundUseCases(context: AppContext, judging: Judging, meter: MeterDesk) {
  const view = createRoundView(context, judging);
  let active: ActiveRound | null = null;

  meter.attach(
    (live) => {
      if (active === null) return;
      if (live.inserted) active.taken = false;
      const wantsIt =
        live.settledNow && !active.taken && active.aim.spotIndex !== null && meter.savesWhenSettled();
      if (!wantsIt) return;
      try {
        saveLive(active, live, 'settled');
      } catch (error) {
        tellNotSaved(active, error);
      }
    },
    (live) => {
      if (active === null || live.value === null) return null;
      const { boardId, woodTempC } = active.probed;
      return judging.correct({ ...live, value: live.value, boardId, woodTempC });
    },
  );

  judging.whenCompared((roundId, boardId, assessment) => {
    if (active?.roundId === roundId) tell(active, show(active, boardId, assessment), null);
  });

  function activate(roundId: number): RoundState {
    const state = view.state(roundId);
    if (state.finishedAt !== null) return { ...state, aim: { boardIndex: 0, spotIndex: null }, probed: null };
    const saved = active?.roundId === roundId ? active.aim : null;
    const boardIndex = saved?.boardIndex ?? firstOpen(state.boards);
    const probed = view.board(roundId, orRefuse(state.boards[boardIndex], 'board').boardId);
    const aim = saved ?? { boardIndex, spotIndex: firstOpenSpot(probed) };
    const boards = withBoard(state.boards, probed);
    active = { roundId, boards, aim, probed, taken: active?.taken ?? false };
    if (saved === null) aimMeter(active);
    return { ...state, boards, summary: summaryOf(boards), aim, probed };
  }

  /** The round a call speaks of, made the active one if it was not; a finished one takes no more readings. */
  function openRound(roundId: number): ActiveRound {
    if (active?.roundId === roundId) return active;
    activate(roundId);
    if (active?.roundId !== roundId) {
      throw new Refusal(message('refusal.round-finished'));
    }
    return active;
  }

  function aimMeter(round: ActiveRound): void {
    const { probed, aim } = round;
    const spot = aim.spotIndex === null ? undefined : planSpots(probed).plan[aim.spotIndex]?.spot;
    meter.aim(spot === undefined ? null : { boardId: probed.boardId, spot });
  }

  function tell(round: ActiveRound, board: ProbedBoard, savedReadingId: number | null): void {
    context.emit('round.changed', {
      roundId: round.roundId,
      aim: round.aim,
      board,
      summary: summaryOf(round.boards),
      savedReadingId,
    });
  }

  /** Nobody asked for a value that saves itself, so nobody can be answered: an event says that it failed. */
  function tellNotSaved(round: ActiveRound, error: unknown): void {
    const undone = round.taken
      ? { undone: message('refusal.value-not-judged'), again: message('refusal.open-round-again') }
      : { undone: message('refusal.value-not-saved'), again: message('refusal.press-space') };
    const problem = faultMessage(error, undone, context.reportFault);
    context.emit('round.notSaved', { roundId: round.roundId, problem });
  }

  /** Judges a board anew after its readings changed, and shows it. */
  function refresh(round: ActiveRound, boardId: number): ProbedBoard {
    return show(round, boardId, judging.judge(boardId, round.roundId));
  }

  function show(round: ActiveRound, boardId: number, assessment?: Assessment): ProbedBoard {
    const board = view.board(round.roundId, boardId, assessment);
    round.boards = withBoard(round.boards, board);
    if (round.probed.boardId === boardId) round.probed = board;
    return board;
  }

  function save(
    round: ActiveRound,
    value: Pick<Reading, 'raw' | 'unit' | 'how' | 'settled' | 'meterId'>,
  ): void {
    const { boardIndex, spotIndex } = round.aim;
    const board = round.probed;
    if (spotIndex === null) {
      throw new Refusal(message('refusal.board-done', { boardCode: board.code }));
    }
    const { plan } = planSpots(board);
    const { spot } = orRefuse(plan[spotIndex], 'spot');
    const readingId = context.yard().readings.save({
      roundId: round.roundId,
      boardId: board.boardId,
      spotIndex,
      spot,
      woodTempC: board.woodTempC,
      takenAt: context.now(),
      ...value,
    });
    round.taken = true;
    const after = refresh(round, board.boardId);
    const readings = after.assessment?.readings ?? [];
    const refused = readings.some((reading) => reading.id === readingId && !reading.counts);
    // A refused reading leaves its spot to be read again.
    const next = refused ? spotIndex : openSpot(plan.length, readings, spotIndex + 1);
    round.aim = { boardIndex, spotIndex: next };
    aimMeter(round);
    tell(round, after, readingId);
    // A board half read says little of the round; one that is done may say that another is not what it seems.
    if (round.aim.spotIndex === null) judging.compare([round.roundId]);
  }

  function saveLive(round: ActiveRound, live: LiveValue | null, how: 'settled' | 'at-once'): void {
    if (live === null || live.value === null) {
      throw new Refusal(message('refusal.no-value'));
    }
    save(round, {
      raw: live.value,
      unit: live.unit,
      how,
      settled: live.phase === 'settled',
      meterId: live.meterId,
    });
  }

  function exclude(readingId: number, why: Exclusion | null): ProbedBoard {
    const reading = orRefuse(context.yard().readings.get(readingId), 'reading');
    context.yard().amendments.exclude('reading', readingId, why, context.now());
    judging.compare([reading.roundId]);
    if (active?.roundId === reading.roundId) {
      const board = refresh(active, reading.boardId);
      tell(active, board, null);
      return board;
    }
    const assessment = judging.judge(reading.boardId, reading.roundId);
    context.emit('yard.changed', {});
    return view.board(reading.roundId, reading.boardId, assessment);
  }

  return {
    /** Forgets the active round, when another yard is opened. */
    leave: (): void => {
      active = null;
      meter.aim(null);
    },
    requests: {
      /** Takes an unfinished round of the stack up again, or begins one. */
      'rounds.start': ({ stackId, woodTempC }: { stackId: number; woodTempC: number | null }): RoundState => {
        const yard = context.yard();
        const stack = orRefuse(yard.stacks.get(stackId), 'stack');
        if (stack.boards === 0) {
          throw new Refusal(message('refusal.stack-empty', { stackName: stack.name }));
        }
        const roundId = yard.transaction(() => {
          const id = yard.rounds.openOnStack(stackId)?.id ?? yard.rounds.add(stackId, context.now());
          yard.woodTemperatures.give({
            roundId: id,
            boardId: null,
            tempC: woodTempC,
            givenAt: context.now(),
          });
          return id;
        });
        context.emit('yard.changed', {});
        return activate(roundId);
      },

      'rounds.get': ({ roundId }: { roundId: number }): RoundState => activate(roundId),

      'rounds.aim': ({
        roundId,
        boardIndex,
        spotIndex,
      }: { roundId: number } & Aim): Record<string, never> => {
        const round = openRound(roundId);
        const board = orRefuse(round.boards[boardIndex], 'board');
        if (spotIndex !== null) orRefuse(planSpots(board).plan[spotIndex], 'spot');
        if (round.probed.boardId !== board.boardId) round.probed = show(round, board.boardId);
        round.aim = { boardIndex, spotIndex: spotIndex ?? firstOpenSpot(round.probed) };
        aimMeter(round);
        tell(round, round.probed, null);
        return {};
      },

      'rounds.take': ({ roundId }: { roundId: number }): Record<string, never> => {
        saveLive(openRound(roundId), meter.live(), 'at-once');
        return {};
      },

      'rounds.type': ({ roundId, raw }: { roundId: number; raw: number }): Record<string, never> => {
        save(openRound(roundId), { raw, unit: 'pct', how: 'typed', settled: null, meterId: null });
        return {};
      },

      'rounds.undo': ({ roundId }: { roundId: number }): Record<string, never> => {
        const round = openRound(roundId);
        const board = round.probed;
        const last = board.assessment?.readings
          .filter((reading) => reading.excluded === null)
          .toSorted((a, b) => a.id - b.id)
          .at(-1);
        if (last === undefined) {
          throw new Refusal(message('refusal.nothing-to-undo', { boardCode: board.code }));
        }
        round.aim = { ...round.aim, spotIndex: last.spotIndex };
        exclude(last.id, { code: 'undone-in-round' });
        aimMeter(round);
        return {};
      },

      'rounds.setTemperature': ({
        roundId,
        boardId,
        woodTempC,
      }: {
        roundId: number;
        boardId: number | null;
        woodTempC: number | null;
      }): Record<string, never> => {
        const round = openRound(roundId);
        context.yard().woodTemperatures.give({ roundId, boardId, tempC: woodTempC, givenAt: context.now() });
        judging.compare([roundId]);
        if (boardId === null) {
          judging.judgeDue(roundId);
          round.boards = view.state(roundId).boards;
        }
        tell(round, refresh(round, boardId ?? round.probed.boardId), null);
        return {};
      },

      'rounds.finish': ({ roundId }: { roundId: number }): RoundSummary => {
        openRound(roundId);
        context.yard().rounds.finish(roundId, context.now());
        judging.compare([roundId]);
        const { summary } = view.state(roundId);
        active = null;
        meter.aim(null);
        context.emit('yard.changed', {});
        return summary;
      },

      'readings.exclude': ({ readingId, why }: { readingId: number; why: string }): ProbedBoard =>
        exclude(readingId, { text: why }),
      'readings.include': ({ readingId }: { readingId: number }): ProbedBoard => exclude(readingId, null),
    },
  };
}

/** Where a round is taken up: at the first board with a spot still to be read, else at its beginning. */
const firstOpen = (boards: readonly RoundBoard[]): number =>
  Math.max(
    boards.findIndex((board) => firstOpenSpot(board) !== null),
    0,
  );

function withBoard(boards: readonly RoundBoard[], { assessment: _, ...row }: ProbedBoard): RoundBoard[] {
  return boards.map((each) => (each.boardId === row.boardId ? row : each));
}
