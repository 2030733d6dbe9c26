/** Something that happens again and again, which others can follow without being known. */
export interface Signal<T> {
  /** @returns a function that stops following */
  follow(listener: (data: T) => void): () => void;
  /** Tells everyone who follows. */
  give(data: T): void;
}

export function createSignal<T = void>(): Signal<T> {
  const listeners = new Set<(data: T) => void>();
  return {
    follow: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    give: (data) => {
      for (const listener of listeners) listener(data);
    },
  };
}
