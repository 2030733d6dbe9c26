import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chromium, type Page } from '@playwright/test';

interface StartedProgram {
  page: Page;
  /** @returns the code that it ended with */
  stop(): Promise<number | null>;
}

/**
 * Starts a program that shows pages by Chromium, and drives its first one by its debugging port.
 *
 * Playwright's `_electron` also needs `--inspect`, which a fuse of the packed app forbids. No fuse forbids this port:
 * Electron opens it wherever the switch is given (electron/electron, shell/browser/electron_browser_main_parts.cc and
 * ui/devtools_manager_delegate.cc), on 127.0.0.1 alone. `devTools: false` of a window is about its own tools.
 */
export async function startProgram(
  file: string,
  { args = [], env = {} }: { args?: readonly string[]; env?: NodeJS.ProcessEnv } = {},
): Promise<StartedProgram> {
  const program = spawn(file, ['--remote-debugging-port=0', ...args], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  process.once('exit', () => program.kill());
  // Electron knows no contexts, so what Playwright would set of the one that is there is left as it is.
  const browser = await chromium.connectOverCDP(await debuggingAddressOf(program), { noDefaults: true });
  const context = browser.contexts()[0]!;
  const page = context.pages()[0] ?? (await context.waitForEvent('page'));
  const session = await context.newCDPSession(page);
  // Without a window manager no window has the focus.
  await session.send('Emulation.setFocusEmulationEnabled', { enabled: true });
  return {
    page,
    stop: async () => {
      const ended = once(program, 'exit');
      const whole = await browser.newBrowserCDPSession();
      // Electron ends without an answer to it.
      whole.send('Browser.close').catch(() => undefined);
      const [code] = await ended;
      return code;
    },
  };
}

function debuggingAddressOf(program: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    program.stderr?.on('data', (data) => {
      printed += data;
      const address = /^DevTools listening on (ws:\S+)\s/m.exec(printed)?.[1];
      if (address !== undefined) resolve(address);
    });
    program.once('error', reject);
    program.once('close', (code) => reject(new Error(`It ended with ${code}:\n${printed}`)));
  });
}
