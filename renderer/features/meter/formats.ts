import { storageOfFormat } from '../../../shared-core/gatt/value.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** The name of a value's format; its code where it is one that cannot be read as a number. */
export function formatName(format: number): Message {
  const storage = storageOfFormat(format);
  if (storage === undefined) return message('meter.format.other', { format });
  const { kind, bits } = storage;
  if (kind === 'medfloat' && bits === 16) return message('meter.format.sfloat');
  return message(`meter.format.${kind}`, { bits });
}
