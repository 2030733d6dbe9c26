import { describe, expect, test } from 'vitest';
import { settingsOf } from '../../../electron/app/yard/settings.ts';
import type { YardReader } from '../../../electron/store/yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

test('a yard that was saved before there were themes keeps its other settings', () => {
  const saved = { units: 'imperial', sound: false };
  const yard = { settings: { get: () => saved } } as unknown as YardReader;
  expect(settingsOf(yard)).toMatchObject({ ...saved, theme: 'system', saveWhenSettled: true });
});

describe('the demo yard', () => {
  withYardOfTwo();

  test('opens with the language, the units and the theme of one’s own yard, and changes neither there', async () => {
    await yard.command('settings.edit', {
      language: 'de',
      units: 'imperial',
      theme: 'dark',
      sound: false,
    });
    await yard.command('yard.openDemo', {});
    expect(await yard.query('settings.get', {})).toMatchObject({
      language: 'de',
      units: 'imperial',
      theme: 'dark',
      sound: true,
    });
    await yard.command('settings.edit', { units: 'metric' });
    await yard.command('yard.openOwn', {});
    expect(await yard.query('settings.get', {})).toMatchObject({ units: 'imperial', theme: 'dark' });
  });
});
