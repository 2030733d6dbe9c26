import { useState } from 'react';
import type { SpeciesRow } from '../../../shared-core/contract/requests/catalog.ts';
import { publishedCorrection } from '../../../shared-core/wood/moisture/published-correction.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { SourcesLink } from '../../ui/SourcesLink.tsx';
import { useWords } from '../../words.ts';
import { OvenChecksSection } from './OvenChecksSection.tsx';
import { SpeciesFigures } from './SpeciesFigures.tsx';
import { SpeciesForm } from './SpeciesForm.tsx';
import { draftDerivedFrom, draftOfSpecies } from './species-draft.ts';

/** Everything known about one species, and the person's own oven-dry checks of it. */
export function SpeciesScreen({ id }: { id: string }) {
  const { say } = useWords();
  const allSpecies = useQuery('species.list', {});
  const species = allSpecies.output?.find((each) => each.id === id);
  if (species) return <Found species={species} />;
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

function Found({ species }: { species: SpeciesRow }) {
  const { say, formats } = useWords();
  const [form, setForm] = useState<null | 'edit' | 'similar'>(null);
  const speciesName = species.name;
  const names = species.aliases.filter((alias) => alias !== formats.named(speciesName));
  return (
    <Screen
      title={formats.named(speciesName)}
      isName
      lead={
        <>
          {species.botanicalName && (
            <>
              <i translate="no">{species.botanicalName}</i> ·{' '}
            </>
          )}
          <span translate="no">{formats.named(species.group)}</span>
          {!species.builtIn && ` · ${say('species.own-figures')}`}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'species-list' })}>{say('nav.species')}</ButtonLink>
          <Button onClick={() => setForm('similar')}>{say('species.add-similar')}</Button>
          <Button onClick={() => setForm('edit')}>{say('common.edit')}</Button>
        </>
      }
    >
      <Sheet title={say('species.about')}>
        {species.isDamaged && (
          <Banner kind="caution">
            {say(
              builtInSpecies.some(({ id }) => id === species.id)
                ? 'damaged.species-built-in'
                : 'damaged.species',
            )}
          </Banner>
        )}
        {names.length > 0 && <p>{say('species.also-called', { names })}</p>}
        <p>{say(publishedCorrection(species))}</p>
        <SpeciesFigures species={species} />
        {species.note && (
          <p className="soft" translate="no">
            {formats.named(species.note)}
          </p>
        )}
        {species.source && <SourcesLink part="species" />}
      </Sheet>
      <OvenChecksSection species={species} />
      {form && (
        <SpeciesForm
          {...(form === 'edit'
            ? {
                title: say('species.edit', { speciesName }),
                species,
                start: draftOfSpecies(species),
              }
            : {
                title: say('species.add-similar-to', { speciesName }),
                species: null,
                start: draftDerivedFrom(species, say('species.derived-source', { speciesName })),
              })}
          onClose={() => setForm(null)}
        />
      )}
    </Screen>
  );
}
