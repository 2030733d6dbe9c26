import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { sourceShown } from '../../ui/Sources.tsx';

/** A use as typed. */
export interface EndUseDraft {
  name: string;
  minPct: number | null;
  maxPct: number | null;
  maxShellCorePct: number | null;
  note: string;
  source: string;
}

export const emptyUseDraft: EndUseDraft = {
  name: '',
  minPct: null,
  maxPct: null,
  maxShellCorePct: 2,
  note: '',
  source: '',
};

export const draftOfUse = (endUse: EndUse): EndUseDraft => ({
  ...endUse,
  source: sourceShown(endUse.source),
});

export type UseProblems = Partial<Record<keyof EndUseDraft, Message>>;

const within = (value: number | null, least: number, most: number) =>
  value !== null && value >= least && value <= most;

/** What is wrong with the draft, by field; empty when it can be saved. */
export function problemsOfUse(draft: EndUseDraft): UseProblems {
  const { name, minPct, maxPct, maxShellCorePct } = draft;
  const problems: UseProblems = {};
  if (name.trim() === '') problems.name = message('species.name-missing');
  if (!within(minPct, 0, 60)) {
    problems.minPct = message('use.outside-pct', { rawLeastPct: 0, rawMostPct: 60 });
  }
  if (!within(maxPct, 1, 200)) {
    problems.maxPct = message('use.outside-pct', { rawLeastPct: 1, rawMostPct: 200 });
  } else if (minPct !== null && maxPct !== null && maxPct <= minPct) {
    problems.maxPct = message('use.turned');
  }
  if (!within(maxShellCorePct, 0.5, 100)) {
    problems.maxShellCorePct = message('use.outside-points', { leastPoints: 0.5, mostPoints: 100 });
  }
  return problems;
}

/** The use that was typed; null while something is wrong with it. */
export function savedUse(draft: EndUseDraft, id: string): EndUse | null {
  const { minPct, maxPct, maxShellCorePct } = draft;
  if (Object.keys(problemsOfUse(draft)).length > 0) return null;
  if (minPct === null || maxPct === null || maxShellCorePct === null) return null;
  return {
    id,
    name: draft.name.trim(),
    minPct,
    maxPct,
    maxShellCorePct,
    note: draft.note.trim(),
    source: draft.source.trim(),
  };
}
