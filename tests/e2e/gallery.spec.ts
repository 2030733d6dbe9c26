/** Every part of the window in every state, in each theme and size, for people to look at; axe-core finds nothing in it. */
import { resolve } from 'node:path';
import { expect, test } from '@playwright/test';
import react from '@vitejs/plugin-react';
import { build } from 'vite';
import { startLoopbackHost } from '../../electron/loopback-host.ts';
import { barriers } from './barriers.ts';
import { picture } from './walk.ts';

// One build for all of its tests.
test.describe.configure({ mode: 'default' });

const outDir = resolve(import.meta.dirname, '../../artifacts/gallery');
let host: Awaited<ReturnType<typeof startLoopbackHost>>;

test.beforeAll(async () => {
  await build({
    configFile: false,
    root: resolve(import.meta.dirname, '../gallery'),
    base: './',
    plugins: [react()],
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true, chunkSizeWarningLimit: 4000 },
  });
});

test.beforeEach(async ({ page }) => {
  host = await startLoopbackHost({
    rendererDir: outDir,
    connect: () => {
      throw new Error('The gallery asks for nothing.');
    },
  });
  await page.goto(host.address());
});
test.afterEach(() => host.close());

/** 200 % zoom of a window is the same page in half its width and height, drawn twice as fine. */
const sizes = [
  { name: '1280x860', width: 1280, height: 860 },
  { name: '800x600', width: 800, height: 600 },
  { name: '1280x860-at-200', width: 640, height: 430 },
];

for (const theme of ['light', 'dark', 'high-contrast']) {
  test(`the parts, ${theme}`, async ({ page }) => {
    const faults: string[] = [];
    page.on('pageerror', ({ message }) => faults.push(message));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    await page.goto(new URL(`?theme=${theme}`, page.url()).href);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    for (const { name, ...size } of sizes) {
      await page.setViewportSize(size);
      const tooWide = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      await expect.poll(tooWide, name).toBe(0);
      await picture(page, `gallery-${theme}-${name}`, { fullPage: true });
    }
    expect(await barriers(page)).toEqual([]);
    expect(faults).toEqual([]);
  });
}
