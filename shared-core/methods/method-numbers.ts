import { type Message, message } from '../words/message.ts';
import { dryingNumbers } from './drying-numbers.ts';
import { judgingNumbers } from './judging-numbers.ts';
import { readingNumbers } from './reading-numbers.ts';

/** Every prior and limit that the core exports, by the name of its constant: a test holds that none is missing. */
export const methodNumbers: readonly { constant: string; means: Message; value: number }[] = [
  ...readingNumbers,
  ...dryingNumbers,
  ...judgingNumbers,
].map(([constant, code, value]) => ({ constant, means: message(`methods.numbers.${code}`), value }));
