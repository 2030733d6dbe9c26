import type { BoardPart, TwiceRecord } from '../../../shared-core/contract/entered-twice.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { useWords } from '../../words.ts';

/** What a board is, how big, and in which stack, in one line. */
export function useBoardInWords() {
  const { formats } = useWords();
  return (board: BoardRow): string => {
    const { speciesName, widthMm, lengthMm, stackName } = board;
    const size = [
      formats.thickness(thicknessOf(board)),
      widthMm !== null && formats.shortLength(widthMm),
      lengthMm !== null && formats.longLength(lengthMm),
    ];
    return [speciesName, size.filter(Boolean).join(' × '), stackName].join(' · ');
  };
}

/** A part of a board as a person reads it; what is not known says so. */
export function usePartInWords() {
  const { say, formats } = useWords();
  const read: Readonly<Record<BoardPart, (record: TwiceRecord) => string | 0 | null>> = {
    species: ({ board }) => board.speciesName,
    thickness: ({ board }) => formats.thickness(thicknessOf(board)),
    width: ({ board }) => board.widthMm && formats.shortLength(board.widthMm),
    length: ({ board }) => board.lengthMm && formats.longLength(board.lengthMm),
    'sawn-on': ({ board }) => board.sawnOn && formats.day(board.sawnOn, 'year'),
    'dried-by': ({ board }) => say(`board.dried-by.${board.driedBy}`),
    sawing: ({ board }) => say(`board.sawing.${board.sawing}`),
    'ring-radius': ({ board }) => board.ringRadiusMm && formats.shortLength(board.ringRadiusMm),
    'bark-side': ({ board }) => {
      const side = say(`board.bark-side.${board.barkSide}`);
      return board.barkOffOn
        ? `${side} · ${say('board.bark-off-on')} ${formats.day(board.barkOffOn, 'year')}`
        : side;
    },
    log: ({ board }) => board.log,
    stack: ({ board, endUseName }) => {
      const { stackName, layer, column } = board;
      const where =
        layer === null
          ? null
          : column === null
            ? say('board.layer-of-stack', { layer })
            : say('board.layer-and-column', { layer, column });
      return [stackName, where, say('life.merge-target', { endUseName })].filter(Boolean).join(' · ');
    },
  };
  return (part: BoardPart, record: TwiceRecord): string => read[part](record) || say('life.not-given');
}
