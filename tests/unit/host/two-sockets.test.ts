import { randomUUID } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import { type App, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import type { Answer } from '../../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../../shared-core/contract/events.ts';
import type { RequestInput, RequestName, RequestOutput } from '../../../shared-core/contract/requests.ts';

/** The whole app behind the real loopback host, with two windows connected as pages are. */
let app: App;
let host: Awaited<ReturnType<typeof startLoopbackHost>>;
let session: string;

beforeEach(async () => {
  const rendererDir = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(join(rendererDir, 'index.html'), '<title>the window</title>');
  app = createApp({
    dataDir: mkdtempSync(join(tmpdir(), 'pintally-app-')),
    links: {
      none: () => new NoLink(),
      bluetooth: () => new NoLink(),
      simulated: () => new SimulatedLink({ seed: 1 }),
    },
    threads: threadSources,
  });
  const owner = app.connect('window-0', () => undefined);
  await owner.answer('yard.openDemo', {}, { yard: null, act: randomUUID() });
  owner.close();
  host = await startLoopbackHost({ rendererDir, connect: app.connect });
  const opened = await fetch(host.address, { redirect: 'manual' });
  session = String(opened.headers.get('location'));
});
afterEach(async () => {
  await host.close();
  await app.close();
});

/** A window's socket: it says which window it is of, then asks. */
async function connect(window: string = randomUUID()) {
  const { host: name, origin } = new URL(host.address);
  const socket = new WebSocket(`ws://${name}${session}ws`, { headers: { Origin: origin } });
  const events: { event: EventName; data: unknown }[] = [];
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on('message', (data) => {
    const heard = JSON.parse(String(data));
    if ('event' in heard) events.push(heard);
    else waiting.get(heard.id)?.(heard.answer);
  });
  await new Promise((resolve) => socket.once('open', resolve));
  socket.send(JSON.stringify({ window }));
  let sent = 0;
  let yard: string | null = null;

  function ask(name: RequestName, input: unknown): Promise<Answer> {
    const id = ++sent;
    socket.send(JSON.stringify({ id, name, input, envelope: { yard, act: randomUUID() } }));
    return new Promise((resolve) => waiting.set(id, resolve));
  }
  async function request<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
    const answer = await ask(name, input);
    if (!answer.ok) throw new Error(answer.problem.code);
    return answer.output as RequestOutput<N>;
  }
  yard = (await request('yard.info', {})).uuid;
  return {
    ask,
    request,
    heard: <N extends EventName>(name: N): EventData<N>[] =>
      events.filter(({ event }) => event === name).map(({ data }) => data as EventData<N>),
    close: () =>
      new Promise((resolve) => {
        socket.once('close', resolve);
        socket.close();
      }),
  };
}

test('each window’s values go where it aims, and the simulated meter’s where the window aims that has it', async () => {
  const first = await connect();
  const id = randomUUID();
  const second = await connect(id);
  const [stack] = await first.request('stacks.list', {});
  const { id: roundId, boards } = await first.request('rounds.start', { stackId: stack!.id, woodTempC: 20 });
  await second.request('rounds.open', { roundId });
  await first.request('meter.simulate', {});
  const spot = (index: number) => ({ roundId, boardId: boards[index]!.boardId, spotIndex: 0 });
  await first.request('rounds.aim', spot(2));
  await second.request('rounds.aim', spot(6));
  await second.request('rounds.saveTyped', { ...spot(6), newestReadingId: null, raw: 9.1 });

  await vi.waitFor(
    () => {
      const saved = first.heard('round.changed').filter(({ savedReadingId }) => savedReadingId !== null);
      expect(saved.map(({ board }) => board.boardId)).toEqual([spot(2).boardId]);
    },
    { timeout: 8000, interval: 100 },
  );
  const savedBySecond = second.heard('round.changed').filter(({ savedReadingId }) => savedReadingId !== null);
  expect(savedBySecond.map(({ board }) => board.boardId)).toEqual([spot(6).boardId]);
  expect(second.heard('meter.live')).toEqual([]);

  // A socket that drops and comes back under its id goes on where it was.
  await second.close();
  const again = await connect(id);
  expect(await again.request('rounds.open', { roundId })).toMatchObject({
    aim: { boardId: spot(6).boardId, spotIndex: 1 },
  });
}, 15_000);

test('the meter is nobody’s once the window that has it is gone', async () => {
  const first = await connect();
  await first.request('meter.simulate', {});
  const second = await connect();
  expect(await second.request('meter.state', {})).toMatchObject({ heldBy: 'another-window' });
  await first.close();
  await vi.waitFor(async () =>
    expect(await second.request('meter.state', {})).toMatchObject({ heldBy: 'nobody' }),
  );
  expect(await second.request('meter.hold', {})).toMatchObject({ heldBy: 'this-window' });
});
