import type { Yard } from '../store/yard.ts';

/**
 * Work that nobody waits for, but that the next request must find done. It runs once the answer under way is sent, and
 * always before the next request. Left undone where its yard is no longer open, or its file was lost.
 */
export function createOnceAnswered(openYard: () => Yard, reportFault: (error: unknown) => void) {
  let waiting: { yard: Yard; work: () => void }[] = [];

  function isOpen(yard: Yard): boolean {
    try {
      return openYard() === yard && yard.loss() === null;
    } catch {
      return false;
    }
  }

  function doAll(): void {
    const all = waiting;
    waiting = [];
    for (const { yard, work } of all) {
      try {
        if (isOpen(yard)) work();
      } catch (error) {
        reportFault(error);
      }
    }
  }

  return {
    add: (work: () => void): void => {
      if (waiting.length === 0) setImmediate(doAll);
      waiting.push({ yard: openYard(), work });
    },
    doAll,
  };
}
