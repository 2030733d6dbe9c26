import { latin } from '../contract/board-code.ts';

/**
 * A board's ID as a table has it, in the letters that IDs have: "Oak 7" is OAK-7, "#12" is 12, "W.3/2" is W-3-2.
 *
 * @returns null where nothing of it can be an ID
 */
export function codeOf(text: string): string | null {
  const plain = latin(text)
    .replace(/^(\d+)\.0$/, '$1')
    .replaceAll(/[^A-Z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
  return plain === '' ? null : plain;
}
