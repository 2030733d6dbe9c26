/** Tests wait so long for what is on its way; see `patience.ts`. */
export const WAIT_MS = 30_000;
