import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence, PlaceFacts } from '../../../shared-core/probing/readings/evidence.ts';
import type { Reading, Spot, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { evidence, lastRound, reading, SCALE } from './a-board.ts';

/** What speaks against the first of these, but for what it has in common with the others. */
function found(of: Reading | Reading[], more: Partial<BoardEvidence> = {}): Suspicion[] {
  const all = [of].flat();
  return judgeBoard({ ...evidence(all, more), readings: all }).readings[0]!.suspicions;
}
const one = (rule: Suspicion['rule'], ...args: Parameters<typeof found>): Suspicion | undefined =>
  found(...args).find((each) => each.rule === rule);
const at = (more: Partial<Spot>): { spot: Spot } => ({
  spot: { depth: 'shell', depthMm: null, fromEndMm: 1000, face: 'face', ...more },
});
const says = (severity: Suspicion['severity'], why: Message | null, whatToDo: Message) =>
  expect.objectContaining({ severity, ...(why === null ? {} : { why }), whatToDo });
const pct = (rawPct: number) => message('suspicion.reading-pct', { rawPct });

const shed: PlaceFacts = { name: 'the shed', kind: 'open-shed', emcPct: 8, month: 5, airTempC: 20 };

describe('says what is odd, and what to do', () => {
  test('of a record that the disk changed, which is all that is said of it', () => {
    const damaged = reading(1, 'shell', -4, { isDamaged: true, ...at({ face: 'end-grain' }) });
    expect(found(damaged)).toEqual([
      {
        rule: 'damaged',
        severity: 'refused',
        why: message('suspicion.damaged'),
        whatToDo: message('suspicion.damaged.do'),
      },
    ]);
  });

  test('of a slip of the hand', () => {
    const previous = lastRound(12.5, 13, '2026-05-06T10:00:00Z');
    expect(one('typing-slip', reading(1, 'shell', 126), { previous })).toEqual(
      says(
        'refused',
        message('suspicion.typing-slip', { rawPct: 126, rawMeantPct: 12.6 }),
        message('suspicion.typing-slip.do', { rawMeantPct: 12.6 }),
      ),
    );
    // In a heated room wood may be green: only a question.
    const place = { ...shed, kind: 'heated-room' as const, emcPct: 7 };
    const wet = [75, 76, 78].map((raw, index) => reading(index + 1, 'shell', raw));
    expect(one('typing-slip', wet, { place })?.severity).toBe('note');
    expect(one('typing-slip', wet, { place: { ...place, emcPct: null } })).toBeUndefined();
  });

  test('of what is no reading', () => {
    for (const raw of [-4, 250]) {
      const live = reading(1, 'shell', raw, { how: 'settled', settled: true });
      expect(one('not-a-reading', live)).toEqual(
        says(
          'refused',
          message('suspicion.not-a-reading', { reading: pct(raw) }),
          message('suspicion.not-a-reading.do'),
        ),
      );
    }
    const ohms = reading(1, 'shell', -4, { unit: 'ohm', how: 'settled', settled: true });
    expect(one('not-a-reading', ohms)?.why).toEqual(
      message('suspicion.not-a-reading', { reading: message('suspicion.reading-ohm', { rawOhm: -4 }) }),
    );
  });

  test('of frozen wood, and of wood only just below freezing', () => {
    expect(one('frozen', reading(1, 'shell', 24, { woodTempC: -5 }))?.whatToDo).toEqual(
      message('suspicion.frozen.do'),
    );
    expect(one('below-freezing', reading(1, 'shell', 12, { woodTempC: -5 }))?.whatToDo).toEqual(
      message('suspicion.below-freezing.do'),
    );
  });

  test('of one saved before it settled', () => {
    expect(one('not-settled', reading(1, 'shell', 8.2, { how: 'at-once', settled: false }))).toEqual(
      says(
        'questionable',
        message('suspicion.not-settled', { reading: pct(8.2) }),
        message('suspicion.not-settled.do'),
      ),
    );
  });

  test('of one past the end of its curve', () => {
    expect(one('outside-curve-range', reading(1, 'shell', 45))?.whatToDo).toEqual(
      message('suspicion.outside-curve-range.wet.do'),
    );
    expect(one('outside-curve-range', reading(1, 'shell', 5.4))?.whatToDo).toEqual(
      message('suspicion.outside-curve-range.dry.do'),
    );
    // James 1988, Table 1, has Douglas-fir from 7 % on (seeds/resistance-curves.json).
    expect(one('outside-curve-range', reading(1, 'shell', 6.5))).toEqual(
      says(
        'note',
        message('suspicion.outside-curve-range.beyond', { mcPct: expect.closeTo(6.5, 6) }),
        message('suspicion.outside-curve-range.beyond.do'),
      ),
    );
  });

  test('of a wood temperature that is not known, or that of the air', () => {
    const unknown = reading(1, 'shell', 9, { woodTempC: null });
    const remedy = message('suspicion.temperature-unknown.do');
    expect(one('temperature-unknown', unknown)).toEqual(
      says('note', message('suspicion.temperature-unknown', { perStepK: 10 }), remedy),
    );
    const facts = { airTempC: 20, placeName: 'the shed', perStepK: 10 };
    expect(one('temperature-of-air', unknown, { place: shed })).toEqual(
      says('note', message('suspicion.temperature-of-air', facts), remedy),
    );
    expect(one('temperature-of-air', unknown, { place: { ...shed, isAirMeasured: true } })).toEqual(
      says('note', message('suspicion.temperature-of-measured-air', facts), remedy),
    );
  });

  test('of a wood temperature beyond what is published, or of such air', () => {
    expect(one('temperature-out-of-range', reading(1, 'shell', 9, { woodTempC: 75 }))).toEqual(
      says(
        'questionable',
        message('suspicion.temperature-out-of-range', { woodTempC: 75 }),
        message('suspicion.temperature-out-of-range.do'),
      ),
    );
    const place = { ...shed, airTempC: -60 };
    expect(one('temperature-out-of-range', reading(1, 'shell', 9, { woodTempC: null }), { place })).toEqual(
      says(
        'questionable',
        message('suspicion.temperature-out-of-range.air', { airTempC: -60, placeName: 'the shed' }),
        message('suspicion.temperature-out-of-range.air.do'),
      ),
    );
  });

  test('of a wood temperature unlike the air, by its probe where one measured it', () => {
    const place = { ...shed, kind: 'heated-room' as const };
    const warm = { woodTempC: 32 };
    const remedy = message('suspicion.temperature-unlikely.do');
    expect(one('temperature-unlikely', reading(1, 'shell', 9, warm), { place })?.whatToDo).toEqual(remedy);
    const probed = reading(1, 'shell', 9, { ...warm, probeName: 'Probe 2' });
    expect(one('temperature-unlikely', probed, { place })).toEqual(
      says(
        'questionable',
        message('suspicion.temperature-unlikely.probe', {
          sensorName: 'Probe 2',
          woodTempC: 32,
          airTempC: 20,
          placeName: 'the shed',
        }),
        remedy,
      ),
    );
  });

  test('of a spot near an end, in end grain, not deep enough or too deep', () => {
    expect(one('near-end', reading(1, 'shell', 9, at({ fromEndMm: 150 })))).toEqual(
      says(
        'questionable',
        message('suspicion.near-end', { fromEndDistanceMm: 150 }),
        message('suspicion.near-end.do', { clearDistanceMm: 300 }),
      ),
    );
    expect(one('near-end', reading(1, 'shell', 9, at({ fromEndMm: null })))).toBeUndefined();
    expect(one('end-grain', reading(1, 'shell', 9, at({ face: 'end-grain' })))).toEqual(
      says('questionable', message('suspicion.end-grain'), message('suspicion.end-grain.do')),
    );
    expect(one('pins-shallow', reading(1, 'shell', 9, at({ depthMm: 1 })))?.whatToDo).toEqual(
      message('suspicion.pins-shallow.surface.do'),
    );
    const shallow = at({ depth: 'core', depthMm: 5 });
    expect(one('pins-shallow', reading(1, 'core', 9, shallow))?.whatToDo).toEqual(
      message('suspicion.pins-shallow.do'),
    );
    // A fresh crosscut bares the core, so the pins need not be deep.
    expect(
      one('pins-shallow', reading(1, 'core', 9, at({ ...shallow.spot, face: 'fresh-cut' }))),
    ).toBeUndefined();
    expect(one('pins-shallow', reading(1, 'core', 9, at({ depth: 'core' })))).toBeUndefined();
    const deep = (depthMm: number | null) =>
      one(
        'deeper-than-board',
        reading(1, 'core', 9, { ...at({ depth: 'core', depthMm }), depthFrom: 'person' }),
      );
    expect(deep(40)).toEqual(
      says(
        'questionable',
        message('suspicion.deeper-than-board', {
          depthMm: 40,
          boardThickness: { thicknessMm: 27, quarters: null },
        }),
        message('suspicion.deeper-than-board.do'),
      ),
    );
    expect([deep(13), deep(null)]).toEqual([undefined, undefined]);
  });
});

describe('at the end of a meter’s scale', () => {
  const typedBasis = { scale: SCALE, range: { min: 8, max: 40 } };
  const low = (...others: Partial<Reading>[]) =>
    one(
      'outside-meter-range',
      [
        reading(1, 'shell', 8, { spotIndex: 0 }),
        ...others.map((more, index) => reading(index + 2, 'core', 8, { spotIndex: index + 1, ...more })),
      ],
      { typedBasis },
    );

  test('says which end it is, and what to do', () => {
    expect(low()).toEqual(
      says(
        'questionable',
        message('suspicion.outside-meter-range.low', { reading: pct(8), end: pct(8) }),
        message('suspicion.outside-meter-range.do'),
      ),
    );
    expect(one('outside-meter-range', reading(1, 'shell', 41), { typedBasis })).toEqual(
      says(
        'note',
        message('suspicion.outside-meter-range.high', { reading: pct(41), end: pct(40) }),
        message('suspicion.outside-meter-range.do'),
      ),
    );
  });

  test('another spot that says the same makes it a note: one near the end, in the same unit, not excluded', () => {
    const isNote = (...more: Partial<Reading>[]) => low(...more)?.severity === 'note';
    expect(isNote({})).toBe(true);
    expect(isNote({ spotIndex: null })).toBe(true);
    expect(isNote({ raw: 9 })).toBe(true);
    expect(isNote({ raw: 9.1 })).toBe(false);
    expect(isNote({ spotIndex: 0 })).toBe(false);
    expect(isNote({ excluded: { code: 'defect' } })).toBe(false);
    expect(isNote({ unit: 'ohm' })).toBe(false);
  });

  test('in ohms the high end is the dry one', () => {
    const ohms = { scale: { kind: 'ohms' as const }, range: { min: 1e5, max: 1e9 } };
    const severity = (raw: number, more: Partial<Reading> = {}) =>
      one('outside-meter-range', reading(1, 'shell', raw, { unit: 'ohm', ...more }), { typedBasis: ohms })
        ?.severity;
    expect([severity(1e5), severity(1e9), severity(1e8)]).toEqual(['note', 'questionable', undefined]);
    // Shown as more than that.
    expect(severity(1e8, { isAbove: true })).toBe('questionable');
    expect(one('outside-meter-range', reading(1, 'shell', 30, { isAbove: true }))?.severity).toBe('note');
  });
});

describe('a reading in % that may be a slip', () => {
  const driestAir = { emcPct: 12, sdPct: 0.5 };
  const isSlip = (raw: number, more: Partial<BoardEvidence>, ...others: Reading[]) =>
    one('typing-slip', [reading(1, 'shell', raw), ...others], more) !== undefined;

  test('in air that never makes so dry is one where ten times as much is what it does make', () => {
    const beside = [reading(2, 'shell', 1.2), reading(3, 'shell', 1.25)];
    const levels = [1.0, 1.1, 1.8, 1.9].map((raw) => isSlip(raw, { driestAir }, ...beside));
    expect(levels).toEqual([false, true, true, false]);
  });

  test('is one beside any that is no ordinary moisture content, with a last round to go by', () => {
    const previous = lastRound(8.2, 8.8, '2026-05-06T10:00:00Z');
    expect(isSlip(82, { previous }, reading(2, 'core', 85))).toBe(true);
    expect(isSlip(82, { previous }, reading(2, 'core', 85), reading(3, 'core', 45))).toBe(false);
  });
});
