import { expect, test } from 'vitest';
import { uuidV5 } from '../../../electron/store/uuid.ts';

// RFC 9562, appendix A.4: the DNS namespace of section 6.6 and "www.example.com".
test('a UUID of version 5 is that of the standard', () => {
  expect(uuidV5('6ba7b810-9dad-11d1-80b4-00c04fd430c8', 'www.example.com')).toBe(
    '2ed6657d-e927-568b-95e1-2665a8aea6a2',
  );
});
