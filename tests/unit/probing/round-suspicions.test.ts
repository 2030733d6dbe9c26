import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import type { Expected } from '../../../shared-core/probing/suspicions/expectation.ts';
import {
  roundSuspicions,
  type WalkedBoard,
} from '../../../shared-core/probing/suspicions/round-suspicions.ts';
import { message } from '../../../shared-core/words/message.ts';
import { evidence, reading } from './a-board.ts';

/*
 * Boards put together by hand, so that each threshold can be reached and just missed. Every depth has two readings,
 * and its pace is known to one point: a sound depth then lies 0.67 points off its stack (0.5 by its two spots and as
 * much as the last round's, 0.45 by its own pace), and both depths together 0.57.
 */

type Off = Partial<Record<Depth, number>>;
type More = { sd?: Omit<Expected, 'pct'>; expected?: Record<Depth, number>; spots?: number };
const EXPECTED = { shell: 10, average: 11, core: 12 };

const bare = evidence([reading(1, 'shell', 10)]);
const [one] = judgeBoard(bare).readings;
const read = (depth: Depth, mcPct: number, more: Partial<JudgedReading> = {}): JudgedReading => ({
  ...one!,
  spot: { ...one!.spot, depth },
  corrected: { ...one!.corrected, mcPct },
  suspicions: [],
  ...more,
});

/** A board that reads so far off what it should at each of the depths, as the others do not have to. */
function board(
  off: Off,
  { sd = { sdLowPct: 1, sdHighPct: 1 }, expected = EXPECTED, spots = 2 }: More = {},
): WalkedBoard {
  const at = (depth: Depth): Expected => ({ pct: expected[depth], ...sd });
  const readings = (Object.keys(off) as Depth[]).flatMap((depth) =>
    Array.from({ length: spots }, () => read(depth, expected[depth] + off[depth]!)),
  );
  const expectation = { shell: at('shell'), average: at('average'), core: at('core') };
  return { code: '', evidence: bare, readings, expectation };
}
const both = (off: number): Off => ({ shell: off, core: off });
const sound = (count: number, off = 0, more?: More): WalkedBoard[] =>
  Array.from({ length: count }, () => board(both(off), more));

const walk = (boards: readonly WalkedBoard[]) =>
  roundSuspicions(boards.map((each, index) => ({ ...each, code: `W-${index + 1}` })));
/** What is said of the last of them. */
const ofLast = (...boards: readonly WalkedBoard[]) => walk(boards).get(boards.length - 1) ?? [];
const rulesOf = (boards: readonly WalkedBoard[]) => {
  const found = walk(boards);
  return boards.map((_, index) => (found.get(index) ?? []).map(({ suspicion }) => suspicion.rule));
};
const apart = (offPoints: number, direction: string) => ({
  depth: null,
  suspicion: {
    rule: 'apart-from-stack',
    severity: 'questionable',
    why: message('suspicion.apart-from-stack', { offPoints: expect.closeTo(offPoints, 6), direction }),
    whatToDo: message('suspicion.apart-from-stack.do'),
  },
});
const depthApart = (depth: 'shell' | 'core', offPoints: number, direction: string, side: 'wet' | 'dry') => ({
  depth,
  suspicion: {
    rule: 'apart-from-stack',
    severity: 'questionable',
    why: message('suspicion.apart-from-stack.depth', {
      depth,
      offPoints: expect.closeTo(offPoints, 6),
      direction,
    }),
    whatToDo: message(`suspicion.apart-from-stack.${side}-${depth}.do`),
  },
});

describe('one depth apart from the stack', () => {
  test('by more than 3.2 of its standard deviations is questionable, and the other depth is not', () => {
    for (const off of [2.1, -2.1]) {
      expect(ofLast(...sound(5), board({ shell: 0, core: off }))).toEqual([]);
      expect(ofLast(...sound(5), board({ shell: off, core: 0 }))).toEqual([]);
    }
    const found = (off: Off) => ofLast(...sound(5), board(off));
    expect(found({ shell: 0, core: 2.2 })).toEqual([depthApart('core', 2.2, 'higher', 'wet')]);
    expect(found({ shell: 0, core: -2.2 })).toEqual([depthApart('core', 2.2, 'lower', 'dry')]);
    expect(found({ shell: 2.2, core: 0 })).toEqual([depthApart('shell', 2.2, 'higher', 'wet')]);
    expect(found({ shell: -2.2, core: 0 })).toEqual([depthApart('shell', 2.2, 'lower', 'dry')]);
  });

  test('is told by what its stack reads at that depth', () => {
    const stack = Array.from({ length: 5 }, () => board({ shell: -2.2, core: 2.2 }));
    expect(rulesOf([...stack, stack[0]!]).flat()).toEqual([]);
    expect(ofLast(...stack, board({ shell: -2.2, core: 4.5 }))).toEqual([
      depthApart('core', 2.3, 'higher', 'wet'),
    ]);
    // Four boards cannot tell it by depth, and a fifth by its average: then the round as a whole does.
    const four = [board({ average: 0 }), ...stack.slice(0, 4)];
    expect(ofLast(...four)).toEqual([
      depthApart('shell', 2.2, 'lower', 'dry'),
      depthApart('core', 2.2, 'higher', 'wet'),
    ]);
  });

  test('may be further off in wet wood, where its pace is hardly known, and where few spots tell', () => {
    const core = (off: number, more: More) =>
      ofLast(...sound(5), board({ shell: 0, core: off }, more)).length;
    const wet = { expected: { ...EXPECTED, core: 25 } };
    expect([core(3.4, wet), core(3.6, wet)]).toEqual([0, 1]);
    const sd = { sdLowPct: 0.2, sdHighPct: 3 };
    expect([core(-1.6, { sd }), core(-1.7, { sd }), core(4.5, { sd }), core(4.7, { sd })]).toEqual([
      0, 1, 0, 1,
    ]);
    expect([core(2, { spots: 2 }), core(2, { spots: 8 })]).toEqual([0, 1]);
  });
});

describe('a whole board apart from its stack', () => {
  test('by more than 3.2 standard deviations is questionable', () => {
    const found = (off: number) => ofLast(...sound(5), board(both(off)));
    expect([found(1.8), found(-1.8)]).toEqual([[], []]);
    expect(found(1.9)).toEqual([apart(1.9, 'higher')]);
    expect(found(-1.9)).toEqual([apart(1.9, 'lower')]);
  });

  test('is told by what the stack reads, be that what it should or not', () => {
    expect(ofLast(...sound(5, 1), board(both(2.9)))).toEqual([apart(1.9, 'higher')]);
    expect(ofLast(...sound(5, 1), board(both(-0.9)))).toEqual([apart(1.9, 'lower')]);
    expect(ofLast(...sound(5, -1), board(both(0.7)))).toEqual([]);
  });

  test('has both depths off, the same way; else only the one that is far off is', () => {
    const found = (off: Off) => ofLast(...sound(5), board(off));
    expect(found({ shell: 0.95, core: 4 })).toEqual([depthApart('core', 4, 'higher', 'wet')]);
    expect(found({ shell: 1.1, core: 4 })).toEqual([apart(2.55, 'higher')]);
    expect(found({ shell: -1.1, core: 5 })).toEqual([depthApart('core', 5, 'higher', 'wet')]);
  });

  test('read by its average is told by the others that were', () => {
    const averages = Array.from({ length: 6 }, () => board({ average: 0 }));
    const round = [...sound(4, 2.5), ...averages, ...sound(4, 2.5)];
    expect(rulesOf(round).flat()).toEqual([]);
    expect(ofLast(...round, board({ average: -2.2 }))).toEqual([apart(4.7, 'lower')]);
    // Like the round as a whole, though not like those.
    expect(ofLast(...round, board({ average: 2.5 }))).toEqual([]);
  });
});

describe('boards mixed up', () => {
  /** One that should read so much more than the others. */
  const wetter = (by: number) => ({ expected: { shell: 10 + by, average: 11 + by, core: 12 + by } });
  const swapped = (by: number, level = 0): WalkedBoard[] => [
    board(both(level + by)),
    ...sound(5, level),
    board(both(level - by), wetter(by)),
  ];
  const partners = (boards: readonly WalkedBoard[]) => {
    const found = walk(boards);
    return boards.map((_, index) =>
      (found.get(index) ?? []).map(({ suspicion: { whatToDo } }) => whatToDo.facts?.otherCode ?? null),
    );
  };

  test('name each other where exchanging them explains both, also if neither is far off by itself', () => {
    for (const by of [1.1, 4]) {
      expect(partners(swapped(by))).toEqual([['W-7'], [], [], [], [], [], ['W-1']]);
      expect(partners(swapped(by, 1))).toEqual([['W-7'], [], [], [], [], [], ['W-1']]);
    }
    expect(partners(swapped(0.9)).flat()).toEqual([]);
  });

  test('are not those of which one fits as well as what it is', () => {
    const found = partners([board(both(2.5)), ...sound(5), board(both(-1), wetter(2.5))]);
    expect(found).toEqual([[null], [], [], [], [], [], []]);
  });

  test('are the two that explain each other best', () => {
    const third = board(both(-3), wetter(4));
    expect(partners([third, board(both(4)), ...sound(5), board(both(-4), wetter(4))])[1]).toEqual(['W-8']);
    expect(partners([board(both(-4), wetter(4)), board(both(4)), ...sound(5), third])[1]).toEqual(['W-1']);
  });

  test('were read at the same depths', () => {
    const averaged = board({ average: -4 }, wetter(4));
    expect(partners([board(both(4)), ...sound(5), averaged])).toEqual([[null], [], [], [], [], [], [null]]);
  });
});

describe('a meter that drifts along the walk', () => {
  const drifting = (count: number, by: number, level = 0) =>
    Array.from({ length: count }, (_, index) => board(both(level + (by * index) / (count - 1))));

  test('is found by more than 2.3 points over six boards, and said of those that it moved', () => {
    expect(rulesOf(drifting(6, 2.25)).flat()).toEqual([]);
    const found = rulesOf(drifting(6, 2.4));
    expect(found).toEqual([[], [], ...Array(4).fill(['meter-drift'])]);
  });

  test('is said with how far it drifted, and which way', () => {
    for (const [by, direction] of [
      [2.4, 'higher'],
      [-2.4, 'lower'],
    ] as const)
      expect(ofLast(...drifting(6, by))).toEqual([
        {
          depth: null,
          suspicion: {
            rule: 'meter-drift',
            severity: 'questionable',
            why: message('suspicion.meter-drift', { driftPoints: expect.closeTo(2.4, 6), direction }),
            whatToDo: message('suspicion.meter-drift.do'),
          },
        },
      ]);
  });

  test('is found by a point and a half in a long round, however long', () => {
    for (const count of [40, 201, 210]) {
      expect(rulesOf(drifting(count, 1.45)).flat()).toEqual([]);
      expect(rulesOf(drifting(count, 1.55)).at(-1)).toEqual(['meter-drift']);
    }
  });

  test('is not where the boards lie as far apart by themselves', () => {
    const restless = [0, 2, 0.5, 2.6, 1, 3.1].map((off) => board(both(off)));
    expect(rulesOf(restless).flat()).not.toContain('meter-drift');
  });

  test('explains a round that is off, and not a board that is apart from the rest', () => {
    expect(rulesOf(drifting(6, 2.4, 5)).flat()).not.toContain('round-off');
    const round = drifting(8, 3);
    round[6] = board(both(6));
    expect(rulesOf(round)[6]).toEqual(['meter-drift', 'apart-from-stack']);
  });
});

describe('a whole round that is off', () => {
  test('by more than what boards share of their pace is questionable, with how far and which way', () => {
    expect(rulesOf(sound(6, 3.6)).flat()).toEqual([]);
    for (const [off, direction] of [
      [3.7, 'higher'],
      [-3.7, 'lower'],
    ] as const) {
      const found = walk(sound(6, off));
      expect([...found.keys()]).toEqual([0, 1, 2, 3, 4, 5]);
      expect(found.get(3)).toEqual([
        {
          depth: null,
          suspicion: {
            rule: 'round-off',
            severity: 'questionable',
            why: message('suspicion.round-off', { offPoints: expect.closeTo(3.7, 6), direction }),
            whatToDo: message('suspicion.round-off.do'),
          },
        },
      ]);
    }
  });

  test('may be further off where the pace is less sure', () => {
    const sd = { sdLowPct: 2, sdHighPct: 2 };
    expect(rulesOf(sound(6, 6.8, { sd })).flat()).toEqual([]);
    expect(rulesOf(sound(6, 7, { sd })).flat()).toEqual(Array(6).fill('round-off'));
  });
});

describe('what speaks for a round', () => {
  test('are five boards', () => {
    expect(rulesOf(sound(4, 5)).flat()).toEqual([]);
    expect(rulesOf(sound(5, 5)).flat()).toEqual(Array(5).fill('round-off'));
  });

  test('are boards that were read at both depths or by their average, and of which it is known what they should read', () => {
    const more = (each: WalkedBoard) => rulesOf([...sound(4, 5), each]).flat();
    expect(more(board({ average: 5 }))).toHaveLength(5);
    for (const off of [{ shell: 5 }, { core: 5 }, {}]) expect(more(board(off))).toEqual([]);
    expect(more({ ...board(both(5)), expectation: null })).toEqual([]);
    // Of a last round by its average, what shell and core should read is not known.
    const { expectation } = board({});
    expect(more({ ...board(both(5)), expectation: { ...expectation!, shell: null, core: null } })).toEqual(
      [],
    );
  });

  test('are the readings that nothing speaks against; where there are none, those that are used', () => {
    const doubt = (severity: 'note' | 'questionable') => ({
      suspicions: [
        {
          rule: 'near-end' as const,
          severity,
          why: message('suspicion.end-grain'),
          whatToDo: message('suspicion.end-grain.do'),
        },
      ],
    });
    const cores = (...of: JudgedReading[]) => {
      const { readings, ...rest } = board({ shell: 0 });
      return ofLast(...sound(5), { ...rest, readings: [...readings, ...of] }).map(({ depth }) => depth);
    };
    const wet = 12 + 4;
    expect(cores(read('core', 12), read('core', wet, doubt('questionable')))).toEqual([]);
    expect(cores(read('core', 12, doubt('questionable')), read('core', wet, doubt('note')))).toEqual([
      'core',
    ]);
    const noteToo = { suspicions: [...doubt('note').suspicions, ...doubt('questionable').suspicions] };
    expect(cores(read('core', 12), read('core', wet, noteToo))).toEqual([]);
    expect(cores(read('core', wet, doubt('questionable')))).toEqual(['core']);
    expect(cores(read('core', 12), read('core', wet, { counts: false }))).toEqual([]);
  });
});
