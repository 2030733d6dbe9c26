import { type PedalKeys, pedalActionOf } from '../../../shared-core/hands-free/pedal-keys.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';

/** What a key or a button does in a round. */
export type RoundAction =
  | 'go-on'
  | 'go-back'
  | 'take'
  | 'save-typed'
  | 'replace'
  | 'save-at-next'
  | 'use-meant'
  | 'undo-last'
  | 'exclude-last'
  | 'leave-board'
  | 'next-board'
  | 'previous-board'
  | 'first-board'
  | 'last-board'
  | 'go-to-board'
  | 'spot-up'
  | 'spot-down'
  | 'temperature'
  | 'core'
  | 'note'
  | 'meter'
  | 'help'
  | 'far-view'
  | 'finish'
  | 'start-typing'
  | 'stop-typing';

/** What works without the machine as well. */
export const needsNoMachine = (action: RoundAction): boolean =>
  ['help', 'far-view', 'start-typing', 'stop-typing'].includes(action);

/** The keys, as the help lists them. Some have a word for them all. */
export const roundKeys = [
  { keys: [' '], does: 'round-keys.save' },
  { keys: ['Backspace'], does: 'round-keys.undo' },
  { keys: ['Enter'], does: 'round-keys.next' },
  { keys: ['?'], does: 'round-keys.help' },
  { keys: 'key.digits', does: 'round-keys.type' },
  { keys: 'key.scan', does: 'round-keys.scan' },
  { keys: ['PageDown', 'ArrowRight'], does: 'round-keys.skip' },
  { keys: ['PageUp', 'ArrowLeft', 'Shift+Enter'], does: 'round-keys.back' },
  { keys: ['Home', 'End'], does: 'round-keys.ends' },
  { keys: ['g'], does: 'round-keys.go-to' },
  { keys: ['ArrowUp', 'ArrowDown'], does: 'round-keys.spot' },
  { keys: ['t'], does: 'round-keys.wood-temp' },
  { keys: ['c'], does: 'round-keys.core' },
  { keys: ['*'], does: 'round-keys.note' },
  { keys: ['m'], does: 'round-keys.meter' },
  { keys: ['f'], does: 'round-keys.far' },
  { keys: ['Delete'], does: 'round-keys.exclude' },
  { keys: ['u'], does: 'round-keys.use-meant' },
  { keys: ['r'], does: 'round-keys.replace' },
  { keys: ['n'], does: 'round-keys.save-at-next' },
] as const;

type KeyWords = (typeof roundKeys)[number]['does'];

/** All that a newcomer needs, by whether the meter is live. */
export const firstKeys = (isLive: boolean): readonly KeyWords[] => [
  isLive ? 'round-keys.save' : 'round-keys.type',
  'round-keys.undo',
  'round-keys.next',
  'round-keys.help',
];

/** Keys that walk along spots and boards for as long as they are held; any other acts once. */
const walking: Partial<Record<string, RoundAction>> = {
  PageDown: 'next-board',
  PageUp: 'previous-board',
  ArrowUp: 'spot-up',
  ArrowDown: 'spot-down',
};
const walkingOutsideText: Partial<Record<string, RoundAction>> = {
  ArrowLeft: 'previous-board',
  ArrowRight: 'next-board',
};
const outsideText: Partial<Record<string, RoundAction>> = {
  Enter: 'leave-board',
  Backspace: 'undo-last',
  Delete: 'exclude-last',
  Home: 'first-board',
  End: 'last-board',
};
/** Letters that follow the number of a resistance. */
const PREFIX = /^[kmg]$/i;

/**
 * Whether a key goes on with the value typed so far. What says that it is above a number comes before or behind it, a prefix
 * once, after the digits.
 */
export function isOfValue(key: string, typing: string, unit: ReadingUnit): boolean {
  const isBehindDigit = /\d$/.test(typing.trim());
  if (key === '>') return typing.trim() === '';
  return /^[\d.,]$/.test(key) || (isBehindDigit && (key === '+' || (unit === 'ohm' && PREFIX.test(key))));
}

/** These work while a value is typed, but for the prefix of a resistance. A scanned ID may begin with one. */
const letters: Partial<Record<string, RoundAction>> = {
  g: 'go-to-board',
  m: 'meter',
  r: 'replace',
  n: 'save-at-next',
  t: 'temperature',
  c: 'core',
  f: 'far-view',
  u: 'use-meant',
  // No ID begins with it, and a number pad has it.
  '*': 'note',
  '?': 'help',
};

/** What was pressed of a key. */
type Press = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey' | 'repeat'>;

/**
 * The action of a key, null where it has none.
 * @param typing the value typed so far; null where the meter's values are taken
 * @param unit   in which it is typed
 * @param pedals what a pedal or a presenter sends, which comes before what the key does otherwise
 */
export function actionOf(
  event: Press,
  typing: string | null,
  unit: ReadingUnit = 'pct',
  pedals: PedalKeys | null = null,
): RoundAction | null {
  const { key, shiftKey, ctrlKey, altKey, metaKey, repeat } = event;
  if (ctrlKey || altKey || metaKey) return null;
  const isEmpty = typing === null || typing.trim() === '';
  // What goes on with a value, puts it right or saves it does so, whatever a pedal sends.
  const isOfTyped =
    !isEmpty && (['Enter', 'Backspace', 'Delete'].includes(key) || isOfValue(key, typing, unit));
  const pedal = pedals && !isOfTyped && pedalActionOf(key, pedals, typing !== null);
  // A foot that stays on it means it once.
  if (pedal) return repeat ? null : pedal;
  const walk = walking[key] ?? (isEmpty ? walkingOutsideText[key] : undefined);
  if (walk !== undefined || repeat) return walk ?? null;
  if (key === 'Enter' && shiftKey) return 'previous-board';
  if (typing !== null && !isEmpty && PREFIX.test(key) && isOfValue(key, typing, unit)) return null;
  const action = letters[key.toLowerCase()] ?? (isEmpty ? outsideText[key] : undefined);
  if (action !== undefined) return action;
  if (typing === null) return key === ' ' ? 'take' : /^\d$/.test(key) ? 'start-typing' : null;
  return { Enter: 'save-typed' as const, Escape: 'stop-typing' as const }[key] ?? null;
}

/** What the help says of an action, where keys lead to it. */
const words: Partial<Record<RoundAction, KeyWords>> = {
  take: 'round-keys.save',
  'save-typed': 'round-keys.type',
  'start-typing': 'round-keys.type',
  'stop-typing': 'round-keys.type',
  'undo-last': 'round-keys.undo',
  'exclude-last': 'round-keys.exclude',
  'leave-board': 'round-keys.next',
  'next-board': 'round-keys.skip',
  'previous-board': 'round-keys.back',
  'first-board': 'round-keys.ends',
  'last-board': 'round-keys.ends',
  'go-to-board': 'round-keys.go-to',
  'spot-up': 'round-keys.spot',
  'spot-down': 'round-keys.spot',
  temperature: 'round-keys.wood-temp',
  core: 'round-keys.core',
  note: 'round-keys.note',
  meter: 'round-keys.meter',
  'use-meant': 'round-keys.use-meant',
  replace: 'round-keys.replace',
  'save-at-next': 'round-keys.save-at-next',
  help: 'round-keys.help',
  'far-view': 'round-keys.far',
};

/** What a key does in a round unless a pedal sends it; null for nothing. */
export function usualWords(key: string): KeyWords | null {
  const press = { key, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, repeat: false };
  const action = actionOf(press, null) ?? actionOf(press, '');
  return (action && words[action]) ?? null;
}
