/**
 * The radio, in a separate process: a library, or what it talks to, can end or hang only this one, and "a fresh start of
 * the link" is this process ended and a new one started. `radio-port.ts` starts it; both speak `radio-messages.ts`.
 * It does little by itself: the app's side owns the time limits, the retries and every message to a person.
 */
import { monotonicMs } from '../monotonic.ts';
import { chooseRadio } from './radio/choose-radio.ts';
import { followOrders, send } from './radio/outbox.ts';
import { type ToRadio, toRadioSchema } from './radio-messages.ts';

const aliveEveryMs = 1000;
const foundEveryMs = 250;

send({ type: 'adapter', reason: 'starting', way: null });
const chosen = chooseRadio();

async function quit(): Promise<void> {
  await (await chosen).hangUp();
  process.exit(0);
}

async function obey(order: ToRadio): Promise<void> {
  const radio = await chosen;
  switch (order.type) {
    case 'scan':
      return radio.scan(order.on);
    case 'overhear':
      return radio.overhear(order.on);
    case 'connect':
      return radio.connect(order);
    case 'listen':
      return radio.listen(order);
    case 'watch':
      return radio.watch(order);
    case 'prove':
      return radio.prove(order.attempt);
    case 'disconnect':
      await radio.disconnect();
      send({ type: 'disconnected', attempt: order.attempt });
      return;
    case 'visit':
      return radio.visit(order);
    case 'end-visit':
      return radio.endVisit();
    case 'quit':
      return quit();
  }
}

const unreadableFrames: number[] = [];

/** noble reads frames without checking their length: a short one throws out of its event handlers. */
function isUnreadableFrame(error: unknown): error is Error {
  const code = (error as { code?: unknown } | null)?.code;
  return (
    error instanceof RangeError &&
    (code === 'ERR_OUT_OF_RANGE' || code === 'ERR_BUFFER_OUT_OF_BOUNDS') &&
    /noble/.test(error.stack ?? '')
  );
}

process.on('uncaughtException', (error) => {
  console.error(error);
  const now = monotonicMs();
  while (unreadableFrames[0] !== undefined && now - unreadableFrames[0] > 10_000) unreadableFrames.shift();
  // Some from the air are shrugged off; a flood of them, or any other fault, means a fresh start.
  if (isUnreadableFrame(error) && unreadableFrames.push(now) <= 20) {
    send({ type: 'malformed' });
    return;
  }
  process.exit(70);
});

followOrders(
  (raw) => {
    const parsed = toRadioSchema.safeParse(raw);
    if (!parsed.success) console.error(`order not understood: ${parsed.error.message}`);
    else void obey(parsed.data);
  },
  () => void quit(),
);

setInterval(() => send({ type: 'alive' }), aliveEveryMs);
const radio = await chosen;
setInterval(radio.sendFound, foundEveryMs);
radio.start();
