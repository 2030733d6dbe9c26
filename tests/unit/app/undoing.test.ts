import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { CommandName, RequestInput } from '../../../shared-core/contract/requests.ts';
import { say } from './a-window.ts';
import { doing, redo, seen, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** Does it, and expects that undoing and redoing it give what was seen before and after, twice. */
async function expectUndone<N extends CommandName>(name: N, input: RequestInput<N>): Promise<void> {
  const before = await seen();
  const { act } = await doing(name, input);
  const after = await seen();
  expect(after).not.toEqual(before);
  for (let turn = 0; turn < 2; turn++) {
    await undo(act);
    expect(await seen()).toEqual(before);
    await redo(act);
    expect(await seen()).toEqual(after);
  }
  await undo(act);
}

const saved = async (roundId: number, spotIndex: number, raw: number, boardIndex = 0) =>
  doing('rounds.saveTyped', {
    roundId,
    boardId: yard.boards[boardIndex]!.id,
    spotIndex,
    newestReadingId: null,
    raw,
  });

describe('undone, the yard is as before; redone, as after', () => {
  test('a board that was added', () => expectUndone('boards.add', [yard.board('WAL-03')]));

  test('a stack that was started, with its place and boards', async () => {
    await expectUndone('stacks.add', {
      name: 'Oak',
      placeId: yard.place.id,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
  });

  test('a board that was edited', async () => {
    const [board] = yard.boards;
    await expectUndone('boards.edit', {
      id: board!.id,
      basedOn: board!.version,
      changed: { code: 'W-1', thicknessMm: 27.123456789, speciesId: 'oak-white' },
    });
  });

  test('boards that were moved', { tags: 'core' }, async () => {
    const shed = await yard.command('places.add', { ...yard.place, name: 'Shed', kind: 'open-shed' });
    await expectUndone('boards.move', {
      boardIds: [yard.boards[0]!.id],
      placeId: shed.id,
      since: yard.now(),
    });
  });

  test('a place, a use, a species and a setting', async () => {
    await expectUndone('places.add', { ...yard.place, name: 'Shed' });
    await expectUndone('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Workshop' } });
    const {
      id: _,
      version: __,
      builtIn: ___,
      ...furniture
    } = (await yard.query('endUses.list', {})).find(({ id }) => id === 'furniture')!;
    await expectUndone('endUses.edit', {
      id: 'furniture',
      basedOn: 1,
      changed: { minPct: furniture.minPct - 1 },
    });
    await expectUndone('settings.edit', { saveWhenSettled: false });
  });

  test('a round, its readings and its temperature', async () => {
    const start = { stackId: yard.stack.id, woodTempC: 20, startedOn: null };
    await expectUndone('rounds.start', start);
    const round = (await yard.command('rounds.start', start)).id;
    await expectUndone('rounds.saveTyped', {
      roundId: round,
      boardId: yard.boards[0]!.id,
      spotIndex: 0,
      newestReadingId: null,
      raw: 12.4,
    });
    await saved(round, 0, 11.4, 1);
    await expectUndone('rounds.setTemperature', { roundId: round, boardId: null, woodTempC: 30 });
    const { readings } = await yard.query('boards.get', { id: yard.boards[1]!.id });
    await expectUndone('readings.exclude', { readingId: readings[0]!.id, why: { code: 'defect' } });
    await expectUndone('rounds.finish', { roundId: round });
  });
});

test('a reading is never deleted by undoing', async () => {
  const round = await yard.beginRound();
  const { act } = await saved(round.id, 0, 11.4, 1);
  await undo(act);
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  expect(db.prepare('SELECT raw FROM reading ORDER BY id').pluck().all()).toEqual([12.4, 11.4]);
  db.close();
});

test('a setting that was changed since stays, where another of the same act is put back', async () => {
  const { act } = await doing('settings.edit', { saveWhenSettled: false });
  await doing('settings.edit', { beeps: false } as never);
  await undo(act);
  expect(await yard.query('settings.get', {})).toMatchObject({ saveWhenSettled: true });
});

describe('refused, with what was changed since and when', () => {
  test('a field that a later act changed', async () => {
    const [board] = yard.boards;
    const { act } = await doing('boards.edit', { id: board!.id, basedOn: 1, changed: { note: 'Knot' } });
    const later = await doing('boards.edit', { id: board!.id, basedOn: 2, changed: { note: 'Two knots' } });
    await doing('boards.edit', { id: board!.id, basedOn: 3, changed: { widthMm: 180 } });
    expect(await yard.refusal('acts.undo', { act })).toBe(
      'Board WAL-01 was changed later, so nothing was undone. Undo this first (Jun 1, 2026, 3:01 AM): Note changed on board WAL-01.',
    );
    await undo(later.act);
    await undo(act);
    const { board: now } = await yard.query('boards.get', { id: board!.id });
    expect(now).toMatchObject({ note: '', widthMm: 180 });
  });

  test('a reading that was excluded and included since, by the newest of these', async () => {
    const { id } = await yard.beginRound();
    const { act } = await saved(id, 1, 12);
    const reading = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings.at(-1)!.id;
    await yard.command('readings.exclude', { readingId: reading, why: { code: 'knot' } });
    await yard.command('readings.include', { readingId: reading });
    expect(await yard.refusal('acts.undo', { act })).toMatch(/included\.$/);
  });

  test('a reading that was undone and redone, and excluded since', async () => {
    const { id } = await yard.beginRound();
    const { act } = await saved(id, 1, 12);
    await undo(act);
    await redo(act);
    const reading = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings.at(-1)!.id;
    await yard.command('readings.exclude', { readingId: reading, why: { code: 'knot' } });
    expect(await yard.refusal('acts.undo', { act })).toMatch(/excluded\.$/);
  });

  test('a board that was read since it was added', async () => {
    const { act, output } = await doing('boards.add', [yard.board('WAL-03')]);
    const round = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 20,
      startedOn: null,
    });
    const reading = await doing('rounds.saveTyped', {
      roundId: round.id,
      boardId: output[0]!.id,
      spotIndex: 0,
      newestReadingId: null,
      raw: 12,
    });
    expect(await yard.refusal('acts.undo', { act })).toMatch(
      /^Board WAL-03 is used by a later change, so nothing was undone\. Undo this first \(.*\): Reading 12% saved on board WAL-03\.$/,
    );
    await undo(reading.act);
    await undo(act);
    expect((await seen()).boards.map(({ code }) => code)).toEqual(['WAL-01', 'WAL-02']);
    // Hidden, it has freed its ID.
    await doing('boards.add', [yard.board('WAL-03')]);
    expect(await yard.refusal('acts.redo', { act })).toMatch(/^Board WAL-03 cannot come back/);
  });

  test('what is undone already, and what is not undone', async () => {
    const { act } = await doing('boards.add', [yard.board('WAL-03')]);
    expect(await yard.refusal('acts.redo', { act })).toMatch(/^Already redone, or never undone/);
    await undo(act);
    expect(await yard.refusal('acts.undo', { act })).toMatch(/^Already undone/);
  });
});

test('an ID is not given again to another row, so that a deleted one can come back', async () => {
  const { act, output } = await doing('boards.add', [yard.board('WAL-03')]);
  await undo(act);
  const { output: others } = await doing('boards.add', [yard.board('WAL-04')]);
  expect(others[0]!.id).toBeGreaterThan(output[0]!.id);
  await redo(act);
  expect((await seen()).boards.map(({ code }) => code)).toEqual(['WAL-01', 'WAL-02', 'WAL-03', 'WAL-04']);
});

describe('the list of what was done', () => {
  const lines = async (boardId: number | null = null) =>
    (await yard.query('acts.list', { boardId, before: null, limit: 50 })).acts.map(
      ({ line, isUndone }) => `${say(line)}${isUndone ? ' (undone)' : ''}`,
    );

  test('says what each act changed, with the names of then, the newest first', async () => {
    const [one, two] = yard.boards;
    await doing('boards.editTogether', {
      boards: yard.boards.map(({ id }) => ({ id, basedOn: 1 })),
      changed: { speciesId: 'oak-white' },
    });
    await doing('boards.edit', { id: one!.id, basedOn: 2, changed: { code: 'W-1', thicknessMm: 27 } });
    const shed = (await doing('places.add', { ...yard.place, name: 'Shed' })).output;
    await doing('boards.move', { boardIds: [one!.id, two!.id], placeId: shed.id, since: yard.now() });
    await doing('places.edit', { id: shed.id, basedOn: 1, changed: { name: 'Barn' } });
    expect((await lines()).slice(0, 5)).toEqual([
      'Name changed from Shed to Barn on place Barn.',
      '2 boards moved to Shed.',
      'Place Shed added.',
      'ID changed from WAL-01 to W-1 on board W-1. Thickness changed from 16 mm to 27 mm on board W-1.',
      'Species changed from Black walnut to White oak on 2 boards.',
    ]);
  });

  test('tells a round from a notebook by its own day, and what came with it after it', async () => {
    const [one, two] = yard.boards;
    await doing('boards.edit', { id: one!.id, basedOn: 1, changed: { sawing: 'quarter' } });
    const page = {
      stackId: yard.stack.id,
      startedAt: new Date('2026-05-02T12:00').toISOString(),
      isDayOnly: true,
      meterId: null,
      unit: 'pct' as const,
      woodTempC: 20,
      airTempC: null,
      depths: ['unknown' as const],
      lines: [one!, two!].map(({ id }) => ({ boardId: id, raws: [14] })),
      thereSince: '2026-05-01',
    };
    const { roundId } = (await doing('pastRounds.save', page)).output;
    const { version } = (await yard.query('rounds.ofBoard', { boardId: one!.id }))[0]!;
    const startedAt = new Date('2026-05-04T12:00').toISOString();
    await doing('rounds.edit', { id: roundId, basedOn: version, changed: { startedAt } });
    await doing('notes.set', { subject: { kind: 'round', id: roundId }, shown: '', note: 'Rain' });
    expect((await lines()).slice(0, 4)).toEqual([
      'Note changed on a round of stack Walnut.',
      'Round of stack Walnut: date changed from May 2, 2026 to May 4, 2026.',
      // The window's time zone may be west of the machine's, whose midnight it was.
      expect.stringMatching(
        /^Round of May 2, 2026 entered for stack Walnut\. 2 readings saved\. 2 boards in Shop since (Apr 30|May 1), 2026\.$/,
      ),
      'Sawing changed from Flat-sawn to Quarter-sawn on board WAL-01.',
    ]);
  });

  test('tells of a planned move where it goes, and what was changed of it', async () => {
    const plan = { stackId: yard.stack.id, boardId: null, placeId: yard.place.id, note: '' };
    const { id, version } = (await doing('plannedMoves.add', { ...plan, plannedOn: '2026-06-20' })).output;
    await doing('plannedMoves.edit', { id, basedOn: version, changed: { plannedOn: '2026-06-22' } });
    expect((await lines()).slice(0, 2)).toEqual([
      'Day of the move changed from Jun 20, 2026 to Jun 22, 2026 on the planned move of Walnut.',
      'Planned a move of Walnut to Shop.',
    ]);
  });

  test('says that the meter showed only more than a value', async () => {
    const round = await yard.beginRound();
    await doing('rounds.saveTyped', {
      roundId: round.id,
      boardId: yard.boards[1]!.id,
      spotIndex: 0,
      newestReadingId: null,
      raw: 30,
      isAbove: true,
    });
    expect((await lines())[0]).toBe('Reading >30% saved on board WAL-02.');
  });

  test('of a board has only what changed that board', async () => {
    const round = await yard.beginRound();
    await doing('boards.edit', { id: yard.boards[1]!.id, basedOn: 1, changed: { note: 'Knot' } });
    expect(await lines(yard.boards[0]!.id)).toEqual([
      'Reading 12.4% saved on board WAL-01.',
      '2 boards added to Walnut.',
    ]);
    await doing('rounds.finish', { roundId: round.id });
    expect(await lines(yard.boards[1]!.id)).toEqual([
      'Note changed on board WAL-02.',
      '2 boards added to Walnut.',
    ]);
  });

  test('shows an undone act as that, and not what undid it', async () => {
    const { act } = await doing('boards.add', [yard.board('WAL-03')]);
    await undo(act);
    expect((await lines())[0]).toBe('Board WAL-03 added to Walnut. (undone)');
    await redo(act);
    expect((await lines())[0]).toBe('Board WAL-03 added to Walnut.');
  });

  test('names what was weighed, of the yard and of the board', async () => {
    const boardId = yard.boards[0]!.id;
    const at = yard.now();
    const { cuts } = (await doing('samples.cut', { boardId, boardKg: 8, wetGrams: [40], at })).output;
    await doing('samples.drySection', { sectionId: cuts[0]!.sections[0]!.id, grams: 30, at: yard.now() });
    const { weights } = (await doing('samples.weigh', { boardId, kg: 7, at: yard.now() })).output;
    await doing('samples.exclude', { what: 'weight', id: weights[0]!.id, why: { code: 'wrong-board' } });
    const told = [
      'A weighing of WAL-01 excluded.',
      'Weight of board WAL-01 saved.',
      'Dry weight of a section of board WAL-01 saved.',
      'Sections cut beside board WAL-01.',
    ];
    expect((await lines()).slice(0, 4)).toEqual(told);
    expect((await lines(boardId)).slice(0, 4)).toEqual(told);
    expect(await lines(yard.boards[1]!.id)).not.toContain(told[0]);
  });

  test('comes in pages', async () => {
    const all = (await yard.query('acts.list', { boardId: null, before: null, limit: 50 })).acts;
    const first = await yard.query('acts.list', { boardId: null, before: null, limit: 2 });
    const rest = await yard.query('acts.list', { boardId: null, before: first.next, limit: 50 });
    expect([...first.acts, ...rest.acts]).toEqual(all);
    expect(rest.next).toBeNull();
  });
});
