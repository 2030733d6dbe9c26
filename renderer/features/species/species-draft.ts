import { deriveSpecies } from '../../../shared-core/wood/species/derive-species.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { sourceShown } from '../../ui/Sources.tsx';

/** A species as typed. */
export interface SpeciesDraft {
  name: string;
  botanicalName: string;
  group: string;
  /** Separated by commas. */
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
  source: string;
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
  source: '',
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
    source: sourceShown(species.source),
  };
}

/** A draft with the figures of another species and no name yet; `source` tells whose figures they are. */
export function draftDerivedFrom(species: Species, source: string): SpeciesDraft {
  const derived = deriveSpecies(species, { name: species.name, source }, new Set());
  return { ...draftOfSpecies(derived), name: '' };
}

export type SpeciesProblems = Partial<Record<keyof SpeciesDraft, Message>>;

const isOutside = (value: number | null, least: number, most: number): boolean =>
  value !== null && !(value >= least && value <= most);

function rangeProblem(value: number | null, least: number, most: number): Message | undefined {
  if (!isOutside(value, least, most)) return undefined;
  return message('species.outside', { rawLeast: least, rawMost: most });
}

function shrinkageProblem(pct: number | null): Message | undefined {
  if (!isOutside(pct, 0, 100)) return undefined;
  return message('species.outside-pct', { rawLeastPct: 0, rawMostPct: 100 });
}

/** Both of a pair are known or neither is. */
const pairProblem = (value: number | null, other: number | null): Message | undefined =>
  value === null && other !== null ? message('species.half-a-pair') : undefined;

/** What is wrong with the draft, by field; empty when it can be saved. */
export function speciesProblems(draft: SpeciesDraft): SpeciesProblems {
  const { changeRadial, changeTangential, linearA, linearB } = draft;
  const problems: { [K in keyof SpeciesDraft]?: Message | undefined } = {
    name: draft.name.trim() === '' ? message('species.name-missing') : undefined,
    group: draft.group.trim() === '' ? message('species.group-missing') : undefined,
    basicSpecificGravity: rangeProblem(draft.basicSpecificGravity, 0.05, 1.4),
    radialPct: shrinkageProblem(draft.radialPct),
    tangentialPct: shrinkageProblem(draft.tangentialPct),
    volumetricPct: shrinkageProblem(draft.volumetricPct),
    changeRadial: rangeProblem(changeRadial, 0, 0.02) ?? pairProblem(changeRadial, changeTangential),
    changeTangential: rangeProblem(changeTangential, 0, 0.02) ?? pairProblem(changeTangential, changeRadial),
    linearA: rangeProblem(linearA, 0.2, 5) ?? pairProblem(linearA, linearB),
    linearB: rangeProblem(linearB, -30, 30) ?? pairProblem(linearB, linearA),
  };
  return Object.fromEntries(Object.entries(problems).filter(([, problem]) => problem !== undefined));
}

/** The species of a draft without problems. */
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
    source: draft.source.trim(),
  };
}
