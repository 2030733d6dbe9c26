import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import { type App, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';
import type { Answer } from '../../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../../shared-core/contract/events.ts';
import { type Session, TICKET_IN_ADDRESS, welcomeSchema } from '../../../shared-core/contract/hello.ts';
import type { RequestInput, RequestName, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { noMeter } from '../app/no-meter.ts';

/** The whole app behind the real loopback host, with two windows connected as pages are. */
let app: App;
let host: Awaited<ReturnType<typeof startLoopbackHost>>;
let session: Session;

beforeEach(async () => {
  const rendererDir = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(join(rendererDir, 'index.html'), '<title>the window</title>');
  app = createApp({
    dataDir: mkdtempSync(join(tmpdir(), 'pintally-app-')),
    links: noMeter,
    threads: threadSources,
  });
  const owner = app.connect('window-0', () => undefined);
  await owner.answer('yard.openDemo', {}, { yard: null, act: randomUUID() });
  owner.close();
  host = await startLoopbackHost({ rendererDir, connect: app.connect });
  const { searchParams } = new URL(host.address());
  const { socket, welcome } = await enter(randomUUID(), { ticket: searchParams.get(TICKET_IN_ADDRESS) });
  session = welcome;
  socket.terminate();
});
afterEach(async () => {
  await host.close();
  await app.close();
});

/** A window's socket: it says which window it is of. */
async function enter(window: string, shown: object) {
  const { host: name, origin } = new URL(host.address());
  const socket = new WebSocket(`ws://${name}/ws`, { headers: { Origin: origin } });
  await once(socket, 'open');
  socket.send(JSON.stringify({ window, ...shown }));
  const [data] = await once(socket, 'message');
  return { socket, welcome: welcomeSchema.parse(JSON.parse(String(data))).session };
}

/** Then it asks. */
async function connect(window: string = randomUUID()) {
  const { socket } = await enter(window, { key: session.key });
  const events: { event: EventName; data: unknown }[] = [];
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on('message', (data) => {
    const heard = JSON.parse(String(data));
    if ('event' in heard) events.push(heard);
    else waiting.get(heard.id)?.(heard.answer);
  });
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
  const stack = (await first.request('stacks.list', {})).find(({ boards: count }) => count > 6);
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
});

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

test('a window that comes back has the meter again, unless another one took it meanwhile', async () => {
  const id = randomUUID();
  const first = await connect(id);
  await first.request('meter.simulate', {});
  const second = await connect();
  await first.close();
  const again = await connect(id);
  expect(await again.request('meter.state', {})).toMatchObject({ heldBy: 'this-window' });
  await vi.waitFor(() => expect(again.heard('meter.live').length).toBeGreaterThan(0));

  await again.close();
  await vi.waitFor(async () =>
    expect(await second.request('meter.state', {})).toMatchObject({ heldBy: 'nobody' }),
  );
  await second.request('meter.hold', {});
  const later = await connect(id);
  expect(await later.request('meter.state', {})).toMatchObject({ heldBy: 'another-window' });
});
