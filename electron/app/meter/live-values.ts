import { TRACE_LENGTH } from '../../../shared-core/contract/round.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { isFrom } from '../../../shared-core/gatt/source.ts';
import {
  type SettlingResult,
  type SettlingState,
  startSettling,
  step,
} from '../../../shared-core/probing/readings/settle.ts';
import {
  noPace,
  silenceMs,
  silentAfterMs,
  withPacket,
} from '../../../shared-core/probing/readings/silence.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import type { MeterNotification } from '../../meter/meter-link.ts';
import { monotonicMs } from '../../monotonic.ts';
import { createSignal } from '../signal.ts';
import type { ChosenLink } from './chosen-link.ts';
import type { MeterMemory } from './meter-memory.ts';

/** Off for less than this with the same pins in, a button was not let go: its contact is worn, or a packet was lost. ms. */
const RELEASED_MS = 1000;
/** Nobody pulls the pins and pushes them in elsewhere in less; common practice, no source. ms. */
const MOVED_MS = 2000;
/** So many packets in a row that are not what a meter holds, and it holds nothing: one alone may be damaged. */
const OTHERS = 2;
/** How often windows hear for how long a meter has been silent, ms. */
const SILENCE_TOLD_EVERY_MS = 1000;

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
  /** Temperature of the wood or of its probe, as the meter last said since it is live, °C; null before it did. */
  tempC: number | null;
  /** A person has to say first which meter it is, or what its display shows: the value is only shown. */
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
  const pressed = createSignal<{ mayHaveMoved: boolean }>();
  const silenced = createSignal();
  let pace = noPace();
  let silenceTimer: NodeJS.Timeout | null = null;
  /** Whether the meter holds its value; null until it said so. */
  let isHeld: boolean | null = null;
  /** What it holds, and how many packets in a row said otherwise. */
  let held: { value: number | null; others: number } | null = null;
  /** When it last said that it holds a value of the pins that are in; null where it did not. */
  let heldAtMs: number | null = null;
  /** When it began to hold that value. */
  let heldSinceMs: number | null = null;
  let holdsNothing = false;
  let tempC: number | null = null;
  /** Settling began again with the pins in, so that the next value is no sign that they went in. */
  let wasIn = false;

  function take(packet: MeterNotification): void {
    const { description = null } = link.current().described ?? {};
    if (description === null || !isFrom(description.source, packet.from)) return;
    tempC = packet.tempC ?? tempC;
    const wasHeld = isHeld;
    isHeld = packet.isHeld ?? isHeld;
    // While it holds a value it may send at another pace.
    if (isHeld !== wasHeld) forgetPace();
    if (!packet.isOther) hearPace(packet);
    if (!packet.isOther) {
      if (!(isHeld && wasHeld) || held === null) held = { value: packet.value, others: 0 };
      else if (held.others < OTHERS) held.others = packet.value === held.value ? 0 : held.others + 1;
      if (held.others === OTHERS) holdsNothing = true;
      // That a held value stays the same says nothing of the pins.
      if (isHeld && wasHeld && held.others < OTHERS) showHeld();
      else takeValue(packet, description);
    }
    if (!isHeld) return;
    const isAgain = heldAtMs !== null && packet.receivedAtMs - heldAtMs < RELEASED_MS;
    const heldForMs = heldAtMs !== null && heldSinceMs !== null ? heldAtMs - heldSinceMs : 0;
    heldAtMs = packet.receivedAtMs;
    if (wasHeld !== false || isAgain) return;
    heldSinceMs = packet.receivedAtMs;
    pressed.give({ mayHaveMoved: heldForMs >= MOVED_MS });
  }

  function takeValue({ receivedAtMs, value: sent }: MeterNotification, { unit }: MeterDescription): void {
    const meterId = memory.meterId();
    if (settling === null || meterId === null) return;
    const before = settling.phase;
    const { state, phase, settledNow, spread, value } = step(settling, { atMs: receivedAtMs, value: sent });
    settling = state;
    live = {
      // What is steady is the window's value; until then the newest one is what a person would read off.
      value: phase === 'pins-out' ? null : phase === 'settled' ? value : sent,
      unit,
      phase,
      spread,
      settledNow,
      inserted: phase === 'drifting' && before !== 'drifting' && !wasIn,
      meterId,
      tempC,
      isUnconfirmed: memory.mayBe().length > 0 || link.current().described?.toConfirm !== undefined,
    };
    wasIn = false;
    if (live.inserted || phase === 'pins-out') heldAtMs = null;
    addToTrace(phase === 'pins-out' ? null : sent);
    values.give(live);
    if (settledNow) settled.give(live);
  }

  function hearPace({ receivedAtMs, value, tempC: warmth, problem }: MeterNotification): void {
    pace = withPacket(pace, receivedAtMs, JSON.stringify([value, warmth, problem]));
    const afterMs = silentAfterMs(pace);
    if (afterMs !== null && silenceTimer === null) watchSilence(afterMs);
  }

  /** One timer for many values: it looks when the newest that was known then is due to be followed. */
  function watchSilence(afterMs: number): void {
    silenceTimer = setTimeout(() => {
      silenceTimer = null;
      const dueMs = silentAfterMs(pace);
      if (dueMs === null || pace.newestAtMs === null) return;
      const nowMs = monotonicMs();
      const isSilent = silenceMs(pace, nowMs) !== null;
      if (isSilent) silenced.give();
      watchSilence(isSilent ? SILENCE_TOLD_EVERY_MS : Math.min(dueMs, dueMs - (nowMs - pace.newestAtMs)));
    }, afterMs);
    silenceTimer.unref();
  }

  function forgetPace(): void {
    pace = noPace();
    if (silenceTimer !== null) clearTimeout(silenceTimer);
    silenceTimer = null;
  }

  function showHeld(): void {
    if (live === null) return;
    live = { ...live, tempC, settledNow: false, inserted: false };
    addToTrace(live.value);
    values.give(live);
  }

  function addToTrace(sent: number | null): void {
    trace.push(sent);
    if (trace.length > TRACE_LENGTH) trace.shift();
  }

  function forgetHold(): void {
    isHeld = null;
    held = null;
    heldAtMs = null;
    holdsNothing = false;
  }

  /** Whatever it showed, the pins are in nothing that anybody reads. */
  function showNothing(): void {
    if (live === null) return;
    const gone = {
      value: null,
      phase: 'pins-out',
      spread: null,
      settledNow: false,
      inserted: false,
    } as const;
    live = { ...live, ...gone };
  }

  function keepIn(): void {
    wasIn ||= live !== null && live.phase !== 'pins-out';
  }

  function startAgain({ unit, range }: MeterDescription): void {
    keepIn();
    settling = startSettling(unit, range);
  }

  /** The meter is away. */
  function lose(): void {
    forgetHold();
    forgetPace();
    tempC = null;
    if (live === null) return;
    const description = link.current().described?.description;
    if (description) startAgain(description);
    else settling = null;
    showNothing();
    lost.give(live);
  }

  memory.remembered.follow((description) => {
    forgetHold();
    forgetPace();
    startAgain(description);
    // Read as it was described before.
    showNothing();
  });
  link.notified.follow(take);
  link.phaseChanged.follow((phase) => {
    if (phase !== 'live') lose();
  });
  link.left.follow(() => {
    forgetHold();
    forgetPace();
    tempC = null;
    settling = null;
    keepIn();
    live = null;
    trace = [];
  });

  return {
    values,
    /** The value has just become steady. Given once everyone has the value itself, so that it is shown before it is saved. */
    settled,
    /** The meter began to hold its value: its button was pressed. Given after the value, with whether the last hold hid a move. */
    pressed,
    /** The meter is away; the value given has the pins out. */
    lost,
    newest: (): LiveValue | null => live,
    /** A meter that sent steadily is silent, told again while it is; the next value ends it. */
    silenced,
    /** For how long it has been silent, whole s; null while it sends, and where nobody can tell. */
    silentS: (): number | null => {
      const ms = silenceMs(pace, monotonicMs());
      return ms === null ? null : Math.floor(ms / 1000);
    },
    lose,
    close: forgetPace,
    /** It went on to other values while it said that it holds one. */
    holdsNothing: (): boolean => holdsNothing,
    /** Every value since it was last asked for, oldest first; the newest where they are more than are drawn. */
    takeTrace: (): (number | null)[] => {
      const taken = trace;
      trace = [];
      return taken;
    },
  };
}
export type LiveValues = ReturnType<typeof createLiveValues>;
