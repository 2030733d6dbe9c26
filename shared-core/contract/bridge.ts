import type { CallInput, CallName, CallOutput } from './calls.ts';
import type { EventData, EventName } from './events.ts';

/** The window's only way to the machine, whatever carries it (Electron IPC or the loopback socket). */
export interface Bridge {
  /** @throws Refusal with a sentence for a person */
  call<N extends CallName>(name: N, input: CallInput<N>): Promise<CallOutput<N>>;
  /** @returns a function that stops listening */
  on<N extends EventName>(name: N, listener: (data: EventData<N>) => void): () => void;
}

/** What the preload script exposes: the same, untyped, as it crosses the context boundary. */
export interface WireBridge {
  call(name: string, input: unknown): Promise<unknown>;
  on(listener: (name: string, data: unknown) => void): () => void;
}
