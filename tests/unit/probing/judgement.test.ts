/** Boards, one by one, and what is stated of each on its page and in every list. */
import { describe, expect, test } from 'vitest';
import { readyWords } from '../../../shared-core/history-chart/ready-words.ts';
import {
  asJudged,
  type Judgement,
  judgeByFinding,
  judge as judgeFacts,
  judgementSchema,
  readyOf,
} from '../../../shared-core/probing/calls/judgement.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { englishWords, inEnglish } from '../words/in-english.ts';
import { ahead, dayOf, facts, found, inDays, nowMs, onDay, place, reach } from './a-judged-board.ts';

const judge = (...given: Parameters<typeof judgeFacts>): Judgement => {
  const made = judgeFacts(...given);
  expect(judgementSchema.parse(made)).toEqual(made);
  return made;
};
const messagesOf = ({ reasons, next }: Judgement): Message[] => [...reasons, ...(next.why ? [next.why] : [])];
const says = (judgement: Judgement, code: RegExp): boolean =>
  messagesOf(judgement).some((each) => code.test(each.code));
const here = ({ places }: Judgement) => places[0]?.ready ?? null;
/** What a person reads of it, the call first. */
const told = (judgement: Judgement): string[] => messagesOf(judgement).map((each) => inEnglish(each));

describe('one story of a board', () => {
  test('air down to 14.6% dries a board to a target of 12–15%: it dries on, and nothing sends it elsewhere', () => {
    const shed = place(1, 'Pole shed', 'open-shed', 14.6);
    const target = { minPct: 12, maxPct: 15 };
    const judgement = judge(facts({ target, places: [shed], found: found('keep-drying', 18.2) }));
    expect(judgement).toMatchObject({ call: 'keep-drying', next: { step: 'wait' } });
    expect(told(judgement)).toContain('Pole shed may dry it to the target: lowest EMC 14.6%, in May.');
    expect(told(judgement).join(' ')).not.toMatch(/drier air|elsewhere|move/i);
  });

  test('a room that dries far below the target is no place to hurry to, unless nothing else gets a board there', () => {
    const made = facts({ target: { minPct: 12, maxPct: 15 }, found: found('keep-drying', 15.8) });
    const soonIndoors = (here: ReturnType<typeof reach>) =>
      judge({ ...made, forecast: ahead(15.6, [here, reach(5, 10, 20)], { endsPct: [14, 6.1] }) });
    expect(soonIndoors(reach(60, 90, 150)).bestPlaceId).toBeNull();
    expect(soonIndoors(reach(null, null, null)).bestPlaceId).toBe(2);
  });

  test('a board that is ready any day now is not told that waiting gains nothing', () => {
    const judgement = judge(
      facts({
        found: found('keep-drying', 8.2),
        places: [place(1, 'Bench room', 'heated-room', 7.4)],
        forecast: ahead(8, [reach(0, 1, 20)], {
          probabilityReady: 0.45,
          nextProbe: { atMs: nowMs, why: message('forecast.probe.decides') },
        }),
      }),
    );
    expect(judgement).toMatchObject({
      call: 'keep-drying',
      next: { step: 'probe', due: 'could-change-call' },
    });
    expect(here(judgement)?.kind).toBe('likely');
    expect(says(judgement, /^call\.(place-too-|last-gain$)/)).toBe(false);
  });

  test('a board that its place does not dry is to be brought in, and no sentence says to keep it there', () => {
    const judgement = judge(
      facts({
        forecast: ahead(14.2, [reach(null, null, null), reach(20, 40, 90)]),
        found: found('keep-drying', 14.9),
      }),
    );
    expect(judgement).toMatchObject({
      call: 'bring-in',
      bestPlaceId: 2,
      next: { step: 'move', placeId: 2 },
      places: [{ ready: { kind: 'too-damp' } }, { ready: { kind: 'likely' } }],
    });
    expect(told(judgement)).toEqual([
      'Too wet: 14.9%. Target 6–8%.',
      'Pole shed is unlikely to dry it to the target: lowest EMC 11.2%, in May.',
      'Dry enough to bring in: average at most 20%, core at most 25%.',
    ]);
  });

  test('the average that is stated is the one that was read, with its day; else the forecast’s', () => {
    const forecast = ahead(14.2, [reach(null, null, null), reach(20, 40, 90)]);
    expect(judge(facts({ forecast })).average).toEqual({
      averagePct: 14.9,
      readOn: onDay(-30),
      isEstimated: false,
    });
    const questionable = found('probe-again', 14.9, { isQuestionable: true });
    expect(judge(facts({ forecast, found: questionable })).average).toEqual({
      averagePct: 14.2,
      readOn: null,
      isEstimated: false,
    });
    expect(judge(facts({ forecast, found: null })).average).toEqual({
      averagePct: 14.2,
      readOn: null,
      isEstimated: false,
    });
    expect(judge(facts({ found: null })).average).toBeNull();
  });

  test('a board on its way through its target from below is said to come into it, with a day to probe it', () => {
    const room = place(1, 'Heated shop', 'heated-room', 5, null);
    const forecast = ahead(5.5, [reach(null, null, null)], { endsPct: [10] });
    const judgement = judge(facts({ places: [room], found: found('too-dry', 5.5), forecast }));
    const ready = here(judgement);
    expect(ready).toEqual({ kind: 'leaves', entersOn: dayOf(onDay(100)), leavesOn: dayOf(onDay(200)) });
    expect(readyWords({ ready, lowestEmcPct: 5 }, englishWords)).toMatch(
      /^In the target from about .* to .*, then too damp$/,
    );
    expect(judgement.next).toMatchObject({ step: 'wait', probeMs: inDays(100) });
    expect(told(judgement).at(-1)).toMatch(
      /^Keep it in Heated shop to take up moisture\. Probe it again about /,
    );
  });

  test('a place has one figure for how dry it gets a board, and what is at the top of the target is good enough', () => {
    const forecast = ahead(14.9, [reach(null, null, null), reach(150, null, null)], { endsPct: [12, 7.9] });
    const judgement = judge(facts({ found: found('keep-drying', 14.9), forecast }));
    expect(judgement.places[1]!.ready).toMatchObject({ kind: 'unlikely', driestPct: 7.9 });
    expect(told(judgement).at(-1)).toBe(
      'Bench room gets it driest: about 7.9%. That is the top of the target, 6–8%: good enough, or run a dehumidifier there.',
    );
  });

  test('a board that is not probed, or only in part, has a day ahead, and is not ready any day', () => {
    const places = [place(1, 'Bench room', 'heated-room', 6)] as const;
    const spotsRead = { read: 1, planned: 3 };
    const part = found('keep-drying', 12, {
      call: null,
      reasons: [message('call.half-read', spotsRead)],
      spotsRead,
    });
    for (const of of [null, part]) {
      const ready = (soonest: Parameters<typeof reach>) =>
        judge(facts({ places, found: of, forecast: ahead(12, [reach(...soonest)]) })).places[0]!.ready;
      expect(ready([5, 20, 40])).toMatchObject({ kind: 'likely' });
      expect(ready([0, 0, 20])).toBeNull();
    }
  });

  test('readings that would not help are not asked for, until the board has dried on', () => {
    const unsure = (days: number) =>
      found('keep-drying', 8.4, {
        at: onDay(-days),
        reasons: [
          message('call.probably-too-wet', { averagePct: 8.4, targetRange: { minPct: 6, maxPct: 8 } }),
          message('call.more-will-not-help'),
        ],
      });
    const places = [place(1, 'Bench room', 'heated-room', 6)] as const;
    const forecast = (probeMs: number) =>
      ahead(8.2, [reach(3, 20, 60)], {
        nextProbe: { atMs: probeMs, why: message('forecast.probe.decides') },
      });
    const lately = judge(facts({ places, found: unsure(1), forecast: forecast(inDays(6)) }));
    expect(lately.next.step).toBe('wait');
    expect(says(lately, /more-will-not-help/)).toBe(true);
    // A day to probe it stands beside that.
    expect(told(lately)).toContain('More readings now won’t help. An oven-dry check will.');
    const long = judge(facts({ places, found: unsure(60), forecast: forecast(nowMs) }));
    expect(long.next.step).toBe('probe');
    expect(says(long, /more-will-not-help/)).toBe(false);
    const tried = judge(facts({ places, found: unsure(1), forecast: forecast(nowMs) }));
    expect(tried.next.step).toBe('probe');
    expect(says(tried, /more-will-not-help/)).toBe(false);
    const uneven = judge(facts({ places, found: unsure(60), forecast: forecast(inDays(6)) }));
    expect(uneven.next.step).toBe('wait');
    expect(says(uneven, /more-will-not-help/)).toBe(false);
  });

  test('a board too dry by a little is probed again once it has taken up moisture, so readings will help', () => {
    const unsure = { ...found('too-dry', 5.8), at: onDay(-1) };
    const reasons = [
      message('call.below-target', { averagePct: 5.8, targetRange: { minPct: 6, maxPct: 8 } }),
      message('call.more-will-not-help'),
    ] as const;
    expect(says(judge(facts({ found: { ...unsure, reasons: [...reasons] } })), /more-will-not-help/)).toBe(
      false,
    );
  });

  // Above 20 %, or with a core above 25 %: common practice, no source, and Torgeson (FPL Report 1684, 1956).
  test('a core read too wet for a heated room today is believed before a forecast that has it drier', () => {
    const judgement = judge(
      facts({
        found: found('keep-drying', 19, { at: onDay(0), corePct: 28 }),
        forecast: ahead(17, [reach(null, null, null), reach(20, 40, 90)]),
      }),
    );
    expect(judgement).toMatchObject({ call: 'keep-drying', bestPlaceId: null, next: { due: 'move-later' } });
  });

  test('a board that is too dry stays where that air helps, else goes where it does; readings are asked for after that', () => {
    const tooDry = found('too-dry', 4.6, {
      reasons: [message('call.below-target', { averagePct: 4.6, targetRange: { minPct: 6, maxPct: 8 } })],
    });
    const room = place(1, 'Bench room', 'heated-room', 7, null);
    const regains = [reach(0, 8, 60), reach(null, null, null)];
    const stays = judge(
      facts({
        found: tooDry,
        places: [room, place(2, 'Outdoors', 'outdoors', 13)],
        forecast: ahead(4.6, regains, { endsPct: [7, 13] }),
      }),
    );
    expect(told(stays)).toEqual([
      'Too dry: 4.6%. Target 6–8%.',
      'Keep it in Bench room to take up moisture. Probe it again about Sep 28, 2026.',
    ]);
    const goes = judge(
      facts({
        found: tooDry,
        places: [place(1, 'Kiln', 'heated-room', 3, null), { ...room, placeId: 2 }],
        forecast: ahead(4.6, regains.toReversed(), { endsPct: [3.5, 7] }),
      }),
    );
    expect(told(goes).at(-1)).toBe(
      'Move it to Bench room to take up moisture. Probe it again about Sep 28, 2026.',
    );
    expect(told(judge(facts({ found: tooDry }))).at(-1)).toBe(
      'Let it take up moisture where it will be used. Then probe it again.',
    );
  });

  test('a board too wet for a heated room dries on first, and says so', () => {
    const forecast = ahead(18, [reach(null, null, null), reach(20, 40, 90)], { corePct: 28 });
    const judgement = judge(facts({ found: found('keep-drying', 18.4), forecast }));
    expect(judgement).toMatchObject({
      call: 'keep-drying',
      bestPlaceId: null,
      next: { step: 'wait', due: 'move-later' },
    });
    expect(told(judgement).at(-1)).toBe(
      'It is unlikely to reach its target here. Let it dry first. Probe it again in about a month. Once it is at 20%, and its core at 25%, move it to drier air.',
    );
  });

  test('a board that no place dries says so, and until when it still gains', () => {
    const judgement = judge(
      facts({
        places: [place(1, 'Pole shed', 'open-shed', 11.2), place(2, 'Yard', 'outdoors', 12)],
        forecast: ahead(14.2, [reach(null, null, null), reach(null, null, null)]),
      }),
    );
    expect(judgement).toMatchObject({ call: 'bring-in', next: { step: 'move', placeId: null } });
    expect(told(judgement).slice(2)).toEqual([
      'Dry enough to bring in: average at most 20%, core at most 25%.',
      'After Dec 29, 2026 it dries less than 0.5 points more in Pole shed.',
      'None of your places is dry enough. Add a drier one, or change the use.',
    ]);
  });

  test('the end of a slow board’s forecast is not called all that its place can do', () => {
    const gains = (lowestEmcPct: number) =>
      told(
        judge(
          facts({
            places: [place(1, 'Loft', 'open-shed', lowestEmcPct)],
            forecast: ahead(14.2, [reach(null, null, null)]),
          }),
        ),
      ).filter((each) => each.includes('less than 0.5 points more'));
    expect(gains(11.2)).toHaveLength(1);
    expect(gains(7.6)).toEqual([]);
  });

  describe('until when a board still gains is said', () => {
    const stuck = (more: Parameters<typeof facts>[0]) =>
      says(
        judge(
          facts({
            places: [place(1, 'Pole shed', 'open-shed', 11.2)],
            forecast: ahead(14.2, [reach(null, null, null)]),
            ...more,
          }),
        ),
        /last-gain/,
      );

    test('of one that is too wet and gets no further, also where the air is not known', () => {
      expect(stuck({})).toBe(true);
      expect(stuck({ places: [place(1, 'Loft', 'open-shed', null)] })).toBe(true);
      const places = [place(1, 'Pole shed', 'open-shed', 12.5)] as const;
      const gaining = (endPct: number) =>
        stuck({ places, forecast: ahead(14.2, [reach(null, null, null)], { endsPct: [endPct] }) });
      expect(gaining(13.6)).toBe(true);
      expect(gaining(13.8)).toBe(false);
    });

    test('not of one that was never probed, or that is ready', () => {
      expect(stuck({ found: null })).toBe(false);
      expect(stuck({ found: found('ready', 7.8) })).toBe(false);
    });
  });

  test('dry enough air that is too slow is not called too damp', () => {
    const slow = facts({
      places: [place(1, 'Loft', 'open-shed', 7.6), place(2, 'Bench room', 'heated-room', 6)],
      forecast: ahead(14, [reach(null, null, null), reach(30, 60, 90)]),
    });
    expect(told(judge(slow))[1]).toBe('In Loft it is unlikely to reach 6–8% within two years.');
    expect(here(judge(slow))).toEqual({ kind: 'not-within', driestPct: 12.8 });
  });

  test('uneven through its thickness and dry enough on average: it equalizes where it is, whatever the air', () => {
    const uneven = found('keep-drying', 7.4, {
      reasons: [
        message('call.average-in-target', { averagePct: 7.4, targetRange: { minPct: 6, maxPct: 8 } }),
      ],
    });
    expect(judge(facts({ found: uneven })).call).toBe('keep-drying');
  });
});

describe('a board in a heated room', () => {
  const room = place(1, 'Bench room', 'heated-room', 6.5, null);
  const shed = place(2, 'Pole shed', 'open-shed', 11.2);
  // Above 20 %, or with a core above 25 %: common practice, no source, and Torgeson (FPL Report 1684, 1956).
  const of = (averagePct: number, corePct: number, more: Partial<Parameters<typeof facts>[0]> = {}) =>
    judge(facts({ places: [room, shed], found: found('keep-drying', averagePct, { corePct }), ...more }));

  test('that may check there goes back under cover', () => {
    expect(of(18, 28)).toMatchObject({
      call: 'keep-drying',
      bestPlaceId: null,
      next: { step: 'move', due: 'move-back', placeId: 2, why: { code: 'next-step.back-under-cover' } },
    });
    expect(of(22, 23).next.due).toBe('move-back');
    expect(of(18, 28, { places: [room] }).next).toMatchObject({ due: 'move-back', placeId: null });
  });

  test('that is first to be probed, or was never, is not moved back', () => {
    expect(of(18, 28, { found: found('probe-again', 18, { corePct: 28 }) }).next.step).toBe('probe');
    const forecast = ahead(12, [reach(80, 90, 100), reach(10, 20, 30)], { corePct: 28 });
    expect(of(18, 28, { found: null, forecast }).next.step).toBe('probe');
  });

  test('that is dry enough for it, or firewood, stays', () => {
    expect(of(18, 24).next.due).not.toBe('move-back');
    expect(of(18, 28, { mayCheck: false }).next.due).not.toBe('move-back');
    expect(of(18, 28, { places: [{ ...room, kind: 'shop' }, shed] }).next.due).not.toBe('move-back');
  });

  test('is as wet as its readings of this week or its forecast have it, whichever is wetter', () => {
    const drier = ahead(16, [reach(20, 40, 60), reach(null, null, null)], { corePct: 17 });
    const readOn = (days: number) => found('keep-drying', 18, { corePct: 28, at: onDay(-days) });
    expect(of(18, 28, { found: readOn(6), forecast: drier }).next.due).toBe('move-back');
    expect(of(18, 28, { found: readOn(8), forecast: drier }).next.due).not.toBe('move-back');
    const wetter = ahead(21, [reach(20, 40, 60), reach(null, null, null)], { corePct: 22 });
    expect(
      of(18, 19, { found: found('keep-drying', 18, { corePct: 19, at: onDay(-1) }), forecast: wetter }).next
        .due,
    ).toBe('move-back');
  });

  test('that no place gets to its target stays in it where that is the driest: nothing is drier', () => {
    const made = of(12, 13, {
      forecast: ahead(11, [reach(null, null, null), reach(null, null, null)], { endsPct: [9, 12] }),
    });
    expect(made).toMatchObject({
      call: 'keep-drying',
      bestPlaceId: null,
      next: { step: 'wait', probeMs: null },
    });
    expect(made.next.why).toMatchObject({
      code: 'next-step.driest-place',
      facts: { placeName: 'Bench room', driestPct: 9, isIndoors: 'yes', isAtTarget: 'no' },
    });
    expect(says(made, /bring-in/)).toBe(false);
  });

  test('is to be brought where it gets drier, if that is another', () => {
    const made = of(12, 13, {
      forecast: ahead(11, [reach(null, null, null), reach(null, null, null)], { endsPct: [11, 9] }),
    });
    expect(made).toMatchObject({ call: 'bring-in', next: { step: 'move', placeId: 2 } });
    expect(says(made, /dry-enough-to-bring-in/)).toBe(true);
    expect(of(7.4, 7.5, { found: found('ready', 7.4) }).call).toBe('ready');
  });
});

test('a board that no place gets to its target is moved where it gets driest', () => {
  const made = judge(
    facts({
      places: [place(1, 'Pole shed', 'open-shed', 11.2), place(2, 'Shop', 'shop', 9.5)],
      forecast: ahead(14, [reach(null, null, null), reach(null, null, null)], { endsPct: [12, 10] }),
    }),
  );
  expect(made).toMatchObject({
    call: 'bring-in',
    bestPlaceId: null,
    next: { step: 'move', due: 'bring-in', placeId: 2 },
  });
  expect(made.next.why!.facts).toMatchObject({
    placeName: 'Shop',
    driestPct: 10,
    isIndoors: 'no',
    isAtTarget: 'no',
  });
});

describe('where a board is ready', () => {
  const places = [place(1, 'Bench room', 'heated-room', 6), place(2, 'Shop', 'shop', 6)] as const;
  const readies = (...given: Parameters<typeof facts>) =>
    judge(facts(...given)).places.map(({ ready }) => ready?.kind);

  test('one called Ready is so now where it is, and where it would be any day; elsewhere on its day', () => {
    const ready = found('ready', 7.4);
    const forecast = (there: ReturnType<typeof reach>) =>
      ahead(7.4, [reach(0, 0, 0), there], { probabilityReady: 0.9, endsPct: [7, 7] });
    expect(readies({ places, found: ready, forecast: forecast(reach(0, 0, 1)) })).toEqual(['now', 'now']);
    expect(readies({ places, found: ready, forecast: forecast(reach(5, 9, 20)) })).toEqual(['now', 'likely']);
    expect(
      judge(facts({ places, found: ready, forecast: forecast(reach(5, 9, 20)) })).bestPlaceId,
    ).toBeNull();
  });

  test('one called Ready lately is so now, and stays, though the forecast has it ready later and elsewhere first', () => {
    const ready = found('ready', 7.4, { at: onDay(-1) });
    const forecast = ahead(8.2, [reach(30, 90, 120), reach(5, 9, 20)], {
      probabilityReady: 0.4,
      endsPct: [7, 7],
    });
    const made = judge(facts({ places, found: ready, forecast }));
    expect(made.places.map(({ ready }) => ready?.kind)).toEqual(['now', 'likely']);
    expect(made.bestPlaceId).toBeNull();
    expect(judge(facts({ places, found: ready }))).toMatchObject({
      call: 'ready',
      places: [],
      next: { step: 'label' },
    });
  });

  test('one may get there in a place whose air is not known', () => {
    const unknown = [place(1, 'Bench room', 'heated-room', null), place(2, 'Shop', 'shop', null)] as const;
    const forecast = ahead(12, [reach(80, 90, 100), reach(10, 20, 30)], { endsPct: [7, 7] });
    expect(readies({ places: unknown, found: found('keep-drying', 12), forecast })).toEqual([
      'likely',
      'likely',
    ]);
  });

  test('one called Ready that may be so no longer has no day where it is, and one elsewhere', () => {
    const ready = found('ready', 7.4, { at: onDay(-30) });
    const forecast = ahead(9, [reach(20, 40, 60), reach(10, 20, 30)], {
      probabilityReady: 0.2,
      endsPct: [7, 7],
    });
    const made = judge(facts({ places, found: ready, forecast }));
    expect(made.places.map(({ ready }) => ready?.kind)).toEqual([undefined, 'likely']);
    expect(made.next.due).toBe('may-not-be-ready');
  });

  test('one that is as likely ready as not is so any day where it is, and has its day elsewhere', () => {
    const forecast = ahead(8.1, [reach(5, 9, 20), reach(5, 9, 20)], {
      probabilityReady: 0.5,
      endsPct: [7, 7],
    });
    expect(readies({ places, found: found('keep-drying', 8.4), forecast })).toEqual(['any-day', 'likely']);
  });

  test('one to be probed again has no day, and is not moved before', () => {
    const forecast = ahead(12, [reach(80, 90, 100), reach(10, 20, 30)], { endsPct: [7, 7] });
    const made = judge(facts({ places, found: found('probe-again', 12), forecast }));
    expect(made.places).toEqual([
      { placeId: 1, ready: null },
      { placeId: 2, ready: null },
    ]);
    expect(made.bestPlaceId).toBeNull();
    const unread = judge(facts({ places, found: null, forecast }));
    expect(unread.bestPlaceId).toBe(2);
    expect(unread.places.map(({ ready }) => ready?.kind)).toEqual(['likely', 'likely']);
  });

  test('one that is too dry by its readings alone has no day, and no place to go to', () => {
    const forecast = ahead(6, [reach(80, 90, 100), reach(10, 20, 30)], { endsPct: [7, 7] });
    const made = judge(facts({ places, found: found('too-dry', 5), forecast }));
    expect(made.places.map(({ ready }) => ready)).toEqual([null, null]);
    expect(made.bestPlaceId).toBeNull();
    expect(made.next).toMatchObject({ step: 'wait', why: { code: 'next-step.too-dry' } });
    const bothDry = ahead(5, [reach(80, 90, 100), reach(10, 20, 30)], { endsPct: [7, 7] });
    expect(readies({ places, found: found('too-dry', 5), forecast: bothDry })).toEqual(['likely', 'likely']);
  });
});

describe('the average that is stated', () => {
  const forecast = ahead(14.2, [reach(null, null, null), reach(20, 40, 90)]);
  const averageOf = (averageIs: 'read' | 'estimated' | 'unknown' | 'above') =>
    judge(facts({ forecast, found: found('keep-drying', 14.9, { averageIs }) })).average;

  test('is the one read, also where it is estimated from the shell', () => {
    expect(averageOf('read')).toEqual({ averagePct: 14.9, readOn: onDay(-30), isEstimated: false });
    expect(averageOf('estimated')).toEqual({ averagePct: 14.9, readOn: onDay(-30), isEstimated: true });
  });

  test('is the forecast’s where the readings leave it open, or only say that it is higher', () => {
    for (const open of ['unknown', 'above'] as const)
      expect(averageOf(open)).toEqual({ averagePct: 14.2, readOn: null, isEstimated: false });
    const none = found('probe-again', 0, { averagePct: null });
    expect(judge(facts({ forecast, found: none })).average?.averagePct).toBe(14.2);
  });
});

describe('the day that lists show', () => {
  const when = (likely: string) => ({ likely, from: likely, to: null });
  const likely = (day: string) => ({ kind: 'likely' as const, when: when(day) });
  const shown = (...readies: Judgement['places'][number]['ready'][]) =>
    readyOf({ places: readies.map((ready, index) => ({ placeId: index + 1, ready })), bestPlaceId: 2 });

  test('is that of where it is', () => {
    expect(shown(likely('2027-03-01'), likely('2027-01-01'))).toEqual({
      when: when('2027-03-01'),
      placeId: null,
    });
  });

  test('else that of the place where it is ready first', () => {
    expect(shown({ kind: 'too-damp', driestPct: 12 }, likely('2027-01-01'), likely('2026-12-01'))).toEqual({
      when: when('2027-01-01'),
      placeId: 2,
    });
    expect(shown(null, null, likely('2026-12-01'))).toBeNull();
    expect(shown()).toBeNull();
    const places = [
      { placeId: 1, ready: null },
      { placeId: 3, ready: likely('2026-12-01') },
      { placeId: 2, ready: likely('2027-01-01') },
    ];
    expect(readyOf({ places, bestPlaceId: 2 })).toEqual({ when: when('2027-01-01'), placeId: 2 });
  });

  test('is none of a board that is ready any day', () => {
    expect(shown({ kind: 'any-day' }, likely('2027-01-01'))).toBeNull();
  });
});

describe('until a forecast says more', () => {
  const reason = message('call.no-readings');

  test('a board has what its round found', () => {
    const made = judgeByFinding({
      call: 'keep-drying',
      reason,
      at: onDay(-30),
      averagePct: 14.9,
      averageIs: 'read',
      isQuestionable: false,
      spotsRead: null,
    });
    expect(judgementSchema.parse(made)).toEqual(made);
    expect(made).toEqual({
      call: 'keep-drying',
      reasons: [reason],
      average: { averagePct: 14.9, readOn: onDay(-30), isEstimated: false },
      lowestEmc: null,
      places: [],
      bestPlaceId: null,
      next: { step: 'wait', due: null, probeMs: null, why: message('next-step.no-forecast') },
    });
  });

  test('a half-probed one has the rest of its spots to read', () => {
    const made = judgeByFinding({
      call: null,
      reason,
      at: onDay(-1),
      averagePct: null,
      averageIs: 'unknown',
      isQuestionable: false,
      spotsRead: { read: 1, planned: 4 },
    });
    expect(made).toMatchObject({
      call: null,
      average: null,
      next: { step: 'probe', why: message('next-step.half-probed', { spots: 3 }) },
    });
  });

  test('an average saved before Pintally estimated any was read', () => {
    const made = judgeByFinding(null);
    const average = { averagePct: 8, readOn: onDay(-1) };
    expect(judgementSchema.parse({ ...made, average }).average).toEqual({ ...average, isEstimated: false });
  });

  test('one that was never probed has nothing but a first round to do', () => {
    expect(judgeByFinding(null)).toMatchObject({
      call: null,
      reasons: [],
      average: null,
      next: { step: 'probe', due: 'first-round', why: message('next-step.not-probed') },
    });
  });
});

test('what a round found is shown with the call of today and what decides it', () => {
  const [then, now] = [message('call.no-readings'), message('call.none-left')];
  const finding = { call: 'keep-drying', reason: then, averagePct: 14.9 } as const;
  expect(asJudged(finding, { call: 'bring-in', reasons: [now, then] })).toEqual({
    ...finding,
    call: 'bring-in',
    reason: now,
  });
  expect(asJudged(finding, { call: null, reasons: [] })).toEqual(finding);
});
