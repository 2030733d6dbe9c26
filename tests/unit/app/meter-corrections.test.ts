import { expect, test } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { aTestBlock } from './a-test-block.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** What the three checks show of a block of 12 %: each is off by another amount. */
const SHOWN = [13, 14, 14.5];

interface Done {
  what: 'exclude' | 'include' | 'correct';
  check: number;
  act: string;
  at: number;
  isUndone: boolean;
}

/** What corrects readings from each check on: that of the newest that counts and corrects, as the acts that hold say. */
function expected(done: readonly Done[]): number[] {
  const checks = SHOWN.map((shown, index) => {
    const own = done.filter(({ check, isUndone }) => check === index && !isUndone);
    const last = (what: Done['what']) => own.findLastIndex((each) => each.what === what);
    const isIn = last('exclude') <= last('include');
    const corrected = last('correct') > last('include') ? own[last('correct')]!.at : null;
    return { off: shown - 12, isIn, corrected };
  });
  /** By what the values were corrected before a check. A correction made after it is not of what follows it. */
  function before(index: number): number {
    const earlier = checks.findLastIndex(({ isIn }, other) => isIn && other < index);
    if (earlier < 0) return 0;
    const { corrected, off } = checks[earlier]!;
    return corrected !== null && corrected < index ? off : before(earlier);
  }
  return checks.map((_, index) => {
    const counts = checks.findLastIndex(({ isIn }, other) => isIn && other <= index);
    if (counts < 0) return 0;
    return checks[counts]!.corrected === null ? before(counts) : checks[counts]!.off;
  });
}

/** The same numbers for the same seed: mulberry32, a public-domain generator. */
function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

test.each([1, 2, 3, 4, 5, 6])(
  'readings are corrected as checks say, in whatever order (%i)',
  async (seed) => {
    const random = mulberry(seed);
    const some = (below: number) => Math.floor(random() * below);
    const { meterId } = await yard.command('meters.add', {
      name: 'Old one',
      profile: unknownProfile,
      roundId: null,
    });
    const { id: blockId } = await yard.command('testBlocks.add', aTestBlock(meterId));
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
    const ids: number[] = [];
    const done: Done[] = [];
    const does = async (what: Done['what'], check: number): Promise<void> => {
      yard.later(60_000);
      const checkId = ids[check]!;
      const why = { code: 'not-on-block' } as const;
      const moved =
        what === 'exclude'
          ? await yard.command('meterChecks.exclude', { checkId, why })
          : what === 'include'
            ? await yard.command('meterChecks.include', { checkId })
            : // An excluded check corrects nothing.
              await yard.command('meterChecks.correct', { checkId }).catch(() => null);
      if (moved) done.push({ what, check, act: moved.act, at: ids.length - 1, isUndone: false });
    };
    for (const [index, shown] of SHOWN.entries()) {
      yard.later(60_000);
      ids.push((await yard.command('meterChecks.add', { blockId, shown, tempC: null })).id);
      if (random() < 0.8) await does('correct', index);
      yard.later(60_000);
      await aimAt(roundId, 0, index);
      await type(roundId, 15);
    }

    async function checkAll(): Promise<void> {
      const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
      const offs = readings.map(({ corrected }) => {
        const checked = corrected.steps.find(({ step }) => step === 'meter-check');
        return 15 - (checked?.pct ?? 15);
      });
      const right = expected(done);
      expect(offs).toEqual(right.map((off) => expect.closeTo(off, 9)));
      const { correctedBy } = await yard.command('meterChecks.add', { blockId, shown: 12, tempC: null });
      expect(correctedBy).toBeCloseTo(right.at(-1)!, 9);
      const newest = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
      await yard.command('acts.undo', { act: newest.acts[0]!.id });
    }

    await checkAll();
    for (let step = 0; step < 12; step++) {
      const which = random();
      if (which < 0.3) await does('exclude', some(3));
      else if (which < 0.45) await does('include', some(3));
      else if (which < 0.6) await does('correct', some(3));
      else {
        // What was built on since is refused, and nothing changes.
        const each = done[some(done.length)];
        if (each === undefined) continue;
        const answer = await yard.answer(each.isUndone ? 'acts.redo' : 'acts.undo', { act: each.act });
        if (answer.ok) each.isUndone = !each.isUndone;
      }
      await checkAll();
    }
  },
);
