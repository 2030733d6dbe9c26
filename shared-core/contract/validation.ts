import type { z } from 'zod';
import { type Code, english } from '../words/en/index.ts';
import { type FactsArgument, type Message, message } from '../words/message.ts';

type PlainCode = { [C in Code]: FactsArgument<C> extends [] ? C : never }[Code];

/** What a schema says of a value that does not fit: `z.string().min(1, says('validation.name-missing'))`. */
export const says = (code: PlainCode): { error: PlainCode } => ({ error: code });

/**
 * What is wrong with an input that a schema refused. A schema's own English never reaches a person: where it names no
 * code of the catalog, one general sentence stands for all.
 */
export function problemOf(error: z.ZodError): Message {
  const named = error.issues.map((issue) => issue.message).find((text) => Object.hasOwn(english, text));
  return named === undefined ? message('validation.not-understood') : { code: named as Code };
}
