import type { Species } from '../../shared-core/wood/species/species.ts';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import css from './use-near-species.module.css';

/** Offers the species whose name is nearest to a text that names none (`nearestSpecies`). Only a press chooses it. */
export function UseNearSpecies({
  near,
  text,
  onUse,
}: {
  near: Species;
  text: string;
  onUse: (speciesId: string) => void;
}) {
  const { say } = useWords();
  return (
    <div className={css.near}>
      <Button onClick={() => onUse(near.id)}>
        {say('species-field.use-near', { speciesName: near.name, typedText: text.trim() })}
      </Button>
    </div>
  );
}
