import { type Message, message } from '../../words/message.ts';
import type { BarkSide } from './faces-of-board.ts';

/** What may be known of a board or not. */
export interface KnownOfBoard {
  sawnOn: string | null;
  log: string;
  widthMm: number | null;
  lengthMm: number | null;
  sawing: 'flat' | 'rift' | 'quarter' | 'unknown';
  barkSide: BarkSide;
  layer: number | null;
}

/**
 * What a person could still say of a board, each with what it would make better; what tells most comes first.
 *
 * @param roughPlaceName  of the place that has the average air of its region; null where the board's place has its own
 */
export function missingFacts(board: KnownOfBoard, roughPlaceName: string | null): Message[] {
  const isSawingKnown = board.sawing !== 'unknown';
  const lacking =
    board.widthMm === null ? (isSawingKnown ? 'width' : 'both') : isSawingKnown ? null : 'sawing';
  return [
    ...(board.sawnOn === null ? [message('missing.sawn-on')] : []),
    ...(roughPlaceName === null ? [] : [message('missing.station', { placeName: roughPlaceName })]),
    ...(board.log === '' ? [message('missing.log')] : []),
    ...(board.lengthMm === null ? [message('missing.length')] : []),
    ...(lacking === null ? [] : [message('missing.end', { lacking })]),
    ...(board.barkSide === 'unknown' ? [message('missing.bark-side')] : []),
    ...(board.layer === null ? [message('missing.layer')] : []),
  ];
}
