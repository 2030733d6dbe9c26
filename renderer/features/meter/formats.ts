import { type Layout, TEXT_FORMAT } from '../../../shared-core/gatt/layout.ts';
import { storageOfFormat } from '../../../shared-core/gatt/value.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** The name of a value's format; its code where it is one that cannot be read as a number. */
export function formatName(format: number): Message {
  if (format === TEXT_FORMAT) return message('meter.format.text');
  const storage = storageOfFormat(format);
  if (storage === undefined) return message('meter.format.other', { format });
  const { kind, bits } = storage;
  if (kind === 'medfloat' && bits === 16) return message('meter.format.sfloat');
  return message(`meter.format.${kind}`, { bits });
}

/** What a layout finds in a packet. */
export function layoutName(layout: Layout): Message {
  switch (layout.kind) {
    case 'number':
      return formatName(layout.format);
    case 'bits':
      return message('meter.reading.bits', {
        bits: layout.bits,
        sign: layout.signed ? 'signed' : 'unsigned',
      });
    case 'text':
      return message('meter.format.text');
  }
}
