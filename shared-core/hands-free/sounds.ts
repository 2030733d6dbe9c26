/** What a round tells by a sound. */
export const soundNames = [
  'saved',
  'questionable',
  'board-done',
  'round-done',
  'link-lost',
  'link-back',
] as const;
export type SoundName = (typeof soundNames)[number];

/** One tone of a sound. */
export interface Note {
  /** Its pitch, Hz. */
  hertz: number;
  /** When it begins, s after the sound does. */
  startS: number;
  lengthS: number;
}

/** G♯5, C6, E6, G♯6, C7 and E7 of equal temperament, Hz: each a major third above the one before. */
const [DEEP, LOWEST, LOW, MIDDLE, HIGH, HIGHEST] = [830.6, 1046.5, 1318.5, 1661.2, 2093, 2637];

/** Notes of one length, as far apart as `everyS`, s. */
const notes = (lengthS: number, everyS: number, pitches: readonly number[]): readonly Note[] =>
  pitches.map((hertz, index) => ({ hertz, startS: index * everyS, lengthS }));

/**
 * The sounds of a round, at most 0.6 s long. Each has its number of notes, and begins at a pitch 26% from that of any
 * other, so that a person who hears pitch or rhythm badly can still tell them apart.
 *
 * Sources: MIL-STD-1472E, 5.3.3.1.1 (200 to 5,000 Hz, if possible 500 to 3,000 Hz) and 5.3.4.3.3 (the first 0.5 s tells
 * signals apart); NUREG-0700 rev. 2, 1.3.11 (tones at least 20% apart). Which pitches and how many: common practice, no
 * source.
 */
export const sounds: Record<SoundName, readonly Note[]> = {
  saved: notes(0.12, 0, [HIGH]),
  questionable: notes(0.2, 0.28, [LOW, LOWEST]),
  'board-done': notes(0.09, 0.14, [MIDDLE, HIGH, HIGHEST]),
  'round-done': notes(0.1, 0.15, [LOWEST, LOW, MIDDLE, HIGH]),
  'link-lost': notes(0.06, 0.12, [HIGHEST, HIGHEST, HIGHEST, HIGHEST, HIGHEST]),
  'link-back': notes(0.06, 0.1, [DEEP, LOWEST, LOW, MIDDLE, HIGH, HIGHEST]),
};

/** How loud sounds are. */
export const soundLevels = ['quiet', 'normal', 'loud'] as const;
export type SoundLevel = (typeof soundLevels)[number];

/** The amplitude of a note at each level, of 1 at most: about 9 dB apart. */
export const amplitudes: Record<SoundLevel, number> = { quiet: 0.1, normal: 0.3, loud: 0.85 };
