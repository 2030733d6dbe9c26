// @vitest-environment jsdom
import { afterEach, expect, test, vi } from 'vitest';
import { region } from '../../../renderer/region.ts';
import { useLanguage } from '../../../renderer/stores/language.ts';

afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

test('the region follows a computer that travels, and another language, while the window is open', () => {
  vi.spyOn(navigator, 'language', 'get').mockReturnValue('en-US');
  vi.stubEnv('TZ', 'America/Chicago');
  expect(region()).toEqual({ locale: 'en-US', timeZone: 'America/Chicago' });
  // Its winter has Chicago's hour, its summer has not.
  vi.stubEnv('TZ', 'America/Regina');
  expect(region().timeZone).toBe('America/Regina');
  vi.spyOn(navigator, 'language', 'get').mockReturnValue('de-DE');
  expect(region()).toEqual({ locale: 'en-DE', timeZone: 'America/Regina' });
  useLanguage.setState({ language: 'de' });
  expect(region().locale).toBe('de-DE');
});
