/**
 * How long tests wait for what is on its way (threads, judging, a screen): not the second that the libraries give,
 * which a busy computer can need for the start of a thread alone. Who waits for something that never comes says so later.
 */
import { vi } from 'vitest';
import { WAIT_MS } from './wait-ms.ts';

// Loaded only where there is a screen to wait for: it takes longer than most tests.
if ('document' in globalThis) {
  const { configure } = await import('@testing-library/react');
  configure({ asyncUtilTimeout: WAIT_MS });
}

// Vitest has no setting for this one.
const { waitFor } = vi;
vi.waitFor = (callback, options = WAIT_MS) => waitFor(callback, options);
