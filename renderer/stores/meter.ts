import { create } from 'zustand';
import type { MeterState } from '../../shared-core/contract/meter.ts';
import type { InsertionReading, Live } from '../../shared-core/contract/round.ts';
import { bridge } from '../data/bridge.ts';
import { useLink } from './link.ts';
import { sentenceOf } from './notices.ts';

/** How much of the live value the trace shows: some ten seconds of a lively meter. */
export const TRACE_LENGTH = 240;

interface MeterStore {
  /** Null until it was asked for. */
  state: MeterState | null;
  /** Why it could not be asked for. */
  error: string | null;
  /** The newest live value; null where the meter is not live. */
  live: Live | null;
  /** Newest last; null where the pins were out. */
  trace: (number | null)[];
  /** The reading that the pins which are in were saved as. */
  insertion: InsertionReading | null;
}

const nothing = { live: null, trace: [], insertion: null };

export const useMeter = create<MeterStore>()(() => ({ state: null, error: null, ...nothing }));

/** Whether a meter is live, and its values come to this window. */
export const isLiveHere = ({ state }: MeterStore): boolean =>
  state?.phase === 'live' && state.heldBy === 'this-window';

export function showMeter(state: MeterState): void {
  useMeter.setState((store) => ({ state, error: null, ...(!isLiveHere({ ...store, state }) && nothing) }));
}

/** From now on the meter's values come to this window. */
export async function holdMeter(): Promise<void> {
  showMeter(await bridge().command('meter.hold', {}));
}

export async function loadMeter(): Promise<void> {
  try {
    showMeter(await bridge().query('meter.state', {}));
  } catch (error) {
    useMeter.setState({ error: sentenceOf(error) });
  }
}

/** Listens to the meter from now on. */
export function followMeter(): () => void {
  const stops = [
    // What the meter showed before the link was lost is not what it shows.
    useLink.subscribe(({ state }) => state !== 'open' && useMeter.setState(nothing)),
    bridge().on('meter.state', showMeter),
    bridge().on('meter.insertion', ({ reading }) => useMeter.setState({ insertion: reading })),
    bridge().on('meter.live', (live) =>
      useMeter.setState(({ trace }) => ({ live, trace: [...trace, ...live.trace].slice(-TRACE_LENGTH) })),
    ),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
