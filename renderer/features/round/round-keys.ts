/** What a key does in a round. */
export type RoundAction =
  | 'take'
  | 'save-typed'
  | 'replace'
  | 'save-at-next'
  | 'exclude-last'
  | 'next-board'
  | 'previous-board'
  | 'first-board'
  | 'last-board'
  | 'go-to-board'
  | 'spot-up'
  | 'spot-down'
  | 'temperature'
  | 'help'
  | 'start-typing'
  | 'stop-typing';

/** The keys, as the help lists them; the first four are all that a newcomer needs. */
export const roundKeys = [
  { key: 'key.space', does: 'round-keys.save' },
  { key: 'key.backspace', does: 'round-keys.undo' },
  { key: 'key.enter', does: 'round-keys.next' },
  { key: '?', does: 'round-keys.help' },
  { key: 'key.digits', does: 'round-keys.type' },
  { key: 'key.back', does: 'round-keys.previous' },
  { key: 'key.ends', does: 'round-keys.ends' },
  { key: 'G', does: 'round-keys.go-to' },
  { key: 'key.arrows', does: 'round-keys.spot' },
  { key: 'T', does: 'round-keys.wood-temp' },
  { key: 'R', does: 'round-keys.replace' },
  { key: 'N', does: 'round-keys.save-at-next' },
] as const;

/**
 * The action of a key, null where it has none. A held key acts once, except for walking along spots and boards.
 *
 * @param typing the value typed so far; null where the meter's values are taken
 */
export function actionOf(
  event: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey' | 'repeat'>,
  typing: string | null,
): RoundAction | null {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  const walking = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown'].includes(
    event.key,
  );
  if (event.repeat && !walking) return null;
  const fieldEmpty = typing === null || typing.trim() === '';
  switch (event.key) {
    case 'Enter':
      if (event.shiftKey) return 'previous-board';
      return fieldEmpty ? 'next-board' : 'save-typed';
    case ' ':
      return typing === null ? 'take' : null;
    case 'Backspace':
      return fieldEmpty ? 'exclude-last' : null;
    case 'PageDown':
      return 'next-board';
    case 'PageUp':
      return 'previous-board';
    case 'ArrowLeft':
      return fieldEmpty ? 'previous-board' : null;
    case 'ArrowRight':
      return fieldEmpty ? 'next-board' : null;
    case 'Home':
      return fieldEmpty ? 'first-board' : null;
    case 'End':
      return fieldEmpty ? 'last-board' : null;
    case 'ArrowUp':
      return 'spot-up';
    case 'ArrowDown':
      return 'spot-down';
    case 'g':
    case 'G':
      return 'go-to-board';
    case 'r':
    case 'R':
      return 'replace';
    case 'n':
    case 'N':
      return 'save-at-next';
    case 't':
    case 'T':
      return 'temperature';
    case 'Escape':
      return typing === null ? null : 'stop-typing';
    case '?':
      return 'help';
    default:
      return typing === null && /^[0-9]$/.test(event.key) ? 'start-typing' : null;
  }
}
