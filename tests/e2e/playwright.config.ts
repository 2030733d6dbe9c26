import { defineConfig } from '@playwright/test';
import { endOnOldNode } from '../../electron/node-version.mjs';

endOnOldNode();

/** With tests of a minute. They come first, so that at the end no worker waits for one of them. */
const long = ['no-barriers.spec.ts', 'round-live.spec.ts', 'many-boards.spec.ts'];

export default defineConfig({
  testDir: '.',
  outputDir: '../../artifacts/e2e',
  globalSetup: ['../own-temp-folder.ts', './ready-demo.ts'],
  // Each test has its own host, yard and browser. `round-live` and `describe-meter` use the emulated radio, one test each.
  fullyParallel: true,
  // One more than the cores of our build machine: each waits for its hands, its host and its browser in turn.
  workers: 3,
  projects: [
    { name: 'long', testMatch: long },
    { name: 'rest', testIgnore: long },
  ],
  timeout: 240_000,
  // Hands, a host and a browser share a busy computer, whose times no limit foresees. `npm test` names each that needed this.
  retries: 1,
  expect: { timeout: 20_000 },
  forbidOnly: true,
  use: {
    viewport: { width: 1280, height: 860 },
    // Canada writes dates as the United States does, and measures in metric.
    locale: 'en-CA',
    launchOptions: {
      executablePath: '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
