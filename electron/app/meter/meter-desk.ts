import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import type { Spot } from '../../../shared-core/probing/readings/reading.ts';
import {
  type SettlingResult,
  type SettlingState,
  startSettling,
  step,
} from '../../../shared-core/probing/readings/settle.ts';
import type { Corrected, ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { MeterLink, MeterNotification } from '../../meter/meter-link.ts';
import type { SimulatedLink } from '../../meter/simulated-link.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkCurve } from '../stock/known-curve.ts';
import { settingsOf } from '../yard/settings.ts';
import { simulatedTruth } from './simulated-truth.ts';

/** How a link of each kind is made; a fresh one each time the kind is chosen. */
export interface LinkMakers {
  none(): MeterLink;
  bluetooth(): MeterLink;
  simulated(): SimulatedLink;
}

/** The newest value of the meter and what the settling detector makes of it. */
export interface LiveValue {
  /** In the meter's unit; null with the pins out. */
  value: number | null;
  unit: ReadingUnit;
  phase: SettlingResult['phase'];
  /** True for one sample of an insertion: it has just become steady. */
  settledNow: boolean;
  /** True for one sample of an insertion: the pins have just gone in, or moved. */
  inserted: boolean;
  meterId: number;
}

/** The window is told of live values at most this often, whatever the meter's rate. */
const LIVE_EVERY_MS = 50;
/** And of changes to the list of meters heard at most this often. */
const STATE_EVERY_MS = 250;
/** Longest trace in one event: more would be narrower than a pixel. */
const LONGEST_TRACE = 64;
const SIMULATED_ID = 'simulated';

/** Those of unknown strength last. */
function strongestFirst(a: FoundDevice, b: FoundDevice): number {
  if (a.rssiDbm === null || b.rssiDbm === null)
    return Number(a.rssiDbm === null) - Number(b.rssiDbm === null);
  return b.rssiDbm - a.rssiDbm;
}

/** Whether what was read under the one description is judged the same under the other. */
function judgesAlike(a: MeterDescription, b: MeterDescription): boolean {
  return (
    a.range.min === b.range.min &&
    a.range.max === b.range.max &&
    a.basis?.curveId === b.basis?.curveId &&
    a.basis?.tempC === b.basis?.tempC
  );
}

/** The meter as the app sees it, whichever link it comes over. */
export function createMeterDesk(context: AppContext, judging: Pick<Judging, 'judgeAgain'>, make: LinkMakers) {
  let link: MeterLink = make.none();
  let simulated: SimulatedLink | null = null;
  let devices = new Map<string, FoundDevice>();
  let lastBytes = new Map<string, string>();
  let meterId: number | null = null;
  let settling: SettlingState | null = null;
  let live: LiveValue | null = null;
  let spread: number | null = null;
  let trace: (number | null)[] = [];
  let liveTimer: NodeJS.Timeout | null = null;
  let stateTimer: NodeJS.Timeout | null = null;
  let aimedAt: { boardId: number; spot: Spot } | null = null;
  let hear: (live: LiveValue) => void = () => undefined;
  let correct: (live: LiveValue) => Corrected | null = () => null;

  function state(): MeterState {
    const { phase, message, deviceId, deviceName } = link.state;
    return {
      kind: link.kind,
      phase,
      message,
      devices: [...devices.values()].toSorted(strongestFirst),
      deviceId,
      deviceName,
      meterId,
      description: link.described?.description ?? null,
      characteristics: (link.described?.characteristics ?? []).map((each) => ({
        serviceUuid: each.serviceUuid,
        characteristicUuid: each.characteristicUuid,
        canNotify: each.canNotify,
        userDescription: each.userDescription,
        lastBytesHex: lastBytes.get(`${each.serviceUuid} ${each.characteristicUuid}`) ?? null,
      })),
      remarks: link.described?.remarks ?? [],
      batteryPct: link.batteryPct,
      counts: link.counts,
    };
  }

  function tellState(): void {
    if (stateTimer !== null) clearTimeout(stateTimer);
    stateTimer = null;
    context.emit('meter.state', state());
  }
  function tellStateSoon(): void {
    stateTimer ??= setTimeout(tellState, STATE_EVERY_MS);
  }

  function use(kind: MeterState['kind']): void {
    if (link.kind === kind) return;
    const old = link;
    old.removeAllListeners();
    old.close().catch(context.reportFault);
    forget();
    devices = new Map();
    simulated = kind === 'simulated' ? make.simulated() : null;
    link = simulated ?? (kind === 'bluetooth' ? make.bluetooth() : make.none());
    listen(link);
  }

  function forget(): void {
    lastBytes = new Map();
    meterId = null;
    settling = null;
    live = null;
    spread = null;
    trace = [];
  }

  function listen(to: MeterLink): void {
    to.on('adapter', tellState);
    to.on('battery', tellState);
    to.on('state', ({ phase }) => {
      if (phase !== 'live' && live !== null) pinsOut();
      // Links differ in what comes first, the description or the name of the device.
      if (phase === 'live' && meterId === null) remember();
      tellState();
    });
    to.on('found', ({ deviceId, name, rssiDbm }) => {
      devices.set(deviceId, { deviceId, name, rssiDbm });
      tellStateSoon();
    });
    to.on('described', () => {
      remember();
      tellState();
    });
    to.on('notification', take);
  }

  /** Gives the connected meter its row in the open yard, with how it is read. */
  function remember(): void {
    const description = link.described?.description ?? null;
    const { deviceId, deviceName } = link.state;
    if (link.kind === 'none' || deviceId === null || description === null) return;
    // Remembered when it can be: `rememberAgain`.
    if (!context.mayWrite()) return;
    const { meters } = context.yard();
    const before = meters.find(link.kind, deviceId)?.description ?? null;
    const name = deviceName || devices.get(deviceId)?.name || deviceId;
    meterId = meters.put({ kind: link.kind, deviceId, name, description }, context.now()).id;
    settling = startSettling(description.unit, description.range);
    if (before !== null && !judgesAlike(before, description))
      judging.judgeAgain(meters.boardsReadWith(meterId));
  }

  function take(notification: MeterNotification): void {
    const at = `${notification.serviceUuid} ${notification.characteristicUuid}`;
    if (notification.bytes.length > 0) lastBytes.set(at, Buffer.from(notification.bytes).toString('hex'));
    const description = link.described?.description ?? null;
    tellStateSoon();
    if (description === null || settling === null || meterId === null) return;
    if (at !== `${description.serviceUuid} ${description.characteristicUuid}`) return;

    const before = settling.phase;
    const result = step(settling, { atMs: notification.receivedAtMs, value: notification.value });
    settling = result.state;
    spread = result.spread;
    // What is steady is the window's value; until then the newest one is what a person would read off.
    const value =
      result.phase === 'pins-out' ? null : result.phase === 'settled' ? result.value : notification.value;
    live = {
      value,
      unit: description.unit,
      phase: result.phase,
      settledNow: result.settledNow,
      inserted: result.phase === 'drifting' && before !== 'drifting',
      meterId,
    };
    trace = [...trace, notification.value].slice(-LONGEST_TRACE);
    hear(live);
    liveTimer ??= setTimeout(() => tellLive(notification.receivedAtMs), LIVE_EVERY_MS);
  }

  function tellLive(atMs: number): void {
    liveTimer = null;
    if (live === null) return;
    context.emit('meter.live', {
      atMs,
      raw: live.value,
      unit: live.unit,
      corrected: live.value === null ? null : correct(live),
      phase: live.phase,
      spread,
      trace,
    });
    trace = [];
  }

  function pinsOut(): void {
    if (live === null) return;
    const description = link.described?.description;
    settling = description ? startSettling(description.unit, description.range) : null;
    live = { ...live, value: null, phase: 'pins-out', settledNow: false, inserted: false };
    spread = null;
    tellLive(Date.parse(context.now()));
  }

  function aimSimulated(): void {
    simulated?.setTruth(
      aimedAt && simulatedTruth(orRefuse(context.yard().boards.get(aimedAt.boardId), 'board'), aimedAt.spot),
    );
  }

  listen(link);

  return {
    live: (): LiveValue | null => live,
    savesWhenSettled: (): boolean => settingsOf(context.yard()).saveWhenSettled,
    /** Who is told of every value, and who corrects the newest one for the board aimed at. */
    attach: (listener: (live: LiveValue) => void, corrector: (live: LiveValue) => Corrected | null): void => {
      hear = listener;
      correct = corrector;
    },
    /** Where the person is about to push the pins. Only the simulated meter has a use for it. */
    aim: (at: { boardId: number; spot: Spot } | null): void => {
      aimedAt = at;
      aimSimulated();
    },
    /** Another yard was opened, or can be written to now: the connected meter needs a row in that one. */
    rememberAgain: (): void => {
      meterId = null;
      if (link.described !== null) remember();
    },
    close: async (): Promise<void> => {
      for (const timer of [liveTimer, stateTimer]) if (timer !== null) clearTimeout(timer);
      link.removeAllListeners();
      await link.close();
    },
    queries: { 'meter.state': state } satisfies Partial<Queries>,
    commands: {
      'meter.scan': () => {
        use('bluetooth');
        devices = new Map();
        link.startScan();
        return state();
      },
      'meter.connect': ({ deviceId }) => {
        if (link.kind !== 'bluetooth') {
          throw new Refusal(message('refusal.meter-not-found'));
        }
        forget();
        link.connect(deviceId, context.yard().meters.find('bluetooth', deviceId)?.description ?? null);
        return state();
      },
      'meter.simulate': () => {
        use('simulated');
        link.connect(SIMULATED_ID, null);
        aimSimulated();
        return state();
      },
      'meter.disconnect': async () => {
        await link.disconnect();
        pinsOut();
        forget();
        use('none');
        tellState();
        return state();
      },
      'meter.describe': (description) => {
        if (link.state.deviceId === null) {
          throw new Refusal(message('refusal.meter-not-connected'));
        }
        checkCurve(description.basis?.curveId ?? null, message('refusal.meter-as-before'));
        link.describe(description);
        return state();
      },
    } satisfies Partial<Commands>,
  };
}
export type MeterDesk = ReturnType<typeof createMeterDesk>;
