import { useState } from 'react';
import { findSpecies, speciesMeant } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useWords } from '../words.ts';
import { Combobox } from './Combobox.tsx';
import { useHint } from './Field.tsx';

/** As many as a person takes in at a glance. */
const MOST_SHOWN = 8;
/** As many as a sentence names. */
const MOST_NAMED = 4;

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
  const text = chosen?.name ?? typed;
  const found = findSpecies(chosen ? '' : typed, allSpecies);
  const meant = chosen ? [] : speciesMeant(typed, found);
  const candidates = meant.length > 0 ? meant : found;
  const names = candidates.slice(0, MOST_NAMED).map(({ name }) => name);
  return (
    <Combobox
      {...rest}
      hint={hint}
      none={say('species-field.none')}
      which={say('species-field.which', {
        typedName: text.trim(),
        speciesNames: names,
        more: candidates.length - names.length,
      })}
      text={text}
      chosenId={chosen?.id ?? null}
      items={found.slice(0, MOST_SHOWN).map(itemOf)}
      meant={meant[0] && meant.length === 1 ? itemOf(meant[0]) : null}
      onText={(changed) => {
        setTyped(changed);
        if (chosen) onValue('');
      }}
      onChoose={({ id }) => onValue(id)}
    />
  );
}
