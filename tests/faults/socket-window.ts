import { randomUUID } from 'node:crypto';
import { WebSocket } from 'ws';
import type { Answer } from '../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../shared-core/contract/events.ts';
import { welcomeSchema } from '../../shared-core/contract/hello.ts';
import type { RequestName } from '../../shared-core/contract/requests.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { outputsOf } from '../unit/app/a-window.ts';
import type { AnyWindow } from './streaming.ts';

/** The host is gone, so that nobody knows what became of what it was asked. */
export class HostGone extends Error {
  override name = 'HostGone';

  /** @param code  with which the socket was closed (RFC 6455, section 7.4); null where it never was open */
  constructor(code: number | null = null) {
    super(code === null ? 'The host is not there.' : `The socket was closed with code ${code}.`);
  }
}

export interface SocketWindow extends AnyWindow {
  on<N extends EventName>(name: N, listener: (data: EventData<N>) => void): void;
  /** Ends it without a word, as a window that crashes. */
  kill(): void;
}

/** What lets a window in: the ticket of the start link, once, or the key that it is exchanged for. */
export type Shown = { ticket: string | null } | { key: string };

/** A window of a running host, connected as a page is. */
export async function connectWindow(
  origin: string,
  shown: Shown,
): Promise<{ window: SocketWindow; key: string }> {
  const socket = new WebSocket(`${origin.replace('http', 'ws')}/ws`, { headers: { Origin: origin } });
  const waiting = new Map<number, { resolve: (answer: Answer) => void; reject: (error: Error) => void }>();
  const listeners = new Map<EventName, ((data: never) => void)[]>();
  let yard: string | null = null;
  let sent = 0;
  let isGone = false;

  socket.on('message', (data) => {
    const heard = JSON.parse(String(data));
    if ('session' in heard) return;
    if ('event' in heard) {
      for (const listener of listeners.get(heard.event) ?? []) listener(heard.data as never);
      return;
    }
    waiting.get(heard.id)?.resolve(heard.answer);
    waiting.delete(heard.id);
  });
  const end = (code: number): void => {
    isGone = true;
    for (const { reject } of waiting.values()) reject(new HostGone(code));
    waiting.clear();
  };
  socket.on('close', end);
  // Its close follows.
  socket.on('error', () => undefined);
  const key = await new Promise<string>((resolve, reject) => {
    socket.once('open', () => socket.send(JSON.stringify({ window: randomUUID(), ...shown })));
    socket.once('message', (data) => resolve(welcomeSchema.parse(JSON.parse(String(data))).session.key));
    socket.once('close', (code) => reject(new HostGone(code)));
  });

  function answer(name: RequestName, input: unknown, act: string = randomUUID()): Promise<Answer> {
    if (isGone) return Promise.reject(new HostGone());
    const id = ++sent;
    const asked = new Promise<Answer>((resolve, reject) => waiting.set(id, { resolve, reject }));
    socket.send(JSON.stringify({ id, name, input, envelope: { yard, act } }));
    return asked.then((answer) => {
      if (answer.ok && name.startsWith('yard.')) yard = (answer.output as YardInfo).uuid ?? yard;
      return answer;
    });
  }
  await answer('yard.info', {});
  const request = outputsOf(answer);
  const window: SocketWindow = {
    answer,
    query: request,
    command: request,
    on: (name, listener) => listeners.set(name, [...(listeners.get(name) ?? []), listener]),
    kill: () => socket.terminate(),
  };
  return { window, key };
}
