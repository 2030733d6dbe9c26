import { create } from 'zustand';
import type { MeterState } from '../../shared-core/contract/meter.ts';
import type { Live } from '../../shared-core/contract/round.ts';
import { bridge } from '../bridge.ts';

/** How much of the live value the trace shows: some ten seconds of a lively meter. */
export const TRACE_LENGTH = 240;

interface MeterStore {
  /** Null until it was asked for. */
  state: MeterState | null;
  /** The newest live value; null where the meter is not live. */
  live: Live | null;
  /** Newest last; null where the pins were out. */
  trace: (number | null)[];
}

export const useMeter = create<MeterStore>()(() => ({ state: null, live: null, trace: [] }));

export function showMeter(state: MeterState): void {
  if (state.phase === 'live') useMeter.setState({ state });
  else useMeter.setState({ state, live: null, trace: [] });
}

export async function loadMeter(): Promise<void> {
  showMeter(await bridge().query('meter.state', {}));
}

/** Listens to the meter from now on. */
export function followMeter(): () => void {
  const stops = [
    bridge().on('meter.state', showMeter),
    bridge().on('meter.live', (live) =>
      useMeter.setState(({ trace }) => ({ live, trace: [...trace, ...live.trace].slice(-TRACE_LENGTH) })),
    ),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
