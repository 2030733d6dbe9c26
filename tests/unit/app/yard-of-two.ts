import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, afterEach, beforeEach, expect } from 'vitest';
import { type AppOptions, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { MeterLink } from '../../../electron/meter/meter-link.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { type MeterDescription, plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import { fromOf } from '../../../shared-core/gatt/source.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { openWindow } from './a-window.ts';
import { folderWithNewYard, newFolder } from './new-yard.ts';

/** A meter that shows whatever the test says, when it says so: uint16 in hundredths of a percent. */
export class HandHeldMeter extends MeterLink {
  readonly kind = 'bluetooth';
  private atMs = Date.parse('2026-06-01T08:00:00.000Z');

  override startScan(): void {
    this.setState('scanning', message('meter.state.looking'), { deviceId: null, deviceName: null });
    this.emit('found', { deviceId: 'hand', name: 'Hand-held', rssiDbm: -50, serviceUuids: [] });
  }
  override stopScan(): void {}
  override connect(deviceId: string): void {
    this.setState('live', message('meter.state.live', { meterName: 'Hand-held' }), {
      deviceId,
      deviceName: 'Hand-held',
    });
    this.describe(handHeld);
  }
  /** Out of reach for so long, and back. */
  leaveReach(seconds: number): void {
    const device = { deviceId: 'hand', deviceName: 'Hand-held' };
    const meterName = 'Hand-held';
    this.setState(
      'reconnecting',
      message('meter.state.lost', { meterName, why: message('meter.why.dropped') }),
      device,
    );
    this.atMs += seconds * 1000;
    this.setState('live', message('meter.state.live', { meterName }), device);
  }
  override describe(described: MeterDescription): void {
    this.setDescribed({ description: described, characteristics: [], remarks: [] });
  }
  /** Nobody knows how it is read. */
  beUnknown(): void {
    const hand = { deviceId: 'hand', deviceName: 'Hand-held' };
    this.setState('needs-description', message('meter.state.needs-setup', { meterName: 'Hand-held' }), hand);
  }
  override async disconnect(): Promise<void> {
    this.setState('idle', message('meter.state.none'), { deviceId: null, deviceName: null });
  }
  override async close(): Promise<void> {}

  private send(bytes: Uint8Array): void {
    this.atMs += 100;
    this.receive({
      from: fromOf(handHeld.source),
      bytes,
      receivedAtMs: this.atMs,
    });
  }
  /** Ten values a second for so many seconds. */
  show(pct: number, seconds: number): void {
    for (let n = 0; n < seconds * 10; n++) this.send(Uint8Array.of((pct * 100) & 0xff, (pct * 100) >> 8));
  }
  /** Pins lifted: the meter shows nothing readable for a second. */
  lift(): void {
    for (let n = 0; n < 10; n++) this.send(Uint8Array.of(0, 0));
  }
  sendRubbish(bytes: Uint8Array): void {
    this.send(bytes);
  }
}

export const handHeld = plainDescription({
  source: { kind: 'sent', serviceUuid: '181a', characteristicUuid: '2a6f' },
  value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
  unit: 'pct',
  range: { min: 4, max: 60 },
  origin: 'self-described',
});

type YardOptions = Pick<AppOptions, 'forecastAfterMs' | 'simulatesInOwnYard'> & {
  /** With boards of 27 mm, values are typed from a meter whose pins reach their middle. */
  thicknessMm?: 16 | 27;
  /** Made by the app itself: SQLite then has all pages of the file in memory. */
  isMadeByApp?: boolean;
};

/**
 * The whole app on a real yard file in a new folder, with a clock that the test turns, one stack of two walnut boards
 * in a shop at 20 °C and 40 % RH, and a meter in the test's hand.
 */
export async function yardOfTwo({
  forecastAfterMs = 20,
  simulatesInOwnYard = false,
  thicknessMm = 16,
  isMadeByApp = false,
}: YardOptions = {}) {
  const dataDir = isMadeByApp ? newFolder() : folderWithNewYard();
  const meter = new HandHeldMeter();
  const faults: unknown[] = [];
  let now = new Date('2026-06-01T08:00:00.000Z');

  const app = createApp({
    dataDir,
    links: {
      none: () => new NoLink(),
      bluetooth: () => meter,
      simulated: () => new SimulatedLink({ seed: 1 }),
    },
    simulatesInOwnYard,
    threads: threadSources,
    clock: () => now,
    reportFault: (error) => faults.push(error),
    forecastAfterMs,
    retryAfterMs: 20,
    // Many tests share a computer.
    diskAnswerMs: 60_000,
  });

  const window = openWindow(app);
  const { command } = window;

  const place = await command('places.add', {
    name: 'Shop',
    kind: 'shop',
    air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 })),
  });
  const stack = await command('stacks.add', {
    name: 'Walnut',
    placeId: place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  const board = (code: string) => ({
    code,
    stackId: stack.id,
    speciesId: 'walnut-black',
    // 8 mm, the pins of nobody knows which meter, reach their middle.
    thicknessMm,
    widthMm: 200,
    lengthMm: 2400,
    sawnOn: null,
    sawing: 'flat' as const,
    ringRadiusMm: null,
    barkSide: 'unknown' as const,
    barkOffOn: null,
    log: '',
    layer: null,
    column: null,
    note: '',
  });
  const boards = await command('boards.add', [board('WAL-01'), board('WAL-02')]);
  if (thicknessMm === 27) {
    const pins = { lengthMm: 30, insulated: true };
    await command('meters.add', { name: 'Long-pin meter', profile: { ...unknownProfile, pins } });
  }

  return {
    app,
    dataDir,
    meter,
    faults,
    place,
    stack,
    boards,
    board,
    ...window,
    /** Starts a round and reads the first board once. */
    beginRound: async (): Promise<{ id: number }> => {
      const round = await command('rounds.start', { stackId: stack.id, woodTempC: 20, startedOn: null });
      await command('rounds.saveTyped', {
        roundId: round.id,
        boardId: boards[0]!.id,
        spotIndex: 0,
        newestReadingId: null,
        raw: 12.4,
      });
      return round;
    },
    now: () => now.toISOString(),
    later: (ms: number) => {
      now = new Date(now.getTime() + ms);
    },
  };
}

/** The yard of the test under way. */
export let yard: Awaited<ReturnType<typeof yardOfTwo>>;

/** Makes the air of the shop so damp that no place of the yard is dry enough. */
export async function dampen(): Promise<void> {
  const { id, version } = (await yard.query('places.list', {}))[0]!;
  const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.75 }));
  await yard.command('places.edit', { id, basedOn: version, changed: { air } });
}

/** Waits until every board was forecast for lists. */
export async function outlooksMade(): Promise<void> {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const due = db.prepare('SELECT count(*) FROM outlook_due').pluck();
  await expect.poll(() => due.get(), { timeout: 20_000 }).toBe(0);
  db.close();
}

/** What a test does to a yard shows here: its acts, and the time that it let go by. */
function stateOfYard(): string {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const newestAct = db.prepare('SELECT max(id) FROM act').pluck().get();
  db.close();
  return `${newestAct} ${yard.now()}`;
}

/**
 * Gives each test of a file its own yard, closed after it; a fault that was reported meanwhile fails the test.
 * @param isKeptUnchanged  where a test did nothing to the yard, the next one has it too: its threads take longer to start
 *   than most tests
 */
export function withYardOfTwo({
  isKeptUnchanged = false,
  ...options
}: YardOptions & { isKeptUnchanged?: boolean } = {}): void {
  let keptAt: string | null = null;
  beforeEach(async () => {
    if (keptAt !== null && stateOfYard() === keptAt) return;
    if (keptAt !== null) await yard.app.close();
    yard = await yardOfTwo(options);
    if (isKeptUnchanged) keptAt = stateOfYard();
  });
  afterEach(async () => {
    if (!isKeptUnchanged) await yard.app.close();
    expect(yard.faults).toEqual([]);
  });
  afterAll(() => (isKeptUnchanged ? yard.app.close() : undefined));
}
