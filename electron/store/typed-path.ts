import { homedir } from 'node:os';
import { isAbsolute, resolve } from 'node:path';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';

/** What usual file systems take, in bytes of UTF-8. */
const LONGEST_NAME = 255;
const LONGEST_PATH = 4095;

/**
 * A path that a person typed, as the system takes it. `~` is the person's home folder.
 * @throws Refusal for what can be no path, or is not whole
 */
export function typedPath(typed: string): string {
  if ([...typed].some((letter) => letter < ' ' || letter === '\x7f')) {
    throw new Refusal(message('refusal.path-letters'));
  }
  const path = /^~($|[\\/])/.test(typed) ? homedir() + typed.slice(1) : typed;
  if (!isAbsolute(path)) throw new Refusal(message('refusal.path-relative'));
  const isTooLong =
    Buffer.byteLength(path) > LONGEST_PATH ||
    path.split(/[\\/]/).some((name) => Buffer.byteLength(name) > LONGEST_NAME);
  if (isTooLong)
    throw new Refusal(message('refusal.nothing-changed', { why: message('validation.path-too-long') }));
  return resolve(path);
}
