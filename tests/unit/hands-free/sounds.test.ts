import { describe, expect, test } from 'vitest';
import { amplitudes, soundLevels, soundNames, sounds } from '../../../shared-core/hands-free/sounds.ts';

const pairs = soundNames.flatMap((one, index) =>
  soundNames.slice(index + 1).map((other) => [one, other] as const),
);

describe('The sounds of a round', () => {
  test.each(soundNames)('%s is heard well, and is over soon', (name) => {
    const notes = sounds[name];
    for (const { hertz } of notes) {
      // MIL-STD-1472E, 5.3.3.1.1: if possible between 500 and 3,000 Hz.
      expect(hertz).toBeGreaterThan(500);
      expect(hertz).toBeLessThan(3000);
    }
    const { startS, lengthS } = notes.at(-1)!;
    expect(startS + lengthS).toBeLessThanOrEqual(0.6);
  });

  test.each(pairs)('%s and %s differ in rhythm and in the pitch that they begin with', (one, other) => {
    expect(sounds[one].length).not.toBe(sounds[other].length);
    const [low, high] = [sounds[one][0]!.hertz, sounds[other][0]!.hertz].toSorted((a, b) => a - b);
    // NUREG-0700 rev. 2, 1.3.11: tones that may be confused are at least 20% apart.
    expect(high! / low!).toBeGreaterThan(1.2);
  });

  test('are louder from level to level, and never clipped', () => {
    const levels = soundLevels.map((level) => amplitudes[level]);
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    expect(Math.max(...levels)).toBeLessThan(1);
  });
});
