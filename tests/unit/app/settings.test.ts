import { expect, test } from 'vitest';
import { settingsOf } from '../../../electron/app/yard/settings.ts';
import type { YardReader } from '../../../electron/store/yard.ts';

test('a yard that was saved before there were themes keeps its other settings', () => {
  const saved = { units: 'imperial', sound: false };
  const yard = { settings: { get: () => saved } } as unknown as YardReader;
  expect(settingsOf(yard)).toMatchObject({ ...saved, theme: 'system', saveWhenSettled: true });
});
