/** Boards, one by one, and what is stated of each on its page and in every list. */
import { describe, expect, test } from 'vitest';
import { readyWords } from '../../../shared-core/history-chart/ready-words.ts';
import { type Judgement, judge } from '../../../shared-core/probing/calls/judgement.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { englishWords, inEnglish } from '../words/in-english.ts';
import { ahead, dayOf, facts, found, inDays, nowMs, onDay, place, reach } from './a-judged-board.ts';

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
      'It is unlikely to reach its target here. First let it dry to 20%, and its core to 25%. Then move it to drier air.',
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
