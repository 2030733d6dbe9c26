import type { FactNamed } from './facts.ts';

/**
 * The facts that an ICU message asks for, worked out by the compiler from its text. `FactsOf<'{boards, plural, one {#
 * board} other {# boards}} at {averagePct}'>` is `{ boards: number; averagePct: number | readonly number[] }`.
 *
 * Every brace goes one level in or out, and the levels alternate between text and argument. So a brace opens an
 * argument exactly where text was. Quoted braces (`'{'`) would break this; a test forbids them in the catalog.
 */
export type FactsOf<Icu extends string> = {
  [Name in ArgumentOf<Icu> as Name['name']]: Name['kind'] extends 'plain'
    ? FactNamed<Name['name']>
    : Chosen<Name['kind']>;
} & unknown;

/** What picks a branch: a number for a plural, a word for a select. */
type Chosen<Kind extends string> = Kind extends 'select' ? string : number;

type ArgumentOf<
  Icu extends string,
  InText extends boolean = true,
  Found = never,
> = Icu extends `${infer Before}{${infer After}`
  ? LeftIn<Before, InText> extends true
    ? ArgumentOf<After, false, Found | Named<After>>
    : ArgumentOf<After, true, Found>
  : Found;

/** Whether text or an argument is reached after the closing braces of a part. */
type LeftIn<Part extends string, InText extends boolean> = Part extends `${string}}${infer Rest}`
  ? LeftIn<Rest, InText extends true ? false : true>
  : InText;

type Named<After extends string> = After extends `${infer Head}}${string}`
  ? Head extends `${infer Name}, ${infer Kind},${string}`
    ? { name: Name; kind: Kind }
    : { name: Head; kind: 'plain' }
  : never;
