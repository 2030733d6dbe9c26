import type { z } from 'zod';
import { type Code, english } from '../words/en/index.ts';
import { type Facts, type FactsArgument, type Message, message } from '../words/message.ts';

type PlainCode = { [C in Code]: FactsArgument<C> extends [] ? C : never }[Code];

/** What a schema says of a value that does not fit: `z.string().min(1, says('validation.name-missing'))`. */
export const says = (code: PlainCode): { error: PlainCode } => ({ error: code });

/**
 * The message that an issue names, its facts from the issue's `params`; null where it has only the schema's own English.
 */
export function messageOfIssue(issue: z.core.$ZodIssue): Message | null {
  if (!Object.hasOwn(english, issue.message)) return null;
  const code = issue.message as Code;
  return issue.code === 'custom' && issue.params ? { code, facts: issue.params as Facts } : { code };
}

/**
 * What is wrong with an input that a schema refused. A schema's own English never reaches a person: where it names no
 * code of the catalog, one general sentence stands for all.
 */
export function problemOf(error: z.ZodError): Message {
  const named = error.issues.map(messageOfIssue).find((problem) => problem !== null);
  return named ?? message('validation.not-understood');
}

/** The sentences that say a bound and their fact, by the end of a field's name. */
const bounds = [
  [/lengthMm$/i, 'validation.least-length', 'validation.most-length', 'boundLengthMm'],
  [/mm$/i, 'validation.least-size', 'validation.most-size', 'boundMm'],
  [/tempC$/i, 'validation.least-temperature', 'validation.most-temperature', 'boundTempC'],
  [/kg$/i, 'validation.least-weight', 'validation.most-weight', 'boundKg'],
  [/pct$/i, 'validation.least-percent', 'validation.most-percent', 'boundLimitPct'],
  [/$/, 'validation.least', 'validation.most', 'rawBound'],
] as const;

/**
 * What is wrong with one field of a form: the sentence that its schema names, or else one made of the schema's bounds.
 *
 * @param field  its name in the contract, which tells its unit
 */
export function problemOfField(field: string, issue: z.core.$ZodIssue): Message {
  const named = messageOfIssue(issue);
  if (named) return named;
  const [, least, most, fact] = bounds.find(([ending]) => ending.test(field)) ?? bounds[5];
  switch (issue.code) {
    case 'too_small':
      if (issue.origin === 'string') return message('validation.missing');
      return { code: least, facts: { [fact]: Number(issue.minimum) } };
    case 'too_big':
      if (issue.origin === 'string')
        return message('validation.text-too-long', { letters: Number(issue.maximum) });
      return { code: most, facts: { [fact]: Number(issue.maximum) } };
    case 'invalid_type':
      return message(issue.expected === 'int' ? 'validation.not-whole' : 'validation.missing');
    default:
      return message('validation.not-understood');
  }
}

/**
 * What is wrong with "1,200", which may have thousands or decimals. With the person's own decimal mark it has decimals.
 *
 * @param text  may have words around the number: "1,200 mm"
 * @returns     null where no number in it could mean two
 */
export function twoNumbersIn(text: string, decimalMark: string): Message | null {
  const [, before = '', mark, after = ''] = /(?<![\d.,])([1-9]\d{0,2})([.,])(\d{3})(?!\d)/.exec(text) ?? [];
  if (mark === undefined || mark === decimalMark) return null;
  return message('validation.two-numbers', {
    typedText: text.trim(),
    rawWhole: Number(before + after),
    rawDecimal: Number(`${before}.${after}`),
  });
}
