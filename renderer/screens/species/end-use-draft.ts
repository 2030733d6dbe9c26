import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';

/** A use as it stands in the form's fields. */
export interface EndUseDraft {
  name: string;
  minPct: number | null;
  maxPct: number | null;
  maxShellCorePct: number | null;
  note: string;
}

export const emptyUseDraft: EndUseDraft = {
  name: '',
  minPct: null,
  maxPct: null,
  maxShellCorePct: 2,
  note: '',
};

export type UseProblems = Partial<Record<keyof EndUseDraft, string>>;

const within = (value: number | null, least: number, most: number) =>
  value !== null && value >= least && value <= most;

/** What is wrong with the draft, by field, as sentences; empty when it can be saved. */
export function problemsOfUse(draft: EndUseDraft): UseProblems {
  const { name, minPct, maxPct, maxShellCorePct } = draft;
  const problems: UseProblems = {};
  if (name.trim() === '') problems.name = 'Give the use a name.';
  if (!within(minPct, 0, 60)) problems.minPct = 'This must be 0 to 60 % MC.';
  if (!within(maxPct, 1, 200)) problems.maxPct = 'This must be 1 to 200 % MC.';
  else if (minPct !== null && maxPct !== null && maxPct <= minPct) {
    problems.maxPct = 'The upper limit must lie above the lower one.';
  }
  if (!within(maxShellCorePct, 0.5, 100)) problems.maxShellCorePct = 'This must be 0.5 to 100 % MC.';
  return problems;
}

/** The use that a draft says; null while something is wrong with it. */
export function savedUse(draft: EndUseDraft, id: string): EndUse | null {
  const { minPct, maxPct, maxShellCorePct } = draft;
  if (Object.keys(problemsOfUse(draft)).length > 0) return null;
  if (minPct === null || maxPct === null || maxShellCorePct === null) return null;
  return { id, name: draft.name.trim(), minPct, maxPct, maxShellCorePct, note: draft.note.trim() };
}
