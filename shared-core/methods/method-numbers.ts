import { type Message, message } from '../words/message.ts';
import { dryingNumbers } from './drying-numbers.ts';
import { judgingNumbers } from './judging-numbers.ts';
import type { MethodCell } from './method-part.ts';
import type { NumberUsed } from './number-used.ts';
import { readingNumbers } from './reading-numbers.ts';

/** Every prior and limit that the core exports, by the name of its constant: a test holds that none is missing. */
export const methodNumbers: readonly { constant: string; means: Message; value: MethodCell }[] = [
  ...readingNumbers,
  ...dryingNumbers,
  ...judgingNumbers,
].map(([constant, code, value, unit]) => ({
  constant,
  means: message(`methods.numbers.${code}`),
  value: cellOf(value, unit),
}));

/** In a person's own unit, or to three figures. */
function cellOf(value: number, unit: NumberUsed[3]): MethodCell {
  switch (unit) {
    case 'temperature':
      return message('methods.temperature', { cellTempC: value });
    case 'temperature-step':
      return message('methods.temperature-step', { cellStepK: value });
    case 'length':
      return message('methods.length', { cellMm: value });
    case 'distance':
      return message('methods.distance', { cellDistanceMm: value });
    default:
      return Number.isInteger(value) ? value : Number(value.toPrecision(3));
  }
}
