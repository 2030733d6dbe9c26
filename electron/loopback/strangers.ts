import type { Server, Socket } from 'node:net';

/**
 * So many connections may be open that belong to no window yet. Browsers open six for a page's files; a program that
 * opens thousands gets its own oldest ones closed.
 */
const MAX_STRANGERS = 64;

/**
 * Bounds the connections of whoever has not shown to be a window: any program on this machine can open them.
 * @returns tells that a connection is a window's; it is not counted any more
 */
export function boundStrangers(server: Server): (socket: Socket) => void {
  /** Oldest first. */
  const strangers = new Set<Socket>();
  server.on('connection', (socket: Socket) => {
    // From its first moment to its last: a reset of a socket that nobody listens to would end the process.
    socket.on('error', () => socket.destroy());
    socket.on('close', () => strangers.delete(socket));
    strangers.add(socket);
    const [oldest] = strangers;
    if (strangers.size > MAX_STRANGERS) oldest?.destroy();
  });
  return (socket) => strangers.delete(socket);
}
