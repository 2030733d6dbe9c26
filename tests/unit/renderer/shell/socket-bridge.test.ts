import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type WebSocket as ServerSocket, WebSocketServer } from 'ws';
import { type LinkState, nameYard, socketBridge, wireBridge } from '../../../../renderer/data/bridge.ts';
import type { Entry } from '../../../../renderer/data/session.ts';
import { watchSilence } from '../../../../renderer/data/silence.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { Envelope } from '../../../../shared-core/contract/envelope.ts';
import { NOT_LET_IN, type Session } from '../../../../shared-core/contract/hello.ts';
import { message } from '../../../../shared-core/words/message.ts';

const session = { key: 'a'.repeat(64), hostMark: 'b'.repeat(64) };

/** The machine's end of the socket: a real server on a free port, which lets windows in as a given one of its kind. */
async function startMachine(port = 0, welcome: (socket: ServerSocket) => void = letIn) {
  const server = new WebSocketServer({ host: '127.0.0.1', port });
  await once(server, 'listening');
  const heard: { id: number; name: string; input: unknown; envelope: Envelope }[] = [];
  /** What each socket sent first. */
  const windows: string[] = [];
  const hellos: unknown[] = [];
  const sockets = new Set<ServerSocket>();
  let answer: ((name: string) => unknown) | null = null;
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('message', (data) => {
      const message = JSON.parse(String(data));
      if ('window' in message) {
        windows.push(message.window);
        hellos.push(message);
        welcome(socket);
        return;
      }
      heard.push(message);
      if (answer) socket.send(JSON.stringify({ id: message.id, answer: answer(message.name) }));
    });
  });
  return {
    port: (server.address() as AddressInfo).port,
    heard,
    windows,
    hellos,
    answers: (by: (name: string) => unknown) => {
      answer = by;
    },
    giveAnswer: (id: number, given: unknown) => {
      for (const socket of sockets) socket.send(JSON.stringify({ id, answer: given }));
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

function letIn(socket: ServerSocket): void {
  socket.send(JSON.stringify({ session }));
}

type Machine = Awaited<ReturnType<typeof startMachine>>;
const started: Machine[] = [];
async function machine(port?: number, welcome?: (socket: ServerSocket) => void): Promise<Machine> {
  const each = await startMachine(port, welcome);
  started.push(each);
  return each;
}
afterEach(async () => {
  for (const each of started.splice(0)) await each.stop();
});

/** A window that has a session, or gets one from another window later. */
function connect(port: number, has: Session | null = session) {
  const states: LinkState[] = [];
  let given: () => void = () => undefined;
  const entry: Entry = {
    shows: () => has && { key: has.key },
    letIn: ({ hostMark }) => hostMark === has?.hostMark,
    notLetIn: () => {
      has = null;
    },
    onGiven: (listener) => {
      given = listener;
    },
  };
  const bridge = socketBridge(`ws://127.0.0.1:${port}/`, entry, (state) => states.push(state));
  return {
    bridge,
    states,
    give: (by: Session) => {
      has = by;
      given();
    },
  };
}

test('a request that was made before the socket opened is sent when it does, and answered', async () => {
  const host = await machine();
  host.answers(() => ({ ok: true, output: { code: 'OAK-08' } }));
  const { bridge } = connect(host.port);
  await expect(bridge.query('boards.nextCode', { stackId: 3 })).resolves.toEqual({ code: 'OAK-08' });
  expect(host.heard).toEqual([
    { id: 1, name: 'boards.nextCode', input: { stackId: 3 }, envelope: { yard: null, act: null } },
  ]);
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
  host.tell('changed', { yard: null, topics: ['boards'] });
  await vi.waitFor(() => expect(heard).toHaveLength(1));
  stop();
  let other = 0;
  bridge.on('changed', () => other++);
  host.tell('changed', { yard: null, topics: ['boards'] });
  await vi.waitFor(() => expect(other).toBe(1));
  expect(heard).toHaveLength(1);
});

test('when the machine goes, what was asked is refused, what is asked then too; it comes back by itself', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  await vi.waitFor(() => expect(states).toContain('open'));

  const unanswered = expect(bridge.command('rounds.finish', { roundId: 1 })).rejects.toMatchObject({
    problem: message('refusal.machine-stopped'),
  });
  await vi.waitFor(() => expect(host.heard).toHaveLength(1));
  await host.stop();
  await unanswered;
  expect(states.at(-1)).toBe('away');
  await expect(bridge.command('rounds.finish', { roundId: 1 })).rejects.toMatchObject({
    problem: message('refusal.machine-away'),
  });

  const again = await machine(host.port);
  again.answers(() => ({ ok: true, output: [] }));
  await vi.waitFor(() => expect(states.at(-1)).toBe('open'), 5000);
  await expect(bridge.query('stacks.list', {})).resolves.toEqual([]);
  // The reading that was refused while it was away is not taken later.
  expect(again.heard.map((each) => each.name)).toEqual(['stacks.list']);
  // It is the same window that came back.
  expect(again.windows).toEqual(host.windows);
});

test('the window shows its key in its first message, and asks nothing before it is let in', async () => {
  let letInNow = (): void => undefined;
  const host = await machine(0, (socket) => {
    letInNow = () => letIn(socket);
  });
  host.answers(() => ({ ok: true, output: [] }));
  const { bridge, states } = connect(host.port);
  const asked = bridge.query('stacks.list', {});
  await vi.waitFor(() => expect(host.hellos).toEqual([{ window: expect.any(String), key: session.key }]));
  expect(host.heard).toEqual([]);
  expect(states).toEqual(['connecting']);
  letInNow();
  await expect(asked).resolves.toEqual([]);
  expect(states).toEqual(['connecting', 'open']);
});

test('two windows of one session are two windows', async () => {
  const host = await machine();
  for (const { states } of [connect(host.port), connect(host.port)]) {
    await vi.waitFor(() => expect(states).toContain('open'));
  }
  expect(new Set(host.windows).size).toBe(2);
});

test('whoever takes the port later is sent no request, and cannot say that one was saved', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  await vi.waitFor(() => expect(states).toContain('open'));
  await host.stop();
  const other = await machine(host.port, (socket) =>
    socket.send(JSON.stringify({ session: { ...session, hostMark: 'c'.repeat(64) } })),
  );
  other.answers(() => ({ ok: true, output: {} }));
  await vi.waitFor(() => expect(states.at(-1)).toBe('foreign'), 5000);
  await expect(bridge.command('boards.confirmSpecies', { id: 1 })).rejects.toMatchObject({
    problem: message('refusal.machine-away'),
  });
  expect(other.heard).toEqual([]);
});

test('a window that is not let in says so, and opens once another window gives what lets it in', async () => {
  const host = await machine(0, (socket) =>
    host.hellos.length === 1 ? socket.close(NOT_LET_IN) : letIn(socket),
  );
  host.answers(() => ({ ok: true, output: [] }));
  const { bridge, states, give } = connect(host.port, { ...session, key: 'd'.repeat(64) });
  const asked = bridge.query('stacks.list', {});
  await vi.waitFor(() => expect(states.at(-1)).toBe('locked'));
  give(session);
  await expect(asked).resolves.toEqual([]);
  expect(states.at(-1)).toBe('open');
});

test('every command is one act, of the yard on screen', async () => {
  const host = await machine();
  host.answers(() => ({ ok: true, output: {} }));
  const { bridge } = connect(host.port);
  const yard = '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10';
  nameYard(yard);
  await bridge.command('boards.confirmSpecies', { id: 1 });
  await bridge.command('boards.confirmSpecies', { id: 1 });
  nameYard(null);
  const [first, second] = host.heard.map(({ envelope }) => envelope);
  expect([first?.yard, second?.yard]).toEqual([yard, yard]);
  expect(first?.act).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(second?.act).not.toBe(first?.act);
});

test('whoever opened another yard since asking is not told that another window did', async () => {
  const host = await machine();
  const { bridge } = connect(host.port);
  const problem = message('refusal.other-yard', { kind: 'demo' });
  for (const ask of [
    () => bridge.query('stacks.list', {}),
    () => bridge.command('rounds.finish', { roundId: 1 }),
  ]) {
    nameYard('aa');
    host.answers(() => ({ ok: false, problem }));
    await expect(ask()).rejects.toMatchObject({ problem });
    host.answers(() => {
      nameYard('bb');
      return { ok: false, problem };
    });
    await expect(ask()).rejects.toMatchObject({ problem: message('refusal.yard-left', { kind: 'demo' }) });
  }
  nameYard(null);
});

test('what is done again while nobody knows what came of it is the same act', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  const confirm = () => bridge.command('boards.confirmSpecies', { id: 1 });
  const lost = expect(Promise.all([confirm(), confirm()])).rejects.toBeInstanceOf(Refusal);
  await vi.waitFor(() => expect(host.heard).toHaveLength(2));
  await host.stop();
  await lost;

  const again = await machine(host.port);
  again.answers(() => ({ ok: true, output: {} }));
  await vi.waitFor(() => expect(states.at(-1)).toBe('open'), 5000);
  await confirm();
  await bridge.command('boards.confirmSpecies', { id: 2 });
  const acts = [...host.heard, ...again.heard].map(({ envelope }) => envelope.act);
  expect(new Set(acts.slice(0, 3)).size).toBe(1);
  expect(acts[3]).not.toBe(acts[0]);
});

test('what is done again once the person has seen what came of it is another act', async () => {
  const host = await machine();
  const { bridge, states } = connect(host.port);
  const typed = { roundId: 1, boardId: 1, spotIndex: 0, newestReadingId: null, raw: 12.4 };
  const save = () => bridge.command('rounds.saveTyped', typed);
  const lost = expect(save()).rejects.toBeInstanceOf(Refusal);
  await vi.waitFor(() => expect(host.heard).toHaveLength(1));
  await host.stop();
  await lost;

  const again = await machine(host.port);
  again.answers(() => ({ ok: true, output: {} }));
  await vi.waitFor(() => expect(states.at(-1)).toBe('open'), 5000);
  // It had been saved. The window moves its aim, which is no act, and the person undoes it and types it again.
  await bridge.command('rounds.aim', { roundId: 1, boardId: 1, spotIndex: 0 });
  await bridge.command('rounds.undo', { readingId: 7 });
  await save();
  expect(again.heard.at(-1)?.envelope.act).not.toBe(host.heard[0]?.envelope.act);
});

test('an edit that another one came before brings the record as it is now', async () => {
  const host = await machine();
  host.answers(() => ({ ok: false, problem: message('conflict.edited-meanwhile'), current: { version: 2 } }));
  const { bridge } = connect(host.port);
  const edit = bridge.command('stacks.edit', { id: 1, basedOn: 1, changed: { note: 'x' } });
  await expect(edit).rejects.toBeInstanceOf(Conflict);
  await expect(edit).rejects.toMatchObject({ current: { version: 2 } });
});

test('over Electron the same: output, refusal and events', async () => {
  let hear: (name: string, data: unknown) => void = () => undefined;
  const bridge = wireBridge(
    {
      request: async (name) =>
        name === 'stacks.list'
          ? { ok: true, output: [] }
          : { ok: false, problem: message('refusal.round-finished') },
      on: (listener) => {
        hear = listener;
        return () => undefined;
      },
    },
    () => undefined,
  );
  await expect(bridge.query('stacks.list', {})).resolves.toEqual([]);
  await expect(bridge.query('rounds.get', { roundId: 9 })).rejects.toMatchObject({
    problem: message('refusal.round-finished'),
  });
  const heard: unknown[] = [];
  bridge.on('changed', (data) => heard.push(data));
  hear('changed', { yard: null, topics: ['boards'] });
  hear('meter.state', {});
  expect(heard).toEqual([{ yard: null, topics: ['boards'] }]);
});

describe('a machine that is there and answers nothing', () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
  afterEach(() => void vi.useRealTimers());

  test('is silent after some seconds, and what was asked is answered once it goes on', async () => {
    const host = await machine();
    const { bridge, states } = connect(host.port);
    await vi.waitFor(() => expect(states).toEqual(['connecting', 'open']));
    const asked = bridge.query('boards.nextCode', { stackId: 3 });
    vi.advanceTimersByTime(4000);
    expect(states.at(-1)).toBe('open');
    vi.advanceTimersByTime(4000);
    expect(states.at(-1)).toBe('silent');
    await vi.waitFor(() => expect(host.heard).not.toEqual([]));
    host.giveAnswer(1, { ok: true, output: { code: 'OAK-08' } });
    await expect(asked).resolves.toEqual({ code: 'OAK-08' });
    expect(states.at(-1)).toBe('open');
  });

  test('is noticed over Electron as well', () => {
    const states: LinkState[] = [];
    let hear: (name: string, data: unknown) => void = () => undefined;
    const request = () => new Promise<never>(() => undefined);
    const on = (listener: typeof hear) => {
      hear = listener;
      return () => undefined;
    };
    wireBridge({ request, on }, (state) => states.push(state));
    vi.advanceTimersByTime(8000);
    expect(states).toEqual(['silent']);
    hear('changed', { yard: null, topics: [] });
    expect(states).toEqual(['silent', 'open']);
  });

  test('is not one that works for a minute on a request and answers others meanwhile', () => {
    const told = vi.fn();
    const silence = watchSilence(() => setTimeout(() => silence.heard(), 100), told);
    silence.heard();
    vi.advanceTimersByTime(60_000);
    expect(told).not.toHaveBeenCalled();
  });

  test('is not one that is away: the window knows of that already', () => {
    const told = vi.fn();
    const silence = watchSilence(() => undefined, told);
    silence.heard();
    silence.stop();
    vi.advanceTimersByTime(60_000);
    expect(told).not.toHaveBeenCalled();
  });
});
