import { type Session, sessionSchema, TICKET_IN_ADDRESS } from '../../shared-core/contract/hello.ts';

const NAME = 'pintally.session';
const ASKING = 'asking';

/** What lets a window of the loopback host in. */
export interface Entry {
  /** What the window shows the host next; null while it has nothing to show. */
  shows(): { ticket: string } | { key: string } | null;
  /** The host let this window in. False where it is another host than the one that this window is of. */
  letIn(session: Session): boolean;
  /** The host did not. */
  notLetIn(): void;
  /** Calls whenever another window gave what lets this one in. */
  onGiven(listener: () => void): void;
}

/**
 * The session is in this tab's storage, so that a reload works and neither an address nor a cookie has it: cookies go
 * to every port. A second tab of the same address asks the others for it; only pages of this origin hear that.
 */
export function createEntry(): Entry {
  let ticket = takeTicket();
  let session = stored();
  /** Another window may still have one that is no longer valid. */
  let refusedKey: string | null = null;
  let given = (): void => undefined;
  const channel = new BroadcastChannel(NAME);

  function keep(next: Session): void {
    session = next;
    sessionStorage.setItem(NAME, JSON.stringify(next));
  }
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (data === ASKING) {
      if (session) channel.postMessage(session);
      return;
    }
    const offered = sessionSchema.safeParse(data).data;
    if (!offered || session || offered.key === refusedKey) return;
    keep(offered);
    given();
  };
  if (ticket === null && session === null) channel.postMessage(ASKING);

  return {
    shows: () => {
      if (ticket !== null) return { ticket };
      return session && { key: session.key };
    },
    letIn: (next) => {
      if (ticket === null) return next.hostMark === session?.hostMark;
      ticket = null;
      keep(next);
      // Those that asked before this one had it.
      channel.postMessage(next);
      return true;
    },
    notLetIn: () => {
      // A start link that was opened before: what this tab, or another one, has may still do.
      if (ticket !== null) ticket = null;
      else {
        refusedKey = session?.key ?? null;
        session = null;
        sessionStorage.removeItem(NAME);
      }
      if (session === null) channel.postMessage(ASKING);
    },
    onGiven: (listener) => {
      given = listener;
    },
  };
}

/** Takes the ticket out of the address, and out of what the browser remembers of it. */
function takeTicket(): string | null {
  const address = new URL(location.href);
  const ticket = address.searchParams.get(TICKET_IN_ADDRESS);
  if (ticket === null) return null;
  address.searchParams.delete(TICKET_IN_ADDRESS);
  history.replaceState(null, '', address);
  return ticket;
}

function stored(): Session | null {
  try {
    return sessionSchema.parse(JSON.parse(sessionStorage.getItem(NAME) ?? 'null'));
  } catch {
    return null;
  }
}
