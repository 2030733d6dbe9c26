import { create } from 'zustand';
import { isTouched } from '../../shared-core/contract/topics.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { bridge } from '../bridge.ts';
import { sentenceOf } from './notices.ts';

interface YardStore {
  /** Null until it was asked for. */
  info: YardInfo | null;
  /** Why it could not be asked for. */
  error: string | null;
}

export const useYard = create<YardStore>()(() => ({ info: null, error: null }));

async function show(asked: Promise<YardInfo>): Promise<void> {
  const info = await asked;
  useYard.setState({ info, error: null });
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

/** Listens from now on for another yard, and for the number of its boards. */
export function followYard(): () => void {
  return bridge().on('changed', ({ topics }) => {
    if (isTouched(['boards'], new Set(topics))) void loadYardQuietly();
  });
}

/** A failure here changes nothing on screen. */
async function loadYardQuietly(): Promise<void> {
  try {
    useYard.setState({ info: await bridge().query('yard.info', {}) });
  } catch {
    // The next change or the link's return asks again.
  }
}
