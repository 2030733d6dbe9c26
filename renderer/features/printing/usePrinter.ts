import { type Message, message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';

/**
 * The printer that a person chose for a paper, which prints without a dialog; null for the system's print dialog.
 * @param paper  the id of a paper of labels, or the size of a report
 */
export function usePrinter(paper: string): { name: string; title: string } | null {
  const { output } = useQuery('printers.list', {});
  const name = output?.chosen[paper];
  if (name === undefined || output?.printers === null) return null;
  // One that is not here any more is refused by its name, rather than another one taken.
  return { name, title: output?.printers.find((each) => each.name === name)?.title ?? name };
}

/** The sentence for pages still waiting in a printer's queue. */
export const waitingWords = (printerName: string, why: string): Message =>
  message('print.waiting', { printerName, says: why === '' ? 'nothing' : 'something', reason: why });
