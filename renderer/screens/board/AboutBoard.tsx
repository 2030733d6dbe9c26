import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type DisplayUnits, longLengthText, shortLengthText } from '../../../shared-core/units/length.ts';
import { dayWords } from '../../parts/days.ts';
import { barkSideWords, sawingWords } from './end-words.ts';

/** What a person said of the board. What was not said is left out. */
export function AboutBoard({
  board,
  isSpeciesConfirmed,
  units,
}: {
  board: BoardRow;
  isSpeciesConfirmed: boolean;
  units: DisplayUnits;
}) {
  const facts: [string, string | null][] = [
    ['Wood', isSpeciesConfirmed ? `${board.speciesName}, looked at` : board.speciesName],
    ['Thickness', shortLengthText(board.thicknessMm, units)],
    ['Width', board.widthMm === null ? null : shortLengthText(board.widthMm, units)],
    ['Length', board.lengthMm === null ? null : longLengthText(board.lengthMm, units)],
    ['Sawn on', board.sawnOn === null ? null : dayWords(board.sawnOn)],
    ['Sawing', board.sawing === 'unknown' ? null : sawingWords[board.sawing]],
    ['Bark side', board.barkSide === 'unknown' ? null : barkSideWords[board.barkSide]],
    ['Bark taken off on', board.barkOffOn === null ? null : dayWords(board.barkOffOn)],
    ['Pith to middle', board.ringRadiusMm === null ? null : shortLengthText(board.ringRadiusMm, units)],
    ['Log', board.log || null],
    ['In the stack', placeInStack(board)],
    ['Note', board.note || null],
  ];
  return (
    <dl className="about-board">
      {facts.map(
        ([label, value]) =>
          value !== null && (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ),
      )}
    </dl>
  );
}

function placeInStack({ layer, column }: BoardRow): string | null {
  const parts = [layer && `course ${layer} from the bottom`, column && `column ${column} from the left`];
  return parts.filter(Boolean).join(', ') || null;
}
