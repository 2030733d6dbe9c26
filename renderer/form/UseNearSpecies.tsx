import { nearestSpecies } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import css from './use-near-species.module.css';

/** Offers the species that a text, which is the name of none, is nearest to. Only a press chooses it. */
export function UseNearSpecies({
  text,
  allSpecies,
  onUse,
}: {
  text: string;
  allSpecies: readonly Species[];
  onUse: (speciesId: string) => void;
}) {
  const { say, formats } = useWords();
  const near = nearestSpecies(text, allSpecies, formats.named);
  return (
    near && (
      <div className={css.near}>
        <Button onClick={() => onUse(near.id)}>
          {say('species-field.use-near', { speciesName: near.name, typedText: text.trim() })}
        </Button>
      </div>
    )
  );
}
