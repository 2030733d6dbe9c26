import { command, nothingSchema, ofMachine, query } from '../request-kinds.ts';
import { yardInfoSchema } from '../yard.ts';

const opening = () =>
  ofMachine(command({ input: nothingSchema, output: yardInfoSchema, topics: () => ['yard'] }));

/** Which file is open. */
export const yardRequests = {
  'yard.info': ofMachine(query({ input: nothingSchema, output: yardInfoSchema, topics: () => ['boards'] })),
  'yard.openDemo': opening(),
  'yard.openOwn': opening(),
  /** Deletes the demo yard and opens the person's own. */
  'yard.removeDemo': opening(),
  /** Renames a damaged file and begins a new yard. */
  'yard.startAfresh': opening(),
};
