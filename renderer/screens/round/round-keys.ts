/** What a key does in a round. */
export type RoundAction =
  | 'take'
  | 'save-typed'
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

/** The keys, as the help lists them. */
export const roundKeys: readonly { keys: string; does: string }[] = [
  { keys: 'Space', does: 'Keep the live value now, settled or not' },
  { keys: '0–9', does: 'Type a value instead; Enter keeps it, Escape goes back to the meter' },
  { keys: 'Backspace', does: 'Set this board’s last reading aside' },
  { keys: 'Enter', does: 'Next board; after the last one, finish' },
  { keys: 'Shift + Enter, Page Up or ←', does: 'Previous board' },
  { keys: 'Home, End', does: 'First board, last board' },
  { keys: 'G', does: 'Go to a board by its ID, or scan its label' },
  { keys: '↑ ↓', does: 'Choose the spot to read' },
  { keys: 'T', does: 'Wood temperature of this board' },
  { keys: '?', does: 'This list' },
];

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
