import type { Message } from '../words/message.ts';

/** Why a yard file cannot be used, as far as the ways on differ. */
type YardProblem =
  | 'elsewhere'
  | 'newer'
  | 'foreign'
  /** It was there when Pintally was last open, or only its WAL is left. */
  | 'missing'
  | 'gone'
  | 'replaced'
  /** Emptied, cut short or overwritten, or its WAL was lost: all of it was rescued. */
  | 'spoiled'
  /** Emptied, cut short or overwritten: only part of it was rescued. */
  | 'cut'
  | 'not-rescued'
  | 'damaged'
  | 'unreadable';

const KINDS: Record<string, YardProblem> = {
  'refusal.yard-owned': 'elsewhere',
  'refusal.yard-in-use': 'elsewhere',
  'refusal.yard-newer': 'newer',
  'refusal.yard-foreign': 'foreign',
  'refusal.yard-missing': 'missing',
  'refusal.yard-vanished': 'missing',
  'refusal.yard-gone': 'gone',
  'refusal.yard-partly-gone': 'cut',
  'refusal.yard-partly-rescued': 'cut',
  'refusal.yard-cut-not-rescued': 'not-rescued',
  'refusal.yard-not-rescued': 'not-rescued',
  'refusal.yard-damaged': 'damaged',
  'refusal.yard-changes-unreadable': 'damaged',
};

/** Which kind a problem with the yard file is; what a person can do follows from it. */
export function kindOfProblem({ code, facts }: Message): YardProblem {
  if (code === 'refusal.yard-moved') {
    if (facts?.what === 'changes') return 'spoiled';
    if (facts?.state === 'replaced') return 'replaced';
    return facts?.state === 'gone' ? 'gone' : 'spoiled';
  }
  return KINDS[code] ?? 'unreadable';
}

/** Whether nothing opens the file, though nothing shows that it is damaged: a restore then renames it, as a damaged one. */
export const isUnopened = ({ code }: Message): boolean => code === 'refusal.yard-unreadable';
