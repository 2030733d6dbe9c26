import { expect, type Locator, type Page } from '@playwright/test';
import { type SoundName, soundNames, sounds } from '../../shared-core/hands-free/sounds.ts';
import { test } from './pintally.ts';
import { goTo, nextStep, openDemoYard, picture, startRound } from './walk.ts';

const RATE_HZ = 48_000;
const LONGEST_S = 0.75;

/** Lets the window sound into a buffer that the test reads. */
async function listen(page: Page): Promise<void> {
  await page.addInitScript(
    ([rate, seconds]) => {
      let buffer = new OfflineAudioContext(1, rate! * seconds!, rate!);
      // The window makes one context; each sound is rendered by a buffer of its own.
      const here = new Proxy(
        {},
        {
          get: (_, name) => {
            if (name === 'resume') return async () => undefined;
            const value = Reflect.get(buffer, name, buffer);
            return typeof value === 'function' ? value.bind(buffer) : value;
          },
        },
      );
      const make = function make() {
        return here;
      };
      Object.assign(window, {
        AudioContext: make,
        rendered: async () => {
          const data = (await buffer.startRendering()).getChannelData(0);
          buffer = new OfflineAudioContext(1, rate! * seconds!, rate!);
          return [...data];
        },
      });
    },
    [RATE_HZ, LONGEST_S],
  );
}

interface Heard {
  startS: number;
  lengthS: number;
  hertz: number;
  peak: number;
}

/** The tones of a recording: where its envelope rises and falls, and how often it crosses zero between. */
function tonesOf(samples: readonly number[]): Heard[] {
  const slot = RATE_HZ / 500;
  const envelope = Array.from({ length: Math.floor(samples.length / slot) }, (_, index) =>
    Math.max(...samples.slice(index * slot, (index + 1) * slot).map(Math.abs)),
  );
  const limit = Math.max(...envelope) / 2;
  const tones: Heard[] = [];
  for (let from = 0; from < envelope.length; from++) {
    if (envelope[from]! < limit) continue;
    let to = from;
    while (to < envelope.length && envelope[to]! >= limit) to++;
    const part = samples.slice(from * slot, to * slot);
    const rising = part.flatMap((value, index) => {
      const before = part[index - 1] ?? 0;
      return before < 0 && value >= 0 ? [index - value / (value - before)] : [];
    });
    tones.push({
      startS: from / 500,
      lengthS: (to - from) / 500,
      hertz: ((rising.length - 1) * RATE_HZ) / (rising.at(-1)! - rising[0]!),
      peak: Math.max(...part.map(Math.abs)),
    });
    from = to;
  }
  return tones;
}

test('each sound has the notes that it is described by, and no two are alike in pitch or rhythm', async ({
  pintally: { page },
}) => {
  await listen(page);
  await openDemoYard(page);
  // Now that the window has its session, with what was put in place.
  await page.reload();
  await goTo(page, 'Settings');
  const names: Record<SoundName, string> = {
    saved: 'Saved',
    questionable: 'Questionable',
    'board-done': 'Board done',
    'round-done': 'All boards done',
    'link-lost': 'Connection lost',
    'link-back': 'Connected again',
  };
  const level = (name: string) =>
    page.getByRole('group', { name: 'Sounds in a round' }).getByRole('radio', { name });
  const record = async (name: SoundName): Promise<Heard[]> => {
    await page.getByRole('button', { name: `♪ ${names[name]}`, exact: true }).click();
    return tonesOf(await page.evaluate<number[]>('rendered()'));
  };

  await level('Loud').check();
  const heard = new Map<SoundName, Heard[]>();
  for (const name of soundNames) {
    const tones = await record(name);
    heard.set(name, tones);
    expect(tones.length, name).toBe(sounds[name].length);
    for (const [index, { hertz, startS, lengthS, peak }] of tones.entries()) {
      const note = sounds[name][index]!;
      expect(Math.abs(hertz / note.hertz - 1), name).toBeLessThan(0.01);
      expect(Math.abs(startS - note.startS), name).toBeLessThan(0.01);
      expect(Math.abs(lengthS - note.lengthS), name).toBeLessThan(0.02);
      // Loud, and not clipped.
      expect(peak, name).toBeGreaterThan(0.7);
      expect(peak, name).toBeLessThan(1);
    }
  }
  // As told apart by one who hears only the rhythm, or only the first pitch.
  const rhythm = (name: SoundName) => heard.get(name)!.length;
  const pitch = (name: SoundName) => heard.get(name)![0]!.hertz;
  for (const [index, one] of soundNames.entries())
    for (const other of soundNames.slice(index + 1)) {
      expect(rhythm(one), `${one}, ${other}`).not.toBe(rhythm(other));
      expect(Math.abs(Math.log2(pitch(one) / pitch(other))), `${one}, ${other}`).toBeGreaterThan(0.3);
    }

  await level('Quiet').check();
  const [quiet] = await record('saved');
  expect(quiet!.peak).toBeLessThan(heard.get('saved')![0]!.peak / 5);
  await level('Off').check();
  await expect(page.getByRole('button', { name: /^♪/ })).toHaveCount(0);
});

/** Takes the place of the computer's voice and of what keeps its screen on, and lists what was asked of them. */
async function listenToVoice(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const [said, wake]: string[][] = [[], []];
    const voice = { lang: 'en-US', localService: true };
    const speechSynthesis = {
      getVoices: () => [voice],
      speak: ({ text }: { text: string }) => said!.push(text),
      cancel: () => undefined,
      addEventListener: () => undefined,
      removeEventListener: () => undefined,
    };
    class SpeechSynthesisUtterance {
      text: string;
      constructor(text: string) {
        this.text = text;
      }
    }
    const wakeLock = {
      request: async () => {
        wake!.push('taken');
        return { addEventListener: () => undefined, release: async () => wake!.push('released') };
      },
    };
    for (const [name, value] of Object.entries({ speechSynthesis, SpeechSynthesisUtterance, said, wake }))
      Object.defineProperty(window, name, { value });
    Object.defineProperty(navigator, 'wakeLock', { value: wakeLock });
  });
}
const told = (page: Page, list: 'said' | 'wake') => page.evaluate<string[]>(list);

test('boards are read by a pedal and a voice, with the screen on', async ({ pintally: { page } }) => {
  await listenToVoice(page);
  await openDemoYard(page);
  // Now that the window has its session, with what was put in place.
  await page.reload();
  await goTo(page, 'Settings');
  await page.getByRole('group', { name: 'Voice: value, spot, and next board' }).getByLabel('Normal').check();
  await page.getByRole('radio', { name: 'At once' }).check();

  const status = page.getByRole('status').filter({ hasText: '.' });
  await page.getByRole('button', { name: 'Set a key: Save, or go on' }).click();
  await page.keyboard.press('7');
  await expect(status).toHaveText('7 types a value. Set the pedal to another key.');
  await page.keyboard.press('PageDown');
  await expect(status).toHaveText('Page ↓: Save, or go on. No longer: Next board, even with open spots.');
  await page.getByRole('button', { name: 'Set a key: Go back' }).click();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Set a key: Go back' })).toBeVisible();
  await page.keyboard.press('Enter');
  await page.keyboard.press('MediaTrackPrevious');
  await expect(status).toHaveText('Previous track: Go back.');
  await picture(page, 'settings-hands-free', { fullPage: true });

  await startRound(page, 'Walnut from the lane', 9);
  const heading = page.getByRole('heading', { level: 1 });
  await expect(nextStep(page)).toContainText('Shell');
  expect(await told(page, 'wake')).toEqual(['taken']);
  // Empty, the pedal goes to the next spot, and the other one back.
  await page.keyboard.press('PageDown');
  await expect(nextStep(page)).toContainText('Core');
  await page.keyboard.press('MediaTrackPrevious');
  await expect(nextStep(page)).toContainText('Shell');
  for (const value of ['11.9', '12.6', '11.8', '12.5']) {
    await page.keyboard.type(value, { delay: 60 });
    await page.keyboard.press('PageDown');
    await expect(page.getByLabel('Reading on the meter, %')).toHaveValue('');
  }
  await expect(heading).toContainText('WAL-02');
  // A presenter's key that is not set does not load the window again.
  await page.keyboard.press('F5');
  await expect
    .poll(() => told(page, 'said'))
    .toEqual([
      expect.stringMatching(/^\d+\.\d percent\. Next: Core, 81 centimet(er|re)s from the left end\.$/),
      expect.stringMatching(/^\d+\.\d percent\. Next: Shell, 81 centimet(er|re)s from the right end\.$/),
      expect.stringMatching(/^\d+\.\d percent\. Next: Core, 81 centimet(er|re)s from the right end\.$/),
      expect.stringMatching(/^\d+\.\d percent\. Board done: .+\.$/),
      expect.stringMatching(/^WAL 02\. Shell, \d+ centimet(er|re)s from the left end\.$/),
    ]);

  // Out of sight the system takes it away; back in sight it is taken again.
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  expect(await told(page, 'wake')).toEqual(['taken', 'taken']);
  await goTo(page, 'Stacks');
  await expect.poll(() => told(page, 'wake')).toContain('released');
});

/**
 * Minutes of arc that a capital letter of an element's font has for a person two meters away, on a screen of 96 dots an
 * inch, and the contrast of its text with what is behind it (WCAG 2.2, "contrast ratio").
 */
function seenFromAfar(element: Locator): Promise<{ minutes: number; contrast: number }> {
  return element.evaluate((node) => {
    const pen = document.createElement('canvas').getContext('2d')!;
    const { fontWeight, fontSize, fontFamily, color } = getComputedStyle(node);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    const mm = (pen.measureText('H').actualBoundingBoxAscent * 25.4) / 96;
    let behind: Element | null = node;
    const groundOf = (each: Element) => getComputedStyle(each).backgroundColor;
    while (behind.parentElement && groundOf(behind) === 'rgba(0, 0, 0, 0)') behind = behind.parentElement;
    const luminance = (css: string) => {
      const [r, g, b] = css.match(/[\d.]+/g)!.map((part) => {
        const share = Number(part) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
    };
    const [dark, light] = [luminance(color), luminance(groundOf(behind))].toSorted((a, b) => a - b);
    return {
      // NUREG-0700 rev. 2, 1.3.1-4: height = 6.283 × distance × minutes / 21600.
      minutes: (mm * 21_600) / (6.283 * 2000),
      contrast: (light! + 0.05) / (dark! + 0.05),
    };
  });
}

test('the far view can be read from two meters away, in each theme', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await page.getByRole('link', { name: 'Connect a meter' }).click();
  await page.getByRole('button', { name: 'Use the simulated meter' }).click();
  await page.getByRole('link', { name: 'Back to the round' }).click();
  await expect(nextStep(page)).toBeVisible();
  await page.keyboard.press('f');
  const reading = page.getByRole('region', { name: 'Reading' });
  const shown = {
    board: page.getByRole('heading', { level: 1 }).locator('[translate=no]'),
    value: reading.locator('[data-size=huge] > span > span').first(),
    spot: nextStep(page),
    // Words of what the pins do, or of what was saved.
    state: reading.locator('p').first().locator(':scope > :visible, :scope > span > span:visible').last(),
  };
  await expect(page.locator('[data-far] svg [data-spot]').first()).toBeVisible();
  for (const size of [
    { width: 1280, height: 800 },
    { width: 1024, height: 768 },
  ])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme });
      for (const state of ['Drifting: hold still', 'saved:']) {
        const where = `${size.width} ${colorScheme} ${state}`;
        await expect(reading.getByText(state)).toBeVisible({ timeout: 30_000 });
        for (const [name, element] of Object.entries(shown)) {
          const { minutes, contrast } = await seenFromAfar(element);
          // NUREG-0700 rev. 2, 1.3.1-4, as in ISO 9241-3: at least 16 minutes of arc; 20 to 22 are preferred.
          const least = name === 'board' || name === 'value' ? 20 : 16;
          expect(minutes, `${where}, ${name}`).toBeGreaterThanOrEqual(least);
          // WCAG 2.2, 1.4.6.
          expect(contrast, `${where}, ${name}`).toBeGreaterThanOrEqual(7);
          await expect(element).toBeInViewport({ ratio: 1 });
        }
      }
      await picture(page, `round-far-${size.width}-${colorScheme}`);
      // Beside the demo's button, nothing of the name is squeezed out of its link.
      const name = page.getByRole('link', { name: 'Pintally' });
      expect(await name.evaluate((link) => link.scrollWidth - link.clientWidth)).toBe(0);
      expect((await name.locator('svg').boundingBox())?.width).toBe(28);
      if (await nextStep(page).getByText('All spots read').isVisible()) await page.keyboard.press('Enter');
    }
  await page.setViewportSize({ width: 400, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(400);
  await page.keyboard.press('f');
  await expect(page.getByRole('region', { name: 'Spots' })).toBeVisible();
});
