import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import type { FieldTexts } from '../../form/VersionTable.tsx';

/** How each field of a board is called and shown. */
export function boardTexts(
  { say, formats }: Words,
  allSpecies: readonly Species[],
  stacks: readonly StackRow[],
): FieldTexts<'boards.edit'> {
  const asTyped = (text: string): string => text;
  return {
    code: { label: say('board.id'), text: asTyped },
    stackId: {
      label: say('board.stack'),
      text: (id) => stacks.find((stack) => stack.id === id)?.name ?? String(id),
    },
    speciesId: {
      label: say('board.species'),
      text: (id) => allSpecies.find((species) => species.id === id)?.name ?? id,
    },
    thicknessMm: {
      label: say('board.thickness'),
      text: (_, board) => formats.thickness(thicknessOf(board)),
    },
    thicknessQuarters: 'thicknessMm',
    widthMm: { label: say('board.width'), text: formats.shortLength },
    lengthMm: { label: say('board.length'), text: formats.longLength },
    sawnOn: { label: say('board.sawn-on'), text: (day) => formats.day(day) },
    sawing: { label: say('board.sawing'), text: (sawing) => say(`board.sawing.${sawing}`) },
    ringRadiusMm: { label: say('board.pith-distance'), text: formats.shortLength },
    barkSide: { label: say('board.bark-side'), text: (side) => say(`board.bark-side.${side}`) },
    barkOffOn: { label: say('board.bark-off-on'), text: (day) => formats.day(day) },
    log: { label: say('board.log'), text: asTyped },
    layer: { label: say('board.layer'), text: String },
    column: { label: say('board.column'), text: String },
    note: { label: say('board.note'), text: asTyped },
  };
}
