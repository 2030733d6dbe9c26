import { setImmediate } from 'node:timers/promises';
import { becameOf, type LeftTotal } from '../../../shared-core/contract/archive.ts';
import { nameKey } from '../../../shared-core/contract/import.ts';
import { boardFeetIfMeasured } from '../../../shared-core/wood/movement/volume.ts';
import type { QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';

/** So many boards are read and added at a time, some milliseconds, and then others have their turn. */
const AT_A_TIME = 2000;

/** What the boards that left the yard amount to, by what became of them, by buyer and by local year, the newest year first. */
export const leftBoardQueries = (context: QueryContext) =>
  ({
    'boards.left': async () => {
      const totals = new Map<string, LeftTotal>();
      /** As each was written first. */
      const buyers = new Map<string, string>();
      for (let afterId = 0; ; await setImmediate()) {
        const some = context.yard().boards.leftAfter(afterId, AT_A_TIME);
        for (const { code, note, leftAt, ...board } of some) {
          const became = becameOf(code);
          if (became === null) continue;
          const year = new Date(leftAt).getFullYear();
          const buyer = nameKey(note);
          if (became === 'sold' && !buyers.has(buyer)) buyers.set(buyer, note.trim());
          const soldTo = became === 'sold' ? buyers.get(buyer)! : null;
          const key = JSON.stringify([became, year, soldTo]);
          const total = totals.get(key) ?? { became, year, soldTo, boards: 0, measured: 0, boardFeet: 0 };
          totals.set(key, total);
          const boardFeet = boardFeetIfMeasured(board);
          total.boards += 1;
          if (boardFeet === null) continue;
          total.measured += 1;
          total.boardFeet += boardFeet;
        }
        if (some.length < AT_A_TIME) break;
        afterId = some.at(-1)!.id;
      }
      return [...totals.values()].sort((a, b) => b.year - a.year);
    },
  }) satisfies Partial<Queries>;
