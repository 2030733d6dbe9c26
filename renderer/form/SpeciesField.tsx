import { useState } from 'react';
import { findSpecies, speciesMeant } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useWords } from '../words.ts';
import { Combobox } from './Combobox.tsx';
import { useHint } from './Field.tsx';

const itemOf = ({ id, name, aliases, botanicalName }: Species) => ({
  id,
  name,
  detail: aliases.length > 0 ? aliases.join(', ') : (botanicalName ?? ''),
});

/** Chooses a species by any of its names. */
export function SpeciesField({
  allSpecies,
  value,
  saved,
  onValue,
  ...rest
}: {
  label: string;
  allSpecies: readonly Species[];
  /** Its ID; empty for none yet. */
  value: string;
  error?: string | null;
  saved?: string | null | undefined;
  onValue: (speciesId: string) => void;
  onBlur?: () => void;
}) {
  const { say } = useWords();
  const hint = useHint(say('species-field.hint'), saved && allSpecies.find(({ id }) => id === saved)?.name);
  const [typed, setTyped] = useState('');
  const chosen = allSpecies.find(({ id }) => id === value);
  const found = findSpecies(chosen ? '' : typed, allSpecies);
  return (
    <Combobox
      {...rest}
      hint={hint}
      none={say('species-field.none')}
      text={chosen?.name ?? typed}
      chosenId={chosen?.id ?? null}
      items={found.map(itemOf)}
      meant={chosen ? [] : speciesMeant(typed, found).map(itemOf)}
      onText={(changed) => {
        setTyped(changed);
        if (chosen) onValue('');
      }}
      onChoose={({ id }) => onValue(id)}
    />
  );
}
