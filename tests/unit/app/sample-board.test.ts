import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import type { SampleBoardState } from '../../../shared-core/contract/sample-board.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();
let boardId: number;
beforeEach(() => {
  boardId = yard.boards[0]!.id;
});

const cut = (boardKg = 4.46, wetGrams = [98.55, 86.92]) =>
  yard.command('samples.cut', { boardId, boardKg, wetGrams, at: yard.now() });
async function dry(state: SampleBoardState, cutIndex: number, grams: number[]): Promise<SampleBoardState> {
  let after = state;
  for (const [index, section] of state.cuts[cutIndex]!.sections.entries()) {
    const each = { sectionId: section.id, grams: grams[index]!, at: yard.now() };
    after = await yard.command('samples.drySection', each);
  }
  return after;
}
async function weighLater(days: number, kg: number): Promise<SampleBoardState> {
  yard.later(days * DAY_MS);
  return yard.command('samples.weigh', { boardId, kg, at: yard.now() });
}

// Dry Kiln Operator's Manual (USDA Agriculture Handbook 188), chapter 6: the worked sample board (from memory).
describe('a board followed by its weight, as in the handbook', () => {
  test('follows from its sections: 62.2 % when they were cut, 2.75 kg oven-dry, 50.5 % at 4.14 kg', async () => {
    const wet = await cut();
    expect(wet.cuts[0]!.estimate).toBeNull();
    expect(wet.status).toEqual(message('weights.sections-drying', { drying: 2, sections: 2 }));
    yard.later(DAY_MS);
    const { cuts } = await dry(wet, 0, [59.2, 55.02]);
    expect(cuts[0]!.estimate!.mcWhenCutPct).toBeCloseTo(62.2, 1);
    expect(cuts[0]!.estimate!.ovenDryKg).toBeCloseTo(2.75, 2);
    const after = await weighLater(30, 4.14);
    expect(after.weights[0]!.mcPct).toBeCloseTo(50.5, 0);
    expect(after.status).toEqual(
      message('weights.mc-now', {
        mcPct: after.weights[0]!.mcPct!,
        mcWhenCutPct: after.cuts[0]!.estimate!.mcWhenCutPct,
      }),
    );
  });

  test('has a target weight for its use: 6 to 8 % for furniture', async () => {
    const state = await dry(await cut(), 0, [59.2, 55.02]);
    expect(state.target!.minKg).toBeCloseTo(2.75 * 1.06, 2);
    expect(state.target!.maxKg).toBeCloseTo(2.75 * 1.08, 2);
  });
});

test('with one section still in the oven there is no estimate', async () => {
  const wet = await cut();
  const one = await yard.command('samples.drySection', {
    sectionId: wet.cuts[0]!.sections[0]!.id,
    grams: 59.2,
    at: yard.now(),
  });
  expect(one.cuts[0]!.estimate).toBeNull();
  expect(one.status).toEqual(message('weights.sections-drying', { drying: 1, sections: 2 }));
});

test('the newest weight of a section is used', async () => {
  const wet = await cut(4, [100]);
  await dry(wet, 0, [80]);
  const again = await dry(wet, 0, [50]);
  expect(again.cuts[0]!.estimate!.mcWhenCutPct).toBeCloseTo(100, 9);
});

test('cut again, it is a shorter board: weights before use the first cut, weights after the second', async () => {
  await dry(await cut(3, [100]), 0, [50]); // 100 %, so 1.5 kg oven-dry
  await weighLater(10, 2.4);
  yard.later(DAY_MS);
  await dry(await cut(2, [80]), 1, [64]); // 25 %, so 1.6 kg oven-dry
  const { weights } = await weighLater(10, 1.76);
  expect(weights.map((weight) => weight.mcPct)).toEqual([expect.closeTo(60, 9), expect.closeTo(10, 9)]);
});

test('a weight or a cut that went wrong is excluded, stays on record, and is included again', async () => {
  await dry(await cut(3, [100]), 0, [50]);
  const weighed = await weighLater(5, 24);
  const weight = { what: 'weight' as const, id: weighed.weights[0]!.id };
  const excluded = await yard.command('samples.exclude', {
    ...weight,
    why: { code: 'typing-slip' },
  });
  expect(excluded.weights[0]).toMatchObject({ kg: 24, excluded: { code: 'typing-slip' } });
  expect(excluded.status).toEqual(message('weights.weigh-now', { mcWhenCutPct: 100 }));
  expect((await yard.command('samples.include', weight)).weights[0]!.excluded).toBeNull();
  const first = { what: 'cut' as const, id: weighed.cuts[0]!.id };
  const without = await yard.command('samples.exclude', { ...first, why: { text: 'sections mixed up' } });
  expect(without).toMatchObject({
    target: null,
    weights: [{ mcPct: null }],
    cuts: [{ excluded: { text: 'sections mixed up' } }],
  });
});

test('what cannot be is refused with the reason, and nothing is saved', async () => {
  const wet = await cut(3, [100]);
  const sectionId = wet.cuts[0]!.sections[0]!.id;
  const at = yard.now();
  expect(await yard.refusal('samples.drySection', { sectionId, grams: 120, at })).toMatch(
    /120 g is more than 100 g/,
  );
  expect(await yard.refusal('samples.drySection', { sectionId: 99, grams: 50, at })).toMatch(
    /not in this yard/,
  );
  expect(await yard.refusal('samples.weigh', { boardId, kg: 0, at })).toMatch(/above 0/);
  expect(await yard.refusal('samples.weigh', { boardId: 99, kg: 2, at })).toMatch(
    /board is not in this yard/,
  );
  expect(await yard.refusal('samples.weigh', { boardId, kg: 2, at: '2030-01-01T00:00:00.000Z' })).toMatch(
    /in the future/,
  );
  expect(await yard.refusal('samples.cut', { boardId, boardKg: 3, wetGrams: [], at })).toMatch(
    /at least one section/,
  );
  const state = await yard.query('samples.get', { boardId });
  expect(state).toMatchObject({ weights: [], cuts: [{ sections: [{ dryGrams: null }] }] });
});

test('a board lighter than oven-dry asks for new sections', async () => {
  await dry(await cut(3, [100]), 0, [90]);
  expect((await weighLater(30, 2)).status).toEqual(message('weights.below-oven-dry'));
});

test('a board without sections asks for them; what was weighed can never be changed', async () => {
  expect((await yard.query('samples.get', { boardId })).status).toEqual(message('weights.no-sections'));
  await dry(await cut(3, [100]), 0, [50]);
  await weighLater(1, 2.9);
  const disk = new Database(join(yard.dataDir, 'yard.sqlite'));
  for (const table of ['sample_cut', 'sample_section', 'sample_section_dry', 'sample_weight']) {
    expect(disk.prepare(`SELECT count(*) AS n FROM ${table}`).get()).toEqual({ n: 1 });
    expect(() => disk.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    expect(() => disk.exec(`UPDATE ${table} SET id = 7`)).toThrow(/never edited/);
  }
  disk.close();
});

// No balance tells less than a hundredth of a gram; common practice, no source.
test.each([0, 5e-324, 1e-320, 1e308, -1])(
  'a weight of %s is refused, and nothing of it is saved',
  async (weight) => {
    const wet = await cut();
    const at = yard.now();
    const sectionId = wet.cuts[0]!.sections[0]!.id;
    const before = await yard.query('samples.get', { boardId });
    for (const [name, input] of [
      ['samples.cut', { boardId, boardKg: weight, wetGrams: [98], at }],
      ['samples.cut', { boardId, boardKg: 4, wetGrams: [weight], at }],
      ['samples.weigh', { boardId, kg: weight, at }],
      ['samples.drySection', { sectionId, grams: weight, at }],
    ] as const) {
      expect(await yard.refusal(name, input)).toMatch(/Nothing was saved/);
    }
    expect(await yard.query('samples.get', { boardId })).toEqual(before);
  },
);

test('weights that an earlier Pintally saved and that cannot be are shown, and give no MC', async () => {
  const wet = await cut();
  await dry(wet, 0, [59.2, 55.02]);
  await weighLater(1, 4);
  const db = new Database(join(yard.dataDir, 'yard.sqlite'));
  db.exec(`INSERT INTO sample_weight (uuid, board_id, kg, weighed_at) VALUES ('u1', ${boardId}, 1e-320, '${yard.now()}');
    INSERT INTO sample_cut (id, uuid, board_id, board_kg, cut_at) VALUES (77, 'u2', ${boardId}, 1e-320, '${yard.now()}');
    INSERT INTO sample_section (id, uuid, cut_id, wet_grams) VALUES (78, 'u3', 77, 1e-320);
    INSERT INTO sample_section_dry (uuid, section_id, grams, weighed_at) VALUES ('u4', 78, 1e-321, '${yard.now()}')`);
  db.close();
  const state = await yard.query('samples.get', { boardId });
  expect(state.weights.at(-1)?.mcPct).toBeNull();
  expect(state.cuts.at(-1)?.estimate).toBeNull();
  expect(state.status).toEqual(message('weights.impossible'));
});
