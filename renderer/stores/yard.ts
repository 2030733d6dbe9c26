import { create } from 'zustand';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { bridge } from '../bridge.ts';
import { sentenceOf } from './notices.ts';

interface YardStore {
  /** Null until it was asked for. */
  info: YardInfo | null;
  /** Why it could not be asked for. */
  error: string | null;
  /** Goes up whenever stacks, boards, places or settings changed: lists on screen are asked for again. */
  changes: number;
}

export const useYard = create<YardStore>()(() => ({ info: null, error: null, changes: 0 }));

async function show(asked: Promise<YardInfo>): Promise<void> {
  const info = await asked;
  useYard.setState(({ changes }) => ({ info, error: null, changes: changes + 1 }));
}

/** Asks which yard is open. */
export async function loadYard(): Promise<void> {
  try {
    await show(bridge().query('yard.info', {}));
  } catch (error) {
    useYard.setState({ error: sentenceOf(error) });
  }
}

export const openDemoYard = () => show(bridge().command('yard.openDemo', {}));
export const openOwnYard = () => show(bridge().command('yard.openOwn', {}));
export const removeDemoYard = () => show(bridge().command('yard.removeDemo', {}));
export const startYardAfresh = () => show(bridge().command('yard.startAfresh', {}));

/** Listens for changes from now on. */
export function followYard(): () => void {
  return bridge().on('yard.changed', () => {
    useYard.setState(({ changes }) => ({ changes: changes + 1 }));
    void loadYardQuietly();
  });
}

/** The number of boards may have changed; a failure here changes nothing on screen. */
async function loadYardQuietly(): Promise<void> {
  try {
    useYard.setState({ info: await bridge().query('yard.info', {}) });
  } catch {
    // The next change or the link's return asks again.
  }
}
