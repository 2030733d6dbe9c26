import { copyFileSync, globSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { message } from '../../shared-core/words/message.ts';
import { say } from '../unit/app/a-window.ts';
import { copyOfLayout } from '../unit/store/layout-copy.ts';
import type { Fault } from './fault.ts';
import { inFolder } from './folders.ts';
import { allThere, damagedYard, killsIn, someReadings, type Work } from './killed-work.ts';
import { Ledger } from './ledger.ts';
import { inApp, saidOfYard, yardFileIn } from './opened.ts';
import { addStack, boardIdsOf } from './streaming.ts';
import { type Visible, visibleIn } from './visible.ts';

/** Of one that nothing ended. */
let wholeDemo: Promise<number> | null = null;

/** Opens the demo yard, which must have all its boards. */
async function lostOfDemo(data: string, ledger: Ledger): Promise<string[]> {
  const lost = await allThere(data, ledger);
  wholeDemo ??= inFolder(boardsOfDemo);
  const [whole, boards] = [await wholeDemo, await boardsOfDemo(data)];
  return boards === whole ? lost : [...lost, `the demo yard has ${boards} boards of ${whole}`];
}

async function boardsOfDemo(data: string): Promise<number> {
  return inApp(data, async ({ window }) => (await window.command('yard.openDemo', {})).boards);
}

/** When they are moved; no other move is of that instant. */
const MOVED_SINCE = '2026-02-01T08:00:00.000Z';

/** Of the boards that are moved, those that are. */
function movedIn(data: string): { moved: number; of: number } {
  const db = new Database(yardFileIn(data), { readonly: true });
  const count = (sql: string): number => Number(db.prepare(sql).pluck().get());
  const moved = count(`SELECT count(*) FROM move WHERE since = '${MOVED_SINCE}'`);
  const of = count('SELECT count(*) FROM board');
  db.close();
  return { moved, of };
}

/** In slices: each is a transaction. */
const moving: Work = {
  name: 'moving many boards',
  prepare: async (data) => {
    const ledger = await someReadings(data);
    await inApp(data, async ({ window }) => {
      await addStack(window, 'Many', 400);
      await addStack(window, 'More', 400);
    });
    return ledger;
  },
  begin: async (host) => (await host.window()).query('yard.info', {}),
  run: async (host) => {
    const window = await host.window();
    const stacks = await window.query('stacks.list', {});
    const boardIds = (await Promise.all(stacks.map(({ id }) => boardIdsOf(window, id)))).flat();
    const [place] = await window.query('places.list', {});
    await window.command('boards.move', {
      boardIds,
      placeId: place!.id,
      since: MOVED_SINCE,
      isInserted: true,
    });
  },
  check: async (data, ledger) => {
    const before = movedIn(data);
    const { lost, said } = await inApp(data, async ({ window }) => ({
      lost: await ledger.differences(window),
      said: await saidOfYard(window),
    }));
    const { moved, of } = movedIn(data);
    if (moved !== 0 && moved !== of) return [...lost, `${moved} of ${of} boards are moved`];
    const isTakenBack = before.moved > 0 && moved === 0;
    return isTakenBack && !said.includes(TAKEN_BACK)
      ? [...lost, 'nothing says that it was taken back']
      : lost;
  },
};
const TAKEN_BACK = say(message('yard-note.taken-back'));

const works: Work[] = [
  moving,
  {
    name: 'building the demo yard',
    prepare: someReadings,
    run: async (host) => (await host.window()).command('yard.openDemo', {}),
    check: lostOfDemo,
  },
  {
    name: 'removing the demo yard',
    prepare: async (data) => {
      const ledger = await someReadings(data);
      await boardsOfDemo(data);
      return ledger;
    },
    run: async (host) => {
      const window = await host.window();
      await window.command('yard.openDemo', {});
      await window.command('yard.removeDemo', {});
    },
    check: lostOfDemo,
  },
  ...[1, 5, 9, 11].map(
    (layout): Work => ({
      name: `bringing layout ${layout} up to date`,
      prepare: async (data) => {
        mkdirSync(data, { recursive: true });
        copyFileSync(copyOfLayout(layout), yardFileIn(data));
        return new Ledger();
      },
      run: async (host) => (await host.window()).query('yard.info', {}),
      check: async (data) => {
        const readingsIn = (seen: Visible): unknown =>
          [...seen]
            .filter(([where]) => where.startsWith('board '))
            .map(([where, shown]) => [where, [...shown.matchAll(/"raw":[^,]+/g)].map(([raw]) => raw)]);
        const whole = await inFolder(async (fresh) => {
          copyFileSync(copyOfLayout(layout), yardFileIn(fresh));
          return readingsIn(await inApp(fresh, ({ window }) => visibleIn(window)));
        });
        const now = readingsIn(await inApp(data, ({ window }) => visibleIn(window)));
        return JSON.stringify(now) === JSON.stringify(whole) ? [] : ['readings are not as they were'];
      },
    }),
  ),
  {
    name: 'ending',
    prepare: someReadings,
    run: async (host) => {
      await (await host.window()).query('yard.info', {});
      await host.stop();
    },
    check: allThere,
  },
  {
    name: 'renaming a damaged file',
    prepare: damagedYard,
    run: async (host) => (await host.window()).command('yard.startAfresh', {}),
    check: async (data) => {
      const damaged = readFileSync(`${data}.damaged`);
      const info = await inApp(data, ({ window }) => window.query('yard.info', {}));
      const isKept = globSync('**/*', { cwd: data, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .some((entry) => readFileSync(join(entry.parentPath, entry.name)).equals(damaged));
      if (!isKept) return ['the damaged file is gone'];
      return info.problem !== null || info.uuid !== null ? [] : ['neither a yard nor a problem'];
    },
  },
];

/**
 * The host is killed at some write while it does what takes many: moving many boards, building the demo yard, changing an old layout,
 * copying SQLite's log into the file, renaming a damaged one. The next start must find the yard whole.
 */
export const killsInLongWork: Fault = killsIn(works);
