import { findSpecies } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useWords } from '../words.ts';
import { Combobox } from './Combobox.tsx';

/** As many as a person takes in at a glance. */
const MOST_SHOWN = 8;

const itemOf = ({ id, name, aliases, botanicalName }: Species) => ({
  id,
  name,
  detail: aliases.length > 0 ? aliases.join(', ') : (botanicalName ?? ''),
});

/** Chooses a species by any of its names. */
export function SpeciesField({
  label,
  allSpecies,
  speciesId,
  error,
  onSpecies,
}: {
  label: string;
  allSpecies: readonly Species[];
  /** Empty for none yet. */
  speciesId: string;
  error?: string | null;
  onSpecies: (speciesId: string) => void;
}) {
  const { say } = useWords();
  const chosen = allSpecies.find((species) => species.id === speciesId);
  return (
    <Combobox
      label={label}
      hint={say('species-field.hint')}
      error={error ?? null}
      none={say('species-field.none')}
      chosen={chosen ? itemOf(chosen) : null}
      find={(text) => findSpecies(text, allSpecies).slice(0, MOST_SHOWN).map(itemOf)}
      onChoose={(item) => onSpecies(item?.id ?? '')}
    />
  );
}
