import { z } from 'zod';
import { languages } from '../../words/languages.ts';
import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import { yardInfoSchema } from '../yard.ts';

const openingBy = <Input extends z.ZodType>(input: Input) =>
  ofMachine(command({ input, output: yardInfoSchema, topics: () => ['yard'] }));
const opening = () => openingBy(nothingSchema);

/** Which file is open. */
export const yardRequests = {
  'yard.info': ofMachine(query({ input: nothingSchema, output: yardInfoSchema, topics: () => ['boards'] })),
  /** `language`: of the names and notes in the demo yard, where there is none yet; English where left out. */
  'yard.openDemo': openingBy(z.strictObject({ language: z.enum(languages).optional() })),
  'yard.openOwn': opening(),
  /** Deletes the demo yard, and opens the person's own in any case. `notRemoved`: why the demo yard is still there. */
  'yard.removeDemo': ofMachine(
    command({
      input: nothingSchema,
      output: yardInfoSchema.extend({ notRemoved: messageSchema.nullable() }),
      topics: () => ['yard'],
    }),
  ),
  /** Puts the rescued copy of a file that is gone in its place, and opens it. */
  'yard.openRescued': opening(),
  /** Renames a damaged file and begins a new yard. */
  'yard.startAfresh': opening(),
};
