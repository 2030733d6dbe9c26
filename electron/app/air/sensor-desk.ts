import type { NearSensors, Sensed } from '../../../shared-core/contract/air.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { SensedAir } from '../../../shared-core/gatt/environment.ts';
import { HOUR_MS, isoOf } from '../../../shared-core/time.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { HeardDevices } from '../../meter/heard-devices.ts';
import type { MeterLinkEvents } from '../../meter/meter-link.ts';
import type { HeardSensor, SensorRadio } from '../../meter/sensor-radio.ts';
import type { SensorRow } from '../../store/air-sensor-table.ts';
import type { AppContext } from '../context.ts';
import { isDisturbance } from '../fault-message.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { ChosenLink } from '../meter/chosen-link.ts';
import type { LiveValues } from '../meter/live-values.ts';
import { openSensor } from '../stock/open-ones.ts';
import { createWoodProbes } from './wood-probes.ts';

/** How often it is checked which sensors are due. */
const CHECK_EVERY_MS = 60_000;
/** One that did not answer is tried again after this. */
const RETRY_AFTER_MS = 10 * 60_000;
/** A probe is read again after this while a round is open, so that its value is never too old where it is in reach. */
const PROBE_EVERY_MS = 90_000;
/** Between the checks, whether a probe is due is asked no more often than this. */
const PROBE_CHECK_MS = 5000;
/** A search that nobody ended goes on for so long. */
const SEARCH_MS = 2 * 60_000;
/** Beside a meter, sensors that advertise are listened for no longer than this at a time. */
const OVERHEAR_MS = 4000;
/** What was heard reaches the windows at most this often. */
const TELL_EVERY_MS = 500;

/** How the radios for sensors are made: the real one, and that of the demo yard. */
export interface SensorRadios {
  real(): SensorRadio;
  simulated(): SensorRadio;
}

/**
 * Reads the sensors of the yard once an hour, probes every few minutes of a round, and one when a person asks. The adapter is a meter's first: beside one,
 * sensors are listened for over its link, and those that only say their values over a connection are visited, one after
 * the other. Nothing of that is done while a value settles.
 *
 * @param radios  null where there are none
 * @param isInRound  whether a round is on a screen
 */
export function createSensorDesk(
  context: AppContext,
  radios: SensorRadios | null,
  link: Pick<ChosenLink, 'current' | 'overheard' | 'phaseChanged'>,
  live: Pick<LiveValues, 'newest' | 'values'>,
  canSimulate: () => boolean,
  isInRound: () => boolean,
  checkEveryMs = CHECK_EVERY_MS,
) {
  const made = new Map<boolean, SensorRadio>();
  const probes = createWoodProbes(context);
  const near = new HeardDevices<HeardSensor & { atMs: number }>();
  /** By the sensor's id: what it said last, also where that is not logged. */
  const newest = new Map<number, Sensed>();
  /** By the sensor's id, on the clock that only runs forward. */
  const triedMs = new Map<number, number>();
  /** Why nothing can be heard now; null where it can. */
  let problem: Message | null = null;
  let isReading = false;
  /** When `checkProbes` does something again: values come many times a second. */
  let probesDueMs = 0;
  let searchTimer: NodeJS.Timeout | null = null;
  let tellTimer: NodeJS.Timeout | null = null;
  let overhearing: { done: Promise<void>; end: () => void } | null = null;
  /** The device that a person has read beside the meter. */
  let asked: string | null = null;
  /** By device, what it said beside a meter so far. */
  const overheard = new Map<string, SensedAir>();

  function radio(): SensorRadio | null {
    if (radios === null) return null;
    const isSimulated = canSimulate();
    const known = made.get(isSimulated);
    if (known) return known;
    const fresh = isSimulated ? radios.simulated() : radios.real();
    fresh.on('heard', (sensor) => {
      near.hear(sensor.deviceId, { ...sensor, atMs: context.monotonicMs() });
      tellTimer ??= setTimeout(tell, TELL_EVERY_MS);
    });
    fresh.on('adapter', ({ usable, message: said }) => {
      problem = usable ? null : said;
      tellTimer ??= setTimeout(tell, TELL_EVERY_MS);
    });
    made.set(isSimulated, fresh);
    return fresh;
  }

  function tell(): void {
    tellTimer = null;
    context.changed(['sensors']);
  }

  /** A search for meters that failed has let go of the adapter. */
  function isFree(): boolean {
    const { kind, state } = link.current();
    return kind !== 'bluetooth' || (state.phase === 'failed' && state.deviceId === null);
  }
  /** A meter that is being connected to, or searched for, comes first. */
  const isBesideMeter = (): boolean => !isFree() && link.current().state.phase === 'live';

  function busyWith(): NearSensors['busyWith'] {
    if (isFree() || isBesideMeter()) return null;
    return link.current().state.phase === 'scanning' ? 'meter-search' : 'meter';
  }

  function stopSearch(): void {
    if (searchTimer === null) return;
    clearTimeout(searchTimer);
    searchTimer = null;
    if (isFree()) radio()?.scan(false);
    else stopOverhearing();
    context.changed(['sensors']);
  }

  function remember({ id, kind }: SensorRow, said: Sensed): void {
    newest.set(id, said);
    if (kind === 'probe') probes.take(id, said.tempC);
  }

  /** @returns null where it says nothing, or the adapter is in use */
  async function read(sensor: SensorRow): Promise<Sensed | null> {
    const with_ = radio();
    if (with_ === null || !isFree() || isReading) return null;
    isReading = true;
    try {
      const sensed = await with_.read(sensor.deviceId);
      if (sensed === null) return null;
      const said = { at: context.now(), ...sensed };
      remember(sensor, said);
      return said;
    } finally {
      isReading = false;
    }
  }

  /** Those at a place that were not logged in this hour. */
  function notLogged(): SensorRow[] {
    const { airLogs, airSensors } = context.yard();
    const beganMs = Math.floor(Date.parse(context.now()) / HOUR_MS) * HOUR_MS;
    const [began, ends] = [isoOf(beganMs), isoOf(beganMs + HOUR_MS)];
    return airSensors
      .list()
      .filter(
        ({ id, kind }) =>
          kind === 'air' && airSensors.stay(id)?.placeId != null && !airLogs.isLoggedBetween(id, began, ends),
      );
  }
  function wasJustTried({ id, kind }: SensorRow): boolean {
    const tried = triedMs.get(id);
    const waitMs = kind === 'probe' ? PROBE_EVERY_MS : RETRY_AFTER_MS;
    return tried !== undefined && context.monotonicMs() - tried < waitMs;
  }
  const probesOfRound = (): SensorRow[] =>
    isInRound()
      ? context
          .yard()
          .airSensors.list()
          .filter(({ kind }) => kind === 'probe')
      : [];
  /** Those that are to be read now. */
  const due = (): SensorRow[] =>
    [...probesOfRound(), ...notLogged()].filter((sensor) => !wasJustTried(sensor));
  function log(sensorId: number, at: string, { tempC, rh }: { tempC: number; rh: number }): void {
    const yard = context.yard();
    triedMs.delete(sensorId);
    yard.transaction(() => yard.airLogs.add({ sensorId, placeId: null, at, tempC, rh }));
    context.changed(['sensors']);
  }

  const isProbing = (): boolean => live.newest()?.phase === 'drifting';

  /** Listens for sensors beside the meter. Resolves once that has ended, by itself or before its time. */
  function overhear(forMs: number): Promise<void> {
    if (overhearing !== null) return overhearing.done;
    overheard.clear();
    const timer = setTimeout(stopOverhearing, forMs);
    timer.unref();
    let resolve = (): void => undefined;
    const done = new Promise<void>((end) => {
      resolve = end;
    });
    const end = () => {
      clearTimeout(timer);
      link.current().overhear(false);
      resolve();
    };
    overhearing = { done, end };
    link.current().overhear(true);
    return done;
  }
  function stopOverhearing(): void {
    const { end } = overhearing ?? {};
    overhearing = null;
    end?.();
  }

  /** What a sensor says beside the meter; null where it was not heard, or says nothing, or pins go in. */
  async function readBeside(sensor: SensorRow): Promise<Sensed | null> {
    const { deviceId, kind } = sensor;
    const said = overheard.get(deviceId);
    if (said === undefined || isProbing() || !isBesideMeter()) return null;
    const isWhole = said.tempC !== null && (said.rh !== null || kind === 'probe');
    const sensed = isWhole ? said : await link.current().visit(deviceId);
    if (sensed === null) return null;
    const whole = { at: context.now(), ...sensed };
    remember(sensor, whole);
    return whole;
  }

  async function readDueBeside(): Promise<void> {
    if (overhearing !== null || isReading || isProbing() || !isBesideMeter()) return;
    const waiting = due();
    if (waiting.length === 0) return;
    const yard = context.yard();
    isReading = true;
    try {
      for (const { id } of waiting) triedMs.set(id, context.monotonicMs());
      await overhear(OVERHEAR_MS);
      for (const sensor of waiting) {
        const { id } = sensor;
        if (context.yard() !== yard || !context.mayWrite()) return;
        // Those that pins kept from being read are read at the next check.
        if (isProbing()) triedMs.delete(id);
        if (!isWaitedFor(sensor)) continue;
        const said = await readBeside(sensor);
        if (isProbing()) triedMs.delete(id);
        if (sensor.kind === 'probe' || said?.tempC == null || said.rh === null) continue;
        if (context.yard() === yard && context.mayWrite())
          log(id, said.at, { tempC: said.tempC, rh: said.rh });
      }
    } finally {
      isReading = false;
    }
  }
  /** Whether it has not said yet what is wanted of it. */
  const isWaitedFor = ({ id, kind, deviceId }: SensorRow): boolean =>
    kind === 'probe'
      ? overheard.get(deviceId)?.tempC == null
      : notLogged().some((sensor) => sensor.id === id);
  function takeOverheard({ deviceId, name, rssiDbm, ...said }: MeterLinkEvents['overheard'][0]): void {
    if (searchTimer !== null) {
      near.hear(deviceId, { deviceId, name, rssiDbm, atMs: context.monotonicMs() });
      tellTimer ??= setTimeout(tell, TELL_EVERY_MS);
    }
    if (!context.mayWrite()) return;
    const before = overheard.get(deviceId);
    const sensed = { tempC: said.tempC ?? before?.tempC ?? null, rh: said.rh ?? before?.rh ?? null };
    overheard.set(deviceId, sensed);
    // It says its values over a connection, and a person waits for them.
    if (deviceId === asked && said.tempC === null && said.rh === null) stopOverhearing();
    const { tempC, rh } = sensed;
    const at = context.now();
    const probe = probesOfRound().find((each) => each.deviceId === deviceId);
    if (probe !== undefined && said.tempC !== null) remember(probe, { at, tempC, rh });
    const sensor = notLogged().find((each) => each.deviceId === deviceId);
    if (sensor !== undefined && tempC !== null && rh !== null) {
      remember(sensor, { at, tempC, rh });
      log(sensor.id, at, { tempC, rh });
    }
    if ((probe ?? sensor) === undefined || searchTimer !== null) return;
    if (![...probesOfRound(), ...notLogged()].some(isWaitedFor)) stopOverhearing();
  }
  function giveTheMeterItsTurn(): void {
    if (!isFree()) stopSearch();
    stopOverhearing();
    link.current().endVisit();
  }
  link.overheard.follow((said) => {
    try {
      takeOverheard(said);
    } catch (error) {
      if (!isDisturbance(error)) context.reportFault(error);
    }
  });
  link.phaseChanged.follow(giveTheMeterItsTurn);
  live.values.follow(() => {
    if (isProbing()) giveTheMeterItsTurn();
    else if (live.newest()?.phase === 'pins-out') checkProbes();
  });

  /** Reads those that were not logged in this hour. */
  async function readDue(): Promise<void> {
    if (!context.mayWrite() || searchTimer !== null) return;
    if (!isFree()) {
      await readDueBeside();
      return;
    }
    const yard = context.yard();
    for (const sensor of due()) {
      const { id } = sensor;
      triedMs.set(id, context.monotonicMs());
      const said = await read(sensor);
      if (context.yard() !== yard || !context.mayWrite()) return;
      if (sensor.kind === 'probe' || said?.tempC == null || said.rh === null) continue;
      log(id, said.at, { tempC: said.tempC, rh: said.rh });
    }
  }

  function check(): void {
    readDue().catch((error: unknown) => {
      // The disk may be full, or the yard be closed: what is due is read at the next check.
      if (!isDisturbance(error)) context.reportFault(error);
    });
  }
  /** Before the next check, as when a round comes on screen, or pins that kept a probe from being read are out. */
  function checkProbes(): void {
    if (!isInRound() || context.monotonicMs() < probesDueMs) return;
    probesDueMs = context.monotonicMs() + PROBE_CHECK_MS;
    check();
  }
  let wasTold = false;
  const timer = setInterval(() => {
    check();
    // A value that has become too old is no longer shown.
    const isThere = probes.newest() !== null;
    if (wasTold && !isThere) context.changed(['sensors']);
    wasTold = isThere;
  }, checkEveryMs);
  timer.unref();

  const nearSensors = (): NearSensors => ({
    isSearching: searchTimer !== null,
    busyWith: busyWith(),
    problem: searchTimer === null ? null : problem,
    sensors: near
      .all()
      .map(({ deviceId, name, rssiDbm }) => ({ deviceId, name, rssiDbm }))
      .toSorted((a, b) => (b.rssiDbm ?? -200) - (a.rssiDbm ?? -200)),
  });

  return {
    newestOf: (id: number): Sensed | undefined => newest.get(id),
    check,
    checkProbes,
    /** What a probe in reach says of the wood. */
    probeTemp: probes.newest,
    /** A meter is to have the adapter now. */
    giveWay: async (): Promise<void> => {
      stopSearch();
      await Promise.all([...made.values()].map((each) => each.release()));
    },
    close: async (): Promise<void> => {
      clearInterval(timer);
      stopOverhearing();
      if (tellTimer !== null) clearTimeout(tellTimer);
      if (searchTimer !== null) clearTimeout(searchTimer);
      await Promise.all([...made.values()].map((each) => each.release()));
    },
    queries: { 'sensors.near': nearSensors, 'sensors.probe': probes.newest } satisfies Partial<Queries>,
    commands: {
      'sensors.search': ({ isOn }) => {
        if (!isOn) {
          stopSearch();
          // One that was added meanwhile is not read before.
          check();
        } else if (isBesideMeter() ? !isProbing() : isFree() && radio() !== null) {
          near.clear();
          problem = null;
          if (searchTimer !== null) clearTimeout(searchTimer);
          searchTimer = setTimeout(stopSearch, SEARCH_MS);
          searchTimer.unref();
          if (isFree()) radio()?.scan(true);
          else {
            stopOverhearing();
            void overhear(SEARCH_MS);
          }
        }
        return nearSensors();
      },
      'sensors.read': async ({ id }) => {
        const sensor = openSensor(context, id);
        const { deviceId, name: sensorName } = sensor;
        const busy = busyWith();
        if (busy !== null) throw new Refusal(message(`refusal.sensor-busy.${busy}`, { sensorName }));
        if (!isFree() && isProbing())
          throw new Refusal(message('refusal.sensor-while-probing', { sensorName }));
        stopSearch();
        const isBeside = !isFree();
        if (isBeside) {
          asked = deviceId;
          await overhear(OVERHEAR_MS);
          asked = null;
        }
        const said = await (isBeside ? readBeside(sensor) : read(sensor));
        if (said === null)
          throw new Refusal(
            message(isBeside ? 'refusal.sensor-silent-beside' : 'refusal.sensor-silent', { sensorName }),
          );
        const { at, tempC, rh } = said;
        const isDue = context.mayWrite() && notLogged().some((each) => each.id === id);
        if (isDue && tempC !== null && rh !== null) log(id, at, { tempC, rh });
        context.changed(['sensors']);
        check();
        return said;
      },
    } satisfies Partial<Commands>,
  };
}
export type SensorDesk = ReturnType<typeof createSensorDesk>;
