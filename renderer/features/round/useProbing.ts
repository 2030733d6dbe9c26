import { type RefObject, useState } from 'react';
import { openSpots, type RoundState } from '../../../shared-core/contract/round.ts';
import { readTyped } from '../../../shared-core/labels/typed-value.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { Draft } from '../../stores/drafts.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import {
  aimAt,
  newestOf,
  probedOf,
  replaceByLive,
  replaceByTyped,
  saveLive,
  saveTyped,
  settledRound,
  undoLast,
  useRound,
} from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { doneBy } from './done-by.ts';
import { indexOfCode } from './find-board.ts';
import { meantBy } from './questionable.ts';
import type { RoundAction } from './round-keys.ts';
import { useCountdown } from './useCountdown.ts';
import { isDialogOpen } from './useKeysHome.ts';
import { useTypedValue } from './useTypedValue.ts';

export type RoundDialog = 'go-to-board' | 'temperature' | 'keys' | 'finish';

/** A second press within this is a bounce of the first, ms. */
const BOUNCE_MS = 300;

/** What can be done on the board aimed at, and what is typed, asked and counted down meanwhile. */
export function useProbing(round: RoundState, field: RefObject<HTMLInputElement | null>) {
  const { say } = useWords();
  const { saved, offersReplacing, trouble } = useRound();
  const meterIsLive = useMeter(isLiveHere) && !round.isDated;
  const insertion = useMeter((meter) => meter.insertion);
  const phase = useMeter(({ live }) => live?.phase ?? 'pins-out');
  /** The reading that the pins which are in were saved as. */
  const pinsIn = meterIsLive ? insertion : null;
  const nextBoardAfterS = useSettings(({ settings }) => settings?.nextBoardAfterS ?? null);
  const [dialog, setDialog] = useState<RoundDialog | null>(null);
  const [asked, setAsked] = useState<{ boardId: number; atMs: number } | null>(null);

  const probed = probedOf(round);
  const { draft, filledBy, unsaved, ...drafting } = useTypedValue(round, probed);
  /** The reading typed so far; null while the meter's are saved. */
  const typing = draft?.text ?? (meterIsLive ? null : '');
  const fieldIsEmpty = typing === null || typing.trim() === '';
  const spotIndex = round.aim?.spotIndex ?? null;
  const boardIndex = round.boards.findIndex(({ boardId }) => boardId === round.aim?.boardId);
  const board = round.boards[boardIndex];
  const lastIndex = round.boards.length - 1;
  const spots = board ? planSpots(board).plan.length : 0;
  /** The next spot of the board that has no reading; null where all have one. */
  const nextSpot =
    filledBy && openSpot(spots, probed?.assessment?.readings ?? [], (filledBy.spotIndex ?? 0) + 1);
  /** The board of the reading that these pins were saved as, where the person asked to save them again. */
  const savedBoard = offersReplacing
    ? round.boards.find(({ boardId }) => boardId === insertion?.boardId)
    : undefined;

  const mayGoOn =
    boardIndex < lastIndex &&
    fieldIsEmpty &&
    !pinsIn &&
    phase === 'pins-out' &&
    dialog === null &&
    trouble === null;
  const secondsLeft = useCountdown(mayGoOn ? doneBy(round, saved) : null, nextBoardAfterS, () => {
    if (!isDialogOpen()) goTo(boardIndex + 1, null);
  });

  function goTo(index: number, spot: number | null): void {
    const to = round.boards[index];
    if (!to) return;
    if (fieldIsEmpty) drafting.stop();
    void aimAt(to.boardId, spot);
  }

  const nextBoard = () => (boardIndex < lastIndex ? goTo(boardIndex + 1, null) : setDialog('finish'));

  /** To the next board, once nothing is on its way; where spots are open it says so, and a second press leaves them. */
  async function leaveBoard(): Promise<void> {
    if (!board) return;
    const atMs = performance.now();
    const { boardId } = board;
    const isAgain = asked?.boardId === boardId && atMs - asked.atMs > BOUNCE_MS;
    if (spotIndex === null) await settledRound();
    const { round: now } = useRound.getState();
    const left = now?.boards.find((each) => each.boardId === boardId);
    if (!left || now?.aim?.boardId !== boardId) return;
    if (openSpots(left) === 0 || isAgain) nextBoard();
    else setAsked({ boardId, atMs });
  }

  function chooseSpot(by: -1 | 1): void {
    const from = spotIndex ?? (by === 1 ? -1 : spots);
    goTo(boardIndex, Math.min(Math.max(from + by, 0), spots - 1));
  }

  /** Hands the number typed to what saves it. Anything else stays in the field, and the next key takes its place. */
  function withTyped(save: (raw: number, draft: Draft) => Promise<void>): void {
    if (!draft || fieldIsEmpty) return;
    const typed = readTyped(
      draft.text,
      round.boards.map(({ code }) => code),
    );
    if ('raw' in typed) void save(typed.raw, draft);
    else if ('boardCode' in typed) {
      drafting.stop();
      goToCode(typed.boardCode);
      useRound.setState({ done: message('round.is-board', typed) });
    } else {
      useRound.setState({ trouble: say(typed.problem) });
      field.current?.select();
    }
  }

  /** To the board whose label was scanned. */
  function goToCode(boardCode: string): void {
    const index = indexOfCode(round.boards, boardCode);
    if (index !== -1) goTo(index, null);
    else useRound.setState({ trouble: say('go-to.unknown', { stackName: round.stackName, boardCode }) });
  }

  const actions: Record<RoundAction, () => void> = {
    take: () => void saveLive(),
    // Where the spot was filled meanwhile, the person says what is meant.
    'save-typed': () => filledBy || withTyped(saveTyped),
    replace: () => {
      if (filledBy) withTyped((raw, typed) => replaceByTyped(raw, filledBy, typed));
      else if (savedBoard && insertion) void replaceByLive(insertion);
    },
    'save-at-next': () => {
      if (!board || nextSpot === null) return;
      const at = { boardId: board.boardId, spotIndex: nextSpot };
      withTyped((raw, typed) => saveTyped(raw, typed, at));
    },
    'use-meant': () => {
      const meant = saved && meantBy(saved.reading);
      if (saved && meant !== null) void replaceByTyped(meant, saved.reading);
    },
    'undo-last': () => void undoLast(),
    // The dialog is the button's, which is beside the reading.
    'exclude-last': () =>
      document.querySelector<HTMLElement>(`[data-reading="${newestOf(probed)?.id}"] button`)?.click(),
    'leave-board': () => void leaveBoard(),
    'next-board': nextBoard,
    'previous-board': () => goTo(boardIndex - 1, null),
    'first-board': () => goTo(0, null),
    'last-board': () => goTo(lastIndex, null),
    'go-to-board': () => setDialog('go-to-board'),
    'spot-up': () => chooseSpot(-1),
    'spot-down': () => chooseSpot(1),
    temperature: () => setDialog('temperature'),
    help: () => setDialog('keys'),
    finish: () => setDialog('finish'),
    'start-typing': () => drafting.type(''),
    'stop-typing': drafting.stop,
  };

  return {
    act: (action: RoundAction): void => {
      if (action !== 'leave-board') setAsked(null);
      actions[action]();
    },
    goTo,
    /** What leads to the spot of a value that was typed there and not saved; null where its board left. */
    goToDraft: ({ boardId, spotIndex }: Draft): (() => void) | null => {
      const index = round.boards.findIndex((each) => each.boardId === boardId);
      return index === -1 ? null : () => goTo(index, spotIndex);
    },
    goToCode,
    dialog,
    closeDialog: () => setDialog(null),
    board,
    boardIndex,
    isLast: boardIndex === lastIndex,
    probed,
    spotIndex,
    /** The spot that the pins which are in were saved at. */
    pinsAt: pinsIn?.roundId === round.id && pinsIn.boardId === board?.boardId ? pinsIn.spotIndex : null,
    typing,
    fieldIsEmpty,
    draft,
    filledBy,
    unsaved,
    nextSpot,
    type: drafting.type,
    restore: drafting.restore,
    meterIsLive,
    savedBoard,
    /** How many spots a second press leaves open; null where none was pressed. */
    leaves: board && fieldIsEmpty && asked?.boardId === board.boardId ? openSpots(board) || null : null,
    /** Until the next board comes by itself. */
    secondsLeft,
  };
}
export type Probing = ReturnType<typeof useProbing>;
