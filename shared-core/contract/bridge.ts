import type { Envelope } from './envelope.ts';
import type { EventData, EventName } from './events.ts';
import type { CommandName, QueryName, RequestInput, RequestOutput } from './requests.ts';

/** The window's only way to the machine, whatever carries it (Electron IPC or the loopback socket). */
export interface Bridge {
  /**
   * Asks for something and changes nothing.
   * @throws Refusal
   */
  query<N extends QueryName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>>;
  /**
   * Changes something.
   * @throws Refusal
   */
  command<N extends CommandName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>>;
  /** @returns a function that stops listening */
  on<N extends EventName>(name: N, listener: (data: EventData<N>) => void): () => void;
}

/** What the preload script exposes: the same, untyped, as it crosses the context boundary. */
export interface WireBridge {
  request(name: string, input: unknown, envelope: Envelope): Promise<unknown>;
  on(listener: (name: string, data: unknown) => void): () => void;
}
