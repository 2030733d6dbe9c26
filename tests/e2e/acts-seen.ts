import type { Page } from '@playwright/test';
import type { Answer } from '../../shared-core/contract/answer.ts';
import type { Envelope } from '../../shared-core/contract/envelope.ts';
import type { ListedAct } from '../../shared-core/contract/requests/acts.ts';
import { type ActName, isAct, type RequestName } from '../../shared-core/contract/requests.ts';

interface Sent {
  id: number;
  name: RequestName;
  envelope: Envelope;
}

/** What a window did in its yard, read from what it sends and is answered. */
export interface ActsSeen {
  /** The newest act but those that undo and redo. */
  newest(): { name: ActName; isUndone: boolean; isRedone: boolean } | null;
  /** Those that were undone, and then redone. */
  undoneAndRedone(): ActName[];
}

/** Looks on from now on. A page that is open already must be opened again. */
export function watchActs(page: Page): ActsSeen {
  const acts = new Map<string, { name: ActName; isUndone: boolean; isRedone: boolean }>();
  page.on('websocket', (socket) => {
    const waiting = new Map<number, Sent>();
    socket.on('framesent', ({ payload }) => {
      const sent = JSON.parse(String(payload)) as Sent | { window: string };
      if ('name' in sent && isAct(sent.name)) waiting.set(sent.id, sent);
    });
    socket.on('framereceived', ({ payload }) => {
      const { id, answer } = JSON.parse(String(payload)) as { id?: number; answer?: Answer };
      const sent = id === undefined ? undefined : waiting.get(id);
      if (!sent || !answer?.ok) return;
      const { name, envelope } = sent;
      if (name !== 'acts.undo' && name !== 'acts.redo') {
        acts.set(String(envelope.act), { name: name as ActName, isUndone: false, isRedone: false });
        return;
      }
      const of = acts.get((answer.output as ListedAct).id);
      // What an earlier window did is not known here.
      if (!of) return;
      if (name === 'acts.undo') of.isUndone = true;
      else of.isRedone = of.isUndone;
    });
  });
  return {
    newest: () => [...acts.values()].at(-1) ?? null,
    undoneAndRedone: () => [...acts.values()].flatMap(({ name, isRedone }) => (isRedone ? name : [])),
  };
}
