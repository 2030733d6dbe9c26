import { boardStem, followingCode } from '../../../shared-core/contract/board-code.ts';
import type { YardReader } from '../../store/yard.ts';

/** A free ID that continues a stack's numbering; in a stack without boards one that begins it, by these names. */
export function nextCode(yard: YardReader, stackId: number, ...names: string[]): string {
  const newest = yard.boards.codesOfStack(stackId)[0];
  let code = newest === undefined ? `${boardStem(...names)}-01` : followingCode(newest);
  while (yard.boards.idByCode(code) !== undefined) code = followingCode(code);
  return code;
}
