import type { Code } from '../words/en/index.ts';

type NumberCode = Code extends infer C ? (C extends `methods.numbers.${infer Name}` ? Name : never) : never;

/** A prior or limit as it is in use: the constant's name, the code of its words, and its value. */
export type NumberUsed = readonly [
  constant: string,
  code: NumberCode,
  value: number,
  /** Of what is shown in a person's own unit. */
  unit?: 'temperature' | 'temperature-step' | 'length' | 'distance',
];
