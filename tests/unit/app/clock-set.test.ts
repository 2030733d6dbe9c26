import { expect, test, vi } from 'vitest';

// Before the app is loaded, so that nothing in it has the real clock.
vi.hoisted(() =>
  vi.useFakeTimers({
    toFake: ['Date', 'setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance', 'hrtime'],
  }),
);

import { beginQueue, endQueue, enqueue } from '../../../electron/meter/radio/notification-queue.ts';
import { send } from '../../../electron/meter/radio/outbox.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

vi.mock('../../../electron/meter/radio/outbox.ts', async (original) => ({
  ...(await original<object>()),
  send: vi.fn(),
}));

/** Sets the wall clock, as a person or the network does, in the middle of whatever goes on. */
function setClock(byMs: number): void {
  vi.setSystemTime(Date.now() + byMs);
  yard.later(byMs);
}

const settings = [
  // A reading is then dated by what has passed since the round began.
  { how: 'back by one day', byMs: -DAY_MS, dated: /^2026-06-01T08:00:0[234]/ },
  { how: 'forward by one year', byMs: 365 * DAY_MS, dated: /^2027-06-01T08:00:00/ },
];

withYardOfTwo({ simulatesInOwnYard: true });

test.each(settings)(
  'the clock is set $how in the middle of a push: that push is one reading, and so is the next',
  async ({ byMs, dated }) => {
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    await yard.command('meter.simulate', {});
    // The pins go in after about a second, and are steady two seconds later (our own choice, simulated-link.ts).
    vi.advanceTimersByTime(1800);
    expect(yard.heard('meter.live').at(-1)).toMatchObject({ phase: 'drifting' });
    setClock(byMs);
    vi.advanceTimersByTime(3000);
    const readings = async () =>
      (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];
    expect(await readings()).toMatchObject([
      { spotIndex: 0, how: 'settled', takenAt: expect.stringMatching(dated) },
    ]);
    // A value between two tenths takes longer.
    vi.advanceTimersByTime(8000);
    const spots = (await readings()).map(({ spotIndex }) => spotIndex);
    expect(spots.length).toBeGreaterThan(1);
    expect(spots).toEqual([...spots.keys()]);
  },
);

test.each(settings)('the clock is set $how: what the radio hears still comes in its order', ({ byMs }) => {
  beginQueue(1);
  const from = { kind: 'characteristic', serviceUuid: '181a', characteristicUuid: '2a6f' } as const;
  enqueue(from, Buffer.of(1));
  vi.advanceTimersByTime(100);
  setClock(byMs);
  enqueue(from, Buffer.of(2));
  endQueue();
  const sent = vi.mocked(send).mock.calls.map(([message]) => message);
  const [first, second] = sent.flatMap((each) => (each.type === 'notifications' ? each.items : []));
  expect(second!.receivedAtMs - first!.receivedAtMs).toBeCloseTo(100, 3);
});
