import { deriveSpecies } from '../../../shared-core/wood/species/derive-species.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

/** A wood as it stands in the form's fields. */
export interface SpeciesDraft {
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

export const emptySpeciesDraft: SpeciesDraft = {
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

export function draftOfSpecies(species: Species): SpeciesDraft {
  return {
    name: species.name,
    botanicalName: species.botanicalName ?? '',
    group: species.group,
    aliases: species.aliases.join(', '),
    basicSpecificGravity: species.basicSpecificGravity,
    radialPct: species.radialPct,
    tangentialPct: species.tangentialPct,
    volumetricPct: species.volumetricPct,
    changeRadial: species.changeCoefficient?.radial ?? null,
    changeTangential: species.changeCoefficient?.tangential ?? null,
    curveId: species.curveId ?? '',
    linearA: species.linear?.a ?? null,
    linearB: species.linear?.b ?? null,
    note: species.note,
  };
}

/** A draft with all figures of another wood, to be given a name of its own; the note says whose figures they are. */
export function draftDerivedFrom(species: Species): SpeciesDraft {
  return { ...draftOfSpecies(deriveSpecies(species, { name: species.name }, new Set())), name: '' };
}

export type SpeciesProblems = Partial<Record<keyof SpeciesDraft, string>>;

function rangeProblem(value: number | null, least: number, most: number, unit = ''): string | undefined {
  if (value === null || (value >= least && value <= most)) return undefined;
  return `This must be ${least} to ${most}${unit}, or empty where it is not known.`;
}

/** Both of a pair are known or neither is. */
function pairProblem(value: number | null, other: number | null): string | undefined {
  return value === null && other !== null ? 'Give both of the pair, or leave both empty.' : undefined;
}

/** What is wrong with the draft, by field, as sentences; empty when it can be saved. */
export function speciesProblems(draft: SpeciesDraft): SpeciesProblems {
  const problems: SpeciesProblems = {
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
export function speciesOf(draft: SpeciesDraft, id: string): Species {
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
