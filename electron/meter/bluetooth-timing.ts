/** How long each thing may take, ms. Every wait has an end: a meter that went silent must not hold anything up. */
export interface BluetoothTiming {
  /** Listening for the meter before connecting. */
  searchMs: number;
  connectMs: number;
  discoverMs: number;
  subscribeMs: number;
  /** Without a notification for so long, the meter is asked to show that it is there. */
  silenceMs: number;
  /** How long it may take to show it. */
  proofMs: number;
  /** Without an advert for so long, a meter that is only listened to is away. The slowest send one each 10.24 s. */
  unheardMs: number;
  /** How long a polite goodbye to the meter may take before the radio process is ended. */
  goodbyeMs: number;
  /** How long the radio process may take to end by itself. */
  quitMs: number;
  /** How long the radio process may take to its first sign of life, and the adapter to its first state. */
  startMs: number;
  /** Without a further sign of life from the radio process for so long, it hangs. */
  hangMs: number;
  /** Waits before the first, second … attempt to get a lost meter or radio back; the last one repeats. */
  backOffMs: readonly number[];
}

export const usualTiming: BluetoothTiming = {
  searchMs: 8000,
  connectMs: 8000,
  discoverMs: 20_000,
  subscribeMs: 8000,
  silenceMs: 5000,
  proofMs: 5000,
  unheardMs: 25_000,
  goodbyeMs: 4000,
  quitMs: 1000,
  startMs: 30_000,
  hangMs: 10_000,
  backOffMs: [500, 1000, 2000, 4000, 8000, 15_000],
};
