import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { bridge } from '../data/bridge.ts';
import { takeUntold } from '../data/own-acts.ts';
import { wordsNow } from '../words.ts';
import { tellBesideLink } from './link.ts';
import { useNavigation } from './navigation.ts';

/** A sentence for the person: `done` goes by itself or with its page, `problem` stays until it is dismissed; a refusal goes with its page. */
export interface Notice {
  id: number;
  kind: 'done' | 'problem';
  sentence: string;
  /** The address at which it was told. */
  at: string;
  /** Takes back what was done, or does it again where it was undone; null where it says of nothing that could be. */
  undo: Undo | null;
  isUndone: boolean;
  /** Where the next step is; null where there is none. */
  link: NoticeLink | null;
  /** Nothing was done, and what to do instead is on the page where it was told. */
  isRefusal: boolean;
  /** The act that it is about, where it is known. */
  act: string | null;
}

export interface NoticeLink {
  words: string;
  href: string;
}

/** @param work  the window's id of it, for what may take long */
type Undo = (work: string) => Promise<unknown>;

export const useNotices = create<{ notices: Notice[] }>()(() => ({ notices: [] }));

const DONE_STAYS_MS = 6000;
/** As long as it takes to see that it was a mistake. */
const UNDOABLE_STAYS_MS = 20_000;
const MOST_AT_ONCE = 4;
let nextId = 1;

function tell(
  kind: Notice['kind'],
  sentence: string,
  undo: Notice['undo'] = null,
  {
    act = null,
    isUndone = false,
    isRefusal = false,
    link = null,
  }: Partial<Pick<Notice, 'act' | 'isUndone' | 'isRefusal' | 'link'>> = {},
): number {
  const notice: Notice = {
    id: nextId++,
    kind,
    sentence,
    at: location.hash,
    undo,
    act,
    isUndone,
    isRefusal,
    link,
  };
  // The same sentence again replaces the old one: twenty failures in a row are one notice. So does what became of an act.
  const isReplaced = (other: Notice) => other.sentence === sentence || (act !== null && other.act === act);
  useNotices.setState(({ notices }) => ({
    notices: [...notices.filter((other) => !isReplaced(other)), notice].slice(-MOST_AT_ONCE),
  }));
  if (kind === 'done') setTimeout(() => dismiss(notice.id), undo ? UNDOABLE_STAYS_MS : DONE_STAYS_MS);
  return notice.id;
}

/** Says that something was done, with a button that undoes it where it was an act of the yard, and one to the next step. */
export function tellDone(sentence: string, link: NoticeLink | null = null): void {
  const act = takeUntold();
  tell('done', sentence, act === null ? null : (work) => undoAct(act, 'undo', work), { act, link });
}

/** Undoes or redoes an act, and says what it was. */
export async function undoAct(act: string, what: 'undo' | 'redo', work: string | null = null): Promise<void> {
  const { say } = wordsNow();
  const { id, line } =
    what === 'undo'
      ? await bridge().command('acts.undo', { act, work })
      : await bridge().command('acts.redo', { act, work });
  if (what === 'redo')
    tell('done', say('act.redone', { line }), (more) => undoAct(id, 'undo', more), { act: id });
  else
    tell('done', say('act.undone', { line }), (more) => undoAct(id, 'redo', more), {
      act: id,
      isUndone: true,
    });
}

/** Says that something was done, with a button that undoes it. */
export function tellUndoable(sentence: string, undo: Undo): void {
  takeUntold();
  tell('done', sentence, undo);
}

/** Says what went wrong. */
export function tellProblem(error: unknown): void {
  tellBesideLink(error, () =>
    tell('problem', sentenceOf(error), null, { isRefusal: error instanceof Refusal }),
  );
}

let delay: number | null = null;

/** Says from now on that calls and dates are not up to date, until they are. */
export function followDelays(): () => void {
  return bridge().on('updates.delayed', ({ problem }) => {
    if (delay !== null) dismiss(delay);
    delay = problem && tell('problem', wordsNow().say(problem));
  });
}

/** From now on, what was done or refused elsewhere is not told on the next page. */
export function followLeaving(): () => void {
  return useNavigation.subscribe((now, before) => {
    if (now.visits === before.visits) return;
    useNotices.setState(({ notices }) => ({
      notices: notices.filter(
        ({ kind, isRefusal, at }) => (kind === 'problem' && !isRefusal) || at === location.hash,
      ),
    }));
  });
}

/** Another yard is shown: nothing told of the earlier one is of it, and nothing can be undone there. */
export function dropNotices(): void {
  useNotices.setState({ notices: [] });
}

export function dismiss(id: number): void {
  useNotices.setState(({ notices }) => ({ notices: notices.filter((notice) => notice.id !== id) }));
}

/** A refusal has its own sentence; anything else is a fault of ours, and its details are for the log. */
export function sentenceOf(error: unknown): string {
  if (error instanceof Refusal) return wordsNow().say(error.problem);
  console.error(error);
  return wordsNow().say('refusal.window-failed');
}

/**
 * Waits for a request and tells the person if it fails.
 * @returns its output, or undefined where it failed
 */
export async function attempt<T>(work: Promise<T>): Promise<T | undefined> {
  try {
    return await work;
  } catch (error) {
    tellProblem(error);
    return undefined;
  }
}
