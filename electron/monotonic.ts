/**
 * Milliseconds on the machine's clock that only runs forward, the same in all of its processes. What lasts is measured by
 * it: a person, or the network, may set the wall clock to anything at any time.
 */
export const monotonicMs = (): number => Number(process.hrtime.bigint()) / 1e6;
