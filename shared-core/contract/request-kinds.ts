import { z } from 'zod';
import type { Topic } from './topics.ts';

interface Shape<Input extends z.ZodType, Output extends z.ZodType> {
  input: Input;
  output: Output;
  /** Of a query: what it shows. Of a command: what it changed. */
  topics(input: z.output<Input>, output: z.output<Output>): readonly Topic[];
}

/** Asks for something and changes nothing. Answered of the yard that the window shows, and of no other. */
export const query = <I extends z.ZodType, O extends z.ZodType>(shape: Shape<I, O>) => ({
  kind: 'query' as const,
  ...shape,
});

/** Changes something in the yard that the window shows: an act, which takes effect once however often it is sent. */
export const command = <I extends z.ZodType, O extends z.ZodType>(shape: Shape<I, O>) => ({
  kind: 'command' as const,
  ...shape,
});

type Query = ReturnType<typeof query>;
type Command = ReturnType<typeof command>;

/** About the program, whichever yard is open. */
export const ofMachine = <R extends Query | Command>(request: R) => ({
  ...request,
  ofMachine: true as const,
});

/** A command that writes nothing to the yard, so it is no act: it changes what a window looks at. */
export const ofWindow = <R extends Command>(request: R) => ({ ...request, ofWindow: true as const });

export const nothingSchema = z.object({});
