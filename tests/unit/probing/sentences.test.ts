/** Every sentence that judging a board or a round can return, made from the facts that it returns with it. */
import { expect, test } from 'vitest';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { type JudgedPlace, judge as judgeFacts } from '../../../shared-core/probing/calls/judgement.ts';
import type { Reading, Spot } from '../../../shared-core/probing/readings/reading.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { codesFrom, codesOf, expectWhole } from '../words/in-english.ts';
import { evidence, interior, lastRound, plainSpecies, reading, readings, SCALE } from './a-board.ts';
import { ahead, facts, found, onDay, place, reach } from './a-judged-board.ts';
import { judgeRound, round, sound } from './a-round.ts';
import { coded, enteredAsElm, stack } from './a-stack.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5, airTempC: 15 } as const;
const ofUnknownDepth = (each: Reading): Reading => ({ ...each, spot: { ...each.spot, depthMm: null } });
const spot = (more: Partial<Spot>): { spot: Spot } => ({
  spot: { depth: 'shell', depthMm: null, fromEndMm: 1000, face: 'face', ...more },
});
const judge = (...args: Parameters<typeof evidence>) => judgeBoard(evidence(...args));
/** One reading among sound ones. */
const odd = (more: Partial<Reading>, raw = 8, rest: Parameters<typeof evidence>[1] = {}) =>
  judge([reading(9, 'shell', raw, more), ...readings([8.1, 8.2], [8.6, 8.7])], rest);

const roughly = (there: JudgedPlace): JudgedPlace => ({
  ...there,
  lowestEmc: there.lowestEmc && { ...there.lowestEmc, isRough: true, isByReadings: true },
});

const suspicionsOf = (assessments: readonly Assessment[]): Message[] =>
  assessments
    .flatMap(({ readings }) => readings.flatMap(({ suspicions }) => suspicions))
    .flatMap(({ why, whatToDo }) => [why, whatToDo]);

test('every suspicion', () => {
  const previous = (takenAt: string) => lastRound(20, 28, takenAt);
  const inOhms: Partial<Reading> = { unit: 'ohm', how: 'settled', settled: true };
  const wet = { pct: 50, logSd: 0.5, airSdPct: 0.5 };
  const dry = { pct: 12, logSd: 0.2, airSdPct: 0.5 };
  const ofBoards = [
    odd({ how: 'settled' }, -4),
    odd({ ...inOhms }, -4),
    odd({}, 126),
    odd({ isAbove: true }, 28),
    judge([reading(1, 'shell', 12, { unit: 'ohm' })]),
    odd({ woodTempC: -3 }),
    odd({ woodTempC: -3 }, 24),
    judge(readings([8.4, 8.4], [8.4, 8.4])),
    judge([reading(1, 'shell', 8.4, { spotIndex: 0 }), reading(2, 'shell', 8.5, { spotIndex: 0 })]),
    odd({ settled: false, how: 'at-once' }),
    odd({ isDamaged: true }),
    odd({}, 8, { typedBasis: { scale: SCALE, range: { min: 8, max: 40 } } }),
    odd({}, 40, { typedBasis: { scale: SCALE, range: { min: 6, max: 40 } } }),
    judge(readings([45, 45], [46, 46])),
    judge(readings([5.4, 5.4], [5.5, 5.5])),
    judge(readings([28.5, 28.5], [28.6, 28.6])),
    odd({ woodTempC: null }),
    judge([reading(1, 'shell', 8, { woodTempC: null })], { place: { ...shed, airTempC: 5 } }),
    judge([reading(1, 'shell', 8, { woodTempC: null })], { place: { ...shed, airTempC: -60 } }),
    judge([reading(1, 'shell', 8, { woodTempC: null })], {
      place: { ...shed, airTempC: 5, isAirMeasured: true },
    }),
    odd({ woodTempC: 32 }, 9, { place: { ...shed, airTempC: 5, isAirMeasured: true } }),
    odd({ woodTempC: 32, probeName: 'Spike' }, 9, { place: { ...shed, airTempC: 5 } }),
    odd({ woodTempC: 75 }),
    odd({ woodTempC: 32 }, 9, { place: { ...shed, kind: 'heated-room' } }),
    odd(spot({ fromEndMm: 100 })),
    odd(spot({ face: 'end-grain' })),
    odd(spot({ depth: 'core', depthMm: 3 })),
    odd(spot({ depthMm: 1 })),
    odd({ ...spot({ depth: 'core', depthMm: 40 }), depthFrom: 'person' }),
    judge(readings([8.1, 8.4, 12.2], [8.6, 8.9])),
    judge(readings([12.1, 12.4, 7.2], [12.6, 12.9])),
    judge(readings([8.1, 8.4], [8.6, 12.6])),
    judge(readings([22, 22.5], [18, 18.2]), { place: shed }),
    judge(readings([15, 15.4, 22], [17, 17.4]), { place: shed }),
    judge(readings([26.8, 27.9], [12.5, 12.5]), { place: shed }),
    judge(readings([14.6, 14.9], [15.4, 15.7]), { previous: lastRound(8.2, 8.8, '2026-05-06T10:00:00Z') }),
    judge(readings([12, 12.3], [20, 20.2]), { previous: previous('2026-05-20T03:00:00Z') }),
    judge(readings([12, 12], [13, 13]), { prior: { shell: wet, average: wet, core: wet, emcPct: 11 } }),
    judge(readings([13, 13], [12, 12], { depthFrom: 'plan' }), {
      prior: { shell: wet, average: wet, core: wet, emcPct: 11 },
    }),
    judge(readings([13, 13], [12, 12]), { prior: { shell: wet, average: wet, core: wet, emcPct: 11 } }),
    judge(readings([12, 12], []), { prior: { shell: wet, average: wet, core: wet, emcPct: 11 } }),
    judge(readings([6, 6], [6, 6]), { prior: { shell: dry, average: dry, core: dry, emcPct: 11 } }),
    judge(readings([24, 24.2], [24.4, 24.1]), {
      place: shed,
      prior: { shell: dry, average: dry, core: dry, emcPct: 11 },
    }),
    judge(readings([24, 24.2], [24.4, 24.1]), { prior: { shell: dry, average: dry, core: dry, emcPct: 11 } }),
    judge(readings([6.5, 6.5], [6.6, 6.6]), { driestAir: { emcPct: 11, sdPct: 0 } }),
    judge(readings([14.2, 14.4], [14.3, 14.5]), {
      place: shed,
      board: { thicknessMm: 52, lengthMm: 3000 },
      previous: { ...lastRound(16, 22, '2026-05-09T10:00:00Z'), moved: false },
    }),
  ];
  const apart = (off: { shell: number; core: number }) => judgeRound(round((n) => (n === 3 ? off : sound)));
  const swapped = round(() => sound);
  const [second, third] = [swapped[1]!.evidence, swapped[2]!.evidence];
  swapped[1] = { ...swapped[1]!, evidence: { ...second, readings: third.readings } };
  swapped[2] = { ...swapped[2]!, evidence: { ...third, readings: second.readings } };
  const ofRounds = [
    judgeRound(swapped),
    apart({ shell: -4, core: -4 }),
    apart({ shell: -4, core: 0 }),
    apart({ shell: 4, core: 0 }),
    apart({ shell: 0, core: -4.5 }),
    apart({ shell: 0, core: 4 }),
    judgeRound(round((n) => ({ shell: 1.2 * n, core: 1.2 * n }))),
    judgeRound(round(() => ({ shell: 5, core: 5 }))),
    judgeRound(coded([...stack, enteredAsElm])),
  ].flat();
  const messages = suspicionsOf([...ofBoards, ...ofRounds]);
  expect([...codesOf(messages)].sort()).toEqual(codesFrom('suspicion.').sort());
  expectWhole(messages);
});

test('every reason of a call', () => {
  const furniture = { ...interior, name: 'furniture', minPct: 6, maxPct: 8 };
  const siding = { ...interior, name: 'siding', minPct: 9, maxPct: 14 };
  const species = { ...plainSpecies, radialPct: 4, tangentialPct: 8 };
  const beam = { thicknessMm: 54, lengthMm: 3000 };
  const plan = { shell: 0, average: 3, core: 0 };
  const byAverage = (...pcts: number[]) => pcts.map((pct, index) => reading(index + 1, 'average', pct));
  const assessments = [
    judge([]),
    judge(readings([8, 8], [8, 8], { excluded: { text: 'wrong board' } })),
    judge(readings([24, 24], [24, 24], { woodTempC: -5 })),
    judge(readings([8, 8], [8.2, 8.3], { settled: false, how: 'at-once' })),
    judge(readings([8, 8.1], [8, 8.1], { woodTempC: -5 })),
    judge(readings([7.8, 8], [8.2, 8.4])),
    judge(readings([7.3, 7.3], [7.4, 7.4]), { endUse: furniture }),
    judge(readings([15, 15.2], [17, 17.3])),
    judge(readings([15, 15.2], [28, 28], { isAbove: true })),
    judge(readings([14, 14.4], [27, 27.4])),
    judge(readings([], [13])),
    judge(readings([10.4, 10.5], [10.6, 10.7])),
    judge(readings([26.8, 27.9], [12.5, 12.5]), { place: shed }),
    judge(readings([6.6, 6.7], [9.2, 9.4])),
    judge(readings([6.3, 6.4], [9.7, 9.8])),
    judge(readings([9.7, 9.8], [6.3, 6.4])),
    judge(readings([6.4, 6.5], [6.6, 6.7]), { endUse: siding }),
    judge(readings([8], [8.2])),
    judge(readings([8], []), { fullRound: lastRound(8, 8.2, '2026-05-06T10:00:00Z') }),
    judge(readings([14], []), { fullRound: lastRound(8, 8.2, '2026-05-19T10:00:00Z') }),
    judge([...readings([8], [8.2, 8.3]), reading(9, 'shell', 7.9, spot({ fromEndMm: 100 }))]),
    judge([...readings([8, 8.1], [8.2]), reading(9, 'core', 8.3, spot({ depth: 'core', fromEndMm: 100 }))]),
    judge(readings([9.5, 11.2], [9.6, 11.3])),
    judge(readings([7.8, 7.8], [7.9, 7.9]), { endUse: { ...furniture, tolerancePoints: 0.3 } }),
    judge(readings([8.4, 8.4], [8.4, 8.4]), { endUse: siding }),
    judge(readings([8.4, 8.4], [8.4, 8.4]), { endUse: { ...siding, minIsAdvice: true } }),
    judge(readings([9.4, 9.4], [9.6, 9.6]), { species }),
    judge(readings([9.4, 9.4], [9.6, 9.6]), { species, board: { ...beam, thicknessMm: 27, widthMm: 200 } }),
    judge(byAverage(8, 8, 8), { plan }),
    judge(byAverage(8), { plan: { ...plan, average: 1 } }),
    judge([...byAverage(8, 8, 8), reading(9, 'core', 8.2, { depthFrom: 'person' })], { plan }),
    judge(
      [
        ...byAverage(8),
        ...[8, 9].map((id) => reading(id, 'average', 8, spot({ depth: 'average', fromEndMm: 100 }))),
      ],
      { plan },
    ),
    judge(byAverage(9.8, 9.8, 9.8), { plan, place: { ...shed, emcPct: 5 } }),
    judge(readings([8, 8], [8.1, 8.1], { depthFrom: 'plan' }), { board: beam }),
    judge(readings([8, 8], []), { board: beam, plan: { shell: 2, average: 0, core: 0 } }),
    judge(readings([8, 8], []), {
      board: beam,
      plan: { shell: 2, average: 0, core: 0 },
      endUse: builtInEndUses.find(({ id }) => id === 'firewood')!,
    }),
    judge(readings([8, 8], [], { settled: false, how: 'at-once' }), {
      board: beam,
      plan: { shell: 2, average: 0, core: 0 },
    }),
    ...[8, 22].map((pct) =>
      judge(readings([pct, pct], []), {
        board: beam,
        endUse: { ...siding, minPct: 11, maxPct: 15 },
        place: { ...shed, emcPct: 13 },
        plan: { shell: 2, average: 0, core: 0 },
      }),
    ),
    // The same where nobody knows how deep it was.
    ...[8, 22].map((pct) =>
      judge([], {
        readings: readings([pct, pct], [], { depthFrom: 'plan' }).map(ofUnknownDepth),
        board: beam,
        endUse: { ...siding, minPct: 11, maxPct: 15 },
        place: { ...shed, emcPct: 13 },
        plan: { shell: 2, average: 0, core: 0 },
      }),
    ),
    judge(readings([8, 8], []), {
      board: beam,
      plan: { shell: 2, average: 0, core: 0 },
      profile: { differencePct: 0.5, differenceSdPct: 0.4 },
    }),
    judge(readings([7.8, 8], [8.2, 8.3, 15])),
    judge([...readings([7.8, 8], [8.2, 8.4]), reading(9, 'shell', 7.9, spot({ fromEndMm: 100 }))]),
  ];
  const notReached = ahead(14, [reach(null, null, null)]);
  const byPlace = [
    facts({ places: [place(1, 'Shed', 'open-shed', null)] }),
    facts({ places: [place(1, 'Shed', 'open-shed', 7)] }),
    facts({ places: [place(1, 'Shed', 'open-shed', 7, null)] }),
    facts({ places: [roughly(place(1, 'Shed', 'open-shed', 12))] }),
    facts({ places: [place(1, 'Shed', 'open-shed', 12, null)] }),
    facts({ places: [place(1, 'Shed', 'open-shed', 7)], forecast: notReached }),
    facts({
      places: [place(1, 'Shed', 'open-shed', 12)],
      forecast: ahead(14, [reach(null, null, null)], { endsPct: [12.5] }),
    }),
    facts({
      found: { ...found('keep-drying', 16), averageIs: 'unknown', corePct: null },
      places: [place(1, 'Shed', 'open-shed', 12)],
    }),
    facts({ found: found('keep-drying', 26), places: [place(1, 'Shed', 'open-shed', 12)] }),
    ...[14, 8.5].map((pct) =>
      facts({
        found: found('keep-drying', 26, { at: onDay(-600) }),
        places: [place(1, 'Shed', 'open-shed', 12)],
        forecast: ahead(pct, [reach(null, null, null)]),
      }),
    ),
  ].map(judgeFacts);
  const reasons = [...assessments, ...byPlace].flatMap((each) => each.reasons);
  const codes = [...codesOf(reasons)].filter((code) => code.startsWith('call.'));
  // Names and letters of calls are shown beside their reasons.
  const beside = /^call\.(bring-in|keep-drying|probe-again|too-dry|letter-.*)$/;
  expect(codes.sort()).toEqual(
    codesFrom('call.')
      .filter((code) => !beside.test(code))
      .sort(),
  );
  expectWhole(reasons);
});
