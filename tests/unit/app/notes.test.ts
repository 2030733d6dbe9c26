import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const write = (subject: Subject, note: string, shown = '') =>
  yard.command('notes.set', { subject, note, shown });
const noteOn = async (subject: Subject) => (await yard.query('notes.get', { subject })).note;

/** Of each kind one, once a round was begun. */
async function subjects(): Promise<Subject[]> {
  const round = await yard.beginRound();
  return [
    { kind: 'board', id: yard.boards[0]!.id },
    { kind: 'stack', id: yard.stack.id },
    { kind: 'round', id: round.id },
    { kind: 'reading', id: 1 },
  ];
}

describe('a note', () => {
  test('is saved on a board, a stack, a round and a reading', async () => {
    for (const subject of await subjects()) {
      expect(await noteOn(subject)).toBe('');
      await write(subject, `Checked end\n${subject.kind}`);
      expect(await noteOn(subject)).toBe(`Checked end\n${subject.kind}`);
    }
  });

  test('of a reading is shown with it, and changes nothing that it tells', async () => {
    await subjects();
    const id = yard.boards[0]!.id;
    const [before] = (await yard.query('boards.get', { id })).readings;
    await write({ kind: 'reading', id: 1 }, 'Pins bent');
    const [after] = (await yard.query('boards.get', { id })).readings;
    expect(after).toEqual({ ...before, note: 'Pins bent' });
    await write({ kind: 'reading', id: 1 }, '', 'Pins bent');
    expect((await yard.query('boards.get', { id })).readings[0]).toEqual(before);
  });

  test('is not saved over one that was saved meanwhile', async () => {
    for (const subject of await subjects()) {
      await write(subject, 'First');
      const answer = await yard.answer('notes.set', { subject, note: 'Second', shown: '' });
      expect(answer).toMatchObject({ ok: false, current: { note: 'First' } });
      expect(await noteOn(subject)).toBe('First');
      await write(subject, 'First', '');
    }
  });

  test('of a board finds it in the list of boards', async () => {
    await write({ kind: 'board', id: yard.boards[1]!.id }, 'Blue stain at one end');
    const { rows } = await yard.query('boards.list', {
      stackId: null,
      search: 'blue STAIN',
      offset: 0,
      limit: 10,
    });
    expect(rows.map(({ id }) => id)).toEqual([yard.boards[1]!.id]);
  });

  test('is undone and redone', async () => {
    for (const subject of await subjects()) {
      const act = randomUUID();
      await write(subject, 'First');
      await yard.command('notes.set', { subject, note: 'Second', shown: 'First' }, act);
      await yard.command('acts.undo', { act });
      expect(await noteOn(subject)).toBe('First');
      await yard.command('acts.redo', { act });
      expect(await noteOn(subject)).toBe('Second');
    }
  });

  test('on something that is gone is refused', async () => {
    const subject = { kind: 'reading', id: 99 };
    expect(await yard.refusal('notes.set', { subject, note: 'x', shown: '' })).toMatch(/reading/);
    expect(await yard.refusal('notes.get', { subject })).toMatch(/reading/);
  });
});
