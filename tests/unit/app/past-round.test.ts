import { describe, expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { spotWords } from '../../../shared-core/record-words/spot-words.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import { words } from './a-window.ts';
import { type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026. The values are invented.
withYardOfTwo();

type Page = RequestInput<'pastRounds.save'>;
const ids = () => yard.boards.map(({ id }) => id) as [number, number];

/** A page of both boards, at noon of that day. */
const page = (day: string, values: (number | null)[][], more: Partial<Page> = {}): Page =>
  pastPage({
    startedAt: `${day}T17:00:00.000Z`,
    depths: ['pins', 'pins', 'pins', 'pins'],
    lines: values.map((raws, index) => ({ boardId: ids()[index]!, raws })),
    ...more,
  });
const save = (day: string, values: (number | null)[][], more: Partial<Page> = {}) =>
  yard.command('pastRounds.save', page(day, values, more));
const check = (more: Partial<RequestInput<'pastRounds.check'>>, raws: (number | null)[]) => {
  const { isDayOnly: _, lines: __, ...asked } = page('2026-05-10', []);
  return yard.query('pastRounds.check', { ...asked, ...more, line: { boardId: ids()[0], raws } });
};
const rules = async (more: Partial<RequestInput<'pastRounds.check'>>, raws: (number | null)[]) =>
  (await check(more, raws)).cells.map(({ suspicions }) => suspicions.map(({ rule }) => rule));
const board = (index = 0) => yard.query('boards.get', { id: ids()[index]! });
const latest = async () => {
  const { rows } = await yard.query('boards.list', {
    stackId: yard.stack.id,
    search: '',
    offset: 0,
    limit: 10,
  });
  return rows.map((row) => row.latest);
};
const judged = () => expect.poll(async () => (await latest())[0] !== null, { timeout: 10_000 }).toBe(true);

describe('a page of a day on which its boards were moved', () => {
  const noon = '2026-05-20T17:00:00.000Z';
  /** Both boards have been in the yard since May 1, and went to a shed on May 20. */
  async function moved(more: Partial<RequestInput<'boards.move'>>): Promise<void> {
    await save('2026-05-02', [[14], [13]], { thereSince: '2026-05-01' });
    const { version: _, id: __, ...place } = yard.place;
    const shed = await yard.command('places.add', { ...place, name: 'Shed' });
    await yard.command('boards.move', {
      boardIds: ids(),
      placeId: shed.id,
      since: noon,
      isInserted: true,
      ...more,
    });
  }
  const instants = async () => {
    const { moves, readings } = await board();
    const read = readings.find(({ excluded, takenAt }) => excluded === null && takenAt > '2026-05-20');
    return [moves.at(-1)!.since, read?.takenAt ?? ''] as const;
  };
  const values = [[12], [11.5]];
  const question = /^WAL-01 was moved on May 20, 2026 too\. Nothing was saved\. Choose which came first\.$/;

  test.each([
    ['the day of both is known', { isDayOnly: true }, {}],
    ['the time of the move is known', { isDayOnly: false }, {}],
    ['the time of the page is known', { isDayOnly: true }, { isDayOnly: false }],
  ])('asks which came first where only %s', async (_, move, more) => {
    await moved(move);
    expect(await yard.refusal('pastRounds.save', page('2026-05-20', values, more))).toMatch(question);
    const before = await instants();
    for (const order of ['moved-first', 'probed-first'] as const) {
      const { act, roundId } = await save('2026-05-20', values, { ...more, order });
      const [moveAt, readAt] = await instants();
      expect(order === 'moved-first' ? moveAt <= readAt : readAt < moveAt).toBe(true);
      expect([moveAt, readAt].map((at) => at.slice(0, 10))).toEqual(['2026-05-20', '2026-05-20']);
      const { placeName } = await yard.command('rounds.open', { roundId });
      expect(placeName).toBe(order === 'moved-first' ? 'Shed' : yard.place.name);
      await yard.command('acts.undo', { act });
      expect((await instants())[0]).toBe(before[0]);
    }
  });

  test('asks nothing where both times are known', async () => {
    await moved({ isDayOnly: false });
    await save('2026-05-20', values, { isDayOnly: false });
  });
});

describe('a page of a notebook', () => {
  test.each([
    ['pct', 10_001],
    ['ohm', 1.1e15],
  ] as const)(
    'a number that no meter shows in %s is refused, like one typed in a round',
    async (unit, raw) => {
      expect(await yard.refusal('pastRounds.save', page('2026-05-02', [[raw]], { unit }))).toContain(
        'No meter shows that number. Check it.',
      );
      await expect(check({ unit }, [raw])).rejects.toThrow();
      expect((await board()).readings).toEqual([]);
    },
  );

  test('is a finished round of its day, with the readings of that day', async () => {
    const { roundId, readings, boardIds } = await save('2026-05-02', [
      [14, 16, null, 16.5],
      [13, 15],
    ]);
    expect([readings, boardIds]).toEqual([5, ids()]);
    const round = await yard.query('rounds.get', { roundId });
    expect(round).toMatchObject({
      startedAt: '2026-05-02T17:00:00.000Z',
      isDated: true,
      finishedAt: yard.now(),
      woodTempC: 20,
    });
    const shown = (await board()).readings;
    expect(shown.map(({ raw, takenAt, how, spotIndex }) => [raw, takenAt, how, spotIndex])).toEqual([
      [14, '2026-05-02T17:00:00.000Z', 'typed', 0],
      [16, '2026-05-02T17:00:00.000Z', 'typed', 1],
      [16.5, '2026-05-02T17:00:00.000Z', 'typed', 3],
    ]);
  });

  test('has the boards that it names, and no others', async () => {
    const { roundId } = await save('2026-05-02', [[14, 16, 14, 16]]);
    const { boards } = await yard.query('rounds.get', { roundId });
    expect(boards.map(({ boardId }) => boardId)).toEqual([ids()[0]]);
  });

  test('leaves a round that is under way as it is', async () => {
    const { id } = await yard.beginRound();
    await save('2026-05-02', [[14, 16, 14, 16]]);
    const stack = await yard.query('stacks.get', { id: yard.stack.id });
    expect(stack.openRoundId).toBe(id);
    await type(id, 12.6);
  });

  test('is saved whole, or not at all', async () => {
    const before = await board();
    expect(
      await yard.refusal(
        'pastRounds.save',
        page(
          '2026-05-02',
          [
            [14, 16],
            [13, 15],
          ],
          { depths: ['pins', 16] },
        ),
      ),
    ).toBe(
      'WAL-01 is only 16 mm thick: pins that deep reach its other face. Nothing was saved. Correct the depth.',
    );
    expect(await board()).toEqual(before);
    expect((await yard.query('stacks.get', { id: yard.stack.id })).lastRoundId).toBeNull();
  });

  test('needs a reading, and a day that was', async () => {
    expect(await yard.refusal('pastRounds.save', page('2026-05-02', [[null], [null]]))).toBe(
      'No reading is typed yet. Nothing was saved.',
    );
    expect(await yard.refusal('pastRounds.save', page('2026-06-02', [[14]]))).toBe(
      'That time is in the future. Nothing was saved. Give an earlier day or time.',
    );
    await yard.command('boards.edit', { id: ids()[0], basedOn: 1, changed: { sawnOn: '2026-05-10' } });
    expect(await yard.refusal('pastRounds.save', page('2026-05-02', [[14]]))).toBe(
      'WAL-01 was sawn on May 10, 2026, after that day. Nothing was saved. Give a later day, or correct the sawing date.',
    );
    await save('2026-05-10', [[14, 16]]);
  });

  test('of a year long ago is asked about', async () => {
    const asks = page('2016-05-02', [[14, 16]]);
    expect(await yard.refusal('pastRounds.save', asks)).toBe(
      'That is 10 years before this stack was added. Nothing was saved. Is the year right?',
    );
    await yard.command('pastRounds.save', { ...asks, isDateRight: true });
  });

  test('is asked about where a round of that day has its readings, and saved again only then', async () => {
    await save('2026-05-02', [
      [14, 16, null, 16.5],
      [13, 15],
    ]);
    const again = (values: (number | null)[][], day = '2026-05-02') =>
      yard.refusal(
        'pastRounds.save',
        page(day, values, { startedAt: `${day}T15:00:00.000Z`, isDayOnly: false }),
      );
    const question = (boards: string) =>
      new RegExp(
        `^These readings were already saved on Jun 1, 2026, for ${boards}\\. Nothing was saved now\\. Save them again\\?$`,
      );
    const typed = [
      [14, null, 16, 16.5],
      [13, 15],
    ];
    expect(await again(typed)).toMatch(question('2 boards'));
    // With less than there is, or more.
    expect(await again([[14, 16, 16.5]])).toMatch(question('1 board'));
    // With a value corrected.
    expect(
      await again([
        [14, 16, 16.5],
        [13, 15.1],
      ]),
    ).toMatch(question('1 board'));
    expect((await board()).readings).toHaveLength(3);
    await yard.command('pastRounds.save', page('2026-05-02', typed, { isAnother: true }));
    expect((await board()).readings).toHaveLength(6);
    // Another reading, or another day.
    await save('2026-05-02', [[14, 16, 16.4]]);
    await save('2026-05-03', typed);
  });

  describe('whose readings were moved since is asked about', () => {
    const typed = [
      [14, 16],
      [13, 15],
    ];
    async function moved(scope: 'reading' | 'swap'): Promise<void> {
      await save('2026-05-02', typed);
      const [first] = (await board()).readings;
      const shown = { raw: 14, unit: 'pct' as const, woodTempC: 20 };
      await yard.command('readings.correct', { readingId: first!.id, corrected: { raw: 14.5 }, shown });
      const to = { boardId: ids()[1], spotIndex: null };
      await yard.command('readings.moveToBoard', { readingId: first!.id, ...to, scope });
    }
    const again = (values: (number | null)[][]) =>
      yard.refusal('pastRounds.save', page('2026-05-02', values));
    const [ofOne, ofBoth] = [/^These readings were already saved on .*, for 1 board\./, /, for 2 boards\./];

    test('after all of two boards were swapped', async () => {
      await moved('swap');
      expect(await again(typed)).toMatch(ofBoth);
      const asNow = [
        [13, 15],
        [14.5, 16],
      ];
      expect(await again(asNow)).toMatch(ofBoth);
      // As saved, but for the wrong lines.
      expect(await again(typed.toReversed())).toMatch(ofBoth);
      expect(await again([[13, 15.2]])).toBe('it was allowed');
    });

    test('after one was moved to the other board, wherever its line has it', async () => {
      await moved('reading');
      expect(await again(typed)).toMatch(ofBoth);
      expect(await again([[16], [14.5, 13, 15]])).toMatch(ofBoth);
      expect(await again([[16, 14.5]])).toMatch(ofOne);
      expect(await again([[14.5]])).toBe('it was allowed');
    });
  });

  test('is asked about where another record of its board has its readings', async () => {
    await save('2026-05-02', [[12], [14, 16]]);
    const [own, other] = yard.boards;
    await yard.command('boards.merge', {
      id: own!.id,
      basedOn: (await yard.query('boards.get', { id: own!.id })).board.version,
      otherId: other!.id,
      otherBasedOn: (await yard.query('boards.get', { id: other!.id })).board.version,
    });
    expect(await yard.refusal('pastRounds.save', page('2026-05-02', [[14, 16]]))).toMatch(/for 1 board\./);
  });

  test('can be saved again once it was undone', async () => {
    const { act } = await save('2026-05-02', [[14, 16]]);
    await yard.command('acts.undo', { act });
    await save('2026-05-02', [[14, 16]]);
    expect((await board()).readings).toHaveLength(2);
  });

  test('with a board more than the round that has the others is asked about', async () => {
    await save('2026-05-02', [[14, 16]]);
    const longer = page('2026-05-02', [[14, 16], [13]]);
    expect(await yard.refusal('pastRounds.save', longer)).toMatch(/for 1 board\./);
  });

  test('is undone whole, and redone', async () => {
    const { act, roundId } = await save(
      '2026-05-02',
      [
        [14, 16],
        [13, 15],
      ],
      { depths: ['unknown', 8] },
    );
    const before = (await board()).readings;
    await yard.command('acts.undo', { act });
    expect((await board()).readings.every(({ excluded }) => excluded !== null)).toBe(true);
    expect((await yard.query('stacks.get', { id: yard.stack.id })).lastRoundId).toBeNull();
    expect(
      (await yard.query('pastRounds.page', { stackId: yard.stack.id, startedAt: '2026-05-02T17:00:00.000Z' }))
        .sameDay,
    ).toBeNull();
    await yard.command('acts.redo', { act });
    expect((await board()).readings).toEqual(before);
    expect((await yard.query('stacks.get', { id: yard.stack.id })).lastRoundId).toBe(roundId);
  });

  test('sent twice is saved once', async () => {
    const act = '0b5c1bb6-4d0c-4b8e-9d55-7a1f3b9f6a01';
    const one = await yard.command('pastRounds.save', page('2026-05-02', [[14, 16]]), act);
    expect(await yard.command('pastRounds.save', page('2026-05-02', [[14, 16]]), act)).toEqual(one);
    expect((await board()).readings).toHaveLength(2);
  });
});

describe('rounds are in the order of their days', () => {
  test('the newest call and round stay those of the newest day', async () => {
    const { id } = await yard.beginRound();
    for (const pct of [12.5, 12.4, 12.6]) await type(id, pct);
    await yard.command('rounds.finish', { roundId: id });
    const before = (await latest())[0]!;
    const past = await save('2026-05-02', [
      [19, 22, 19, 22],
      [19, 22, 19, 22],
    ]);
    await expect.poll(async () => (await latest())[1]?.roundId, { timeout: 10_000 }).toBe(past.roundId);
    await outlooksMade();
    const after = (await latest())[0]!;
    expect([after.roundId, after.at, after.averagePct]).toEqual([id, before.at, before.averagePct]);
    const stack = await yard.query('stacks.get', { id: yard.stack.id });
    expect([stack.lastRoundId, stack.lastProbedAt]).toEqual([id, '2026-06-01T08:00:00.000Z']);
    expect((await yard.query('rounds.ofBoard', { boardId: ids()[0] })).map((round) => round.id)).toEqual([
      id,
      past.roundId,
    ]);
  });

  test('a round between two others is compared with the one before it, and the later one with it', async () => {
    const first = await save('2026-04-01', [[24, 27, 24, 27]]);
    const last = await save('2026-05-20', [[14, 16, 14, 16]]);
    await judged();
    const between = await save('2026-04-25', [[18, 21, 18, 21]]);
    const lastBefore = async (roundId: number) => {
      await yard.command('rounds.reopen', { roundId });
      await yard.command('rounds.aim', { roundId, boardId: ids()[0], spotIndex: 0 });
      const { probed } = await yard.query('rounds.get', { roundId });
      await yard.command('rounds.finish', { roundId });
      return probed?.lastRound?.at.slice(0, 10);
    };
    expect(await lastBefore(between.roundId)).toBe('2026-04-01');
    expect(await lastBefore(last.roundId)).toBe('2026-04-25');
    expect(await lastBefore(first.roundId)).toBeUndefined();
  });

  test('a forecast made with the rounds in any order is the same', async () => {
    await yard.command('boards.edit', { id: ids()[0], basedOn: 1, changed: { sawnOn: '2026-01-10' } });
    await yard.command('boards.edit', { id: ids()[1], basedOn: 1, changed: { sawnOn: '2026-01-10' } });
    const rounds = [
      ['2026-03-01', 30, 36],
      ['2026-04-01', 22, 26],
      ['2026-05-20', 15, 17],
    ] as const;
    for (const [day, shell, core] of rounds) await save(day, [[shell, core, shell, core]]);
    for (const index of [2, 0, 1]) {
      const [day, shell, core] = rounds[index]!;
      await save(day, [[], [shell, core, shell, core]]);
    }
    const days = async () => (await latest()).map((each) => each?.at.slice(0, 10));
    await expect.poll(days, { timeout: 10_000 }).toEqual(['2026-05-20', '2026-05-20']);
    await outlooksMade();
    const [one, other] = (await latest()).map((each) => ({ ...each, roundId: null }));
    expect(other).toEqual(one);
  });
});

describe('what is not known costs certainty, and is no reason to refuse', () => {
  test('a depth that nobody knows is of no pins', async () => {
    const profile = { ...unknownProfile, pins: { lengthMm: 12, insulated: true } };
    const { meterId } = await yard.command('meters.add', { name: 'Old meter', profile });
    await save('2026-05-02', [[14, 16, 14, 16]], { meterId, depths: Array(4).fill('unknown') });
    const unknown = (await board()).readings;
    expect(unknown.map(({ spot, depthFrom }) => [spot.depthMm, depthFrom])).toEqual(
      Array(4).fill([null, 'plan']),
    );
    await save('2026-05-03', [[], [14, 16, 14, 16]], { meterId });
    expect((await board(1)).readings.map(({ depthFrom }) => depthFrom)).toEqual(Array(4).fill('pins'));
    await expect.poll(async () => (await latest()).every(Boolean), { timeout: 10_000 }).toBe(true);
    const width = (each: { lowPct: number | null; highPct: number | null } | null | undefined) =>
      (each?.highPct ?? 99) - (each?.lowPct ?? 0);
    const [blind, seen] = await latest();
    expect(width(blind)).toBeGreaterThan(width(seen));
  });

  test('of a page, the depth alone is said, and nothing where that is unknown', async () => {
    await save('2026-05-02', [[14, 16, 15]], { depths: [3, 8, 'unknown'] });
    const { board: walnut, readings, readBefore } = await board();
    expect(readings.map((each) => spotWords(each, walnut, readings, readBefore, words))).toEqual([
      'Shell, spot unknown',
      'Core, spot unknown',
      'Spot and depth unknown',
    ]);
  });

  test('of a page of unknown depth alone, the finding is of no shell', async () => {
    await save('2026-05-02', [[31], [31, 32]], { depths: ['unknown', 8] });
    await judged();
    await expect.poll(async () => (await latest()).every(Boolean), { timeout: 10_000 }).toBe(true);
    expect((await latest()).map((found) => found?.isDepthUnknown)).toEqual([true, undefined]);
  });

  test('a page that was saved before places were left out is shown as one of unknown depth', async () => {
    await save('2026-05-02', [[14]], { depths: ['unknown'] });
    const { board: walnut, readings, readBefore } = await board();
    const { isAlongUnknown: _, ...spot } = readings[0]!.spot;
    const before = { ...readings[0]!, spot };
    expect(spotWords(before, walnut, [before], readBefore, words)).toBe('Spot and depth unknown');
    expect(readingName(before, 'shell', words)).toBe('reading 14%');
  });

  test('a depth that was written down is that of the reading', async () => {
    await save('2026-05-02', [[14, 16]], { depths: [3, 8] });
    expect(
      (await board()).readings.map(({ spot, depthFrom }) => [spot.depth, spot.depthMm, depthFrom]),
    ).toEqual([
      ['shell', 3, 'person'],
      ['core', 8, 'person'],
    ]);
  });

  test('air that was measured is nearer to the wood than the usual air of the month', async () => {
    const sds = async (more: object) =>
      (await check({ woodTempC: null, ...more }, [14])).cells[0]!.corrected.standardUncertaintyPct;
    const known = await sds({ woodTempC: 20 });
    const measured = await sds({ airTempC: 20 });
    const usual = await sds({});
    expect(known).toBeLessThan(measured!);
    expect(measured).toBeLessThan(usual!);
  });

  test('the air of that day is what the saved readings are corrected for', async () => {
    const checked = await check({ woodTempC: null, airTempC: -2 }, [14, 16]);
    await save('2026-05-10', [[14, 16]], { woodTempC: null, airTempC: -2 });
    const saved = (await board()).readings;
    expect(saved.map(({ corrected }) => corrected.mcPct)).toEqual(
      checked.cells.map(({ corrected }) => corrected.mcPct),
    );
    const other = await check({ woodTempC: null, airTempC: 20 }, [14, 16]);
    expect(other.cells[0]!.corrected.mcPct).not.toBe(checked.cells[0]!.corrected.mcPct);
  });
});

describe('what is typed is checked as it would be live', () => {
  test('a decimal point in the wrong place', async () => {
    expect((await rules({}, [14.2, 141, 14.4]))[1]).toContain('typing-slip');
  });
  test('one value at every spot', async () => {
    expect((await rules({}, [14.2, 14.2, 14.2, 14.2]))[0]).toContain('equal-values');
  });
  test('beyond what the scale holds', async () => {
    expect((await rules({}, [120, null, null, 118]))[0]).not.toEqual([]);
  });
  test('wet wood below freezing', async () => {
    expect((await rules({ woodTempC: -6 }, [34, 36]))[0]).toContain('frozen');
  });
  test('a change since the round before that day', async () => {
    await save('2026-04-20', [[10, 11, 10, 11]]);
    await judged();
    expect((await rules({}, [27, 29, 27, 29])).flat()).toContain('jump-since-last-round');
    // That round comes later than this page.
    expect((await rules({ startedAt: '2026-04-02T17:00:00.000Z' }, [27, 29, 27, 29])).flat()).not.toContain(
      'jump-since-last-round',
    );
  });
  test('another unit than the meter’s is not taken for it', async () => {
    const { isDayOnly: _, lines: __, ...asked } = page('2026-05-10', []);
    const line = { boardId: ids()[0], raws: [14] };
    expect(await yard.refusal('pastRounds.check', { ...asked, unit: 'ohm', line })).toMatch(
      /typed in megohms/,
    );
  });
});

describe('boards on the page', () => {
  const addOffcuts = () =>
    yard.command('stacks.add', {
      name: 'Offcuts',
      placeId: yard.place.id,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
  const shown = async (day: string, more: number[] = []) => {
    const asked = { stackId: yard.stack.id, startedAt: `${day}T17:00:00.000Z`, more };
    return yard.query('pastRounds.page', asked);
  };

  test('those that were elsewhere then say so', async () => {
    yard.later(DAY_MS);
    const other = await addOffcuts();
    await yard.command('boards.edit', { id: ids()[1], basedOn: 1, changed: { stackId: other.id } });
    const asked = { stackId: other.id, startedAt: '2026-05-02T17:00:00.000Z' };
    expect((await yard.query('pastRounds.page', asked)).boards).toMatchObject([
      {
        code: 'WAL-02',
        remarks: [{ code: 'past-round.in-other-stack', facts: { stackName: 'Walnut' } }],
      },
    ]);
    // A day after it came.
    const later = { ...asked, startedAt: isoOf(Date.parse(yard.now()) + 60_000) };
    expect((await yard.query('pastRounds.page', later)).boards[0]!.remarks).toEqual([]);
  });

  test('those that were not sawn yet say so', async () => {
    await yard.command('boards.edit', { id: ids()[0], basedOn: 1, changed: { sawnOn: '2026-05-10' } });
    expect((await shown('2026-05-02')).boards.map(({ isLater }) => isLater)).toEqual([true, false]);
    expect((await shown('2026-05-12')).boards.map(({ isLater }) => isLater)).toEqual([false, false]);
  });

  test('of a board that was cut later the whole is there, and from the day of the cut its pieces', async () => {
    const pieces = ['WAL-01-1', 'WAL-01-2'].map((code) => ({ code, widthMm: null, lengthMm: null }));
    const at = '2026-05-10T12:00:00.000Z';
    await yard.command('boards.cut', { boardId: ids()[0], how: 'ripped', at, pieces });
    const codes = async (day: string) => (await shown(day)).boards.map(({ code }) => code);
    expect(await codes('2026-05-02')).toEqual(['WAL-01', 'WAL-02']);
    expect(await codes('2026-05-10')).toEqual(['WAL-02', 'WAL-01-1', 'WAL-01-2']);
    const [whole] = (await shown('2026-05-02')).boards;
    expect(whole!.remarks).toMatchObject([{ code: 'past-round.left', facts: { why: 'ripped', leftOn: at } }]);
    // Its readings of then are its own, and so those of its pieces.
    await save('2026-05-02', [[14, 16]]);
    const { boardId } = await yard.query('pastRounds.boardOf', { code: 'wal-01-2 ' });
    expect((await yard.query('boards.get', { id: boardId! })).readings.map(({ raw }) => raw)).toEqual([
      14, 16,
    ]);
  });

  test('a piece that was cut later keeps its line where something was typed there, and is not saved', async () => {
    const pieces = ['WAL-01-1', 'WAL-01-2'].map((code) => ({ code, widthMm: null, lengthMm: null }));
    const at = '2026-05-10T12:00:00.000Z';
    await yard.command('boards.cut', { boardId: ids()[0], how: 'ripped', at, pieces });
    const piece = (await yard.query('pastRounds.boardOf', { code: 'WAL-01-1' })).boardId!;
    const { boards } = await shown('2026-05-02', [piece]);
    expect(boards.map(({ code, isLater }) => [code, isLater])).toEqual([
      ['WAL-01', false],
      ['WAL-02', false],
      ['WAL-01-1', true],
    ]);
    const lines = [{ boardId: piece, raws: [14] }];
    expect(await yard.refusal('pastRounds.save', { ...page('2026-05-02', []), lines })).toBe(
      'WAL-01-1 was cut from WAL-01 on May 10, 2026, after that day. Nothing was saved. Type its readings in the line of WAL-01.',
    );
  });

  test('a board that was entered twice has one line, which names its other ID', async () => {
    const [keptId, otherId] = ids();
    await yard.command('boards.merge', { id: keptId, basedOn: 1, otherId, otherBasedOn: 1 });
    expect((await shown('2026-05-02')).boards).toMatchObject([
      { code: 'WAL-01', remarks: [{ code: 'past-round.entered-too', facts: { otherCodes: ['WAL-02'] } }] },
    ]);
    expect((await yard.query('pastRounds.boardOf', { code: 'WAL-02' })).boardId).toBe(keptId);
  });

  test('another board of the yard gets a line by its ID, and no board has an ID that nobody gave', async () => {
    const other = await addOffcuts();
    const asked = { stackId: other.id, startedAt: '2026-05-02T17:00:00.000Z' };
    expect((await yard.query('pastRounds.page', asked)).boards).toEqual([]);
    const { boardId } = await yard.query('pastRounds.boardOf', { code: 'wal-02' });
    expect((await yard.query('pastRounds.page', { ...asked, more: [boardId!] })).boards).toMatchObject([
      { code: 'WAL-02', remarks: [{ code: 'past-round.of-other-stack', facts: { stackName: 'Walnut' } }] },
    ]);
    const lines = [{ boardId: boardId!, raws: [14] }];
    await yard.command('pastRounds.save', { ...page('2026-05-02', []), stackId: other.id, lines });
    expect((await board(1)).readings.map(({ raw }) => raw)).toEqual([14]);
    expect(await yard.query('pastRounds.boardOf', { code: 'oak-9' })).toEqual({
      code: 'OAK-9',
      boardId: null,
    });
  });

  test('those that left before that day are named, and read no more; on that day they were there', async () => {
    const at = '2026-05-10T12:00:00.000Z';
    await yard.command('boards.archive', { boardIds: [ids()[0]], why: 'sold', at });
    expect(await shown('2026-05-10')).toMatchObject({
      gone: [],
      boards: [{ code: 'WAL-01', remarks: [{ code: 'past-round.left' }] }, { code: 'WAL-02' }],
    });
    await save('2026-05-10', [[14, 16]]);
    expect(await shown('2026-05-11')).toMatchObject({ gone: ['WAL-01'], boards: [{ code: 'WAL-02' }] });
    expect(await yard.refusal('pastRounds.save', page('2026-05-11', [[14, 16]]))).toBe(
      'WAL-01 left the yard on May 10, 2026, before that day. Nothing was saved. Give an earlier day, or bring the board back first.',
    );
  });

  test('a record that was merged did not leave: its page goes in until the board that has it does', async () => {
    const [boardId, otherId] = ids() as [number, number];
    const { own, other } = await yard.query('boards.twice', { id: boardId, otherId });
    await yard.command('boards.merge', {
      id: boardId,
      basedOn: own.board.version,
      otherId,
      otherBasedOn: other.board.version,
    });
    yard.later(3 * DAY_MS);
    await save('2026-06-02', [[], [14, 16]]);
    const at = '2026-06-02T12:00:00.000Z';
    await yard.command('boards.archive', { boardIds: [boardId], why: 'sold', at });
    expect(await yard.refusal('pastRounds.save', page('2026-06-03', [[], [14, 16]]))).toMatch(
      /^WAL-02 left the yard on Jun 2, 2026, before that day\./,
    );
  });

  test('those that were entered by mistake are on no page', async () => {
    await yard.command('boards.delete', { boardIds: [ids()[0]] });
    expect(await shown('2026-05-02')).toMatchObject({ gone: [], boards: [{ code: 'WAL-02' }] });
  });

  test('a round of the same day is named', async () => {
    expect((await shown('2026-05-02')).sameDay).toBeNull();
    const { roundId } = await save('2026-05-02', [[14, 16], [15]]);
    expect((await shown('2026-05-02')).sameDay).toEqual({ roundId, boards: 2 });
    expect((await shown('2026-05-03')).sameDay).toBeNull();
  });
});

describe('boards that are known to be at their place only since a later day', () => {
  const moves = async () => (await board()).moves.map(({ placeName, since }) => [placeName, since]);
  const midnight = (day: string) => new Date(`${day}T00:00`).toISOString();
  const sawn = async (sawnOn: string) => {
    const { id, version } = (await board()).board;
    await yard.command('boards.edit', { id, basedOn: version, changed: { sawnOn } });
  };
  const placed = async () =>
    (
      await yard.query('pastRounds.page', { stackId: yard.stack.id, startedAt: '2026-05-02T17:00:00.000Z' })
    ).boards.map(({ placedLater }) => placedLater?.placeName ?? null);

  test('were there since they were sawn, where the person says so, in the act of the page', async () => {
    await sawn('2026-03-10');
    const before = await moves();
    expect(await placed()).toEqual(['Shop', 'Shop']);
    const { act } = await save('2026-05-02', [[14], [15]], { thereSince: 'sawn' });
    expect(await moves()).toEqual([['Shop', midnight('2026-03-10')]]);
    expect(await placed()).toEqual([null, null]);
    await yard.command('acts.undo', { act });
    expect(await moves()).toEqual(before);
    await yard.command('acts.redo', { act });
    expect(await moves()).toEqual([['Shop', midnight('2026-03-10')]]);
  });

  test('were there since a day, but never before they were sawn', async () => {
    await sawn('2026-04-20');
    await save('2026-05-02', [[14], [15]], { thereSince: '2026-04-01' });
    expect(await moves()).toEqual([['Shop', midnight('2026-04-20')]]);
    expect((await board(1)).moves[0]!.since).toBe(midnight('2026-04-01'));
  });

  test('stay as they are without an answer, and where the day is after the page', async () => {
    const before = await moves();
    await save('2026-05-02', [[14], [15]]);
    expect(await moves()).toEqual(before);
    await expect(save('2026-05-04', [[14]], { thereSince: '2026-05-20' })).rejects.toThrow(
      'Give that day or an earlier one for when they came there',
    );
    expect(await moves()).toEqual(before);
  });
});

test('a page that was undone and typed again is not redone beside the second, whose readings are the same', async () => {
  const values = [
    [12.1, 12.2, 12.3, 12.4],
    [11, 11.1, 11.2, 11.3],
  ];
  const read = async () => (await board()).readings.length;
  const first = await save('2026-05-02', values, { thereSince: '2026-05-01' });
  await yard.command('acts.undo', { act: first.act });
  const second = await save('2026-05-02', values, { thereSince: '2026-05-01' });
  const before = await read();
  expect(await yard.refusal('acts.redo', { act: first.act })).toMatch(
    /^Board WAL-0[12]: these readings were saved again later, so nothing was redone\. Undo this first \(.*\): /,
  );
  expect(await read()).toBe(before);
  await yard.command('acts.undo', { act: second.act });
  await yard.command('acts.redo', { act: first.act });
  expect(await read()).toBe(before);
  // One of two pages that a person saved knowing of both comes back.
  await save('2026-05-02', values, { isAnother: true });
  await yard.command('acts.undo', { act: first.act });
  await yard.command('acts.redo', { act: first.act });
  expect(await read()).toBe(before + 4);
});

describe('the boards of a page', () => {
  const codesOn = async (stackId: number, startedAt: string) =>
    (await yard.query('pastRounds.page', { stackId, startedAt })).boards.map(({ code, remarks }) => [
      code,
      ...remarks.map((remark) => words.say(remark)),
    ]);
  const put = async (stackId: number) => {
    yard.later(DAY_MS);
    const { version: basedOn } = (await board()).board;
    const act = crypto.randomUUID();
    await yard.command('boards.edit', { id: ids()[0], basedOn, changed: { stackId } }, act);
    return act;
  };

  test('are those that were in the stack that day, wherever they were put since', async () => {
    const { id: _, version: __, ...stack } = yard.stack;
    const other = await yard.command('stacks.add', { ...stack, name: 'Second' });
    const day = isoOf(Date.parse(yard.now()));
    const act = await put(other.id);
    expect(await codesOn(yard.stack.id, day)).toEqual([['WAL-01', 'In Second now.'], ['WAL-02']]);
    expect(await codesOn(other.id, day)).toEqual([['WAL-01', expect.stringMatching(/^In .+ until Jun 2/)]]);
    await yard.command('acts.undo', { act });
    expect(await codesOn(yard.stack.id, day)).toEqual([['WAL-01'], ['WAL-02']]);
    expect(await codesOn(other.id, day)).toEqual([]);
    await yard.command('acts.redo', { act });
    await put(yard.stack.id);
    expect(await codesOn(yard.stack.id, day)).toEqual([['WAL-01'], ['WAL-02']]);
    expect(await codesOn(other.id, day)).toEqual([]);
  });

  test('are found by an ID that is written another way, where it can mean one alone', async () => {
    const found = async (code: string) => (await yard.query('pastRounds.boardOf', { code })).boardId;
    for (const code of ['WAL1', 'wal-1', 'Wal 001', 'WAL-01']) expect(await found(code)).toBe(ids()[0]);
    expect(await found('WAL-3')).toBeNull();
    await yard.command('boards.add', [yard.board('WAL1')]);
    expect(await found('WAL-1')).toBeNull();
    expect(await found('WAL-01')).toBe(ids()[0]);
  });

  test('are in one line each', async () => {
    const line = { boardId: ids()[0], raws: [14, 14.5] };
    expect(
      await yard.refusal('pastRounds.save', page('2026-05-02', [], { lines: [line, line] } as Partial<Page>)),
    ).toBe('Two lines of the page are of board WAL-01. Nothing was saved. Put its readings in one line.');
    expect((await board()).readings).toEqual([]);
  });
});
