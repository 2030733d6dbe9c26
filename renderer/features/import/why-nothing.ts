import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** A sentence with more names is too long to read. */
const MOST_NAMED = 5;

/** Why nothing of a table goes in whose columns are all right: names still to be chosen, rows to correct, or nothing new. */
export function whyNothing({
  speciesNames,
  unknownPlaces,
  refused,
}: Pick<RequestOutput<'imports.check'>, 'speciesNames' | 'unknownPlaces' | 'refused'>): Message {
  const open = [...speciesNames.filter(({ speciesId }) => speciesId === null), ...unknownPlaces];
  const others = open.length - MOST_NAMED;
  if (open.length > 0) {
    return message('import.names-open', {
      names: open.length,
      openNames: [
        ...open.slice(0, MOST_NAMED).map(({ name }) => name),
        ...(others > 0 ? [message('import.more-names', { names: others })] : []),
      ],
    });
  }
  return message(refused > 0 ? 'import.all-refused' : 'import.nothing-new');
}
