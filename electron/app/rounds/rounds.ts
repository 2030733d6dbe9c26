import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type ReadingOwner, readingTopics } from '../../../shared-core/contract/requests/rounds.ts';
import {
  type Aim,
  firstOpenSpot,
  type ProbedBoard,
  type RoundBoard,
  type RoundState,
} from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import { faultMessage } from '../fault-message.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { LiveValue, MeterDesk } from '../meter/meter-desk.ts';
import { createRoundView, type RoundView, summaryOf } from './round-view.ts';

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
export function createRounds(
  context: AppContext,
  { assessing, judging, comparing }: { assessing: Assessing; judging: Judging; comparing: Comparing },
  meter: MeterDesk,
  queryView: RoundView,
) {
  const view = createRoundView(context, assessing);
  let active: ActiveRound | null = null;

  meter.attach(
    (live) => {
      if (active === null) return;
      if (live.inserted) active.taken = false;
      const wantsIt =
        live.settledNow && !active.taken && active.aim.spotIndex !== null && meter.savesWhenSettled();
      if (!wantsIt) return;
      try {
        context.changed(readingTopics(saveLive(active, live, 'settled')));
      } catch (error) {
        tellNotSaved(active, error);
      }
    },
    (live) => {
      if (active === null || live.value === null) return null;
      const { boardId, woodTempC } = active.probed;
      return assessing.correct({ ...live, value: live.value, boardId, woodTempC });
    },
  );

  comparing.judged.follow(({ roundId, boardId, assessment }) => {
    if (active?.roundId === roundId) tell(active, show(active, boardId, assessment), null);
  });

  /** A round with where it is aimed: as before where it is the active one, else at its first open spot. */
  function aimed(of: RoundView, roundId: number): RoundState {
    const state = of.state(roundId);
    if (state.finishedAt !== null) return { ...state, aim: { boardIndex: 0, spotIndex: null }, probed: null };
    const saved = active?.roundId === roundId ? active.aim : null;
    const boardIndex = saved?.boardIndex ?? firstOpen(state.boards);
    const probed = of.board(roundId, orRefuse(state.boards[boardIndex], 'board').boardId);
    const aim = saved ?? { boardIndex, spotIndex: firstOpenSpot(probed) };
    const boards = withBoard(state.boards, probed);
    return { ...state, boards, summary: summaryOf(boards), aim, probed };
  }

  /** Aims the meter at a round; one that is finished is only shown. */
  function activate(roundId: number): RoundState {
    judging.hurry(roundId);
    const isNew = active?.roundId !== roundId;
    const state = aimed(view, roundId);
    if (state.probed === null) return state;
    const { boards, aim, probed } = state;
    active = { roundId, boards, aim, probed, taken: active?.taken ?? false };
    if (isNew) aimMeter(active);
    return state;
  }

  /** The round that a command names, made the active one if it was not; a finished one takes no more readings. */
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
      ? { undone: message('refusal.saved-not-updated'), again: message('refusal.open-again') }
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
  ): ReadingOwner {
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
    context.afterwards(() => {
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
      if (round.aim.spotIndex === null) comparing.compare([round.roundId]);
    });
    return ownerOf(round.roundId, board.boardId);
  }

  function saveLive(round: ActiveRound, live: LiveValue | null, how: 'settled' | 'at-once'): ReadingOwner {
    if (live === null || live.value === null) {
      throw new Refusal(message('refusal.no-value'));
    }
    return save(round, {
      raw: live.value,
      unit: live.unit,
      how,
      settled: live.phase === 'settled',
      meterId: live.meterId,
    });
  }

  function exclude(readingId: number, why: Exclusion | null): ReadingOwner {
    const { roundId, boardId } = orRefuse(context.yard().readings.get(readingId), 'reading');
    context.yard().amendments.exclude('reading', readingId, why, context.now());
    context.afterwards(() => {
      comparing.compare([roundId]);
      if (active?.roundId === roundId) tell(active, refresh(active, boardId), null);
      else judging.judge(boardId, roundId);
    });
    return ownerOf(roundId, boardId);
  }

  function ownerOf(roundId: number, boardId: number): ReadingOwner {
    const { stackId } = orRefuse(context.yard().rounds.get(roundId), 'round');
    return { roundId, boardId, stackId };
  }

  return {
    /** Forgets the active round, when another yard is opened. */
    leave: (): void => {
      active = null;
      meter.aim(null);
    },
    queries: {
      'rounds.get': ({ roundId }) => aimed(queryView, roundId),
    } satisfies Partial<Queries>,
    commands: {
      'rounds.start': ({ stackId, woodTempC }) => {
        const yard = context.yard();
        const stack = orRefuse(yard.stacks.get(stackId), 'stack');
        if (stack.boards === 0) {
          throw new Refusal(message('refusal.stack-empty', { stackName: stack.name }));
        }
        const givenAt = context.now();
        const roundId = yard.rounds.openOnStack(stackId)?.id ?? yard.rounds.add(stackId, givenAt);
        yard.woodTemperatures.give({ roundId, boardId: null, tempC: woodTempC, givenAt });
        context.afterwards(() => activate(roundId));
        return aimed(view, roundId);
      },

      'rounds.open': ({ roundId }) => activate(roundId),

      'rounds.aim': ({ roundId, boardIndex, spotIndex }) => {
        const round = openRound(roundId);
        const board = orRefuse(round.boards[boardIndex], 'board');
        if (spotIndex !== null) orRefuse(planSpots(board).plan[spotIndex], 'spot');
        if (round.probed.boardId !== board.boardId) round.probed = show(round, board.boardId);
        round.aim = { boardIndex, spotIndex: spotIndex ?? firstOpenSpot(round.probed) };
        aimMeter(round);
        tell(round, round.probed, null);
        return {};
      },

      'rounds.take': ({ roundId }) => saveLive(openRound(roundId), meter.live(), 'at-once'),

      'rounds.type': ({ roundId, raw }) =>
        save(openRound(roundId), { raw, unit: 'pct', how: 'typed', settled: null, meterId: null }),

      'rounds.undo': ({ roundId }) => {
        const round = openRound(roundId);
        const board = round.probed;
        const last = board.assessment?.readings
          .filter((reading) => reading.excluded === null)
          .toSorted((a, b) => a.id - b.id)
          .at(-1);
        if (last === undefined) {
          throw new Refusal(message('refusal.nothing-to-undo', { boardCode: board.code }));
        }
        context.afterwards(() => {
          round.aim = { ...round.aim, spotIndex: last.spotIndex };
          aimMeter(round);
        });
        return exclude(last.id, { code: 'undone-in-round' });
      },

      'rounds.setTemperature': ({ roundId, boardId, woodTempC }) => {
        const round = openRound(roundId);
        context.yard().woodTemperatures.give({ roundId, boardId, tempC: woodTempC, givenAt: context.now() });
        context.afterwards(() => {
          comparing.compare([roundId]);
          if (boardId === null) {
            judging.judgeDue(roundId);
            round.boards = view.state(roundId).boards;
          }
          tell(round, refresh(round, boardId ?? round.probed.boardId), null);
        });
        return {};
      },

      'rounds.finish': ({ roundId }) => {
        openRound(roundId);
        context.yard().rounds.finish(roundId, context.now());
        context.afterwards(() => {
          comparing.compare([roundId]);
          active = null;
          meter.aim(null);
        });
        return view.state(roundId).summary;
      },

      'readings.exclude': ({ readingId, why }) => exclude(readingId, why),
      'readings.include': ({ readingId }) => exclude(readingId, null),
    } satisfies Partial<Commands>,
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
