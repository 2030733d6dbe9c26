import { type Face, lineOf, lineRoomMm } from './fitted-text.ts';

/** What was made to fit must not fail to for the last bit. */
const NEARLY = 1 + 1e-9;

/**
 * A text on as many lines as its width asks for, broken between words, and within a word that is wider than a line.
 * A new line in the text begins a new one.
 *
 * @param text    anything; what cannot be printed is replaced as in `lineOf`
 * @returns       no line for a text without anything to print; none is wider than `widthMm` but a single character
 */
export function wrappedText(text: string, face: Face, sizePt: number, widthMm: number): string[] {
  const fits = (line: string) => lineRoomMm(line, face, sizePt) <= widthMm * NEARLY;
  return text.split(/\r?\n/).flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    // A no-break space is none to break at.
    for (const word of paragraph.split(/[^\S\u00A0]+/).map(lineOf)) {
      if (word === '') continue;
      const longer = line === '' ? word : `${line} ${word}`;
      if (fits(longer)) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      line = '';
      for (const character of word) {
        if (line !== '' && !fits(line + character)) {
          lines.push(line);
          line = '';
        }
        line += character;
      }
    }
    return line === '' ? lines : [...lines, line];
  });
}
