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
