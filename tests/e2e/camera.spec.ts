import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { drawLabels } from '../../shared-core/labels/drawing.ts';
import { rollLayout } from '../../shared-core/labels/sheet.ts';
import { aLabel, paperOf, wordsIn } from '../unit/labels/a-label.ts';
import { rasterise } from '../unit/labels/raster.ts';
import { test } from './pintally.ts';
import config from './playwright.config.ts';
import { goTo, openDemoYard, picture } from './walk.ts';

const WIDTH = 640;
const HEIGHT = 480;

/** A film of a label, held still before a camera: a frame of YUV4MPEG2, in which Chromium takes it (format from memory). */
function filmOf(code: string): string {
  const [page] = drawLabels([{ ...aLabel, code }], paperOf(rollLayout), wordsIn('metric'));
  const label = rasterise(page!, 8);
  const light = Buffer.alloc(WIDTH * HEIGHT, 150);
  const [left, top] = [(WIDTH - label.width) >> 1, (HEIGHT - label.height) >> 1];
  for (let y = 0; y < label.height; y++) {
    for (let x = 0; x < label.width; x++)
      light[(top + y) * WIDTH + left + x] = label.rgba[4 * (y * label.width + x)]! > 127 ? 225 : 40;
  }
  const gray = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  const path = join(mkdtempSync(join(tmpdir(), 'pintally-camera-')), 'label.y4m');
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(path, Buffer.concat([head, Buffer.from('FRAME\n'), light, gray]));
  return path;
}

const { launchOptions } = config.use!;
test.use({
  launchOptions: {
    ...launchOptions,
    args: [
      ...launchOptions!.args!,
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${filmOf('WAL-03')}`,
    ],
  },
});

async function scanByCamera(page: Page): Promise<void> {
  await goTo(page, 'Labels');
  await page.getByRole('button', { name: 'Scan a label' }).click();
}

test('a label before the camera leads to its board, and the camera is off again', async ({
  pintally: { page },
}) => {
  await page.context().grantPermissions(['camera']);
  await openDemoYard(page);
  await page.evaluate(() => {
    const devices = navigator.mediaDevices;
    const ask = devices.getUserMedia.bind(devices);
    devices.getUserMedia = async (wanted) => {
      const stream = await ask(wanted);
      Object.assign(window, { camera: stream });
      return stream;
    };
  });
  await scanByCamera(page);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-03');
  await expect(page.getByRole('dialog')).toBeHidden();
  const tracks = () =>
    page.evaluate(() =>
      (window as unknown as { camera: MediaStream }).camera.getTracks().map(({ readyState }) => readyState),
    );
  expect(await tracks()).toEqual(['ended']);
});

test('without a camera, or without leave to use it, a sentence says what to do', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  // A browser without a window answers no for the person.
  await scanByCamera(page);
  const dialog = page.getByRole('dialog', { name: 'Scan a label' });
  await expect(dialog.getByText('The camera is blocked. Nothing was changed.')).toBeVisible();
  await picture(page, 'scan-refused');
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByRole('button', { name: 'Scan a label' })).toBeFocused();

  const fails = (name: string) =>
    page.evaluate((why) => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', why));
    }, name);
  await fails('NotFoundError');
  await scanByCamera(page);
  await expect(dialog.getByText('No camera found. Nothing was changed.')).toBeVisible();
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await fails('NotReadableError');
  await scanByCamera(page);
  await expect(dialog.getByText('Another program may be using the camera.')).toBeVisible();
});
