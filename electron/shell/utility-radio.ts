import { utilityProcess } from 'electron';
import type { StartRadio } from '../meter/radio-port.ts';

/** The radio process as a utility process of Electron's, which Electron itself watches and ends with the app. */
export const utilityRadio: StartRadio = ({ radioScript, env }, ears) => {
  const child = utilityProcess.fork(radioScript, [], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'pipe'],
    serviceName: 'pintally-radio',
  });
  let isOver = false;
  child.stderr?.on('data', (text: Buffer) => ears.note(text.toString('utf8')));
  child.on('message', ears.message);
  child.on('exit', () => {
    isOver = true;
    ears.exit();
  });
  return {
    pid: () => child.pid ?? null,
    isOver: () => isOver,
    send: (order) => {
      if (!isOver) child.postMessage(order);
    },
    // Its own `kill` only asks, and a process that hangs does not hear that.
    kill: () => {
      if (isOver) return;
      try {
        if (child.pid === undefined) child.kill();
        else process.kill(child.pid, 'SIGKILL');
      } catch {
        // It has just ended: `exit` follows.
      }
    },
  };
};
