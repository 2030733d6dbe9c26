import { type RefObject, useEffect, useState } from 'react';
import { isOfOffMeter } from '../../../shared-core/contract/meter-checks.ts';
import { newestOf, probedOf, type RoundBoard, type RoundState } from '../../../shared-core/contract/round.ts';
import { indexOfCode } from '../../../shared-core/labels/board-meant.ts';
import { readTyped, type TypedReading } from '../../../shared-core/labels/typed-value.ts';
import { isFrozen } from '../../../shared-core/probing/calls/round-step.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { asksToProbeAgain } from '../../../shared-core/probing/suspicions/probe-again.ts';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { useWakeLock } from '../../app/useWakeLock.ts';
import { useQuery } from '../../data/useQuery.ts';
import { isDialogOpen } from '../../stores/dialogs.ts';
import { type Draft, unitOfDraft } from '../../stores/drafts.ts';
import { isLinkLost, sayLinkLost, useLink } from '../../stores/link.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { useRound } from '../../stores/round.ts';
import { aimAt, sayLeftOpen, spotsToRead } from '../../stores/round-aim.ts';
import { undoLast } from '../../stores/round-corrections.ts';
import { replaceByLive, replaceByTyped, saveLive, saveTyped } from '../../stores/round-saving.ts';
import { useSettings } from '../../stores/settings.ts';
import { useTypingMeter } from '../../stores/typing-meter.ts';
import { useWords } from '../../words.ts';
import { needsNoMachine, type RoundAction } from './round-keys.ts';
import { useCountdown } from './useCountdown.ts';
import { useFarView } from './useFarView.ts';
import { useTypedValue } from './useTypedValue.ts';

/** A second press within this is a bounce of the first, ms. */
const BOUNCE_MS = 300;

/**
 * What can be done on the board aimed at, and what is typed, asked and counted down meanwhile.
 * @param field where values are typed
 */
export function useProbing(round: RoundState, board: RoundBoard, field: RefObject<HTMLInputElement | null>) {
  const { say } = useWords();
  const { saved, offersReplacing, trouble } = useRound();
  const meterIsLive = useMeter(isLiveHere) && !round.isDated;
  const isLost = useLink(isLinkLost);
  /** With the link lost nothing can be saved or gone to, and what is typed stays in the field. */
  const can = (action: RoundAction): boolean => !isLost || needsNoMachine(action);
  const insertion = useMeter((meter) => meter.insertion);
  const phase = useMeter(({ live }) => live?.phase ?? 'pins-out');
  /** The reading that the pins which are in were saved as. */
  const pinsIn = meterIsLive ? insertion : null;
  useEffect(() => {
    if (pinsIn === null)
      useRound.setState(({ done }) => (done?.code === 'round.pull-pins' ? { done: null } : {}));
  }, [pinsIn]);
  /** The link was lost since: the pins may be at another spot. */
  const mayBeOther = useMeter(({ wasAway }) => wasAway) && pinsIn !== null;
  /** Of which reading Space asked whether these are its pins. */
  const [askedPins, setAskedPins] = useState<{ readingId: number; atMs: number } | null>(null);
  const beganOn = useMeter((meter) => meter.beganOn);
  /** Where Space was refused, as the pins went in on another board. */
  const [askedHere, setAskedHere] = useState<{ beganOn: number; boardId: number; atMs: number } | null>(null);
  useEffect(() => {
    if (beganOn === null) setAskedHere(null);
  }, [beganOn]);
  const by = useSettings(({ settings }) =>
    settings.pedalKeys['go-on'] === null ? ('enter' as const) : ('pedal' as const),
  );
  const nextBoardAfterS = useSettings(({ settings }) => settings?.nextBoardAfterS ?? null);
  const [dialog, setDialog] = useState<
    'go-to-board' | 'temperature' | 'core' | 'note' | 'meter' | 'keys' | 'finish' | null
  >(null);
  const typedFrom = useTypingMeter();
  const [isFar, toggleFar] = useFarView();
  const isScreenLeft = useWakeLock();
  const [asked, setAsked] = useState<{ boardId: number; atMs: number } | null>(null);

  const offMeters = useQuery('meterChecks.ofRound', { roundId: round.id }).output ?? [];
  /** Its meter was off when it was checked before, and it is not corrected for that. */
  const isByOffMeter = (reading: JudgedReading): boolean =>
    offMeters.some((meter) => isOfOffMeter(meter, reading));
  const isDoubtful = (reading: JudgedReading): boolean =>
    isByOffMeter(reading) || isQuestionable(reading.suspicions);

  const { boards } = round;
  const { boardId } = board;
  const probed = probedOf(round);
  const readings = probed?.assessment?.readings ?? [];
  const { draft, filledBy, unsaved, ...drafting } = useTypedValue(round, probed);
  /** The reading typed so far; null while the meter's are saved. */
  const typing = draft?.text ?? (meterIsLive ? null : '');
  const fieldIsEmpty = typing === null || typing.trim() === '';
  const spotIndex = round.aim?.spotIndex ?? null;
  const boardIndex = boards.indexOf(board);
  const next = boards[boardIndex + 1];
  const { plan } = planSpots(board);
  const open = spotsToRead(board).length;
  /** The next spot of the board that has no reading; null where all have one. */
  const nextSpot = filledBy && openSpot(board, readings, (filledBy.spotIndex ?? 0) + 1);
  /** One to be probed again keeps what is typed next: a spot of it is chosen. */
  const keepsTyped = board.finding?.call === 'probe-again' && !isFrozen(board.finding);
  /** The board whose first reading is typed, as all spots of this one are read; null for none, undefined for no such value. */
  const firstOfNext = keepsTyped ? undefined : next && spotsToRead(next)[0];
  const savesFor =
    fieldIsEmpty || draft?.spotIndex !== null || draft.before === undefined
      ? undefined
      : firstOfNext === undefined
        ? null
        : next?.code;
  /** The board of the reading that these pins were saved as, where the person asked to save them again. */
  const savedBoard = offersReplacing ? boards.find((each) => each.boardId === insertion?.boardId) : undefined;

  /** This window filled the last open spot. */
  const isFilled =
    saved?.board.boardId === boardId && spotIndex === null && probed?.finding?.openSpot === null;
  const asksAgain = asksToProbeAgain(readings);
  /** And nothing asks for attention. */
  const isDone = isFilled && !asksAgain;
  const mayGoOn =
    next && !isLost && fieldIsEmpty && !pinsIn && phase === 'pins-out' && !dialog && trouble === null;
  const secondsLeft = useCountdown(isDone && mayGoOn ? saved.reading.id : null, nextBoardAfterS, () => {
    if (!isDialogOpen()) goTo(next);
  });

  /** @param spot where it is not given, the first open one */
  function goTo(to: RoundBoard | undefined, spot: number | null = null): void {
    if (!to) return;
    if (fieldIsEmpty) drafting.stop();
    void aimAt(to.boardId, spot);
    // Typed with every spot read: it is for the spot that is chosen for it.
    if (to === board && spot !== null) drafting.takeTo(spot);
  }

  const nextBoard = () => (next ? goTo(next) : setDialog('finish'));

  /**
   * To the next board at once, as the next number may be typed already; where spots are open it says so, and a second
   * press leaves them.
   */
  function leaveBoard(): void {
    const atMs = performance.now();
    const isAgain = asked?.boardId === boardId && atMs - asked.atMs > BOUNCE_MS;
    if (open > 0 && !isAgain) {
      setAsked({ boardId, atMs });
      return;
    }
    nextBoard();
    if (open === 0) void sayLeftOpen(board);
  }

  function chooseSpot(by: -1 | 1): void {
    const from = spotIndex ?? (by === 1 ? -1 : plan.length);
    goTo(board, Math.min(Math.max(from + by, 0), plan.length - 1));
  }

  /** Where these may be the pins that are saved already, or are in another board, it asks, and a second press saves. */
  function takeLive(): void {
    if (!pinsIn && beganOn !== null && beganOn !== boardId) {
      const isAgain = askedHere?.beganOn === beganOn && askedHere.boardId === boardId;
      if (!isAgain) setAskedHere({ beganOn, boardId, atMs: performance.now() });
      if (!isAgain) void saveLive();
      else if (performance.now() - askedHere.atMs > BOUNCE_MS) void saveLive(true);
    } else if (!mayBeOther || !pinsIn) void saveLive();
    else if (savedBoard === undefined || askedPins?.readingId !== pinsIn.readingId) {
      setAskedPins({ readingId: pinsIn.readingId, atMs: performance.now() });
      void saveLive();
    } else if (performance.now() - askedPins.atMs > BOUNCE_MS) void saveLive(true);
  }

  /** By one pedal alone: saves what is there to save, and goes to the next spot, or board, where nothing is. */
  function goOn(): void {
    if (!fieldIsEmpty) actions['save-typed']();
    else if (pinsIn && !mayBeOther) useRound.setState({ done: message('round.pull-pins') });
    else if (typing === null && phase !== 'pins-out') takeLive();
    else {
      const later = spotIndex === null ? undefined : spotsToRead(board, spotIndex + 1)[0];
      if (later === undefined || later === spotIndex) leaveBoard();
      else goTo(board, later);
    }
  }

  function goBack(): void {
    if (spotIndex === 0 || plan.length === 0) goTo(boards[boardIndex - 1]);
    else chooseSpot(-1);
  }

  /** Hands the number typed to what saves it. Anything else stays in the field, and the next key takes its place. */
  function withTyped(save: (value: TypedReading, draft: Draft) => Promise<void>): void {
    if (!draft || fieldIsEmpty) return;
    const codes = boards.map(({ code }) => code);
    const typed = readTyped(draft.text, codes, unitOfDraft(draft));
    if ('raw' in typed) void save(typed, draft).then(() => selectRefused(draft));
    else if ('boardCode' in typed) {
      drafting.stop();
      goToCode(typed.boardCode);
      useRound.setState({ done: message('round.is-board', typed) });
    } else {
      useRound.setState({ trouble: say(typed.problem) });
      field.current?.select();
    }
  }

  /** With no spot chosen for it, the next key takes the place of what could not be saved. */
  function selectRefused({ text, spotIndex: chosen }: Draft): void {
    const isRefused = useRound.getState().trouble !== null && field.current?.value === text;
    if (!field.current || chosen !== null || !isRefused) return;
    field.current.focus();
    field.current.select();
  }

  /** To the board whose label was scanned. */
  function goToCode(boardCode: string): void {
    const to = boards[indexOfCode(boards, boardCode)];
    if (to) goTo(to);
    else useRound.setState({ trouble: say('go-to.unknown', { stackName: round.stackName, boardCode }) });
  }

  const actions: Record<RoundAction, () => void> = {
    'go-on': goOn,
    'go-back': goBack,
    take: takeLive,
    // Where the spot was filled meanwhile, the person says what is meant.
    'save-typed': () => {
      if (filledBy) return;
      withTyped((value, typed) => {
        if (!savesFor || !next || firstOfNext === undefined) return saveTyped(value, typed);
        // It is the next board's from here on, also where it cannot be saved.
        drafting.stop();
        void aimAt(next.boardId, firstOfNext);
        return saveTyped(value, {
          ...typed,
          boardId: next.boardId,
          spotIndex: firstOfNext,
          boardCode: savesFor,
        });
      });
    },
    replace: () => {
      if (filledBy) withTyped((value, typed) => replaceByTyped(value, filledBy, typed));
      else if (savedBoard && insertion) void replaceByLive(insertion);
    },
    'save-at-next': () => {
      if (nextSpot === null) return;
      withTyped((value, typed) => saveTyped(value, typed, { boardId, spotIndex: nextSpot }));
    },
    'use-meant': () => {
      const meant = saved && meantBy(saved.reading);
      if (saved && meant !== null) void replaceByTyped({ raw: meant }, saved.reading);
    },
    'undo-last': () => void undoLast(),
    // The dialog is the button's, which is beside the reading.
    'exclude-last': () =>
      document.querySelector<HTMLElement>(`[data-reading="${newestOf(probed)?.id}"] button`)?.click(),
    'leave-board': leaveBoard,
    'next-board': nextBoard,
    'previous-board': () => goTo(boards[boardIndex - 1]),
    'first-board': () => goTo(boards[0]),
    'last-board': () => goTo(boards.at(-1)),
    'go-to-board': () => setDialog('go-to-board'),
    'spot-up': () => chooseSpot(-1),
    'spot-down': () => chooseSpot(1),
    temperature: () => setDialog('temperature'),
    core: () => {
      if (board.planBasis.faces !== 'pairs') setDialog('core');
    },
    note: () => setDialog('note'),
    meter: () => {
      if (typedFrom) setDialog('meter');
    },
    help: () => setDialog('keys'),
    'far-view': toggleFar,
    finish: () => setDialog('finish'),
    'start-typing': () => drafting.type(''),
    'stop-typing': drafting.stop,
  };

  /** The spot that the pins which are in were saved at: it stands out until they are pulled. */
  const pinsAt =
    !mayBeOther && pinsIn?.roundId === round.id && pinsIn.boardId === boardId ? pinsIn.spotIndex : null;
  const pinsReading = pinsAt === null ? undefined : newestOf(probed, pinsAt);

  return {
    round,
    board,
    boardIndex,
    isLast: !next,
    /** The board with its readings; null while they are on their way. */
    probed,
    spotIndex,
    pinsAt,
    /** What became of the reading there. */
    pinsSaved: pinsReading ? lookOf(pinsReading, isDoubtful(pinsReading)) : ('sound' as const),
    offMeters,
    isByOffMeter,
    /** Questionable by itself, or by its meter. */
    isDoubtful,
    field,
    typing,
    /** The meter that typed values are read off; undefined before one was chosen. */
    typedFrom,
    /** In which what is typed is read. */
    typedUnit: draft?.unit ?? typedFrom?.unit ?? ('pct' as const),
    fieldIsEmpty,
    draft,
    filledBy,
    unsaved,
    nextSpot,
    savesFor,
    type: drafting.type,
    restore: drafting.restore,
    meterIsLive,
    can,
    savedBoard,
    mayBeOther,
    /** How many spots a second press leaves open; null where none was pressed. */
    leaves: fieldIsEmpty && asked?.boardId === boardId ? open || null : null,
    /** Shown so that it can be read from two meters away. */
    isFar,
    /** The screen may turn off, as the system does not keep it on. */
    isScreenLeft,
    /** Until the next board comes by itself. */
    secondsLeft,
    /** It would, but a questionable reading asks to be read again. */
    waits: isFilled && asksAgain && nextBoardAfterS !== null,
    /** What a person goes on with. */
    by,
    act: (action: RoundAction): void => {
      if (!can(action)) {
        sayLinkLost();
        return;
      }
      if (action !== 'leave-board' && action !== 'go-on') setAsked(null);
      actions[action]();
    },
    goTo,
    goToCode,
    dialog,
    onClose: () => setDialog(null),
  };
}

/** How a reading stands out in a round. */
function lookOf({ counts }: JudgedReading, isDoubtful: boolean): 'sound' | 'questionable' | 'not-used' {
  if (!counts) return 'not-used';
  return isDoubtful ? 'questionable' : 'sound';
}
export type Probing = ReturnType<typeof useProbing>;
