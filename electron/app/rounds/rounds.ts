import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ReadingOwner } from '../../../shared-core/contract/requests/rounds.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import {
  type Aim,
  firstOpenSpot,
  type RoundBoard,
  type RoundState,
} from '../../../shared-core/contract/round.ts';
import type { Topic } from '../../../shared-core/contract/topics.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import type { ProbeTemp } from '../../../shared-core/probing/readings/reading.ts';
import { type PlannedSpot, spotAt } from '../../../shared-core/probing/readings/spots.ts';
import type { Corrected } from '../../../shared-core/wood/moisture/corrected.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { NO_RECORD, unitOf } from '../../store/meter-table.ts';
import type { RoundRow } from '../../store/round-table.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { LiveValue } from '../meter/live-values.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';
import { typedFrom } from '../meter/meters.ts';
import { createSignal, type Signal } from '../signal.ts';
import type { Windows } from '../windows.ts';
import { createAims, type WindowAim } from './aims.ts';
import { correctingCommands } from './correcting.ts';
import { depthCommands } from './depths.ts';
import { createInsertion } from './insertion.ts';
import { longBeforeStack } from './long-before-stack.ts';
import { createMovingReadings } from './moving-readings.ts';
import { movingToBoardCommands } from './moving-to-board.ts';
import { nextBoard } from './next-board.ts';
import { createOpenRounds } from './open-rounds.ts';
import { instantOfPage } from './page-order.ts';
import type { PlanBases } from './plan-bases.ts';
import { createPriorsAhead } from './priors-ahead.ts';
import { createRoundClock } from './round-clock.ts';
import { createRoundTelling } from './round-telling.ts';
import { createRoundView, type RoundView, summaryOf } from './round-view.ts';
import { createSaving, liveReading } from './saving.ts';
import { createSavingSettled } from './saving-settled.ts';

/**
 * Rounds: which spot of which board each window reads next, and saving it. A reading is on disk before a window hears
 * of it.
 */
export function createRounds(
  context: AppContext,
  { assessing, judging, comparing }: { assessing: Assessing; judging: Judging; comparing: Comparing },
  meter: MeterDesk,
  windows: Windows,
  changes: Signal<readonly Topic[]>,
  planBases: PlanBases,
  queryView: RoundView,
  clockProblem: () => Message | null,
  probeTemp: () => ProbeTemp | null,
) {
  const view = createRoundView(context, assessing, planBases);
  const aims = createAims(windows);
  aims.changed.follow((window) => planBases.take(window, aims.of(window)));
  const openRounds = createOpenRounds(context, view, planBases.pins);
  const telling = createRoundTelling(context, aims, openRounds);
  const priorsAhead = createPriorsAhead(context, aims, openRounds, assessing);
  const insertion = createInsertion(context, meter, aims);
  const clock = createRoundClock(context);
  const finished = createSignal();
  const saving = createSaving(
    context,
    judging,
    comparing,
    meter.holder,
    aims,
    openRounds,
    telling,
    insertion,
    clock,
    probeTemp,
  );
  createSavingSettled(context, meter, aims, openRounds, insertion, saving);
  // It may have been told to a window that was not there yet.
  aims.changed.follow((window) => window === meter.holder.window() && insertion.tell());

  const moving = createMovingReadings(context, judging, comparing, aims, openRounds, telling, planBases);

  comparing.judged.follow(({ roundId, boardId, assessment }) => {
    if (openRounds.find(roundId)) telling.tell(roundId, openRounds.show(roundId, boardId, assessment));
  });
  changes.follow((topics) => {
    if (topics.includes('outlooks')) {
      for (const { id } of openRounds.renew())
        for (const [window] of aims.inRound(id)) telling.tellOutdated(window, id, null);
    }
    // What changes in a round, a forecast or the backups leaves the boards of its stack as they are, and a reading must not wait for a look at them.
    if (!topics.some((topic) => topic.startsWith('round:') || topic === 'outlooks' || topic === 'backups'))
      takeInStacks();
  });

  // The connected meter's pins may be others.
  meter.remembered.follow(takeInStacks);
  meter.link.left.follow(takeInStacks);

  /** Boards came to the stack of an open round or left it. Nobody's aim shifts; one at a board that left moves on. */
  function takeInStacks(): void {
    for (const { id: roundId } of openRounds.outdated()) {
      const { boards } = openRounds.load(roundId);
      for (const [window, aim] of aims.inRound(roundId)) {
        const isThere = boards.some(({ boardId }) => boardId === aim.boardId);
        telling.tellOutdated(window, roundId, isThere ? null : moveOn(window, aim, boards));
      }
    }
  }

  /** @returns what the person must know: the board left, and which one is next, if any is */
  function moveOn(window: string, aim: WindowAim, boards: readonly RoundBoard[]): Message {
    const { code: boardCode } = orRefuse(context.yard().boards.get(aim.boardId), 'board');
    const next = nextBoard(boards, aim.boardId);
    if (next === undefined) {
      aims.forget(window);
      return message('round.stack-emptied', { boardCode });
    }
    aims.move(window, { roundId: aim.roundId, boardId: next.boardId, spotIndex: firstOpenSpot(next) });
    return message('round.board-left', { boardCode, nextCode: next.code });
  }

  /** A round with where the window aims in it, or would if it opened it. */
  function aimed(of: RoundView, roundId: number, window: string): RoundState {
    const state = of.state(roundId);
    if (state.finishedAt !== null) return { ...state, aim: null, probed: null };
    const own = aims.of(window);
    const saved: Aim | null = own?.roundId === roundId ? own : aims.leftIn(roundId, window);
    const isThere = (board: RoundBoard) => board.boardId === saved?.boardId;
    const board = state.boards.find(isThere) ?? nextBoard(state.boards, saved?.boardId ?? 0);
    if (board === undefined) return { ...state, aim: null, probed: null };
    const { boardId } = board;
    const probed = of.board(roundId, boardId);
    const spotIndex = saved?.boardId === boardId ? saved.spotIndex : firstOpenSpot(probed);
    const { assessment: _, ...row } = probed;
    const boards = state.boards.map((each) => (each.boardId === boardId ? row : each));
    return { ...state, boards, summary: summaryOf(boards), aim: { boardId, spotIndex }, probed };
  }

  /** @throws Refusal that asks whether the date is right: a wrong clock, or a day long before the stack was added */
  function askAboutDate(
    stackId: number,
    { startedAt, datedBy }: Pick<RoundRow, 'startedAt' | 'datedBy'>,
  ): void {
    const problem =
      datedBy === 'clock' ? clockProblem() : longBeforeStack(context, stackId, startedAt, 'start');
    if (problem !== null) throw new Refusal(problem);
  }

  /** Opens a round in a window, which takes the meter where no window has it; one that is finished is only shown. */
  function open(roundId: number, window: string): RoundState {
    judging.hurry(roundId);
    const state = aimed(view, roundId, window);
    if (state.aim === null) return state;
    openRounds.load(roundId);
    meter.holder.holdIfFree(window);
    if (aims.of(window)?.roundId !== roundId) aims.enter(window, { roundId, ...state.aim });
    return state;
  }

  /** The meter that a window types from, where it does not say: the one that it holds, else the one that was chosen. */
  function typedOff(window: string): number | null {
    const isHeld = meter.holder.window() === window && !meter.isToConfirm();
    return (isHeld ? meter.meterId() : null) ?? typedFrom(context.yard());
  }

  /** @throws Refusal where the pins are in for a reading that is saved, or for another window */
  function checkInsertion(
    window: string,
    { boardId, replaces, isOtherPush }: RequestInput<'rounds.saveLive'>,
  ): void {
    meter.holder.holdIfFree(window);
    if (meter.holder.window() !== window) throw new Refusal(message('refusal.meter-elsewhere'));
    const taken = insertion.reading();
    if (taken === null) {
      const beganOn = insertion.beganOn();
      if (beganOn === null || beganOn === boardId || isOtherPush) return;
      const { code } = orRefuse(context.yard().boards.get(beganOn), 'board');
      throw new Refusal(message('refusal.insertion-elsewhere', { boardCode: code }));
    }
    if (taken.readingId === replaces) return;
    const mayBeOther = insertion.wasAway();
    if (mayBeOther && isOtherPush) return;
    const { code: boardCode } = orRefuse(context.yard().boards.get(taken.boardId), 'board');
    throw new Refusal(
      message(mayBeOther ? 'refusal.insertion-maybe-saved' : 'refusal.insertion-saved', { boardCode }),
    );
  }

  /**
   * Shows the board by its new plan. A window with it in hand aims at a spot of that plan.
   * @param forRound the window that chose it for other boards too, which it asks for by itself
   */
  function showPlan(roundId: number, boardId: number, forRound: string | null): void {
    if (forRound !== null) openRounds.load(roundId);
    const show = (assessment?: Assessment): void => {
      const probed = openRounds.show(roundId, boardId, assessment);
      for (const [window, aim] of aims.inRound(roundId)) {
        const isSpot = aim.spotIndex !== null && spotAt(probed, aim.spotIndex) !== undefined;
        if (aim.boardId === boardId && !isSpot)
          aims.move(window, { ...aim, spotIndex: firstOpenSpot(probed) });
        if (forRound !== null && window !== forRound) telling.tellOutdated(window, roundId, null);
      }
      telling.tell(roundId, probed);
    };
    if (openRounds.board(roundId, boardId).isRead) judging.judgeNow(boardId, roundId, show);
    else show();
  }

  /** Excludes a reading. Where the window has its board in hand, the spot that it leaves open is read next. */
  function excludeAndAim(readingId: number, why: Exclusion, window: string): ReadingOwner {
    const { roundId, boardId, spotIndex } = orRefuse(context.yard().readings.get(readingId), 'reading');
    context.afterwards(() => {
      const aim = aims.of(window);
      if (aim?.roundId !== roundId || aim.boardId !== boardId) return;
      const left = context.yard().readings.ofBoard(boardId, roundId);
      const isOpen = !left.some((each) => each.spotIndex === spotIndex && each.excluded === null);
      if (isOpen) aims.move(window, { ...aim, spotIndex });
    });
    return saving.exclude(readingId, why);
  }

  /** Something in these rounds was undone or redone: windows show them as they are now, or leave one that is no more. */
  function takeAgain(roundIds: readonly number[]): void {
    for (const roundId of roundIds.filter(openRounds.find)) {
      if (context.yard().rounds.shown(roundId)?.finishedAt !== null) {
        const windows = aims.inRound(roundId);
        aims.leaveRound(roundId);
        openRounds.forget(roundId);
        for (const [window] of windows) telling.tellOutdated(window, roundId, null);
        continue;
      }
      const { boards } = openRounds.load(roundId);
      for (const [window, aim] of aims.inRound(roundId)) {
        // One whose board left its stack moves on when that is taken in.
        if (!boards.some(({ boardId }) => boardId === aim.boardId)) continue;
        judging.judgeNow(aim.boardId, roundId, (assessment) => {
          const probed = openRounds.show(roundId, aim.boardId, assessment);
          const isSpot = aim.spotIndex !== null && spotAt(probed, aim.spotIndex) !== undefined;
          if (!isSpot) aims.move(window, { ...aim, spotIndex: firstOpenSpot(probed) });
          telling.tellWindow(window, probed, null);
        });
        telling.tellOutdated(window, roundId, null);
      }
    }
  }

  return {
    aims,
    takeAgain,
    /** The spot that a window aims at; undefined where its board has none left. */
    spotOf: ({ roundId, boardId, spotIndex }: WindowAim): PlannedSpot | undefined => {
      const board = openRounds.find(roundId)?.boards.find((each) => each.boardId === boardId);
      return board && spotIndex !== null ? spotAt(board, spotIndex) : undefined;
    },
    /** A round was finished. */
    finished,
    /** The meter's value, corrected for the board that the window aims at; null where it aims at none. */
    correct: (live: LiveValue, window: string): Corrected | null => {
      const aim = aims.of(window);
      if (aim === null || live.value === null) return null;
      const { boardId, ownTemp, woodTempC: given } = openRounds.board(aim.roundId, aim.boardId);
      const woodTempC = (ownTemp ? null : probeTemp()?.tempC) ?? given;
      return assessing.correct({ ...live, value: live.value, boardId, woodTempC });
    },
    /** Leaves every aim, when another yard is opened. */
    leave: (yard: string | null): void => {
      aims.leave(yard);
      openRounds.leave();
      priorsAhead.leave();
      insertion.end();
      clock.leave();
    },
    comeBack: aims.comeBack,
    moving,
    queries: {
      'rounds.get': ({ roundId }, window) => aimed(queryView, roundId, window),
    } satisfies Partial<Queries>,
    commands: {
      'rounds.start': ({ stackId, placeId: at, woodTempC, startedOn, isDateRight, order }, window) => {
        const yard = context.yard();
        const stack = orRefuse(yard.stacks.get(stackId), 'stack');
        const placeId = at === stack.placeId ? null : at;
        const boards = yard.boards.toProbe(stackId, placeId);
        if (boards.length === 0) {
          throw new Refusal(message('refusal.stack-empty', { stackName: stack.name }));
        }
        if (startedOn !== null && !yard.boards.isAnySawnBy(stackId, placeId, startedOn)) {
          const facts = { stackName: stack.name, startedOn };
          throw new Refusal(message('refusal.round-before-sawn', facts));
        }
        const givenAt = context.now();
        const runs = yard.rounds.openOnStack(stackId);
        const isElsewhere = (runs?.placeId ?? stack.placeId) !== (at ?? stack.placeId);
        if (runs !== undefined && isElsewhere) throw roundRunning(stack.name);
        const running = runs?.id;
        const start = startOf(startedOn, givenAt);
        if (running === undefined && !isDateRight) askAboutDate(stackId, start);
        if (running === undefined && start.datedBy === 'day') {
          const page = { startedAt: start.startedAt, isDayOnly: true, order };
          start.startedAt = instantOfPage(
            context,
            boards.map(({ id }) => id),
            page,
          );
        }
        const roundId = running ?? yard.rounds.add({ stackId, placeId, ...start });
        if (running === undefined) clock.begin(roundId);
        yard.woodTemperatures.give({ roundId, boardId: null, tempC: woodTempC, givenAt });
        context.afterwards(() => open(roundId, window));
        return aimed(view, roundId, window);
      },

      'rounds.open': ({ roundId }, window) => open(roundId, window),

      'rounds.leave': ({ roundId }, window) => {
        if (aims.of(window)?.roundId === roundId) aims.pause(window);
        return {};
      },

      'rounds.aim': ({ roundId, boardId, spotIndex }, window) => {
        const board = openRounds.board(roundId, boardId);
        if (spotIndex !== null) orRefuse(spotAt(board, spotIndex), 'spot');
        const probed = openRounds.show(roundId, boardId);
        aims.move(window, { roundId, boardId, spotIndex: spotIndex ?? firstOpenSpot(probed) });
        telling.tellWindow(window, probed, null);
        return {};
      },

      'rounds.saveLive': (input, window) => {
        const { isOtherPush: _, ...at } = input;
        if (openRounds.get(at.roundId).isDated) throw new Refusal(message('refusal.round-dated'));
        const value = liveReading(meter.values.newest(), 'at-once');
        const seconds = meter.values.silentS();
        if (seconds !== null) throw new Refusal(message('refusal.no-new-value', { seconds }));
        checkInsertion(window, input);
        return saving.saveAsShown(window, at, value);
      },

      'rounds.saveTyped': ({ raw, isAbove, unit, meterId: shown, ...at }, window) => {
        const meterId = shown === undefined ? typedOff(window) : shown;
        const { meters } = context.yard();
        const meter = meterId === null ? null : orRefuse(meters.get(meterId), 'meter');
        if (meter !== null && meters.isClosed(meter.id))
          throw new Refusal(message('refusal.typed-off-removed', { meterName: meter.name }));
        if (unit !== unitOf(meter ?? NO_RECORD))
          throw new Refusal(message('refusal.typed-other-unit', { unit }));
        return saving.saveAsShown(window, at, { raw, isAbove, unit, how: 'typed', settled: null, meterId });
      },

      'rounds.undo': ({ readingId }, window) => {
        const { roundId } = orRefuse(context.yard().readings.get(readingId), 'reading');
        openRounds.get(roundId);
        return excludeAndAim(readingId, { code: 'undone-in-round' }, window);
      },

      'rounds.setTemperature': ({ roundId, boardId, woodTempC }, window) => {
        openRounds.get(roundId);
        if (boardId !== null) openRounds.board(roundId, boardId);
        context.yard().woodTemperatures.give({ roundId, boardId, tempC: woodTempC, givenAt: context.now() });
        context.afterwards(() => {
          comparing.compare([roundId]);
          if (boardId === null) judging.judgeDue(roundId);
          const { boards } = openRounds.load(roundId);
          for (const [each, aim] of aims.inRound(roundId)) {
            const shown = boardId ?? aim.boardId;
            if (boards.some((board) => board.boardId === shown)) {
              judging.judgeNow(shown, roundId, (assessment) =>
                telling.tellWindow(each, openRounds.show(roundId, shown, assessment), null),
              );
            }
            if (boardId === null && each !== window) telling.tellOutdated(each, roundId, null);
          }
        });
        return {};
      },

      'rounds.finish': ({ roundId }, window) => {
        openRounds.get(roundId);
        const { rounds } = context.yard();
        rounds.finish(roundId, clock.now(orRefuse(rounds.get(roundId), 'round')));
        judging.judgeAfterRound(roundId);
        context.afterwards(() => context.yard().checkpoint());
        const { summary } = view.state(roundId);
        context.afterwards(() => {
          comparing.compare([roundId]);
          const others = aims.inRound(roundId).filter(([each]) => each !== window);
          aims.leaveRound(roundId);
          openRounds.forget(roundId);
          for (const [each] of others) telling.tellOutdated(each, roundId, null);
          finished.give();
        });
        return summary;
      },

      'rounds.reopen': ({ roundId }, window) => {
        const { rounds, stacks } = context.yard();
        const { stackId } = orRefuse(rounds.shown(roundId), 'round');
        const running = rounds.openOnStack(stackId);
        if (running !== undefined && running.id !== roundId) {
          const { name: stackName } = orRefuse(stacks.get(stackId), 'stack');
          throw roundRunning(stackName);
        }
        rounds.reopen(roundId);
        judging.judgeAfterRound(roundId);
        context.afterwards(() => open(roundId, window));
        return {};
      },

      'rounds.planCore': ({ roundId, boardId, core, forRound }, window) => {
        const { planBasis } = openRounds.board(roundId, boardId);
        const { spotPlans } = context.yard();
        const givenAt = context.now();
        spotPlans.give({ roundId, boardId, basis: { ...planBasis, core }, givenAt });
        if (forRound) spotPlans.giveForRound({ roundId, core, givenAt });
        context.afterwards(() => showPlan(roundId, boardId, forRound ? window : null));
        return {};
      },

      ...depthCommands(context, moving),
      ...correctingCommands(context, assessing, moving),
      ...movingToBoardCommands(context, view, moving, insertion),

      'readings.exclude': ({ readingId, why }, window) => excludeAndAim(readingId, why, window),
      'readings.include': ({ readingId }) => saving.exclude(readingId, null),
    } satisfies Partial<Commands>,
  };
}
export type Rounds = ReturnType<typeof createRounds>;

const roundRunning = (stackName: string): Refusal =>
  new Refusal(message('refusal.round-running', { stackName }));

/**
 * When a round begins.
 * @param startedOn its local day; null for now
 * @throws Refusal for a day that is still to come
 */
function startOf(startedOn: string | null, now: string): Pick<RoundRow, 'startedAt' | 'datedBy'> {
  const noon = startedOn === null ? null : new Date(`${startedOn}T12:00`);
  const today = new Date(now);
  if (noon === null || noon.toDateString() === today.toDateString())
    return { startedAt: now, datedBy: 'clock' };
  if (noon > today) throw new Refusal(message('refusal.round-to-come'));
  return { startedAt: noon.toISOString(), datedBy: 'day' };
}
