/**
 * 20,000 and 200,000 requests at once from one window: the most memory that the host has in use, and how long all
 * answers take. Run: `npx node tests/bench/calls.bench.ts`.
 */
import { once } from 'node:events';
import { startAttackedHost } from '../faults/attacked-host.ts';

const host = await startAttackedHost();
const mb = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MB`;
console.log(`at rest: ${mb(await host.residentBytes())}`);
for (const requests of [20_000, 200_000]) {
  const { socket, send } = await host.openWindow();
  let answers = 0;
  let most = 0;
  socket.on('message', (data) => {
    if (String(data).startsWith('{"id"')) answers++;
  });
  const began = performance.now();
  for (let sent = 0; sent < requests; sent++) send('species.list', {});
  while (answers < requests) {
    most = Math.max(most, await host.residentBytes());
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.log(
    `${requests.toLocaleString('en')} requests: ${mb(most)} at most, all answered after ${seconds} s`,
  );
  socket.close();
  await once(socket, 'close');
}
await host.stop();
