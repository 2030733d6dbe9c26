import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../shared-core/contract/answer.ts';
import { boardEditSchema } from '../../../shared-core/contract/yard.ts';
import { openWindow } from './a-window.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const act = randomUUID();
const weighing = (kg: number) => ({ boardId: yard.boards[0]!.id, kg, at: '2026-05-31T08:00:00.000Z' });
const weights = async () =>
  (await yard.query('samples.get', { boardId: yard.boards[0]!.id })).weights.map(({ kg }) => kg);
const codeOf = (answer: Answer) => (answer.ok ? 'it was allowed' : answer.problem.code);
const actsOnDisk = () => {
  const disk = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const rows = disk.prepare('SELECT request, who FROM act WHERE uuid = ?').all(act);
  disk.close();
  return rows;
};

describe('an act', () => {
  test('that is sent twice takes effect once, and is answered alike', async () => {
    const first = await yard.command('samples.weigh', weighing(8.4), act);
    await yard.command('samples.weigh', weighing(8.1));
    expect(await yard.command('samples.weigh', weighing(8.4), act)).toEqual(first);
    expect(await weights()).toEqual([8.4, 8.1]);
    expect(actsOnDisk()).toEqual([{ request: 'samples.weigh', who: 'window-1' }]);
  });

  test('is not done under the id of another, nor with other content', async () => {
    await yard.command('samples.weigh', weighing(8.4), act);
    expect(codeOf(await yard.answer('samples.weigh', weighing(8.1), act))).toBe('refusal.act-reused');
    expect(codeOf(await yard.answer('boards.confirmSpecies', { id: yard.boards[0]!.id }, act))).toBe(
      'refusal.act-reused',
    );
    expect(await weights()).toEqual([8.4]);
  });

  test('that was refused is not remembered: the same act may be sent again', async () => {
    const tomorrow = { ...weighing(8.4), at: '2026-06-02T08:00:00.000Z' };
    expect(codeOf(await yard.answer('samples.weigh', tomorrow, act))).toBe('refusal.weighed-to-come');
    expect(actsOnDisk()).toEqual([]);
    yard.later(2 * 86_400_000);
    expect(codeOf(await yard.answer('samples.weigh', tomorrow, act))).toBe('it was allowed');
  });

  test('without an id is refused', async () => {
    const { uuid } = await yard.query('yard.info', {});
    const { answer } = yard.app.connect('window-9', () => undefined);
    expect(codeOf(await answer('samples.weigh', weighing(8.4), { yard: uuid, act: null }))).toBe(
      'refusal.request-unknown',
    );
    expect(await weights()).toEqual([]);
  });

  test('that fails halfway leaves nothing behind', async () => {
    const cut = { boardId: yard.boards[0]!.id, boardKg: 9, wetGrams: [100, 101], at: weighing(1).at };
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'));
    disk.exec(
      `CREATE TRIGGER full BEFORE INSERT ON sample_section WHEN NEW.wet_grams = 101
       BEGIN SELECT RAISE (ABORT, 'no more'); END`,
    );
    expect(codeOf(await yard.answer('samples.cut', cut, act))).toBe('refusal.unexpected');
    expect(yard.faults.splice(0)).toHaveLength(1);
    disk.exec('DROP TRIGGER full');
    disk.close();
    expect((await yard.query('samples.get', { boardId: cut.boardId })).cuts).toEqual([]);
    expect(codeOf(await yard.answer('samples.cut', cut, act))).toBe('it was allowed');
  });
});

describe('a second window', () => {
  test('that opened another yard does not turn the first one’s rename onto another stack', async () => {
    const first = openWindow(yard.app, 'window-2');
    const rename = { id: yard.stack.id, basedOn: 1, changed: { name: 'Renamed' } };
    await first.query('stacks.list', {});
    await yard.command('yard.openDemo', {});
    const before = await yard.query('stacks.list', {});
    expect(before.some(({ id }) => id === rename.id)).toBe(true);

    expect(await first.refusal('stacks.edit', rename)).toBe(
      'The demo yard is open now. Nothing was changed.',
    );
    expect(await first.refusal('stacks.list', {})).toMatch(/The demo yard is open now/);
    expect(await yard.query('stacks.list', {})).toEqual(before);
    expect(first.heard('changed').at(-1)).toEqual({
      yard: (await yard.query('yard.info', {})).uuid,
      topics: ['yard'],
    });

    await first.query('yard.info', {});
    expect(await first.query('stacks.list', {})).toEqual(before);
  });

  test('that edits the same stack loses neither note: the later one is shown both', async () => {
    const other = openWindow(yard.app, 'window-2');
    const edit = (note: string) => ({ id: yard.stack.id, basedOn: 1, changed: { note } });
    await yard.command('stacks.edit', edit('Stickers every 16 in'));
    expect(await other.answer('stacks.edit', edit('Weighted on top'))).toMatchObject({
      ok: false,
      problem: { code: 'conflict.edited-meanwhile' },
      current: { id: yard.stack.id, version: 2, note: 'Stickers every 16 in', name: 'Walnut' },
    });
    const [stack] = await yard.query('stacks.list', {});
    expect(stack?.note).toBe('Stickers every 16 in');
  });

  test.each(['places.edit', 'boards.edit', 'species.edit', 'endUses.edit'] as const)(
    '%s answers with the record as it is now where it is another',
    async (name) => {
      const id = {
        'places.edit': yard.place.id,
        'boards.edit': yard.boards[0]!.id,
        'species.edit': 'walnut-black',
        'endUses.edit': 'furniture',
      }[name];
      const changed = name === 'places.edit' ? { name: 'Loft' } : { note: 'Mine' };
      const edit = { id, basedOn: 1, changed };
      expect(await yard.answer(name, edit)).toMatchObject({ ok: true, output: { version: 2 } });
      expect(await yard.answer(name, edit)).toMatchObject({
        problem: { code: 'conflict.edited-meanwhile' },
        current: { id, version: 2 },
      });
    },
  );
});

test('an edit changes only the fields given', async () => {
  const { id } = yard.boards[0]!;
  const edited = await yard.command('boards.edit', { id, basedOn: 1, changed: { log: 'Ridge' } });
  expect(edited).toEqual({ ...yard.boards[0], log: 'Ridge', version: 2 });
  expect(boardEditSchema.parse({ id, basedOn: 1, changed: {} }).changed).toEqual({});
});
