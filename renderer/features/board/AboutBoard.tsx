import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';

/** What a person entered about the board; what is blank is not shown. */
export function AboutBoard({ board, isSpeciesConfirmed }: { board: BoardRow; isSpeciesConfirmed: boolean }) {
  const { say, formats } = useWords();
  // What is a name or the person's own words is marked, so that no browser translates it.
  const { speciesName, widthMm, lengthMm, sawnOn, driedBy, sawing, barkSide, barkOffOn, ringRadiusMm } =
    board;
  const facts: [label: string, value: string | null, isTheirs?: 'theirs'][] = [
    isSpeciesConfirmed
      ? [say('board.species'), say('board.species-confirmed', { speciesName })]
      : [say('board.species'), formats.named(speciesName), 'theirs'],
    [say('board.thickness'), formats.thickness(thicknessOf(board))],
    [say('board.width'), widthMm === null ? null : formats.shortLength(widthMm)],
    [say('board.length'), lengthMm === null ? null : formats.longLength(lengthMm)],
    [say('board.sawn-on'), sawnOn === null ? null : formats.day(sawnOn)],
    [say('board.dried-by'), driedBy === 'air' ? null : say(`board.dried-by.${driedBy}`)],
    [say('board.sawing'), sawing === 'unknown' ? null : say(`board.sawing.${sawing}`)],
    [say('board.bark-side'), barkSide === 'unknown' ? null : say(`board.bark-side.${barkSide}`)],
    [say('board.bark-off-on'), barkOffOn === null ? null : formats.day(barkOffOn)],
    [say('board.pith-distance'), ringRadiusMm === null ? null : formats.shortLength(ringRadiusMm)],
    [say('board.log'), board.log || null, 'theirs'],
    [say('board.in-stack'), placeInStack(board, say)],
  ];
  return (
    <Facts
      of={facts.map(([label, value, isTheirs]) => [
        label,
        value && (
          <span key={label} translate={isTheirs && 'no'}>
            {value}
          </span>
        ),
      ])}
    />
  );
}

function placeInStack({ layer, column }: BoardRow, say: Say): string | null {
  if (layer === null) return column === null ? null : say('board.column-of-stack', { column });
  return column === null
    ? say('board.layer-of-stack', { layer })
    : say('board.layer-and-column', { layer, column });
}
