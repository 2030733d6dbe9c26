import { expect, test } from 'vitest';
import { roundStep } from '../../../shared-core/probing/calls/round-step.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { aBoard, aReading, read } from '../renderer/round/a-round.ts';

const textOf = (message: Message, units: DisplayUnits): string =>
  createWords({ catalog: english, locale: 'en-US', timeZone: 'UTC', units, today: null }).say(message);

const first = {
  board: aBoard(1),
  spotIndex: 0,
  pinsAt: null,
  pinsSaved: 'sound' as const,
  askedPins: null,
  waits: false,
  by: 'enter' as const,
  isLast: false,
  secondsLeft: null,
};

test('says which depth, where along the board and how deep the pins go', () => {
  expect(textOf(roundStep({ ...first, spotIndex: 1 }), 'metric')).toBe(
    'Core, 60 cm from the left end: pins 25 mm deep.',
  );
});

test('says it in inches where those are the person’s', () => {
  expect(textOf(roundStep(first), 'imperial')).toBe('Shell, 24 in from the left end: pins 3/16 in deep.');
});

test('with every spot read, says the call and what Enter does', () => {
  const done = { ...first, board: read(aBoard(1), [aReading(1)], 'bring-in'), spotIndex: null };
  expect(textOf(roundStep(done), 'metric')).toBe(
    'All spots read. Call: Bring in. Press Enter for the next board.',
  );
  expect(textOf(roundStep({ ...done, isLast: true }), 'metric')).toBe(
    'All spots read. Call: Bring in. Last board. Press Enter when you are done.',
  );
  expect(textOf(roundStep({ ...done, secondsLeft: 2 }), 'metric')).toBe(
    'All spots read. Call: Bring in. Next board in 2 s. Any key stops this.',
  );
});

test('on a frozen board, says to let it thaw', () => {
  const board = read(aBoard(1), [aReading(1)], 'probe-again');
  const why = message('suspicion.frozen', { woodTempC: -5, frozenLimitPct: 22 });
  const finding = { ...board.finding!, reason: message('call.none-usable', { why }) };
  expect(textOf(roundStep({ ...first, board: { ...board, finding }, spotIndex: null }), 'metric')).toBe(
    'Frozen. Let it thaw. Press Enter for the next board.',
  );
});

test('with the core still to be read, says the key for it and not only how to go on', () => {
  const board = read(aBoard(1), [aReading(1)], 'probe-again');
  for (const code of ['call.core-not-reached', 'call.core-not-split'] as const) {
    const finding = { ...board.finding!, reason: message(code) };
    expect(textOf(roundStep({ ...first, board: { ...board, finding }, spotIndex: null }), 'metric')).toBe(
      'Core not read. Press C to read it. Press Enter for the next board.',
    );
  }
});

test('with nothing but a questionable shell, says the key for the core, too', () => {
  const board = read(aBoard(1), [aReading(1)], 'probe-again');
  const finding = { ...board.finding!, reason: message('call.shell-questionable', { shellPct: 10 }) };
  const done = { ...first, board: { ...board, finding }, spotIndex: null };
  expect(textOf(roundStep(done), 'metric')).toBe(
    'All spots read. Call: Probe again. Press C to read the core, or Enter for the next board.',
  );
  expect(textOf(roundStep({ ...done, isLast: true }), 'metric')).toBe(
    'All spots read. Call: Probe again. Last board. Press C to read the core, or Enter when you are done.',
  );
});

test('with a value typed once every spot is read, says where Enter saves it', () => {
  const done = { ...first, board: read(aBoard(1), [aReading(1)], 'bring-in'), spotIndex: null };
  expect(textOf(roundStep({ ...done, savesFor: 'WAL-02' }), 'metric')).toBe(
    'All spots read. Call: Bring in. Enter saves this as the first reading of WAL-02.',
  );
  expect(textOf(roundStep({ ...done, savesFor: null }), 'metric')).toBe(
    'All spots read. Call: Bring in. Choose the spot to read again.',
  );
});

test('while the pins are in, names the spot that they are at and not the next one', () => {
  const out = (pinsSaved: 'sound' | 'questionable' | 'not-used') =>
    textOf(roundStep({ ...first, spotIndex: 1, pinsAt: 0, pinsSaved }), 'metric');
  expect(out('questionable')).toBe('Shell, 60 cm from the left end: questionable. Pull the pins.');
  expect(out('not-used')).toBe('Shell, 60 cm from the left end: not used. Pull the pins.');
  expect(textOf(roundStep({ ...first, spotIndex: 1, pinsAt: 0 }), 'metric')).toBe(
    'Shell, 60 cm from the left end: saved. Pull the pins.',
  );
});

test('asks about pins that may be saved already before anything else', () => {
  expect(textOf(roundStep({ ...first, spotIndex: 1, askedPins: 'WAL-02' }), 'metric')).toBe(
    'Same pins as on WAL-02? Pull them, or press Space.',
  );
});

test('names the pedal where one is set, and says why the next board does not come by itself', () => {
  const done = { ...first, board: read(aBoard(1), [aReading(1)], 'bring-in'), spotIndex: null };
  expect(textOf(roundStep({ ...done, by: 'pedal', isLast: true }), 'metric')).toBe(
    'All spots read. Call: Bring in. Last board. Press the pedal when you are done.',
  );
  expect(textOf(roundStep({ ...done, by: 'pedal', waits: true }), 'metric')).toBe(
    'All spots read. Call: Bring in. A reading is questionable, so this board waits. Press the pedal for the next board.',
  );
});
