import { deriveWood } from '../../../shared-core/wood/derive-wood.ts';
import type { Wood } from '../../../shared-core/wood/wood.ts';

/** A wood as it stands in the form's fields. */
export interface WoodDraft {
  name: string;
  botanicalName: string;
  group: string;
  /** Parted by commas. */
  aliases: string;
  basicSpecificGravity: number | null;
  radialPct: number | null;
  tangentialPct: number | null;
  volumetricPct: number | null;
  changeRadial: number | null;
  changeTangential: number | null;
  /** Empty for none. */
  curveId: string;
  linearA: number | null;
  linearB: number | null;
  note: string;
}

export const emptyWoodDraft: WoodDraft = {
  name: '',
  botanicalName: '',
  group: '',
  aliases: '',
  basicSpecificGravity: null,
  radialPct: null,
  tangentialPct: null,
  volumetricPct: null,
  changeRadial: null,
  changeTangential: null,
  curveId: '',
  linearA: null,
  linearB: null,
  note: '',
};

export function draftOfWood(wood: Wood): WoodDraft {
  return {
    name: wood.name,
    botanicalName: wood.botanicalName ?? '',
    group: wood.group,
    aliases: wood.aliases.join(', '),
    basicSpecificGravity: wood.basicSpecificGravity,
    radialPct: wood.radialPct,
    tangentialPct: wood.tangentialPct,
    volumetricPct: wood.volumetricPct,
    changeRadial: wood.changeCoefficient?.radial ?? null,
    changeTangential: wood.changeCoefficient?.tangential ?? null,
    curveId: wood.curveId ?? '',
    linearA: wood.linear?.a ?? null,
    linearB: wood.linear?.b ?? null,
    note: wood.note,
  };
}

/** A draft with all figures of another wood, to be given a name of its own; the note says whose figures they are. */
export function draftDerivedFrom(wood: Wood): WoodDraft {
  return { ...draftOfWood(deriveWood(wood, { name: wood.name }, new Set())), name: '' };
}

export type WoodProblems = Partial<Record<keyof WoodDraft, string>>;

function rangeProblem(value: number | null, least: number, most: number, unit = ''): string | undefined {
  if (value === null || (value >= least && value <= most)) return undefined;
  return `This must be ${least} to ${most}${unit}, or empty where it is not known.`;
}

/** Both of a pair are known or neither is. */
function pairProblem(value: number | null, other: number | null): string | undefined {
  return value === null && other !== null ? 'Give both of the pair, or leave both empty.' : undefined;
}

/** What is wrong with the draft, by field, as sentences; empty when it can be saved. */
export function woodProblems(draft: WoodDraft): WoodProblems {
  const problems: WoodProblems = {
    name: draft.name.trim() === '' ? 'Give the wood a name.' : undefined,
    group: draft.group.trim() === '' ? 'Say which bay of the yard it belongs in, like “Maples”.' : undefined,
    basicSpecificGravity: rangeProblem(draft.basicSpecificGravity, 0.05, 1.4),
    radialPct: rangeProblem(draft.radialPct, 0, 100, ' %'),
    tangentialPct: rangeProblem(draft.tangentialPct, 0, 100, ' %'),
    volumetricPct: rangeProblem(draft.volumetricPct, 0, 100, ' %'),
    changeRadial:
      rangeProblem(draft.changeRadial, 0, 0.02) ?? pairProblem(draft.changeRadial, draft.changeTangential),
    changeTangential:
      rangeProblem(draft.changeTangential, 0, 0.02) ??
      pairProblem(draft.changeTangential, draft.changeRadial),
    linearA: rangeProblem(draft.linearA, 0.2, 5) ?? pairProblem(draft.linearA, draft.linearB),
    linearB: rangeProblem(draft.linearB, -30, 30) ?? pairProblem(draft.linearB, draft.linearA),
  };
  return Object.fromEntries(Object.entries(problems).filter(([, sentence]) => sentence !== undefined));
}

/** The wood that a draft without problems says. */
export function woodOf(draft: WoodDraft, id: string): Wood {
  const { changeRadial, changeTangential, linearA, linearB } = draft;
  return {
    id,
    name: draft.name.trim(),
    botanicalName: draft.botanicalName.trim() || null,
    group: draft.group.trim(),
    aliases: draft.aliases
      .split(/[,;\n]/)
      .map((alias) => alias.trim())
      .filter((alias) => alias !== ''),
    basicSpecificGravity: draft.basicSpecificGravity,
    radialPct: draft.radialPct,
    tangentialPct: draft.tangentialPct,
    volumetricPct: draft.volumetricPct,
    changeCoefficient:
      changeRadial === null || changeTangential === null
        ? null
        : { radial: changeRadial, tangential: changeTangential },
    curveId: draft.curveId || null,
    linear: linearA === null || linearB === null ? null : { a: linearA, b: linearB },
    note: draft.note.trim(),
  };
}
