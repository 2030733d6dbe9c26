import { spawnSync } from 'node:child_process';
import { isatty } from 'node:tty';

/**
 * Calls whenever Enter is pressed in the terminal that this process was started from.
 *
 * A process in the background that reads its terminal is stopped by the system, so it reads only in the foreground, and
 * looks again whenever a shell lets it go on.
 *
 * @returns whether it can be heard now
 */
export function followEnter(onEnter: () => void): boolean {
  const { stdin } = process;
  const isTerminal = isatty(0);
  // A terminal that was closed is no fault.
  stdin.on('error', () => undefined);
  stdin.on('data', onEnter);
  const listen = (): boolean => {
    const mayRead = !isTerminal || process.platform === 'win32' || isInForeground();
    if (mayRead) stdin.resume();
    else stdin.pause();
    return mayRead;
  };
  if (isTerminal && process.platform !== 'win32') process.on('SIGCONT', listen);
  return listen() && isTerminal;
}

/** By the plus sign of its state: ps of POSIX systems and of macOS has it. */
function isInForeground(): boolean {
  const { stdout } = spawnSync('ps', ['-o', 'stat=', '-p', String(process.pid)], { encoding: 'utf8' });
  return stdout?.includes('+') ?? false;
}
