import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { printAST } from '@formatjs/icu-messageformat-parser/printer.js';
import type { Catalog, Code } from './en/index.ts';

const plain = 'AaBbCcDdEeGgHhIiJjKkLlNnOoRrSsTtUuWwYyZz';
const accented = 'ÀàƁƀÇçĐđÉéĞğĤĥÎîĴĵĶķĻļÑñÖöŔŕŠšŢţÛûŴŵÝýŽž';
/** About 40% longer, as a sentence in German often is (common practice, no source). */
const VOWEL_LENGTHENED = /[aeiou]/gi;

/**
 * English as a language that nobody speaks: accented, longer and in brackets. A screen shown in it betrays every
 * sentence that does not come from the catalog, every one glued from parts, and every box too narrow for another
 * language.
 */
export function pseudoOf(catalog: Catalog): Catalog {
  const entries = Object.entries(catalog).map(([code, icu]) => [code, `[${pseudoSentence(icu)}]`]);
  return Object.fromEntries(entries) as Record<Code, string>;
}

function pseudoSentence(icu: string): string {
  const elements = parse(icu, { ignoreTag: true });
  disguise(elements);
  return printAST(elements);
}

function disguise(elements: MessageFormatElement[]): void {
  for (const element of elements) {
    if (element.type === TYPE.literal) element.value = pseudoText(element.value);
    if (element.type === TYPE.plural || element.type === TYPE.select) {
      for (const option of Object.values(element.options)) disguise(option.value);
    }
  }
}

function pseudoText(text: string): string {
  return text
    .replace(VOWEL_LENGTHENED, (vowel) => vowel + vowel.toLowerCase())
    .replace(/\p{L}/gu, (letter) => accented[plain.indexOf(letter)] ?? letter);
}
