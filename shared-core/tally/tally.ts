import { z } from 'zod';
import { type Call, callSchema } from '../probing/calls/assessment.ts';
import { mostWaterPct } from '../wood/moisture/most-water.ts';
import {
  type BoardSize,
  boardFeetTallied,
  boardMassKg,
  cubicMetersTallied,
} from '../wood/movement/volume.ts';
import type { Species } from '../wood/species/species.ts';
import { type Message, message } from '../words/message.ts';

/** What a tally can be split by. */
export const tallyBySchema = z.enum(['species', 'thickness', 'call', 'stack']);
export type TallyBy = z.infer<typeof tallyBySchema>;

/** A board as far as a tally needs it. */
export interface TalliedBoard {
  species: Pick<Species, 'name' | 'basicSpecificGravity' | 'volumetricPct'>;
  thicknessMm: number;
  /** 8 for 8/4, where the person names it so. */
  thicknessQuarters: number | null;
  widthMm: number | null;
  lengthMm: number | null;
  /** Of its latest round; null where it has none. */
  call: Call | null;
  stackName: string;
  /** Its MC as last read, %; null where no average can be relied on. */
  averagePct: number | null;
  /** What its use is dried to, % MC. */
  targetPct: number;
}

const amountsSchema = z.object({
  boards: z.number().int(),
  /** Boards with all three sizes: only these have a volume. */
  measured: z.number().int(),
  /** By the trade's rounding, board by board. */
  boardFeet: z.number(),
  cubicMeters: z.number(),
  /** Boards with a weight: measured, soundly probed, of a species with a known density. */
  weighed: z.number().int(),
  nowKg: z.number(),
  /** The same boards at the target of their use. */
  targetKg: z.number(),
  /** Measured boards of a known density without an average that can be relied on. */
  notProbed: z.number().int(),
  /** Species whose density is not known, of measured boards. */
  withoutDensity: z.array(z.string()),
});
export type TallyAmounts = z.infer<typeof amountsSchema>;

/** One row: what its boards have in common, as far as the tally is split by it, and what they amount to. */
export const tallyRowSchema = amountsSchema.extend({
  speciesName: z.string().optional(),
  thickness: z.object({ thicknessMm: z.number(), quarters: z.number().int().nullable() }).optional(),
  /** Null: no call yet. */
  call: callSchema.nullable().optional(),
  stackName: z.string().optional(),
});
export type TallyRow = z.infer<typeof tallyRowSchema>;

export const tallySchema = z.object({ rows: z.array(tallyRowSchema), total: amountsSchema });
export type Tally = z.infer<typeof tallySchema>;

const nothing = (): TallyAmounts => ({
  boards: 0,
  measured: 0,
  boardFeet: 0,
  cubicMeters: 0,
  weighed: 0,
  nowKg: 0,
  targetKg: 0,
  notProbed: 0,
  withoutDensity: [],
});

/** Adds boards up one at a time, so that whoever has 100,000 can let others have their turn. */
export function createTally(by: readonly TallyBy[]) {
  const rows = new Map<string, TallyRow>();
  const total = nothing();
  return {
    add(board: TalliedBoard): void {
      const common = commonOf(board, by);
      const key = JSON.stringify(common);
      const row = rows.get(key) ?? { ...common, ...nothing() };
      rows.set(key, row);
      addTo(row, board);
      addTo(total, board);
    },
    /** The rows in the order of what they are split by. */
    made: (): Tally => ({ rows: [...rows.values()].sort((a, b) => compared(a, b, by)), total }),
  };
}

/**
 * What boards amount to: number, board feet, cubic meters, and weight now and at target, split as asked.
 * Volumes follow the rounding of the trade (`wood/movement/volume.ts`), so they are those of a tally by hand.
 *
 * @param by  each of them once; a row for each combination there is. None: one row, as long as there are boards.
 */
export function tallyRows(boards: Iterable<TalliedBoard>, by: readonly TallyBy[]): Tally {
  const tally = createTally(by);
  for (const board of boards) tally.add(board);
  return tally.made();
}

const commonOf = (board: TalliedBoard, by: readonly TallyBy[]): Omit<TallyRow, keyof TallyAmounts> => ({
  ...(by.includes('species') ? { speciesName: board.species.name } : {}),
  ...(by.includes('thickness')
    ? { thickness: { thicknessMm: board.thicknessMm, quarters: board.thicknessQuarters } }
    : {}),
  ...(by.includes('call') ? { call: board.call } : {}),
  ...(by.includes('stack') ? { stackName: board.stackName } : {}),
});

function addTo(sum: TallyAmounts, { species, widthMm, lengthMm, thicknessMm, ...board }: TalliedBoard): void {
  sum.boards++;
  if (widthMm === null || lengthMm === null) return;
  const size: BoardSize = { thicknessMm, widthMm, lengthMm };
  sum.measured++;
  sum.boardFeet += boardFeetTallied(size);
  sum.cubicMeters += cubicMetersTallied(size);
  if (species.basicSpecificGravity === null) {
    if (!sum.withoutDensity.includes(species.name)) sum.withoutDensity.push(species.name);
    return;
  }
  if (board.averagePct === null) {
    sum.notProbed++;
    return;
  }
  // A wet board's reading may be above what its species can hold.
  const most = mostWaterPct(species.basicSpecificGravity);
  const mass = boardMassKg(size, species, Math.min(board.averagePct, most), Math.min(board.targetPct, most));
  if (mass === null) return;
  sum.weighed++;
  sum.nowKg += mass.nowKg;
  sum.targetKg += mass.targetKg;
}

const rankOf = (call: Call | null): number =>
  call === null ? callSchema.options.length : callSchema.options.indexOf(call);

const comparing: Record<TallyBy, (a: TallyRow, b: TallyRow) => number> = {
  species: (a, b) => compareTexts(a.speciesName, b.speciesName),
  thickness: (a, b) => a.thickness!.thicknessMm - b.thickness!.thicknessMm,
  call: (a, b) => rankOf(a.call ?? null) - rankOf(b.call ?? null),
  stack: (a, b) => compareTexts(a.stackName, b.stackName),
};

function compareTexts(a = '', b = ''): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const compared = (a: TallyRow, b: TallyRow, by: readonly TallyBy[]): number =>
  by.map((each) => comparing[each](a, b)).find((order) => order !== 0) ?? 0;

/** Which boards are in no volume or no weight, and why. */
export function missingInTally({ boards, measured, notProbed, withoutDensity }: TallyAmounts): Message[] {
  const unmeasured = boards - measured;
  return [
    ...(unmeasured > 0 ? [message('stacks.size-missing', { boards: unmeasured })] : []),
    ...(notProbed > 0 ? [message('stacks.weight-not-probed', { boards: notProbed })] : []),
    ...withoutDensity.map((speciesName) => message('stacks.density-missing', { speciesName })),
  ];
}
