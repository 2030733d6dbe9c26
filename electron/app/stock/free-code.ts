import { followingCode } from '../../../shared-core/contract/board-code.ts';
import type { YardReader } from '../../store/yard.ts';

/** The first ID from this one on that no board has, or had when it left the yard. */
export function freeCode({ boards }: Pick<YardReader, 'boards'>, from: string): string {
  let code = from;
  while (boards.isCodeKnown(code)) code = followingCode(code);
  return code;
}
