import { useState } from 'react';
import type { SpeciesRow } from '../../../shared-core/contract/requests/catalog.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { Sources } from '../../ui/Sources.tsx';
import { useWords } from '../../words.ts';
import { correctionMessage } from './correction-message.ts';
import { OvenChecksSection } from './OvenChecksSection.tsx';
import { SpeciesFigures } from './SpeciesFigures.tsx';
import { SpeciesForm } from './SpeciesForm.tsx';
import styles from './species.module.css';
import { draftDerivedFrom, draftOfSpecies } from './species-draft.ts';

/** Everything known about one species, and the person's own oven-dry checks of it. */
export function SpeciesScreen({ id }: { id: string }) {
  const { say } = useWords();
  const allSpecies = useQuery('species.list', {});
  const species = allSpecies.output?.find((each) => each.id === id);
  if (species && allSpecies.output) return <Found species={species} allSpecies={allSpecies.output} />;
  return (
    <Screen title={say('nav.species')}>
      <Await of={[allSpecies]}>
        {(_all) => (
          <EmptyState sentence={say('species.not-here')}>
            <ButtonLink kind="main" href={hrefOf({ name: 'species-list' })}>
              {say('nav.species')}
            </ButtonLink>
          </EmptyState>
        )}
      </Await>
    </Screen>
  );
}

function Found({ species, allSpecies }: { species: SpeciesRow; allSpecies: readonly Species[] }) {
  const { say } = useWords();
  const [open, setOpen] = useState<'nothing' | 'edit' | 'derive'>('nothing');
  const close = () => setOpen('nothing');
  return (
    <Screen
      title={species.name}
      isName
      lead={
        <>
          {species.botanicalName && (
            <>
              <i translate="no">{species.botanicalName}</i> ·{' '}
            </>
          )}
          <span translate="no">{species.group}</span>
          {!species.builtIn && ` · ${say('species.own-figures')}`}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'species-list' })}>{say('nav.species')}</ButtonLink>
          <Button onClick={() => setOpen('derive')}>{say('species.add-similar')}</Button>
          <Button onClick={() => setOpen('edit')}>{say('common.edit')}</Button>
        </>
      }
    >
      <Sheet title={say('species.about')}>
        {species.aliases.length > 0 && <p>{say('species.also-called', { names: species.aliases })}</p>}
        <p>{say(correctionMessage(species))}</p>
        <SpeciesFigures species={species} />
        {species.note && (
          <p className={styles.note} translate="no">
            {species.note}
          </p>
        )}
        {species.source && <Sources sources={[species.source]} />}
      </Sheet>
      <OvenChecksSection species={species} />
      {open === 'edit' && (
        <SpeciesForm
          title={say('species.edit', { speciesName: species.name })}
          species={species}
          start={draftOfSpecies(species)}
          allSpecies={allSpecies}
          onClose={close}
        />
      )}
      {open === 'derive' && (
        <SpeciesForm
          title={say('species.add-similar-to', { speciesName: species.name })}
          species={null}
          start={draftDerivedFrom(species, say('species.derived-source', { speciesName: species.name }))}
          allSpecies={allSpecies}
          onClose={close}
        />
      )}
    </Screen>
  );
}
