import { type KeyboardEvent, useId, useState } from 'react';
import { findSpecies } from '../../shared-core/wood/species/find-species.ts';
import type { Species } from '../../shared-core/wood/species/species.ts';
import { useWords } from '../words.ts';
import { Field } from './Field.tsx';
import './species-field.css';

/** As many as a person takes in at a glance. */
const MOST_SHOWN = 8;

/** Chooses a species by any of its names: type, then arrow keys and Enter, or a click. */
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
  const listId = useId();
  const chosen = allSpecies.find((species) => species.id === speciesId);
  /** What was typed since the list was opened; null while it is closed. */
  const [typed, setTyped] = useState<string | null>(null);
  const [active, setActive] = useState(0);
  const found = typed === null ? [] : findSpecies(typed, allSpecies).slice(0, MOST_SHOWN);

  function choose(species: Species | undefined): void {
    if (species) onSpecies(species.id);
    setTyped(null);
  }

  function onKey(event: KeyboardEvent): void {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      if (typed === null) setTyped('');
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setActive((at) => (typed === null ? 0 : (at + step + found.length) % Math.max(found.length, 1)));
    } else if (event.key === 'Enter' && typed !== null) {
      event.preventDefault();
      choose(found[active]);
    } else if (event.key === 'Escape' && typed !== null) {
      // Closes the list, not the dialog around it.
      event.preventDefault();
      event.stopPropagation();
      setTyped(null);
    }
  }

  return (
    <Field label={label} hint={say('species-field.hint')} error={error}>
      {(wiring) => (
        <div className="species-field">
          <input
            {...wiring}
            type="text"
            role="combobox"
            autoComplete="off"
            aria-expanded={found.length > 0}
            aria-controls={listId}
            aria-autocomplete="list"
            aria-activedescendant={typed !== null && found[active] ? `${listId}-${active}` : undefined}
            value={typed ?? chosen?.name ?? ''}
            onFocus={(event) => event.target.select()}
            onChange={(event) => {
              setTyped(event.target.value);
              setActive(0);
            }}
            onKeyDown={onKey}
            onBlur={() => setTyped(null)}
          />
          <div
            id={listId}
            className="species-choices"
            role="listbox"
            aria-label={label}
            hidden={found.length === 0}
          >
            {found.map((species, index) => (
              // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are handled by the field that owns the list.
              // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field; the active choice is announced.
              <div
                key={species.id}
                id={`${listId}-${index}`}
                role="option"
                translate="no"
                aria-selected={index === active}
                // Keeps the focus in the field, so that the list does not close before the click arrives.
                onMouseDown={(event) => event.preventDefault()}
                onClick={() => choose(species)}
              >
                {species.name}
                <small>
                  {species.aliases.length > 0 ? species.aliases.join(', ') : species.botanicalName}
                </small>
              </div>
            ))}
          </div>
          {typed !== null && found.length === 0 && (
            <p className="species-choices" role="status">
              {say('species-field.none')}
            </p>
          )}
        </div>
      )}
    </Field>
  );
}
