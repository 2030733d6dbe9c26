import { BETWEEN_NAMES } from './method-part.ts';

/** After what was not checked against its page. */
export const FROM_MEMORY = '(from memory)';

// An initial ends no sentence: "R. Wagenführ", "U.S. Forest Service".
const betweenSentences = / (?<=[a-z0-9)%]\. )(?=[A-Z])/;

export const sentencesOf = (source: string): string[] => source.split(betweenSentences);

/** A piece of a source without its mark and its period, as it is listed under From memory. */
export const figureOf = (piece: string): string => piece.replace(` ${FROM_MEMORY}`, '').replace(/\.$/, '');

/**
 * A source or a list of names in the person's language; titles stay as they were published.
 *
 * @param named  what the person calls a name or a piece that comes with the program; gives back any other
 * @param mark   what is written after a figure from memory
 */
export const sourceShown = (source: string, named: (piece: string) => string, mark: string): string =>
  sentencesOf(source)
    .map((sentence) =>
      sentence
        .split(BETWEEN_NAMES)
        .map((piece) => pieceShown(piece, named, mark))
        .join(BETWEEN_NAMES),
    )
    .join(' ');

function pieceShown(piece: string, named: (piece: string) => string, mark: string): string {
  const figure = figureOf(piece);
  const shown = named(figure);
  // A person's own source stays as it was typed.
  return shown === figure ? piece : piece.replace(figure, () => shown).replace(FROM_MEMORY, () => mark);
}
