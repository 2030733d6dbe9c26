import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../shared-core/contract/requests.ts';
import { isTouched } from '../../shared-core/contract/topics.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { bridge, nameYard } from '../data/bridge.ts';
import { inBatches } from '../data/in-batches.ts';
import { languageNow } from './language.ts';
import { go } from './navigation.ts';
import { attempt, dropNotices, sentenceOf } from './notices.ts';

interface YardStore {
  /** The yard that this window shows; null until it was asked for. */
  info: YardInfo | null;
  /** The yard that is open, where another window opened one that is not shown here. */
  other: YardInfo | null;
  /** Why it could not be asked for. */
  error: string | null;
}

export const useYard = create<YardStore>()(() => ({ info: null, other: null, error: null }));

/** Openings by this window that are under way: a change meanwhile is no other window's doing. */
let opening = 0;

function show(info: YardInfo): void {
  const { info: before } = useYard.getState();
  if (before !== null && before.uuid !== info.uuid) dropNotices();
  nameYard(info.uuid);
  // It is asked for with every change, and whatever shows it would be drawn again.
  const isSame = JSON.stringify(info) === JSON.stringify(before);
  useYard.setState({ info: isSame ? before : info, other: null, error: null });
}

/** Shows the open yard where none was shown; where another was, that one stays on screen until the person follows. */
function showOrOffer(open: YardInfo): void {
  const { info } = useYard.getState();
  if (info === null || info.uuid === null || info.uuid === open.uuid || open.uuid === null) show(open);
  else useYard.setState({ other: open, error: null });
}

/** Asks which yard is open. */
async function ask(): Promise<void> {
  showOrOffer(await bridge().query('yard.info', {}));
}

export const loadYard = (): Promise<void> =>
  ask().catch((error: unknown) => useYard.setState({ error: sentenceOf(error) }));

async function open(asked: Promise<YardInfo>): Promise<void> {
  opening++;
  try {
    show(await asked);
  } finally {
    opening--;
  }
}

export const openDemoYard = () => open(bridge().command('yard.openDemo', { language: languageNow() }));
export const openOwnYard = () => open(bridge().command('yard.openOwn', {}));
export const restoreYard = (file: string) => open(bridge().command('backups.restore', { file }));
export const mergeYard = (input: RequestInput<'exchange.merge'>) =>
  open(bridge().command('exchange.merge', input));
export const undoRestore = () => open(bridge().command('backups.undoRestore', {}));
export const openRescuedYard = () => open(bridge().command('yard.openRescued', {}));

/** @throws Refusal where the own yard is open, but the demo yard was not removed */
export async function removeDemoYard(): Promise<void> {
  const asked = bridge().command('yard.removeDemo', {});
  await open(asked);
  const { notRemoved } = await asked;
  if (notRemoved) throw new Refusal(notRemoved);
}
export const startYardAfresh = () => open(bridge().command('yard.startAfresh', {}));

export const salvageYard = () => open(bridge().command('recovery.salvage', {}));

/** Opens another yard in one of these ways, and shows its stacks. */
export const goToYard = (way: () => Promise<void>): Promise<void> =>
  attempt(way().then(() => go({ name: 'stacks' })));

/** Shows the yard that another window opened. */
export async function followOther(): Promise<void> {
  const { other } = useYard.getState();
  if (other) show(other);
}

/** Whether an event is about the yard on screen. */
export function isShown(yard: string | null): boolean {
  const { info } = useYard.getState();
  return info === null || info.uuid === yard;
}

/** Listens from now on for another yard, and for the number of its boards. */
export function followYard(): () => void {
  // Where it fails, the next change or the link's return asks again.
  const askAgain = (): void => void ask().catch(() => undefined);
  const follow = inBatches((changed) => isTouched(['boards'], changed) && askAgain());
  return bridge().on('changed', ({ yard, topics }) => {
    if (opening > 0) return;
    if (isShown(yard)) follow(topics);
    else askAgain();
  });
}
