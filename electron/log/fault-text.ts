import { homedir } from 'node:os';
import { ZodError } from 'zod';

const LONGEST = 8000;

/**
 * An error as the fault log has it: its kind, its code, and where it happened. A message can hold what a person typed,
 * what a meter sent, or a session's secret. So text in quotes, numbers and long keys are left out of it.
 */
export function faultText(error: unknown): string {
  return textOf(error)
    .replaceAll(homedir(), '~')
    .replaceAll(/[^\P{C}\n]/gu, '')
    .slice(0, LONGEST);
}

function textOf(error: unknown): string {
  if (!(error instanceof Error)) return withoutContent(String(error));
  const cause = error.cause === undefined ? '' : `\n  cause: ${textOf(error.cause)}`;
  return `${nameOf(error)}: ${whatOf(error)}${stackOf(error)}${cause}`;
}

function nameOf(error: Error): string {
  const { code } = error as { code?: unknown };
  return code === undefined ? error.name : `${error.name} ${code}`;
}

/** A schema's own text is all in quotes. */
const whatOf = (error: Error): string =>
  error instanceof ZodError
    ? error.issues.map(({ code, path }) => `${code} at ${path.join('/')}`).join(', ')
    : withoutContent(error.message);

const stackOf = ({ stack = '' }: Error): string =>
  stack
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .map((line) => `\n  ${line.trim()}`)
    .join('');

function withoutContent(text: string): string {
  return text
    .replaceAll(/(["“'‘`]).*?["”'’`]/g, '$1…$1')
    .replaceAll(/\b[0-9a-f-]{16,}\b|\b[\w+/=-]{40,}/gi, '…')
    .replaceAll(/\d[\d.,]*(e[-+]?\d+)?/gi, '#');
}
