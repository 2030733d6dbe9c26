import { type Answer, Conflict, Refusal } from '../../shared-core/contract/answer.ts';
import type { Bridge, WireBridge } from '../../shared-core/contract/bridge.ts';
import type { Envelope } from '../../shared-core/contract/envelope.ts';
import { type Hello, NOT_LET_IN, type Session, welcomeSchema } from '../../shared-core/contract/hello.ts';
import { isAct, type QueryName } from '../../shared-core/contract/requests.ts';
import { message } from '../../shared-core/words/message.ts';
import { followAct, rememberAct } from './own-acts.ts';
import { createEntry, type Entry } from './session.ts';
import { watchSilence } from './silence.ts';
import { newUuid } from './uuid.ts';

declare global {
  interface Window {
    /** Set by Electron's preload script; absent in a plain browser. */
    pintally?: WireBridge;
  }
}

/**
 * Whether the machine at the other end can be reached. `silent`: it is there, and answers nothing. `locked`: it does not
 * let this window in. `foreign`: another program answers where the machine was.
 */
export type LinkState = 'connecting' | 'open' | 'silent' | 'away' | 'locked' | 'foreign';

let installed: Bridge | null = null;

/** Puts the bridge in place that every store and screen uses. Called once at the start, and by tests. */
export function installBridge(bridge: Bridge): void {
  installed = bridge;
}

/** The window's way to the machine. */
export function bridge(): Bridge {
  if (!installed) throw new Error('The bridge was used before it was installed.');
  return installed;
}

/** Whether the window runs in a browser, on the same computer as the machine. */
export const isInBrowser = (): boolean => window.pintally === undefined;

/** The bridge that this window has: Electron's, or a socket to the host that served the page. */
export function makeBridge(onLink: (state: LinkState) => void): Bridge {
  if (window.pintally) {
    onLink('open');
    return wireBridge(window.pintally, onLink);
  }
  const address = new URL('ws', location.href);
  address.protocol = 'ws:';
  address.search = '';
  address.hash = '';
  return socketBridge(address.href, createEntry(), onLink);
}

/** Names and data come from our own machine code, which has validated them; the types are given back here. */
type AnyListener = (data: never) => void;

class Listeners {
  #byName = new Map<string, Set<AnyListener>>();

  add(name: string, listener: AnyListener): () => void {
    const set = this.#byName.get(name) ?? new Set();
    this.#byName.set(name, set);
    set.add(listener);
    return () => set.delete(listener);
  }

  tell(name: string, data: unknown): void {
    for (const listener of this.#byName.get(name) ?? []) listener(data as never);
  }
}

function outputOf(answer: Answer): unknown {
  if (answer.ok) return answer.output;
  throw 'current' in answer ? new Conflict(answer.current, answer.problem) : new Refusal(answer.problem);
}

let shownYard: string | null = null;

/** An answer as this window must read it: where it has opened another yard since it asked, no other window did. */
function asOwnDoing(answer: Answer, askedOf: string | null): Answer {
  if (answer.ok || answer.problem.code !== 'refusal.other-yard' || shownYard === askedOf) return answer;
  return { ...answer, problem: { ...answer.problem, code: 'refusal.yard-left' } };
}

/** From now on the window shows this yard: every request says so, and is refused where another one is open. */
export function nameYard(uuid: string | null): void {
  shownYard = uuid;
}

/** Sends one request; the answer comes, or it is never known what came of it. */
type Send = (name: string, input: unknown, envelope: Envelope) => Promise<Answer>;

/**
 * Gives every command its own act. What is asked again with the same content while nobody knows what came of it
 * is the same act, so that it takes effect once: a second press, or the same form saved again after the link was lost.
 * Once another act was done since, the person has seen what came of it, and the same content is meant to be done again.
 */
function requestsBy(send: Send): Pick<Bridge, 'query' | 'command'> {
  /** By content: acts on their way, and acts whose answer was lost. */
  const underWay = new Map<string, string>();
  const lost = new Map<string, string>();
  const command: Bridge['command'] = async (name, input) => {
    const yard = shownYard;
    const content = JSON.stringify([yard, name, input]);
    const act = underWay.get(content) ?? lost.get(content) ?? newUuid();
    underWay.set(content, act);
    const answer = await send(name, input, { yard, act })
      .catch((why: unknown) => {
        lost.set(content, act);
        throw why;
      })
      .finally(() => underWay.delete(content));
    if (!answer.ok && answer.mayBeDone) lost.set(content, act);
    else if (answer.ok && isAct(name)) {
      lost.clear();
      rememberAct(name, act, input, yard);
    } else lost.delete(content);
    return outputOf(asOwnDoing(answer, yard)) as never;
  };
  return {
    query: async (name, input) => {
      const yard = shownYard;
      return outputOf(asOwnDoing(await send(name, input, { yard, act: null }), yard)) as never;
    },
    command: (name, input) => {
      const answer = command(name, input);
      return isAct(name) ? followAct(answer) : answer;
    },
  };
}

/** A typed bridge over Electron's preload script, which hands on answers as the main process gave them. */
export function wireBridge(wire: WireBridge, onLink: (state: LinkState) => void): Bridge {
  const listeners = new Listeners();
  const silence = watchSilence(
    () => void wire.request(QUESTION, {}, { yard: null, act: null }).then(silence.heard, silence.heard),
    (isSilent) => onLink(isSilent ? 'silent' : 'open'),
  );
  silence.heard();
  wire.on((name, data) => {
    silence.heard();
    listeners.tell(name, data);
  });
  return {
    ...requestsBy(async (...request) => {
      const answer = (await wire.request(...request)) as Answer;
      silence.heard();
      return answer;
    }),
    on: (name, listener) => listeners.add(name, listener as AnyListener),
  };
}

/** Asked to hear whether the machine answers: no file need be read for it. */
const QUESTION: QueryName = 'meter.state';

const FIRST_RETRY_MS = 250;
const LONGEST_RETRY_MS = 4000;
/** How long another window may take to give what lets this one in. */
const ANOTHER_WINDOW_MS = 300;

/**
 * A typed bridge over a web socket. It reconnects by itself. Requests made before the first connection wait for it;
 * later, a request made while the machine is away is refused at once, so that nothing is done twice or long after.
 *
 * Each side shows the other that it is the one it was: whoever takes the port after the machine ended is sent no
 * request, and cannot confirm a reading that nobody saved.
 */
export function socketBridge(address: string, entry: Entry, onLink: (state: LinkState) => void): Bridge {
  const listeners = new Listeners();
  const waiting = new Map<number, { answered: (answer: Answer) => void; lost: (why: Refusal) => void }>();
  /** The machine knows by it which window this is, also when it connects again. Two tabs never have the same. */
  const window = newUuid();
  let unsent: string[] = [];
  let isLetIn = false;
  let everOpen = false;
  let nextId = 1;
  let retryMs = FIRST_RETRY_MS;
  let socket: WebSocket | null = null;
  const silence = watchSilence(
    () => socket?.send(asText(nextId++, QUESTION, {}, { yard: null, act: null })),
    (isSilent) => onLink(isSilent ? 'silent' : 'open'),
  );

  function open(): void {
    const shown = entry.shows();
    socket = null;
    if (shown === null) {
      // Another window may give it, in less time than a person needs to read why this one does not open.
      setTimeout(() => socket ?? onLink('locked'), ANOTHER_WINDOW_MS);
      return;
    }
    const opening = new WebSocket(address);
    socket = opening;
    opening.onopen = () => opening.send(JSON.stringify({ window, ...shown } satisfies Hello));
    opening.onmessage = ({ data }) => {
      if (isLetIn) hear(String(data));
      else enter(opening, String(data));
    };
    opening.onclose = ({ code }) => leave(code);
  }

  function enter(opened: WebSocket, text: string): void {
    const welcome = welcomeIn(text);
    if (welcome === null || !entry.letIn(welcome)) {
      opened.onclose = null;
      opened.close();
      socket = null;
      onLink('foreign');
      return;
    }
    isLetIn = true;
    everOpen = true;
    retryMs = FIRST_RETRY_MS;
    for (const each of unsent) opened.send(each);
    unsent = [];
    onLink('open');
    silence.heard();
  }

  function hear(text: string): void {
    silence.heard();
    const message = JSON.parse(text) as { id: number; answer: Answer } | { event: string; data: unknown };
    if ('event' in message) {
      listeners.tell(message.event, message.data);
      return;
    }
    waiting.get(message.id)?.answered(message.answer);
    waiting.delete(message.id);
  }

  function leave(code: number): void {
    isLetIn = false;
    socket = null;
    silence.stop();
    if (everOpen) {
      for (const { lost } of waiting.values()) lost(new Refusal(message('refusal.machine-stopped')));
      waiting.clear();
    }
    if (code === NOT_LET_IN) {
      entry.notLetIn();
      open();
      return;
    }
    onLink(everOpen ? 'away' : 'connecting');
    setTimeout(open, retryMs);
    retryMs = Math.min(retryMs * 2, LONGEST_RETRY_MS);
  }
  onLink('connecting');
  entry.onGiven(() => socket ?? open());
  open();

  function send(name: string, input: unknown, envelope: Envelope): Promise<Answer> {
    const id = nextId++;
    const text = asText(id, name, input, envelope);
    return new Promise((resolve, reject) => {
      const isOpen = isLetIn && socket?.readyState === WebSocket.OPEN;
      if (!isOpen && everOpen) {
        reject(new Refusal(message('refusal.machine-away')));
        return;
      }
      waiting.set(id, { answered: resolve, lost: reject });
      if (isOpen) socket?.send(text);
      else unsent.push(text);
    });
  }

  return {
    ...requestsBy(send),
    on: (name, listener) => listeners.add(name, listener as AnyListener),
  };
}

const asText = (id: number, name: string, input: unknown, envelope: Envelope): string =>
  JSON.stringify({ id, name, input, envelope });

function welcomeIn(text: string): Session | null {
  try {
    return welcomeSchema.parse(JSON.parse(text)).session;
  } catch {
    return null;
  }
}
