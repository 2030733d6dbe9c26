import { expect, test } from 'vitest';
import { hostileSockets } from '../../faults/hostile-sockets.ts';

/** What a local program can send to a port: HTTP (RFC 9112) and web socket frames (RFC 6455), from memory. */
test('whatever another program sends to the port, the host goes on and its windows are answered', async () => {
  expect((await hostileSockets()).lost).toEqual([]);
}, 60_000);
