/**
 * The yards of a Pintally in its own process, on the data folder that it is given: it prints which yard is open,
 * and what a person reads where none is. Then it waits until it is ended, or told to change it and close.
 */
import { changeSettings } from '../../../electron/app/yard/settings.ts';
import { createYards } from '../../../electron/app/yard/yards.ts';
import { say } from './a-window.ts';

const [dataDir = '', which] = process.argv.slice(2);
const now = () => new Date().toISOString();
const notChecked = { ask: async () => ({ damage: null, damagedReadings: [] }), close: async () => undefined };
const yards = createYards(dataDir, now, notChecked, console.error, () => undefined);
if (which === 'demo') yards.openDemo();
const waiting = setInterval(() => undefined, 1000);
process.on('SIGTERM', () => {
  if (yards.mayWrite()) changeSettings(yards.current(), { theme: 'dark' });
  yards.close();
  console.log('closed');
  clearInterval(waiting);
});
const { uuid, problem } = yards.info();
console.log(JSON.stringify({ uuid, says: problem && say(problem) }));
