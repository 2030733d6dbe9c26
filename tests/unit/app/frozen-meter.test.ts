import { beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import { aimAt, aimedSpot, saveLive } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** On the clock of the meter in the test's hand. */
const clock = vi.hoisted(() => ({ ms: 0 }));
vi.mock('../../../electron/monotonic.ts', () => ({ monotonicMs: () => clock.ms }));

withYardOfTwo();

let roundId: number;

beforeEach(async () => {
  clock.ms = Date.parse('2026-06-01T08:00:00.000Z');
  roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
});

function show(pct: number, seconds: number): void {
  yard.meter.show(pct, seconds);
  clock.ms += seconds * 1000;
}
function beSilent(seconds: number): void {
  yard.meter.beSilent(seconds);
  clock.ms += seconds * 1000;
}
const readings = async () =>
  (await yard.query('rounds.get', { roundId })).boards.filter(({ isRead }) => isRead).map(({ code }) => code);

test('a meter that froze in mid-push: its old value is not saved on the next board, and the next one is', async () => {
  show(12.6, 1.2);
  beSilent(3.4);
  await aimAt(roundId, 1, 0);
  const at = await aimedSpot(roundId);
  expect(await yard.refusal('rounds.saveLive', at)).toMatch(/^No new value for 3 s\. Nothing was saved\./);
  expect(await readings()).toEqual([]);
  yard.meter.lift();
  clock.ms += 1000;
  show(13.4, 0.5);
  await saveLive(roundId);
  expect(await readings()).toEqual(['WAL-02']);
});

test('a second without a value is no silence', async () => {
  show(12.6, 1.2);
  beSilent(1);
  await saveLive(roundId);
  expect(await readings()).toEqual(['WAL-01']);
});

test('the window hears for how long, and that it is over', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  onTestFinished(() => void vi.useRealTimers());
  const silentS = () => yard.heard('meter.live').at(-1)?.silentS;
  show(12.6, 1.2);
  beSilent(2.4);
  vi.advanceTimersByTime(2400);
  expect(silentS()).toBe(2);
  beSilent(1);
  vi.advanceTimersByTime(1000);
  expect(silentS()).toBe(3);
  show(12.6, 0.1);
  vi.advanceTimersByTime(300);
  expect(silentS()).toBeNull();
});
