import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { IntlMessageFormat } from 'intl-messageformat';
import type { Catalog, Code } from './en/index.ts';
import { factText } from './facts.ts';
import { createFormats, type Display, type Formats } from './formats.ts';
import type { Facts, FactsArgument, Message } from './message.ts';
import { writtenIn } from './written-in.ts';

/** Makes a sentence from a code with its facts, or from a message. */
export interface Say {
  <C extends Code>(code: C, ...facts: FactsArgument<C>): string;
  (message: Message): string;
}

export interface Words {
  say: Say;
  formats: Formats;
}

/**
 * The sentences of a catalog for one person.
 *
 * @param options.catalog  `english`, or another record of the same codes
 * @example createWords({ catalog: english, locale: 'en-US', timeZone: 'America/Chicago', units: 'imperial', today: null })
 *   .say('call.too-wet', { averagePct: 14.9, targetRange: { minPct: 6, maxPct: 8 } }) // "Too wet: 14.9%. Target 6–8%."
 */
export function createWords({ catalog, ...asked }: Display & { catalog: Catalog }): Words {
  const display = { ...asked, locale: writtenIn(asked.locale) };
  const say: Say = (codeOrMessage: Code | Message, ...given: readonly unknown[]) => {
    const { code, facts = {} } =
      typeof codeOrMessage === 'string'
        ? { code: codeOrMessage, facts: given[0] as Facts | undefined }
        : codeOrMessage;
    const sentence = sentenceOf(catalog, code, display.locale);
    // A stored message may be of another version of Pintally: a page with one gap is better than no page.
    if (!sentence?.plain.concat(sentence.choosing).every((name) => name in facts)) {
      return say('common.text-missing', { missingCode: code });
    }
    const values: Record<string, unknown> = {};
    for (const name of sentence.choosing) values[name] = facts[name];
    for (const name of sentence.plain) values[shownName(name)] = factText(name, facts[name]!, formats, say);
    return withOneStop(sentence.format.format(values) as string);
  };
  const formats = createFormats(display, say, (name) => catalog[`name:${name}`] ?? name);
  return { say, formats };
}

/** A short month or "a.m." brings its own stop to the end of a sentence: "am 25. Aug.." has one too many. */
const withOneStop = (text: string): string =>
  text.includes('..') ? text.replaceAll(/(?<=\p{L})\.\.(?=\s|$)/gu, '.') : text;

interface Sentence {
  format: IntlMessageFormat;
  /** Facts shown as text. */
  plain: readonly string[];
  /** Facts that choose a branch of a plural or select. */
  choosing: readonly string[];
}

const sentences = new WeakMap<Catalog, Map<string, Sentence>>();

/** A sentence made ready once for a catalog and a locale; undefined for a code that the catalog has not. */
function sentenceOf(catalog: Catalog, code: Code, locale: string): Sentence | undefined {
  if (!Object.hasOwn(catalog, code)) return undefined;
  const known = sentences.get(catalog) ?? new Map<string, Sentence>();
  sentences.set(catalog, known);
  const key = `${locale} ${code}`;
  const sentence = known.get(key) ?? compiled(catalog[code], locale);
  known.set(key, sentence);
  return sentence;
}

/** A fact that is shown has another name than the same fact where it chooses a branch, so each gets its own value. */
const shownName = (name: string): string => `${name} shown`;

function compiled(icu: string, locale: string): Sentence {
  const plain = new Set<string>();
  const choosing = new Set<string>();
  const walk = (elements: readonly MessageFormatElement[]): void => {
    for (const element of elements) {
      if (element.type === TYPE.argument) {
        plain.add(element.value);
        element.value = shownName(element.value);
      } else if (element.type === TYPE.plural || element.type === TYPE.select) {
        choosing.add(element.value);
        for (const option of Object.values(element.options)) walk(option.value);
      }
    }
  };
  const elements = parse(icu, { ignoreTag: true });
  walk(elements);
  return { format: new IntlMessageFormat(elements, locale), plain: [...plain], choosing: [...choosing] };
}
