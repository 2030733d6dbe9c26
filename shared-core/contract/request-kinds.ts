import { z } from 'zod';
import type { Topic } from './topics.ts';

interface Shape<Input extends z.ZodType, Output extends z.ZodType> {
  input: Input;
  output: Output;
  /** Of a query: what it shows. Of a command: what it changed. */
  topics(input: z.output<Input>, output: z.output<Output>): readonly Topic[];
}

/** Asks for something and changes nothing. */
export const query = <I extends z.ZodType, O extends z.ZodType>(shape: Shape<I, O>) => ({
  kind: 'query' as const,
  ...shape,
});

/** Changes something. */
export const command = <I extends z.ZodType, O extends z.ZodType>(shape: Shape<I, O>) => ({
  kind: 'command' as const,
  ...shape,
});

export const nothingSchema = z.object({});
