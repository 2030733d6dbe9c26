import { create } from 'zustand';
import type { MeterState } from '../../shared-core/contract/meter.ts';
import { type InsertionReading, type Live, TRACE_LENGTH } from '../../shared-core/contract/round.ts';
import { bridge } from '../data/bridge.ts';
import { inFrames } from '../data/in-frames.ts';
import { useLink } from './link.ts';
import { attempt, sentenceOf } from './notices.ts';

export interface MeterStore {
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
  /** The meter was away since these pins were saved: none saves itself before it has shown them out. */
  wasAway: boolean;
  /** Their value settled while no round was open, so it did not save itself. */
  isMissed: boolean;
  /** The board in hand when the pins went in; null where none was, and with the pins out. */
  beganOn: number | null;
}

const nothing = { live: null, trace: [] };
const noPins = { insertion: null, wasAway: false, isMissed: false, beganOn: null };

export const useMeter = create<MeterStore>()(() => ({
  state: null,
  error: null,
  ...nothing,
  ...noPins,
}));

/** Whether a meter is live, and its values come to this window. */
export const isLiveHere = ({ state }: MeterStore): boolean =>
  state?.phase === 'live' && state.heldBy === 'this-window';

/** What came since the last frame is drawn as the newest value, with the trace of all. */
function showLive(came: readonly Live[]): void {
  const live = came.at(-1) ?? null;
  const traces = came.flatMap((each) => each.trace);
  useMeter.setState(({ trace }) => ({ live, trace: [...trace, ...traces].slice(-TRACE_LENGTH) }));
}

export function showMeter(state: MeterState): void {
  useMeter.setState((store) => ({
    state,
    error: null,
    ...(!isLiveHere({ ...store, state }) && nothing),
    ...(state.heldBy !== 'this-window' && noPins),
  }));
}

/** Shows what the meter came to by an order; false where it was refused. */
export async function askMeter(order: Promise<MeterState>): Promise<boolean> {
  const state = await attempt(order);
  if (state) showMeter(state);
  return state !== undefined;
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

const isSameReading = (a: InsertionReading | null, b: InsertionReading | null): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

/** Listens to the meter from now on. */
export function followMeter(): () => void {
  const lives = inFrames(showLive);
  const stops = [
    // What the meter showed before the link was lost is not what it shows.
    useLink.subscribe(({ state }) => state !== 'open' && useMeter.setState({ ...nothing, ...noPins })),
    useMeter.subscribe(({ live }) => live === null && lives.drop()),
    bridge().on('meter.state', showMeter),
    bridge().on('meter.insertion', ({ reading, ...how }) =>
      // It is told again wherever the aim moves: then nothing is drawn again.
      useMeter.setState(({ insertion }) => ({
        insertion: isSameReading(insertion, reading) ? insertion : reading,
        ...how,
      })),
    ),
    bridge().on('meter.live', lives.take),
  ];
  return () => {
    for (const stop of stops) stop();
    lives.drop();
  };
}
