import { expect } from 'vitest';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Fact, Message } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const wordsIn = (units: DisplayUnits) =>
  createWords({
    catalog: english,
    locale: 'en-US',
    timeZone: 'America/Chicago',
    units,
    today: '2027-05-01',
  });
/** As a person in Chicago who measures in millimeters reads them. */
export const englishWords = wordsIn('metric');
const imperial = wordsIn('imperial');

/** A message as the window would show it. */
export const inEnglish = (message: Message): string => englishWords.say(message);

/** Fails where a fact that a sentence asks for is missing, or is not what the sentence can show. */
export function expectWhole(messages: readonly Message[]): void {
  for (const message of messages) {
    for (const { say } of [englishWords, imperial]) {
      expect(say(message), JSON.stringify(message)).not.toMatch(
        /Text missing|undefined|null|NaN|Infinity|[{}]/,
      );
    }
  }
}

/** The codes of messages and of those that are their facts. */
export function codesOf(messages: readonly Message[]): Set<string> {
  const codes = new Set<string>();
  const visit = (fact: Fact): void => {
    if (Array.isArray(fact)) for (const each of fact) visit(each);
    else if (typeof fact === 'object' && 'code' in fact) {
      codes.add(fact.code);
      for (const each of Object.values(fact.facts ?? {})) visit(each);
    }
  };
  for (const message of messages) visit(message);
  return codes;
}

/** Every code of the catalog that begins so. */
export const codesFrom = (start: string): string[] =>
  Object.keys(english).filter((code) => code.startsWith(start));
