import { type Message, message } from '../../../shared-core/words/message.ts';
import type { UndoConflict } from '../../store/act-undo.ts';

/** A record of the yard as a sentence names it. */
export function recordMessage({ inTable, name }: Pick<UndoConflict, 'inTable' | 'name'>): Message {
  if (name === null) return message('act.record.other');
  const facts = { recordName: name };
  switch (inTable) {
    case 'board':
    case 'confirmed_species':
      return message('act.record.board', facts);
    case 'stack':
      return message('act.record.stack', facts);
    case 'place':
      return message('act.record.place', facts);
    case 'species':
      return message('act.record.species', facts);
    case 'end_use':
      return message('act.record.use', facts);
    case 'test_block':
      return message('act.record.test-block', facts);
    case 'meter_check':
    case 'check_correction':
    case 'check_exclusion':
      return message('act.record.meter-check', facts);
    case 'meter':
    case 'meter_profile':
      return message('act.record.meter', facts);
    case 'air_sensor':
    case 'air_sensor_stay':
      return message('act.record.sensor', facts);
    case 'project':
      return message('act.record.project', facts);
    case 'move':
      return message('act.record.move', facts);
    case 'round':
      return message('act.record.round', facts);
    case 'reading':
    case 'amendment':
      return message('act.record.reading', facts);
    default:
      return message('act.record.of', facts);
  }
}
