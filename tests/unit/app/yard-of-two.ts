import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, afterEach, beforeEach, expect } from 'vitest';
import { type AppOptions, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { SimulatedSensors } from '../../../electron/meter/simulated-sensors.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { openWindow } from './a-window.ts';
import { folderWithNewYard, newFolder } from './new-yard.ts';
import { MeterBesideSensors, TestSensors } from './sensors-in-reach.ts';

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
  const meter = new MeterBesideSensors();
  const sensors = new TestSensors();
  const faults: unknown[] = [];
  let now = new Date('2026-06-01T08:00:00.000Z');

  const app = createApp({
    dataDir,
    links: {
      none: () => new NoLink(),
      bluetooth: () => meter,
      simulated: () => new SimulatedLink({ seed: 1 }),
      sensors: { real: () => sensors, simulated: () => new SimulatedSensors() },
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
    sensors,
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
