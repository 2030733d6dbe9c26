import { TRACE_LENGTH } from '../../../shared-core/contract/round.ts';
import { isFrom } from '../../../shared-core/gatt/source.ts';
import {
  type SettlingResult,
  type SettlingState,
  startSettling,
  step,
} from '../../../shared-core/probing/readings/settle.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import type { MeterNotification } from '../../meter/meter-link.ts';
import { createSignal } from '../signal.ts';
import type { ChosenLink } from './chosen-link.ts';
import type { MeterMemory } from './meter-memory.ts';

/** The newest value of the meter and what the settling detector makes of it. */
export interface LiveValue {
  /** In the meter's unit; null with the pins out. */
  value: number | null;
  unit: ReadingUnit;
  phase: SettlingResult['phase'];
  /** Spread of the values in the settling window, in the meter's unit; null with pins out. */
  spread: number | null;
  /** True for one sample of an insertion: it has just become steady. */
  settledNow: boolean;
  /** True for one sample of an insertion: the pins have just gone in, or moved. */
  inserted: boolean;
  meterId: number;
  /** The meter is not as it was, and a person has to confirm it first: the value is only shown. */
  isUnconfirmed: boolean;
}

/** Makes the values of the meter settle, whichever link they come over. */
export function createLiveValues(link: ChosenLink, memory: MeterMemory) {
  let settling: SettlingState | null = null;
  let live: LiveValue | null = null;
  let trace: (number | null)[] = [];
  const values = createSignal<LiveValue>();
  const settled = createSignal<LiveValue>();
  const lost = createSignal<LiveValue>();

  function take({ from, receivedAtMs, value: sent, isOther }: MeterNotification): void {
    const { description = null, toConfirm } = link.current().described ?? {};
    const meterId = memory.meterId();
    if (description === null || settling === null || meterId === null) return;
    if (isOther || !isFrom(description.source, from)) return;

    const before = settling.phase;
    const { state, phase, settledNow, spread, value } = step(settling, { atMs: receivedAtMs, value: sent });
    settling = state;
    live = {
      // What is steady is the window's value; until then the newest one is what a person would read off.
      value: phase === 'pins-out' ? null : phase === 'settled' ? value : sent,
      unit: description.unit,
      phase,
      spread,
      settledNow,
      inserted: phase === 'drifting' && before !== 'drifting',
      meterId,
      isUnconfirmed: toConfirm !== undefined,
    };
    trace.push(sent);
    if (trace.length > TRACE_LENGTH) trace.shift();
    values.give(live);
    if (settledNow) settled.give(live);
  }

  /** The meter is away: whatever it showed, the pins are in nothing that anybody reads. */
  function lose(): void {
    if (live === null) return;
    const description = link.current().described?.description;
    settling = description ? startSettling(description.unit, description.range) : null;
    const gone = {
      value: null,
      phase: 'pins-out',
      spread: null,
      settledNow: false,
      inserted: false,
    } as const;
    live = { ...live, ...gone };
    lost.give(live);
  }

  memory.remembered.follow(({ unit, range }) => {
    settling = startSettling(unit, range);
  });
  link.notified.follow(take);
  link.phaseChanged.follow((phase) => {
    if (phase !== 'live') lose();
  });
  link.left.follow(() => {
    settling = null;
    live = null;
    trace = [];
  });

  return {
    values,
    /** The value has just become steady. Given once everyone has the value itself, so that it is shown before it is saved. */
    settled,
    /** The meter is away; the value given has the pins out. */
    lost,
    newest: (): LiveValue | null => live,
    lose,
    /** Every value since it was last asked for, oldest first; the newest where they are more than are drawn. */
    takeTrace: (): (number | null)[] => {
      const taken = trace;
      trace = [];
      return taken;
    },
  };
}
