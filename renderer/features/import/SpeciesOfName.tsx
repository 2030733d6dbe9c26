import { nearestSpecies } from '../../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { UseNearSpecies } from '../../form/UseNearSpecies.tsx';
import { useWords } from '../../words.ts';

/** The species that a name in a table means. Where it is none, the nearest name is offered, and only a person chooses it. */
export function SpeciesOfName({
  name,
  rows,
  allSpecies,
  value,
  onValue,
}: {
  name: string;
  rows: number;
  allSpecies: readonly Species[];
  value: string;
  onValue: (speciesId: string) => void;
}) {
  const { say, formats } = useWords();
  const near = value === '' ? nearestSpecies(name, allSpecies, formats.named) : null;
  return (
    <div>
      <SpeciesField
        label={say('import.name-in-rows', { name, rows })}
        allSpecies={allSpecies}
        value={value}
        onValue={onValue}
      />
      {near && <UseNearSpecies near={near} text={name} onUse={onValue} />}
    </div>
  );
}
