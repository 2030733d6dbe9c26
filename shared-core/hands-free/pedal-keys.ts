import { z } from 'zod';

/** What a pedal or a presenter can do in a round. A pedal is a keyboard with few keys. */
export const pedalActions = ['go-on', 'go-back', 'undo-last', 'note'] as const;
export type PedalAction = (typeof pedalActions)[number];

/** A key as browsers name it (UI Events, `KeyboardEvent.key`): "PageDown", "MediaTrackNext", "b"; null for none. */
const keySchema = z.string().min(1).max(40).nullable();

/** The key of each of a pedal's actions. */
export const pedalKeysSchema = z.object({
  'go-on': keySchema,
  'go-back': keySchema,
  'undo-last': keySchema,
  note: keySchema,
});
export type PedalKeys = z.infer<typeof pedalKeysSchema>;

export const noPedalKeys: PedalKeys = { 'go-on': null, 'go-back': null, 'undo-last': null, note: null };

/** Held with others, or sent where a system does not know the key. */
const NO_KEYS = [
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'NumLock',
  'Fn',
  'Dead',
  'Process',
  'Unidentified',
];
/** They are parts of a value. A point is sent by presenters to blank a screen, and is one only while a value is typed. */
const OF_VALUE = /^[\d,>+]$/;

/**
 * Whether a pedal may send a key: not one that works only with others, leads out of the field, closes a dialog, or
 * types a value.
 */
export function canBePedal(key: string): 'yes' | 'types-value' | 'no-key' {
  if (OF_VALUE.test(key)) return 'types-value';
  return NO_KEYS.includes(key) || key === 'Tab' || key === 'Escape' ? 'no-key' : 'yes';
}

const isSameKey = (one: string, other: string | null): boolean => one.toLowerCase() === other?.toLowerCase();

/**
 * What a key does where a pedal or a presenter sends it; null where none does. The button of a presenter that starts
 * a show sends F5 and Esc in turn.
 *
 * @param isTyped whether a value is typed, where a point is part of it
 */
export function pedalActionOf(key: string, pedals: PedalKeys, isTyped: boolean): PedalAction | null {
  if (isTyped && key === '.') return null;
  const sent = key === 'Escape' && !isTyped ? 'F5' : key;
  return pedalActions.find((action) => isSameKey(sent, pedals[action])) ?? null;
}

/** The keys with one more: a key does one thing. */
export function withPedalKey(pedals: PedalKeys, action: PedalAction, key: string | null): PedalKeys {
  const others = pedalActions.map((each) => [
    each,
    key !== null && isSameKey(key, pedals[each]) ? null : pedals[each],
  ]);
  return { ...(Object.fromEntries(others) as PedalKeys), [action]: key };
}
