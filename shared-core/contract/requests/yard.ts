import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import { yardInfoSchema } from '../yard.ts';

const opening = () =>
  ofMachine(command({ input: nothingSchema, output: yardInfoSchema, topics: () => ['yard'] }));

/** Which file is open. */
export const yardRequests = {
  'yard.info': ofMachine(query({ input: nothingSchema, output: yardInfoSchema, topics: () => ['boards'] })),
  'yard.openDemo': opening(),
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
