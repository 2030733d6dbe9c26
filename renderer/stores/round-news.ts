import { Refusal } from '../../shared-core/contract/answer.ts';
import type {
  ProbedBoard,
  RoundChange,
  RoundOutdated,
  ValueNotSaved,
} from '../../shared-core/contract/round.ts';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import { bridge } from '../data/bridge.ts';
import { useNavigation } from './navigation.ts';
import { sentenceOf, tellProblem } from './notices.ts';
import { type Saved, useRound } from './round.ts';
import { followWhenSettled } from './round-aim.ts';
import { openRound, refreshRound } from './round-opening.ts';
import { saveLive } from './round-saving.ts';
import { isShown } from './yard.ts';

/** The reading saved last, as long as it is not excluded. */
function stillSaved(saved: Saved | null, changed: ProbedBoard): Saved | null {
  if (saved?.board.boardId !== changed.boardId) return saved;
  const reading = changed.assessment?.readings.find((each) => each.id === saved.reading.id);
  return reading && reading.excluded === null ? { ...saved, reading, board: changed } : null;
}

/** Merges what happened into the round on screen; news of another round changes nothing. */
export function mergeChange(change: RoundChange): void {
  useRound.setState((store) => {
    if (store.round?.id !== change.roundId) return store;
    const { board, summary, savedReadingId } = change;
    const reading = board.assessment?.readings.find((each) => each.id === savedReadingId);
    const before = store.round.boards.find(({ boardId }) => boardId === board.boardId)?.finding;
    const wasDone = before?.openSpot === null;
    const boards = store.round.boards.map((each) => (each.boardId === board.boardId ? board : each));
    const isAimedAt = board.boardId === store.round.aim?.boardId;
    return {
      round: { ...store.round, boards, summary, probed: isAimedAt ? board : store.round.probed },
      trouble: reading ? null : store.trouble,
      done: reading ? null : store.done,
      offersReplacing: reading ? false : store.offersReplacing,
      saved: reading ? { reading, board, wasDone } : stillSaved(store.saved, board),
    };
  });
  followWhenSettled(change);
}

/**
 * What is read comes as `round.changed`, and what a forecast changes as `round.outdated`; everything else that the round
 * shows is asked for again when it changes.
 */
function askAgain(topics: readonly Topic[]): void {
  const { round } = useRound.getState();
  if (round === null) return;
  const changed = new Set(topics);
  if (changed.has('yard')) {
    // Where another window opened another yard meanwhile, nothing aims here any more.
    void openRound(round.id);
    return;
  }
  const isBeingJudged = round.boards.some((board) => board.isRead && board.finding === null);
  // What is found in the background of another round, by no act, leaves this one as it is.
  const isOfAnother = topics.some((topic) => topic.startsWith('round:')) && !changed.has(`round:${round.id}`);
  if (isOfAnother && !changed.has('acts')) return;
  const watched: Topic[] = ['stacks', 'places', 'species', 'endUses'];
  if (round.aim === null) watched.push('outlooks');
  if (isBeingJudged || round.finishedAt !== null) watched.push(`round:${round.id}`);
  if (!isTouched(watched, changed)) return;
  // One that another window reopened takes readings here, too.
  void (round.aim === null ? openRound(round.id) : refreshRound(round.id));
}

/** More changed than one board, as where boards left the stack. */
function takeIn({ roundId, why }: RoundOutdated): void {
  if (useRound.getState().round?.id !== roundId) return;
  if (why !== null) useRound.setState({ trouble: sentenceOf(new Refusal(why)) });
  void refreshRound(roundId);
}

/** Listens to the round from now on. */
export function followRound(): () => void {
  const unfollow = [
    bridge().on('round.changed', mergeChange),
    bridge().on('round.outdated', takeIn),
    bridge().on('meter.pressed', () => void saveLive()),
    bridge().on('changed', ({ yard, topics }) => isShown(yard) && askAgain(topics)),
  ];
  return () => {
    for (const each of unfollow) each();
  };
}

/** Shows in the round why a value was not saved. The meter goes on while another screen is open; then it is shown there. */
function showNotSaved({ roundId, problem }: ValueNotSaved): void {
  const refusal = new Refusal(problem);
  const { route } = useNavigation.getState();
  if (route.name === 'round' && route.id === roundId) useRound.setState({ trouble: sentenceOf(refusal) });
  else tellProblem(refusal);
}

/** Listens from now on, on every screen, for values that could not be saved. */
export function followNotSaved(): () => void {
  return bridge().on('round.notSaved', showNotSaved);
}
