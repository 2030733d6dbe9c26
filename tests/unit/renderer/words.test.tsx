// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import type { Words } from '../../../shared-core/words/words.ts';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  history.replaceState(null, '', '/');
});

function Sample({ useWords }: { useWords: () => Words }) {
  const { say, formats } = useWords();
  return `${say('common.save')} ${formats.shortLength(27)} ${formats.mc(13.7)} ${formats.day('2001-01-12')}`;
}

/** The window's modules as they load at an address, in a browser of a language. */
async function opened(address: string, language: string) {
  vi.resetModules();
  vi.spyOn(navigator, 'language', 'get').mockReturnValue(language);
  vi.spyOn(navigator, 'languages', 'get').mockReturnValue([language]);
  history.replaceState(null, '', address);
  const { useWords, wordsNow } = await import('../../../renderer/words.ts');
  const { useSettings } = await import('../../../renderer/stores/settings.ts');
  const setUnits = (units: Settings['units']) =>
    act(() => useSettings.setState({ settings: { units } as Settings }));
  const { followLanguage } = await import('../../../renderer/language.ts');
  const setLanguage = (language: Settings['language']) =>
    act(async () => useSettings.setState({ settings: { language } as Settings }));
  return { useWords, setUnits, setLanguage, followLanguage, wordsNow };
}

describe('the sentences of the window', () => {
  test('follow the units of the settings', async () => {
    const { useWords, setUnits, wordsNow } = await opened('/', 'en-US');
    render(<Sample useWords={useWords} />);
    expect(screen.getByText('Save 27 mm 13.7% Jan 12, 2001')).toBeDefined();
    setUnits('imperial');
    expect(screen.getByText('Save 1 1/16 in 13.7% Jan 12, 2001')).toBeDefined();
    expect(wordsNow().formats.shortLength(27)).toBe('1\u00A01/16\u00A0in');
  });

  test('are written as in the region of the browser, in English where its language has no catalog', async () => {
    const { wordsNow } = await opened('/', 'fr-FR');
    const { formats } = wordsNow();
    expect([formats.number(1.5), formats.day('2001-05-12')]).toEqual(['1,5', '12 May 2001']);
  });

  // CLDR: January is "Jänner" in Austria, and a decimal point is one in Switzerland.
  test.each([
    ['de', 'Speichern 27 mm 13,7 % 12. Jan. 2001'],
    ['de-AT', 'Speichern 27 mm 13,7 % 12. Jän. 2001'],
    ['de-CH', 'Speichern 27 mm 13.7% 12. Jan. 2001'],
  ])('are German where the browser is (%s)', async (language, text) => {
    const { useWords, followLanguage } = await opened('/', language);
    await followLanguage();
    render(<Sample useWords={useWords} />);
    expect(document.body.textContent?.replaceAll('\u00A0', ' ')).toBe(text);
    expect(document.documentElement.lang).toBe('de');
  });

  test('change with the language of the settings, on screen at once', async () => {
    const { useWords, followLanguage, setLanguage } = await opened('/', 'de-DE');
    await followLanguage();
    render(<Sample useWords={useWords} />);
    await setLanguage('en');
    expect(await screen.findByText(/^Save 27 mm 13,7\s%/u)).toBeDefined();
    await setLanguage(null);
    expect(await screen.findByText(/^Speichern/)).toBeDefined();
  });

  test('take a language without a region for that of its usual one', async () => {
    const { wordsNow } = await opened('/', 'en');
    expect(wordsNow().formats.day('2001-05-12')).toBe('May 12, 2001');
  });

  test('are American where the browser names no language that there is', async () => {
    const { wordsNow } = await opened('/', 'en-US@posix');
    expect(wordsNow().formats.day('2001-05-12')).toBe('May 12, 2001');
  });

  test('are in the pseudo-locale where the address asks for it', async () => {
    const { useWords } = await opened('/?words=pseudo', 'en-US');
    render(<Sample useWords={useWords} />);
    expect(screen.getByText(/^\[Šààvéé\]/)).toBeDefined();
  });
});
