import { useState } from 'react';
import { findSpecies, nearestSpecies, speciesMeant } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useWords } from '../words.ts';
import { Combobox } from './Combobox.tsx';
import { useHint } from './Field.tsx';
import { UseNearSpecies } from './UseNearSpecies.tsx';

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
  const { say, formats } = useWords();
  const nameOf = (species: Species | undefined) => species && formats.named(species.name);
  const itemOf = (species: Species) => {
    const { id, name, aliases, botanicalName } = species;
    const others = aliases.filter((alias) => alias !== formats.named(name));
    return {
      id,
      name: formats.named(name),
      detail: others.length > 0 ? others.join(', ') : (botanicalName ?? ''),
    };
  };
  const hint = useHint(say('species-field.hint'), saved && nameOf(allSpecies.find(({ id }) => id === saved)));
  const [typed, setTyped] = useState('');
  const chosen = allSpecies.find(({ id }) => id === value);
  const found = findSpecies(chosen ? '' : typed, allSpecies, formats.named);
  const near = chosen || found.length > 0 ? null : nearestSpecies(typed, allSpecies, formats.named);
  return (
    <div>
      <Combobox
        {...rest}
        hint={hint}
        none={say('species-field.none')}
        text={nameOf(chosen) ?? typed}
        chosenId={chosen?.id ?? null}
        items={(near ? [near] : found).map(itemOf)}
        note={near && say('species-field.near', { speciesName: near.name })}
        meant={chosen ? [] : speciesMeant(typed, found, formats.named).map(itemOf)}
        onText={(changed) => {
          setTyped(changed);
          if (chosen) onValue('');
        }}
        onChoose={({ id }) => onValue(id)}
      />
      {near && <UseNearSpecies near={near} text={typed} onUse={onValue} />}
    </div>
  );
}
