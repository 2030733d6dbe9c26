/**
 * A Pintally in its own process that is killed between two slices of an edit of all boards of the data folder that
 * it is given.
 */
import { setImmediate } from 'node:timers/promises';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { openWindow } from './a-window.ts';

const [dataDir = ''] = process.argv.slice(2);
const link = () => new NoLink();
const app = createApp({
  dataDir,
  links: { none: link, bluetooth: link, simulated: () => new SimulatedLink({ seed: 1 }) },
  threads: threadSources,
  forecastAfterMs: 3_600_000,
});
const { query, command } = openWindow(app);
const boards: { id: number; basedOn: number }[] = [];
for (let total = 1; boards.length < total; ) {
  const page = await query('boards.list', { stackId: null, search: '', offset: boards.length, limit: 500 });
  total = page.total;
  boards.push(...page.rows.map(({ id, version }) => ({ id, basedOn: version })));
}
const [place] = await query('places.list', {});
void command('boards.editTogether', {
  boards,
  changed: { log: 'Edited' },
  move: { placeId: place!.id, since: '2026-05-20T08:00:00.000Z', isInserted: true },
});
// The slices that look at the boards, then one that edits.
for (let slice = 0; slice < Number(process.argv[3]); slice++) await setImmediate();
process.kill(process.pid, 'SIGKILL');
