import type { ActName } from '../../shared-core/contract/requests.ts';

/** An act that this window did. */
interface OwnAct {
  id: string;
  yard: string | null;
}

let done: OwnAct[] = [];
let undone: OwnAct[] = [];
/** The newest one, until it is said that it was done. */
let untold: (OwnAct & { atMs: number }) | null = null;

/** Acts of this window of which nobody knows yet what came. */
const underWay = new Set<Promise<unknown>>();

/** As many as a person goes back by a key; the list of what was done has all. */
const MOST = 200;
/** So long after an act a sentence is about it. */
const TOLD_WITHIN_MS = 2000;

/** Said with what can be done about it in a round. */
const isToldElsewhere = (name: ActName): boolean => name.startsWith('rounds.') && name !== 'rounds.edit';

const without = (acts: readonly OwnAct[], id: string): OwnAct[] => acts.filter((act) => act.id !== id);

/** The machine did this act for the window. */
export function rememberAct(name: ActName, id: string, input: unknown, yard: string | null): void {
  const { act: of } = input as { act?: string };
  untold = null;
  if (of !== undefined && name === 'acts.undo') {
    done = without(done, of);
    undone = [...without(undone, of), { id: of, yard }].slice(-MOST);
  } else if (of !== undefined && name === 'acts.redo') {
    undone = without(undone, of);
    done = [...without(done, of), { id: of, yard }].slice(-MOST);
  } else {
    done = [...done, { id, yard }].slice(-MOST);
    undone = [];
    if (!isToldElsewhere(name)) untold = { id, yard, atMs: performance.now() };
  }
}

/** Another window undid or redid it first: it is no more to be undone, or redone, by a key here. */
export function forgetAct(id: string): void {
  done = without(done, id);
  undone = without(undone, id);
}

/** Hears when this act is answered. */
export function followAct<T>(answer: Promise<T>): Promise<T> {
  underWay.add(answer);
  const isOver = () => underWay.delete(answer);
  answer.then(isOver, isOver);
  return answer;
}

/** All that this window has asked to be done until now is answered, or lost. */
export async function allAnswered(): Promise<void> {
  await Promise.allSettled(underWay);
}

/** The newest act of this window in a yard that is done, or undone; null where there is none. */
export const newestAct = (what: 'done' | 'undone', yard: string | null): string | null =>
  (what === 'done' ? done : undone).findLast((act) => act.yard === yard)?.id ?? null;

/** The act that a sentence said now is about; null where none was done just before. */
export function takeUntold(): string | null {
  const act = untold;
  untold = null;
  return act !== null && performance.now() - act.atMs < TOLD_WITHIN_MS ? act.id : null;
}
