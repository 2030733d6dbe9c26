import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import { type Heard, HeardDevices } from '../../meter/heard-devices.ts';
import type { MeterLink, MeterLinkEvents, MeterNotification } from '../../meter/meter-link.ts';
import type { SimulatedLink } from '../../meter/simulated-link.ts';
import { monotonicMs } from '../../monotonic.ts';
import type { SensorRadios } from '../air/sensor-desk.ts';
import { createSignal } from '../signal.ts';

/** How a link of each kind is made; a fresh one each time the kind is chosen. */
export interface LinkMakers {
  none(): MeterLink;
  bluetooth(): MeterLink;
  simulated(): SimulatedLink;
  /** Of thermometers and hygrometers; left out where there is no radio for them. */
  sensors?: SensorRadios;
}

/** Those of unknown strength last. */
function strongestFirst(a: FoundDevice, b: FoundDevice): number {
  if (a.rssiDbm === null || b.rssiDbm === null)
    return Number(a.rssiDbm === null) - Number(b.rssiDbm === null);
  return b.rssiDbm - a.rssiDbm;
}

/**
 * The link in use, of whichever kind, and the meters heard over it.
 * @param isKnown  a meter of the yard: it stays in the list, however many others are heard
 */
export function createChosenLink(
  make: LinkMakers,
  reportFault: (error: unknown) => void,
  isKnown: (deviceId: string) => boolean,
) {
  let link: MeterLink = make.none();
  let simulated: SimulatedLink | null = null;
  const devices = new HeardDevices<FoundDevice & Heard>((_, device) => device.isKnown);

  const phaseChanged = createSignal<MeterState['phase']>();
  const described = createSignal();
  const notified = createSignal<MeterNotification>();
  const changed = createSignal();
  const deviceFound = createSignal();
  const left = createSignal();
  const overheard = createSignal<MeterLinkEvents['overheard'][0]>();

  function listen(): void {
    link.on('adapter', () => changed.give());
    link.on('battery', () => changed.give());
    link.on('setting', () => changed.give());
    link.on('state', ({ phase }) => {
      phaseChanged.give(phase);
      changed.give();
    });
    link.on('found', ({ deviceId, name, rssiDbm }) => {
      const known = devices.get(deviceId)?.isKnown ?? isKnown(deviceId);
      devices.hear(deviceId, { deviceId, name, rssiDbm, atMs: monotonicMs(), isKnown: known });
      deviceFound.give();
    });
    link.on('described', () => {
      described.give();
      changed.give();
    });
    link.on('notification', notified.give);
    link.on('overheard', overheard.give);
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
    /** A sensor of air was heard beside the meter. */
    overheard,
    /** Another meter is meant from now on. */
    left,
    current: (): MeterLink => link,
    /** Null while another kind is in use. */
    simulated: (): SimulatedLink | null => simulated,
    devices: (): FoundDevice[] =>
      devices
        .all()
        .toSorted(strongestFirst)
        .map(({ deviceId, name, rssiDbm, isKnown }) => ({ deviceId, name, rssiDbm, isKnown })),
    forgetDevices: (): void => devices.clear(),
    use: (kind: MeterState['kind']): void => {
      if (link.kind === kind) return;
      const old = link;
      old.removeAllListeners();
      old.close().catch(reportFault);
      left.give();
      devices.clear();
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
