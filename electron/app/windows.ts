import type { EventData, EventName } from '../../shared-core/contract/events.ts';
import { createSignal } from './signal.ts';

export type Emit = <N extends EventName>(name: N, data: EventData<N>) => void;

/** The windows that are open, each by the id that it has as long as it is. */
export function createWindows() {
  const open = new Map<string, Emit>();
  const opened = createSignal<string>();
  const closed = createSignal<string>();
  return {
    /** A window was opened, or connected again; given by its id. */
    opened,
    /** A window was closed, given by its id. */
    closed,
    ids: (): string[] => [...open.keys()],
    /** @returns a function that closes it, unless it has connected again meanwhile */
    connect: (window: string, emit: Emit): (() => void) => {
      open.set(window, emit);
      opened.give(window);
      return () => {
        if (open.get(window) !== emit) return;
        open.delete(window);
        closed.give(window);
      };
    },
    /** Tells all of them. */
    emit: ((name, data) => {
      for (const emit of open.values()) emit(name, data);
    }) satisfies Emit as Emit,
    emitToOthers: <N extends EventName>(window: string, name: N, data: EventData<N>): void => {
      for (const [id, emit] of open) if (id !== window) emit(name, data);
    },
    /** Tells one, if it is still open. */
    emitTo: <N extends EventName>(window: string, name: N, data: EventData<N>): void =>
      open.get(window)?.(name, data),
  };
}
export type Windows = ReturnType<typeof createWindows>;
