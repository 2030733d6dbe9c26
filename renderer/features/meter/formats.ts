import { storageOfFormat } from '../../../shared-core/gatt/value.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** The name of a value's format; its code where it is one that cannot be read as a number. */
export function formatName(format: number): Message {
  const storage = storageOfFormat(format);
  if (storage === undefined) return message('meter.format.other', { format });
  const { kind, bits } = storage;
  switch (kind) {
    case 'unsigned':
      return message('meter.format.unsigned', { bits });
    case 'signed':
      return message('meter.format.signed', { bits });
    case 'float':
      return message('meter.format.float', { bits });
    case 'medfloat':
      return message(bits === 16 ? 'meter.format.sfloat' : 'meter.format.medfloat');
    case 'text':
      return message('meter.format.text');
  }
}
