// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { EndUseForm } from '../../../../renderer/features/species/EndUseForm.tsx';
import { SpeciesForm } from '../../../../renderer/features/species/SpeciesForm.tsx';
import { draftOfSpecies } from '../../../../renderer/features/species/species-draft.ts';
import { useLanguage } from '../../../../renderer/stores/language.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { german } from '../../../../shared-core/words/de/index.ts';
import { english } from '../../../../shared-core/words/en/index.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';

const aspen = builtInSpecies.find(({ name }) => name === 'Aspen (any)')!;
const species = { ...aspen, version: 1, builtIn: true, isDamaged: false };
const endUse = { ...builtInEndUses[0]!, version: 1, builtIn: true, isDamaged: false };

function open(isDamaged = false) {
  const machine = playMachine({
    'species.list': () => builtInSpecies.map((each) => ({ ...each, version: 1, builtIn: true })),
    'species.edit': () => species,
    'species.add': (added) => ({ ...added, version: 1, builtIn: false }),
    'endUses.edit': () => endUse,
  });
  render(
    <SpeciesForm
      title="Holzart"
      species={{ ...species, isDamaged }}
      start={draftOfSpecies(species)}
      onClose={() => undefined}
    />,
  );
  return { machine, user: userEvent.setup() };
}
const field = (name: string) => screen.getByLabelText<HTMLInputElement>(name);
const save = () => screen.getByRole('button', { name: german['common.save'] });

beforeEach(() => {
  forgetEverything();
  useLanguage.setState({ language: 'de', catalog: german });
});
afterEach(() => {
  cleanup();
  useLanguage.setState({ language: 'en', catalog: english });
});

test('the form of a species shows its texts in German, and saves only what was typed', async () => {
  const { machine, user } = open();
  expect(field(german['species.note']).value).toBe(german[`name:${aspen.note}` as keyof typeof german]);
  expect(field(german['species.name']).value).toBe(german[`name:${aspen.name}` as keyof typeof german]);
  expect(field(german['species.group']).value).toBe(german[`name:${aspen.group}` as keyof typeof german]);
  await user.type(field(german['species.other-names']), ', Espe');
  await user.click(save());
  expect(machine.inputsOf('species.edit')).toEqual([
    { id: aspen.id, basedOn: 1, changed: { aliases: [...aspen.aliases, 'Espe'] } },
  ]);
});

test('a note that was typed over is the person’s own, and a group is the one of that German name', async () => {
  const { machine, user } = open();
  await user.clear(field(german['species.note']));
  await user.type(field(german['species.note']), 'Vom Bach');
  await user.clear(field(german['species.group']));
  await user.type(field(german['species.group']), german['name:Walnuts']!);
  await user.click(save());
  expect(machine.inputsOf('species.edit')).toEqual([
    { id: aspen.id, basedOn: 1, changed: { note: 'Vom Bach', group: 'Walnuts' } },
  ]);
});

test('saved over a damaged record, its texts are the app’s own, too', async () => {
  const { machine, user } = open(true);
  await user.click(save());
  const [edited] = machine.inputsOf('species.edit') as { changed: typeof aspen }[];
  expect(edited!.changed).toMatchObject({ name: aspen.name, note: aspen.note, group: aspen.group });
});

test('the form of a use shows its texts in German, and saves only what was typed', async () => {
  const { machine, user } = open();
  cleanup();
  render(<EndUseForm endUse={endUse} onClose={() => undefined} />);
  expect(field(german['species.note']).value).toBe(german[`name:${endUse.note}` as keyof typeof german]);
  await user.clear(field(german['use.highest']));
  await user.type(field(german['use.highest']), '9');
  await user.click(save());
  expect(machine.inputsOf('endUses.edit')).toEqual([{ id: endUse.id, basedOn: 1, changed: { maxPct: 9 } }]);
});
