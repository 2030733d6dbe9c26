import { describe, expect, test } from 'vitest';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { aimAt, type } from './in-round.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const plan = () => yard.query('stacks.plan', { id: yard.stack.id, certainty: 0.9 });

/** One round over the first so many boards, every spot of each reading the same. */
async function probe(raws: number[]): Promise<void> {
  const { id: roundId, boards } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
  });
  for (const [boardIndex, raw] of raws.entries()) {
    for (const spotIndex of planSpots(boards[boardIndex]!).plan.keys()) {
      await aimAt(roundId, boardIndex, spotIndex);
      await type(roundId, raw);
    }
  }
  await yard.command('rounds.finish', { roundId });
}

test('a stack without boards has none', async () => {
  const empty = await yard.command('stacks.add', {
    name: 'To come',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  expect(await yard.query('stacks.plan', { id: empty.id, certainty: 0.9 })).toBeNull();
});

test('a stack never probed: boards all through it', async () => {
  const { next, probed, boards } = (await plan())!;
  expect({ probed, boards }).toEqual({ probed: 0, boards: 2 });
  expect(next.map(({ code }) => code)).toEqual(['WAL-01', 'WAL-02']);
});

test('a certainty that no sample can give is refused with a sentence', async () => {
  expect(await yard.refusal('stacks.plan', { id: yard.stack.id, certainty: 1 })).toMatch(/Nothing was saved/);
});

describe('a stack of which one board was probed', () => {
  test('names the other first, because nothing is known of it', async () => {
    await probe([13]);
    const { probed, next } = (await plan())!;
    expect(probed).toBe(1);
    expect(next[0]).toMatchObject({ code: 'WAL-02', call: null });
  });

  test('foresees a board of the same log, and names it for what that leaves open', async () => {
    const sawnOn = '2026-06-01';
    await yard.command(
      'boards.add',
      ['LOG-01', 'LOG-02'].map((code) => ({ ...yard.board(code), log: 'Lane', sawnOn })),
    );
    yard.later(150 * DAY_MS);
    const { id: roundId, boards } = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 20,
    });
    for (const spotIndex of planSpots(boards[2]!).plan.keys()) {
      await aimAt(roundId, 2, spotIndex);
      await type(roundId, 9);
    }
    await yard.command('rounds.finish', { roundId });
    await outlooksMade();
    const sibling = (await plan())!.next.find(({ code }) => code === 'LOG-02');
    expect(sibling?.why.code).toBe('stack-plan.next.never-probed');
  });
});

test('the demo yard: every stack has a call with the number that decides', async () => {
  await yard.command('yard.openDemo', {});
  await expect
    .poll(async () => (await yard.query('stacks.list', {})).map(({ call }) => call?.call), {
      timeout: 15_000,
    })
    .not.toContain(null);
  for (const { id, boards, call } of await yard.query('stacks.list', {})) {
    const { toKnowReady, next } = (await yard.query('stacks.plan', { id, certainty: 0.9 }))!;
    expect(inEnglish(call!.reasons[0]!)).toMatch(/\d/);
    expect(toKnowReady).toBeLessThanOrEqual(boards);
    expectWhole(next.map(({ why }) => why));
  }
});
