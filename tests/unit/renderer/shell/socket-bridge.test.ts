import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { type WebSocket as ServerSocket, WebSocketServer } from 'ws';
import { type LinkState, socketBridge, wireBridge } from '../../../../renderer/bridge.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** The machine's end of the socket: a real server on a port of its own. */
async function startMachine(port = 0) {
  const server = new WebSocketServer({ host: '127.0.0.1', port });
  await once(server, 'listening');
  const heard: { id: number; name: string; input: unknown }[] = [];
  const sockets = new Set<ServerSocket>();
  let answer: ((name: string) => unknown) | null = null;
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('message', (data) => {
      const message = JSON.parse(String(data));
      heard.push(message);
      if (answer) socket.send(JSON.stringify({ id: message.id, answer: answer(message.name) }));
    });
  });
  return {
    port: (server.address() as AddressInfo).port,
    heard,
    answers: (by: (name: string) => unknown) => {
      answer = by;
    },
    tell: (event: string, data: unknown) => {
      for (const socket of sockets) socket.send(JSON.stringify({ event, data }));
    },
    stop: async () => {
      for (const socket of sockets) socket.terminate();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

type Machine = Awaited<ReturnType<typeof startMachine>>;
const started: Machine[] = [];
async function machine(port?: number): Promise<Machine> {
  const each = await startMachine(port);
  started.push(each);
  return each;
}
afterEach(async () => {
  for (const each of started.splice(0)) await each.stop();
});

function connect(port: number) {
  const states: LinkState[] = [];
  const bridge = socketBridge(`ws://127.0.0.1:${port}/`, (state) => states.push(state));
  return { bridge, states };
}

test('a call that was made before the socket opened is sent when it does, and answered', async () => {
  const host = await machine();
  host.answers(() => ({ ok: true, output: { code: 'OAK-08' } }));
  const { bridge } = connect(host.port);
  await expect(bridge.query('boards.nextCode', { stackId: 3 })).resolves.toEqual({ code: 'OAK-08' });
  expect(host.heard).toEqual([{ id: 1, name: 'boards.nextCode', input: { stackId: 3 } }]);
});

test('a refusal arrives as its message', async () => {
  const host = await machine();
  const taken = message('refusal.board-code-taken', { boardCode: 'OAK-08' });
  host.answers(() => ({ ok: false, problem: taken }));
  const { bridge } = connect(host.port);
  const call = bridge.query('stacks.list', {});
  await expect(call).rejects.toBeInstanceOf(Refusal);
  await expect(call).rejects.toMatchObject({ problem: taken });
});

test('events reach who listens, until they stop', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  await vi.waitFor(() => expect(states).toContain('open'));
  const heard: unknown[] = [];
  const stop = bridge.on('changed', (data) => heard.push(data));
  host.tell('changed', { topics: ['boards'] });
  await vi.waitFor(() => expect(heard).toHaveLength(1));
  stop();
  let other = 0;
  bridge.on('changed', () => other++);
  host.tell('changed', { topics: ['boards'] });
  await vi.waitFor(() => expect(other).toBe(1));
  expect(heard).toHaveLength(1);
});

test('when the machine goes, what was asked is refused, what is asked then too; it comes back by itself', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  await vi.waitFor(() => expect(states).toContain('open'));

  const unanswered = expect(bridge.command('rounds.take', { roundId: 1 })).rejects.toMatchObject({
    problem: message('refusal.machine-stopped'),
  });
  await vi.waitFor(() => expect(host.heard).toHaveLength(1));
  await host.stop();
  await unanswered;
  expect(states.at(-1)).toBe('away');
  await expect(bridge.command('rounds.take', { roundId: 1 })).rejects.toMatchObject({
    problem: message('refusal.machine-away'),
  });

  const again = await machine(host.port);
  again.answers(() => ({ ok: true, output: [] }));
  await vi.waitFor(() => expect(states.at(-1)).toBe('open'), 5000);
  await expect(bridge.query('stacks.list', {})).resolves.toEqual([]);
  // The reading that was refused while it was away is not taken later.
  expect(again.heard.map((each) => each.name)).toEqual(['stacks.list']);
});

test('over Electron the same: output, refusal and events', async () => {
  let hear: (name: string, data: unknown) => void = () => undefined;
  const bridge = wireBridge({
    request: async (name) =>
      name === 'stacks.list'
        ? { ok: true, output: [] }
        : { ok: false, problem: message('refusal.round-finished') },
    on: (listener) => {
      hear = listener;
      return () => undefined;
    },
  });
  await expect(bridge.query('stacks.list', {})).resolves.toEqual([]);
  await expect(bridge.query('rounds.get', { roundId: 9 })).rejects.toMatchObject({
    problem: message('refusal.round-finished'),
  });
  const heard: unknown[] = [];
  bridge.on('changed', (data) => heard.push(data));
  hear('changed', { topics: ['boards'] });
  hear('meter.state', {});
  expect(heard).toEqual([{ topics: ['boards'] }]);
});
