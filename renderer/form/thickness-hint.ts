import { MM_PER_INCH } from '../../shared-core/measures.ts';
import type { DisplayUnits } from '../../shared-core/units/length.ts';
import { shortLengthUnit } from '../../shared-core/units/length.ts';
import { quartersMeant } from '../../shared-core/units/typed-length.ts';
import { type Message, message } from '../../shared-core/words/message.ts';

/** What a thickness field says of what was typed: how much that is, and whether so thin a board is meant. */
export function thicknessHint(typedMm: number | null, units: DisplayUnits): Message {
  if (typedMm === null || !(typedMm >= 3))
    return message('board.thickness-hint', { unit: shortLengthUnit(units) });
  const quarters = quartersMeant(typedMm);
  return quarters === null
    ? message('board.size-typed', { typedMm })
    : message('board.thickness-thin', { typedMm, units, quarters, meantMm: (quarters * MM_PER_INCH) / 4 });
}
