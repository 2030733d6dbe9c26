import { type Message, message } from '../../../shared-core/words/message.ts';
import type { UndoConflict } from '../../store/act-undo.ts';

/** A record of the yard as a sentence names it. */
export function recordMessage({ inTable, name }: Pick<UndoConflict, 'inTable' | 'name'>): Message {
  if (name === null) return message('history.record.other');
  const facts = { recordName: name };
  switch (inTable) {
    case 'board':
    case 'confirmed_species':
      return message('history.record.board', facts);
    case 'stack':
      return message('history.record.stack', facts);
    case 'place':
      return message('history.record.place', facts);
    case 'species':
      return message('history.record.species', facts);
    case 'end_use':
      return message('history.record.use', facts);
    case 'meter':
      return message('history.record.meter', facts);
    case 'project':
      return message('history.record.project', facts);
    case 'move':
      return message('history.record.move', facts);
    case 'round':
      return message('history.record.round', facts);
    case 'reading':
    case 'amendment':
      return message('history.record.reading', facts);
    default:
      return message('history.record.of', facts);
  }
}
