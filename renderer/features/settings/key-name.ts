import { type Message, message } from '../../../shared-core/words/message.ts';

const named: Partial<Record<string, Message>> = {
  ' ': message('key.space'),
  Enter: message('key.enter'),
  Backspace: message('key.backspace'),
  Delete: message('key.delete'),
  Escape: message('key.escape'),
  PageDown: message('key.page-down'),
  PageUp: message('key.page-up'),
  ArrowUp: message('key.as-is', { key: '↑' }),
  ArrowDown: message('key.as-is', { key: '↓' }),
  ArrowLeft: message('key.as-is', { key: '←' }),
  ArrowRight: message('key.as-is', { key: '→' }),
  '.': message('key.point'),
  MediaPlayPause: message('key.play'),
  MediaStop: message('key.stop'),
  MediaTrackNext: message('key.next-track'),
  MediaTrackPrevious: message('key.previous-track'),
  AudioVolumeUp: message('key.louder'),
  AudioVolumeDown: message('key.quieter'),
};

/** A key as a person calls it: "Page ↓", "B", "F5". */
export const keyName = (key: string): Message =>
  named[key] ?? message('key.as-is', { key: key.length === 1 ? key.toUpperCase() : key });
