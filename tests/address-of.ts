import type { ChildProcess } from 'node:child_process';

/** The address that a loopback host prints: its start link. It may come in parts. */
export function addressOf(host: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    host.stdout?.on('data', (data) => {
      printed += data;
      const address = /http:\/\/127\.0\.0\.1:\S+(?=\s)/.exec(printed)?.[0];
      if (address !== undefined) resolve(address);
    });
    host.once('exit', (code) => reject(new Error(`Pintally ended with ${code} before it gave its address.`)));
  });
}
