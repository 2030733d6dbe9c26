import { afterEach, expect, test, vi } from 'vitest';
import { newUuid } from '../../../../renderer/data/uuid.ts';

// RFC 9562, section 5.4: version 4, variant 10.
const V4 = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

afterEach(() => vi.unstubAllGlobals());

test('is a UUID of version 4, another each time', () => {
  expect(newUuid()).toMatch(V4);
  expect(newUuid()).not.toBe(newUuid());
});

test('also where crypto.randomUUID is withheld', () => {
  const { getRandomValues } = crypto;
  vi.stubGlobal('crypto', { getRandomValues: getRandomValues.bind(crypto) });
  expect(newUuid()).toMatch(V4);
  expect(newUuid()).not.toBe(newUuid());
});
