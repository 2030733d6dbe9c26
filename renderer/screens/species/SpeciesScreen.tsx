import { useState } from 'react';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useAnswer } from '../../useAnswer.ts';
import { correctionWords } from './correction-words.ts';
import { OvenChecksSection } from './OvenChecksSection.tsx';
import { SpeciesFigures } from './SpeciesFigures.tsx';
import { SpeciesForm } from './SpeciesForm.tsx';
import { draftDerivedFrom, draftOfSpecies } from './species-draft.ts';
import './species.css';

/** Everything known of one wood, and the person's own oven-dry checks of it. */
export function SpeciesScreen({ id }: { id: string }) {
  const allSpecies = useAnswer('species.list', {});
  const species = allSpecies.output?.find((each) => each.id === id);
  if (species && allSpecies.output) return <Found species={species} allSpecies={allSpecies.output} />;
  return (
    <Screen title="Wood">
      {allSpecies.error && <Failed sentence={allSpecies.error} again={allSpecies.again} />}
      {allSpecies.loading && <Loading what="the wood" />}
      {allSpecies.output && (
        <EmptyState sentence="There is no such wood in this yard.">
          <ButtonLink kind="main" href={hrefOf({ name: 'species-list' })}>
            Go to the woods
          </ButtonLink>
        </EmptyState>
      )}
    </Screen>
  );
}

function Found({
  species,
  allSpecies,
}: {
  species: Species & { builtIn: boolean };
  allSpecies: readonly Species[];
}) {
  const [open, setOpen] = useState<'nothing' | 'change' | 'derive'>('nothing');
  const close = () => setOpen('nothing');
  return (
    <Screen
      title={species.name}
      lead={
        <>
          {species.botanicalName && <i>{species.botanicalName}, </i>}
          {species.group}
          {!species.builtIn && ' · your own figures'}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'species-list' })}>All woods</ButtonLink>
          <Button onClick={() => setOpen('derive')}>Add a wood like this</Button>
          <Button onClick={() => setOpen('change')}>Change</Button>
        </>
      }
    >
      <Sheet title="What is known of it">
        {species.aliases.length > 0 && <p>Also called {species.aliases.join(', ')}.</p>}
        <p>
          <strong>Published correction:</strong> {correctionWords(species)}.
        </p>
        <SpeciesFigures species={species} />
      </Sheet>
      <OvenChecksSection species={species} />
      {open === 'change' && (
        <SpeciesForm
          title={`Change ${species.name}`}
          id={species.id}
          start={draftOfSpecies(species)}
          allSpecies={allSpecies}
          onClose={close}
        />
      )}
      {open === 'derive' && (
        <SpeciesForm
          title={`Add a wood like ${species.name}`}
          id={null}
          start={draftDerivedFrom(species)}
          allSpecies={allSpecies}
          onClose={close}
        />
      )}
    </Screen>
  );
}
