import { z } from 'zod';

const secretSchema = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * What a window of the loopback host and the host know of each other. Both are new at each start of the host:
 * whoever takes its port later, and gets the key from a window that comes back, has a key that opens nothing.
 */
export const sessionSchema = z.object({
  /** By it the host knows its windows. */
  key: secretSchema,
  /** By it a window knows its host. No window is asked for it. */
  hostMark: secretSchema,
});
export type Session = z.infer<typeof sessionSchema>;

/** The first message of a socket: which window it is of, with the key, or with the ticket of a start link. */
export const helloSchema = z.union([
  z.object({ window: z.uuid(), key: secretSchema }),
  z.object({ window: z.uuid(), ticket: secretSchema }),
]);
export type Hello = z.infer<typeof helloSchema>;

/** The host's answer to it. */
export const welcomeSchema = z.object({ session: sessionSchema });

/** Why the host closes a socket whose key or ticket opens nothing (RFC 6455 leaves 4000 to 4999 to the program). */
export const NOT_LET_IN = 4403;

/** The part of a start link's address that has the ticket. */
export const TICKET_IN_ADDRESS = 'open';
