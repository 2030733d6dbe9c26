import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import type { MeterLink, MeterNotification } from '../../meter/meter-link.ts';
import type { SimulatedLink } from '../../meter/simulated-link.ts';
import { createSignal } from '../signal.ts';

/** How a link of each kind is made; a fresh one each time the kind is chosen. */
export interface LinkMakers {
  none(): MeterLink;
  bluetooth(): MeterLink;
  simulated(): SimulatedLink;
}

/** Those of unknown strength last. */
function strongestFirst(a: FoundDevice, b: FoundDevice): number {
  if (a.rssiDbm === null || b.rssiDbm === null)
    return Number(a.rssiDbm === null) - Number(b.rssiDbm === null);
  return b.rssiDbm - a.rssiDbm;
}

/** The link in use, of whichever kind, and the meters heard over it. */
export function createChosenLink(make: LinkMakers, reportFault: (error: unknown) => void) {
  let link: MeterLink = make.none();
  let simulated: SimulatedLink | null = null;
  let devices = new Map<string, FoundDevice>();

  const phaseChanged = createSignal<MeterState['phase']>();
  const described = createSignal();
  const notified = createSignal<MeterNotification>();
  const changed = createSignal();
  const deviceFound = createSignal();
  const left = createSignal();

  function listen(): void {
    link.on('adapter', () => changed.give());
    link.on('battery', () => changed.give());
    link.on('state', ({ phase }) => {
      phaseChanged.give(phase);
      changed.give();
    });
    link.on('found', ({ deviceId, name, rssiDbm }) => {
      devices.set(deviceId, { deviceId, name, rssiDbm });
      deviceFound.give();
    });
    link.on('described', () => {
      described.give();
      changed.give();
    });
    link.on('notification', notified.give);
  }
  listen();

  return {
    phaseChanged,
    /** How the meter is read is known, or is another now. */
    described,
    notified,
    /** What the meter's state shows is another now. */
    changed,
    deviceFound,
    /** Another meter is meant from now on. */
    left,
    current: (): MeterLink => link,
    /** Null while another kind is in use. */
    simulated: (): SimulatedLink | null => simulated,
    devices: (): FoundDevice[] => [...devices.values()].toSorted(strongestFirst),
    forgetDevices: (): void => {
      devices = new Map();
    },
    use: (kind: MeterState['kind']): void => {
      if (link.kind === kind) return;
      const old = link;
      old.removeAllListeners();
      old.close().catch(reportFault);
      left.give();
      devices = new Map();
      simulated = kind === 'simulated' ? make.simulated() : null;
      link = simulated ?? (kind === 'bluetooth' ? make.bluetooth() : make.none());
      listen();
    },
    close: async (): Promise<void> => {
      link.removeAllListeners();
      await link.close();
    },
  };
}
export type ChosenLink = ReturnType<typeof createChosenLink>;
