import { describe, expect, test } from 'vitest';
import { usualWords } from '../../../renderer/features/round/round-keys.ts';
import {
  canBePedal,
  noPedalKeys,
  pedalActionOf,
  withPedalKey,
} from '../../../shared-core/hands-free/pedal-keys.ts';

const pedals = { ...noPedalKeys, 'go-on': 'PageDown', 'go-back': 'PageUp', 'undo-last': '.', note: 'b' };

describe('A pedal or a presenter', () => {
  test('does what its key was set to, in capitals as well', () => {
    expect(pedalActionOf('PageDown', pedals, false)).toBe('go-on');
    expect(pedalActionOf('PageUp', pedals, true)).toBe('go-back');
    expect(pedalActionOf('B', pedals, true)).toBe('note');
    expect(pedalActionOf('x', pedals, false)).toBeNull();
  });

  test('never takes the point away from a value that is typed', () => {
    expect(pedalActionOf('.', pedals, false)).toBe('undo-last');
    expect(pedalActionOf('.', pedals, true)).toBeNull();
  });

  test('that starts and stops a show sends F5 and Esc in turn, and means the same', () => {
    const starts = { ...noPedalKeys, 'go-on': 'F5' };
    expect(pedalActionOf('F5', starts, false)).toBe('go-on');
    expect(pedalActionOf('Escape', starts, false)).toBe('go-on');
    // While a value is typed, Esc goes back to the meter.
    expect(pedalActionOf('Escape', starts, true)).toBeNull();
  });

  test('with no key set does nothing', () => {
    for (const key of ['PageDown', ' ', '.', 'F5', 'Escape'])
      expect(pedalActionOf(key, noPedalKeys, false)).toBeNull();
  });

  test('cannot send what types a value, is held with others, or leaves the field', () => {
    for (const key of ['0', '9', ',', '>', '+']) expect(canBePedal(key), key).toBe('types-value');
    for (const key of ['Shift', 'Tab', 'Escape', 'Unidentified']) expect(canBePedal(key), key).toBe('no-key');
    for (const key of ['PageDown', 'MediaTrackNext', 'F5', '.', ' ', 'b'])
      expect(canBePedal(key), key).toBe('yes');
  });

  test('does one thing with a key: setting it again takes it from the other', () => {
    expect(withPedalKey(pedals, 'note', 'PAGEDOWN')).toEqual({
      ...pedals,
      'go-on': null,
      note: 'PAGEDOWN',
    });
    expect(withPedalKey(pedals, 'note', null)).toEqual({ ...pedals, note: null });
  });

  test('is told what its key does otherwise', () => {
    expect(usualWords('PageDown')).toBe('round-keys.skip');
    expect(usualWords(' ')).toBe('round-keys.save');
    expect(usualWords('F5')).toBeNull();
  });
});
