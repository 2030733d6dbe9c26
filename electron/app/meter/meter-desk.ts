import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import { keyOfFrom } from '../../../shared-core/gatt/source.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { AppContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Windows } from '../windows.ts';
import { createChosenLink, type LinkMakers } from './chosen-link.ts';
import { createLiveValues } from './live-values.ts';
import { createMeterHolder } from './meter-holder.ts';
import { createMeterMemory } from './meter-memory.ts';

/** Bytes and meters found reach the windows at most this often. */
const STATE_EVERY_MS = 250;
const SIMULATED_ID = 'simulated';

/**
 * The meter as the app sees it, whichever link it comes over, and the window that uses it.
 * @param canSimulate  in the yard that is open
 * @param giveWay      has others let go of the adapter; resolves once it is free
 */
export function createMeterDesk(
  context: AppContext,
  make: LinkMakers,
  windows: Windows,
  canSimulate: () => boolean,
  giveWay: () => Promise<void>,
) {
  const link = createChosenLink(make, context.reportFault, isKnown);
  const memory = createMeterMemory(context, link);
  const values = createLiveValues(link, memory);
  const holder = createMeterHolder(windows);
  /** By the place they came from, hex. */
  const lastBytes = new Map<string, string>();
  let stateTimer: NodeJS.Timeout | null = null;

  /** None is where no yard can be read. */
  function isKnown(deviceId: string): boolean {
    try {
      return context.yard().meters.find('bluetooth', deviceId) !== undefined;
    } catch {
      return false;
    }
  }

  /** Which meter it is comes first, and then what its display shows. */
  function toConfirm(): MeterState['toConfirm'] {
    const sameAs = memory.mayBe().map(({ id: meterId, name: meterName }) => ({ meterId, meterName }));
    if (sameAs.length > 0) return { what: 'meter', ownName: memory.newName(), sameAs };
    const changed = link.current().described?.toConfirm;
    return changed ? { what: 'value', ...changed } : null;
  }

  function heldBy(window: string): MeterState['heldBy'] {
    const held = holder.window();
    if (held === null) return 'nobody';
    return held === window ? 'this-window' : 'another-window';
  }

  /** A sensor of the yard is no meter, unless it is one as well. */
  function metersHeard(): FoundDevice[] {
    const heard = link.devices();
    // Without a yard, nobody says which are its sensors.
    if (heard.length === 0 || !context.mayWrite()) return heard;
    const sensors = new Set(
      context
        .yard()
        .airSensors.list()
        .map(({ deviceId }) => deviceId),
    );
    return heard.filter(({ deviceId, isKnown: isMeter }) => isMeter || !sensors.has(deviceId));
  }

  function state(window: string): MeterState {
    const { kind, adapter, state: now, described, batteryPct, speciesSetting, counts } = link.current();
    return {
      kind,
      phase: now.phase,
      message: now.message,
      radio: adapter?.way ?? null,
      canSimulate: canSimulate(),
      heldBy: heldBy(window),
      devices: metersHeard(),
      deviceId: now.deviceId,
      deviceName: now.deviceName,
      meterId: memory.meterId(),
      description: described?.description ?? null,
      characteristics: (described?.characteristics ?? []).map((each) => ({
        serviceUuid: each.serviceUuid,
        characteristicUuid: each.characteristicUuid,
        canNotify: each.canNotify,
        canWrite: each.canWrite,
        userDescription: each.userDescription,
        lastBytesHex: lastBytes.get(keyOfFrom({ kind: 'characteristic', ...each })) ?? null,
      })),
      remarks: [
        ...(values.holdsNothing() ? [message('meter.self.holds-nothing')] : []),
        ...(described?.remarks ?? []),
      ],
      toConfirm: toConfirm(),
      batteryPct,
      speciesSetting,
      counts,
    };
  }

  function tellState(): void {
    if (stateTimer !== null) clearTimeout(stateTimer);
    stateTimer = null;
    for (const window of windows.ids()) context.emitTo(window, 'meter.state', state(window));
  }
  function tellStateSoon(): void {
    stateTimer ??= setTimeout(tellState, STATE_EVERY_MS);
  }

  /** From now on a window means another meter than before. */
  function meanAnother(window: string): void {
    if (link.current().kind !== 'bluetooth') throw new Refusal(message('refusal.meter-not-found'));
    link.left.give();
    holder.holdIfFree(window);
  }

  function stopUsing(): void {
    values.lose();
    link.left.give();
    link.use('none');
    tellState();
  }

  let phaseBefore: MeterState['phase'] = 'idle';
  link.phaseChanged.follow((phase) => {
    // What was heard before the meter got lost says nothing of what is in reach now.
    if (phase === 'reconnecting' && phaseBefore !== phase) link.forgetDevices();
    phaseBefore = phase;
  });
  link.changed.follow(tellState);
  link.deviceFound.follow(tellStateSoon);
  link.notified.follow(({ from, bytes }) => {
    if (bytes.length > 0) lastBytes.set(keyOfFrom(from), Buffer.from(bytes).toString('hex'));
    tellStateSoon();
  });
  link.left.follow(() => lastBytes.clear());
  holder.changed.follow(tellState);

  return {
    link,
    values,
    holder,
    /** Of the yard, that is connected; null for none. */
    meterId: memory.meterId,
    /** A person has to say first which meter it is, or what its display shows. */
    isToConfirm: (): boolean => toConfirm() !== null,
    remembered: memory.remembered,
    asOffered: memory.asOffered,
    checkMayBe: memory.checkMayBe,
    nameFor: memory.nameFor,
    /** The meter's row may say something else now: of how it is read, or of its address. */
    readAsSaved: (): void => {
      memory.readAsSaved();
      tellState();
    },
    /** Another yard was opened, or can be written to now. */
    yardOpened: (): void => {
      if (link.simulated() !== null && !canSimulate()) stopUsing();
      else tellState();
      memory.rememberAgain();
    },
    close: async (): Promise<void> => {
      if (stateTimer !== null) clearTimeout(stateTimer);
      memory.close();
      values.close();
      await link.close();
    },
    queries: { 'meter.state': (_, window) => state(window) } satisfies Partial<Queries>,
    commands: {
      'meter.scan': async (_, window) => {
        await giveWay();
        link.use('bluetooth');
        link.forgetDevices();
        link.current().startScan();
        return state(window);
      },
      'meter.connect': ({ deviceId }, window) => {
        meanAnother(window);
        const known = context.yard().meters.find('bluetooth', deviceId);
        // Of one that is no other meter, nothing may be known yet.
        link.current().connect(deviceId, known ? known.description : memory.readAsNamesakes(deviceId));
        return state(window);
      },
      'meter.listen': ({ deviceId }, window) => {
        meanAnother(window);
        link.current().listen(deviceId);
        return state(window);
      },
      'meter.tryStart': (start, window) => {
        link.current().tryStart(start);
        return state(window);
      },
      'meter.watch': (_, window) => {
        link.current().undescribe();
        return state(window);
      },
      'meter.simulate': (_, window) => {
        if (!canSimulate()) throw new Refusal(message('refusal.simulated-elsewhere'));
        link.use('simulated');
        holder.holdIfFree(window);
        link.current().connect(SIMULATED_ID, null);
        return state(window);
      },
      'meter.disconnect': async (_, window) => {
        await link.current().disconnect();
        stopUsing();
        return state(window);
      },
      'meter.hold': (_, window) => {
        holder.hold(window);
        return state(window);
      },
      'meter.isAnother': ({ deviceId }, window) => {
        memory.checkMayBe(deviceId);
        memory.isAnother(deviceId);
        tellState();
        return state(window);
      },
      'meter.describe': (description, window) => {
        if (link.current().state.deviceId === null) {
          throw new Refusal(message('refusal.meter-not-connected'));
        }
        link.current().describe(description);
        const refused = link
          .current()
          .described?.remarks.find(({ code }) => code === 'meter.self.not-offered');
        if (refused) throw new Refusal(refused);
        return state(window);
      },
    } satisfies Partial<Commands>,
  };
}
export type MeterDesk = ReturnType<typeof createMeterDesk>;
