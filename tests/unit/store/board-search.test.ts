import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openYard } from '../../../electron/store/yard.ts';
import { BOARDS_A_STACK, fillYard } from '../../bench/filled-yard.ts';

const folder = mkdtempSync(join(tmpdir(), 'pintally-search-'));
const file = join(folder, 'yard.sqlite');
fillYard(file, BOARDS_A_STACK, 1, null, 1);
const yard = openYard(file);
afterAll(() => {
  yard.close();
  rmSync(folder, { recursive: true });
});

const [first, second] = yard.boards.page({ stackId: null, search: '', offset: 0, limit: 2 }).rows;
yard.boards.edit({ id: first!.id, basedOn: first!.version, changed: { note: 'A wavy grain, 100 % clear' } });
yard.boards.edit({ id: second!.id, basedOn: second!.version, changed: { log: 'Barn_7' } });
const codes = Array.from({ length: BOARDS_A_STACK }, (_, n) => `B00-${String(n).padStart(4, '0')}`);

test.each([
  ['-004', codes.filter((code) => code.includes('-004'))],
  ['b00-0', codes],
  ['WAVY', codes.slice(0, 1)],
  ['0 % c', codes.slice(0, 1)],
  ['n_7', codes.slice(1, 2)],
  ['walnut', codes],
  ['nussbaum', codes],
  ['B01', []],
  ['_', codes.slice(1, 2)],
])(
  'a search for “%s” finds each board that has it, and their number is the same on each page',
  (search, found) => {
    for (const limit of [1, 9, 10, 11, 100]) {
      for (const offset of [0, limit, Math.max(0, found.length - limit), found.length, found.length + 7]) {
        const { rows, total } = yard.boards.page({ stackId: null, search, offset, limit });
        expect(rows.map(({ code }) => code)).toEqual(found.slice(offset, offset + limit));
        expect(total).toBe(found.length);
      }
    }
  },
);

test('a list counts its boards again once one was written, and a list with another search apart', () => {
  const total = (search: string): number =>
    yard.reader.boards.page({ stackId: null, search, offset: 0, limit: 1 }).total;
  expect([total(''), total('-004'), total('')]).toEqual([BOARDS_A_STACK, 10, BOARDS_A_STACK]);
  const { id, version } = yard.reader.boards.page({ stackId: null, search: '-004', offset: 0, limit: 1 })
    .rows[0]!;
  yard.boards.edit({ id, basedOn: version, changed: { code: 'Renamed' } });
  expect([total(''), total('-004')]).toEqual([BOARDS_A_STACK, 9]);
});
