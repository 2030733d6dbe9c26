import { join } from 'node:path';
import { expect, type Locator, type Page } from '@playwright/test';
import { meterFileOf, meterFileText } from '../../shared-core/contract/meter-file.ts';
import type { ActName } from '../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import type { ActsSeen } from './acts-seen.ts';
import { settled } from './everywhere.ts';
import { excludeButtons, pressRedo, pressUndo, startRound, typeReading } from './walk.ts';

/** How a person does an act, and what on screen comes or goes with it. */
export interface Step {
  act: ActName;
  /** The screen that shows it. */
  at: string;
  /** What it takes before. */
  first?(page: Page): Promise<void>;
  do(page: Page): Promise<void>;
  sign(page: Page): Locator;
  /** By the notice of it, and redone by keys; where nothing is said, the other way round. */
  by?: 'notice';
  /** Undone and redone in the history, where this tells of it: in a round, keys are the value's. */
  line?: string | RegExp;
}

/** Yesterday, at noon. */
const dayBefore = new Date(Math.floor(Date.now() / 86_400_000) * 86_400_000 - 43_200_000);

const dialog = (page: Page): Locator => page.getByRole('dialog');
const press = (on: Page | Locator, name: string | RegExp): Promise<void> =>
  on
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .click();
const pick = async (page: Page, menu: string | RegExp, item: string): Promise<void> => {
  await press(page, menu);
  await page.getByRole('menuitem', { name: item, exact: true }).click();
};
const pickMore = async (reading: Locator, item: string): Promise<void> => {
  await press(reading, /^More for .* reading/);
  await reading.page().getByRole('menuitem', { name: item, exact: true }).click();
};
const open = async (page: Page, path: string): Promise<void> => {
  const address = `${page.url().replace(/#.*/, '')}#/${path}`;
  if (page.url() !== address) await page.goto(address);
};
const field = (on: Page | Locator, label: string | RegExp): Locator =>
  on.getByRole('textbox', { name: label, exact: typeof label === 'string' }).first();
const text = (page: Page, words: string | RegExp): Locator => page.getByRole('main').getByText(words).first();
const row = (page: Page, words: string | RegExp): Locator =>
  page.getByRole('row').filter({ hasText: words }).first();
const choose = (on: Page | Locator, label: string, option: string): Promise<unknown> =>
  on.getByLabel(label, { exact: true }).selectOption(option);
/** What a form saves. */
const save = (page: Page, words = 'Save'): Promise<void> => press(dialog(page), words);
const tab = (page: Page, name: string | RegExp): Promise<void> => page.getByRole('tab', { name }).click();
/** The measured days, which stay open where a step before opened them. */
async function showDays(page: Page): Promise<void> {
  const closed = page.locator('details:not([open]) > summary', { hasText: 'The measured day' });
  if ((await closed.count()) > 0) await closed.click();
}
const soundChoice = (page: Page, level: string): Locator =>
  page.getByRole('group', { name: 'Sounds in a round' }).getByRole('radio', { name: level });
const region = (page: Page, name: string): Locator => page.getByRole('region', { name });

export const steps: readonly Step[] = [
  {
    act: 'stacks.start',
    at: 'stacks',
    do: async (page) => {
      await field(page, 'What do you call this stack?').fill('Oak by the gate');
      await page.getByRole('combobox', { name: 'Species' }).fill('white oak');
      await page.keyboard.press('Enter');
      await field(page, 'Thickness').fill('52');
      await field(page, 'How many boards?').fill('3');
      await press(page, 'Add the stack only');
      await expect(page.getByRole('heading', { level: 1, name: 'Oak by the gate' })).toBeVisible();
    },
    sign: (page) => page.getByRole('link', { name: 'Oak by the gate' }).first(),
  },
  {
    act: 'boards.add',
    at: 'stacks/1',
    do: async (page) => {
      await press(page, 'Add boards');
      await field(dialog(page), 'Thickness').fill('27');
      await save(page, 'Add board');
    },
    sign: (page) => row(page, 'OAK-04'),
    by: 'notice',
  },
  {
    act: 'boards.delete',
    at: 'boards',
    do: async (page) => {
      await open(page, 'boards/4');
      await pick(page, 'More', 'Delete');
      await save(page, 'Delete');
    },
    sign: (page) => row(page, 'OAK-04'),
    by: 'notice',
  },
  {
    act: 'boards.edit',
    at: 'boards/1',
    do: async (page) => {
      await press(page, 'Edit');
      await field(dialog(page), 'Width').fill('210');
      await save(page);
    },
    sign: (page) => text(page, '210 mm'),
    by: 'notice',
  },
  {
    act: 'boards.editTogether',
    at: 'boards',
    do: async (page) => {
      await page.getByRole('checkbox', { name: 'Select all' }).click();
      await press(page, /^Edit/);
      await dialog(page).getByRole('checkbox', { name: 'Thickness' }).check();
      await field(dialog(page), 'Thickness').fill('60');
      await save(page);
    },
    sign: (page) => text(page, '60 mm'),
  },
  {
    act: 'stacks.add',
    at: 'stacks',
    do: async (page) => {
      await press(page, 'Add a stack');
      await field(dialog(page), 'Name').fill('Offcuts');
      await save(page, 'Add stack');
      await expect(page.getByRole('heading', { level: 1, name: 'Offcuts' })).toBeVisible();
    },
    sign: (page) => page.getByRole('link', { name: 'Offcuts' }).first(),
  },
  {
    act: 'stacks.edit',
    at: 'stacks/1',
    do: async (page) => {
      await pick(page, 'More', 'Edit stack');
      await field(dialog(page), 'Name').fill('Oak by the creek');
      await save(page);
    },
    sign: (page) => page.getByRole('heading', { level: 1, name: 'Oak by the creek' }),
  },
  {
    act: 'places.add',
    at: 'places',
    do: async (page) => {
      await press(page, 'Add a place');
      await field(dialog(page), 'Name').fill('Pole shed');
      await save(page, 'Add');
    },
    sign: (page) => page.getByRole('heading', { name: 'Pole shed' }),
  },
  {
    act: 'places.edit',
    at: 'places',
    do: async (page) => {
      await press(page, 'Edit Pole shed');
      await field(dialog(page), 'Name').fill('Long shed');
      await save(page);
    },
    sign: (page) => page.getByRole('heading', { name: 'Long shed' }),
  },
  {
    act: 'air.type',
    at: 'places',
    do: async (page) => {
      await press(page, 'Enter measured air at Long shed');
      await field(dialog(page), 'Temperature').fill('60');
      await field(dialog(page), 'Relative humidity').fill('65');
      await save(page);
    },
    sign: (page) => text(page, /65% humidity/),
    by: 'notice',
  },
  {
    act: 'air.edit',
    at: 'places',
    do: async (page) => {
      await showDays(page);
      await pick(page, /^More: 65% on/, 'Edit');
      await field(dialog(page), 'Relative humidity').fill('68');
      await save(page);
    },
    sign: (page) => text(page, /68% humidity/),
    by: 'notice',
  },
  {
    act: 'air.delete',
    at: 'places',
    do: async (page) => {
      await showDays(page);
      await pick(page, /^More: 68% on/, 'Delete');
      await save(page, 'Delete');
    },
    sign: (page) => text(page, /68% humidity/),
    by: 'notice',
  },
  {
    act: 'boards.move',
    at: 'boards/2',
    do: async (page) => {
      await press(page, 'Move');
      await choose(dialog(page), 'To', 'Long shed');
      await save(page, 'Move');
    },
    sign: (page) => text(page, /Long shed since/),
    by: 'notice',
  },
  {
    act: 'stacks.move',
    at: 'stacks/1',
    do: async (page) => {
      await pick(page, 'More', 'Move stack');
      await choose(dialog(page), 'To', 'Long shed');
      await save(page, 'Move');
    },
    sign: (page) => text(page, /· Long shed/),
    by: 'notice',
  },
  {
    act: 'species.add',
    at: 'species',
    do: async (page) => {
      await press(page, 'Add a species');
      await field(dialog(page), 'Name').fill('Mystery ash');
      await dialog(page).getByRole('combobox', { name: 'Group' }).fill('Ashes');
      await save(page, 'Add');
    },
    sign: (page) => page.getByRole('link', { name: /^Mystery ash/ }),
  },
  {
    act: 'species.edit',
    at: 'species',
    do: async (page) => {
      await page.getByRole('link', { name: /^Mystery ash/ }).click();
      await press(page, 'Edit');
      await field(dialog(page), 'Name').fill('Valley ash');
      await save(page);
    },
    sign: (page) => page.getByRole('link', { name: /^Valley ash/ }),
  },
  {
    act: 'endUses.add',
    at: 'species',
    do: async (page) => {
      await tab(page, 'Uses');
      await press(page, 'Add a use');
      await field(dialog(page), 'Name').fill('Spoons');
      await field(dialog(page), 'Lowest average').fill('8');
      await field(dialog(page), 'Highest average').fill('12');
      await save(page, 'Add');
    },
    sign: (page) => row(page, 'Spoons'),
  },
  {
    act: 'endUses.edit',
    at: 'species',
    do: async (page) => {
      await tab(page, 'Uses');
      await press(page, 'Edit Spoons');
      await field(dialog(page), 'Name').fill('Bowls');
      await save(page);
    },
    sign: (page) => row(page, 'Bowls'),
  },
  {
    act: 'projects.add',
    at: 'dates',
    do: async (page) => {
      await press(page, 'Add a project');
      await field(dialog(page), 'Name').fill('Table');
      await save(page, 'Add a project');
    },
    sign: (page) => region(page, 'Table'),
  },
  {
    act: 'projects.edit',
    at: 'dates',
    do: async (page) => {
      await press(page, 'Edit Table');
      await field(dialog(page), 'Name').fill('Desk');
      await save(page);
    },
    sign: (page) => region(page, 'Desk'),
  },
  {
    act: 'reservations.set',
    at: 'boards/1',
    do: async (page) => {
      await press(page, 'Reserve');
      await choose(dialog(page), 'Project', 'Desk');
      await save(page, 'Reserve');
    },
    sign: (page) => page.getByRole('link', { name: 'Reserved for Desk' }),
    by: 'notice',
  },
  {
    act: 'projects.delete',
    at: 'dates',
    do: (page) => press(page, 'Delete Desk'),
    sign: (page) => region(page, 'Desk'),
    by: 'notice',
  },
  {
    act: 'plannedMoves.add',
    at: 'stacks/1',
    do: async (page) => {
      await pick(page, 'More', 'Plan a move');
      await choose(dialog(page), 'To', 'Outdoors');
      await save(page, 'Plan a move');
    },
    sign: (page) => page.getByRole('link', { name: /^Move to Outdoors planned/ }),
    by: 'notice',
  },
  {
    act: 'plannedMoves.edit',
    at: 'dates',
    do: async (page) => {
      await press(page, /^Edit the planned move/);
      await field(dialog(page), 'Note').fill('With the trailer');
      await save(page);
    },
    sign: (page) => text(page, 'With the trailer'),
  },
  {
    act: 'plannedMoves.make',
    at: 'dates',
    do: (page) => press(page, /^Mark as moved today/),
    sign: (page) => text(page, 'With the trailer'),
    by: 'notice',
  },
  {
    act: 'plannedMoves.delete',
    at: 'dates',
    first: async (page) => {
      await press(page, 'Plan a move');
      await choose(dialog(page), 'To', 'Long shed');
      await save(page, 'Plan a move');
      await expect(text(page, /^Move .* to Long shed/)).toBeVisible();
    },
    do: (page) => press(page, /^Delete the planned move/),
    sign: (page) => text(page, /^Move .* to Long shed/),
    by: 'notice',
  },
  {
    act: 'settings.edit',
    at: 'settings',
    do: (page) => soundChoice(page, 'Off').check(),
    sign: (page) => soundChoice(page, 'Normal').and(page.getByRole('radio', { checked: true })),
  },
  {
    act: 'notes.set',
    at: 'boards/1',
    do: async (page) => {
      await press(page, 'Write a note');
      await field(dialog(page), 'Note').fill('Knot near the end');
      await save(page);
    },
    sign: (page) => text(page, 'Knot near the end'),
  },
  {
    act: 'samples.cut',
    at: 'boards/1?tab=weight',
    do: async (page) => {
      await press(page, 'Cut sections');
      await field(dialog(page), 'First section, wet').fill('42');
      await field(dialog(page), 'Weight of the board').fill('8');
      await save(page);
    },
    sign: (page) => row(page, /42(\.0)?.g wet/),
  },
  {
    act: 'samples.drySection',
    at: 'boards/1?tab=weight',
    do: async (page) => {
      await press(page, /^Weigh dry/);
      await field(dialog(page), 'Oven-dry weight').fill('30');
      await save(page);
    },
    sign: (page) => text(page, /30(\.0)? g oven-dry/),
  },
  {
    act: 'samples.weigh',
    at: 'boards/1?tab=weight',
    do: async (page) => {
      await press(page, 'Weigh');
      await field(dialog(page), 'Weight of the board').fill('7.3');
      await save(page);
    },
    sign: (page) => row(page, /7\.3/),
  },
  {
    act: 'samples.exclude',
    at: 'boards/1?tab=weight',
    do: async (page) => {
      await press(row(page, /7\.3/), /^Exclude/);
      await save(page, 'Wet with rain');
    },
    sign: (page) => text(page, 'Excluded: Wet with rain'),
  },
  {
    act: 'samples.include',
    at: 'boards/1?tab=weight',
    do: (page) => press(row(page, /7\.3/), /^Include/),
    sign: (page) => text(page, 'Excluded: Wet with rain'),
  },
  {
    act: 'ovenChecks.add',
    at: 'species/oak-white',
    do: async (page) => {
      await press(page, 'Add a check');
      await field(dialog(page), 'Mark on the piece').fill('P1');
      await field(dialog(page), 'Readings, in %').fill('12 13');
      await field(dialog(page), 'Wood temperature').fill('20');
      await field(dialog(page), 'Wet weight').fill('33');
      await save(page);
    },
    sign: (page) => row(page, 'P1'),
  },
  {
    act: 'ovenChecks.weigh',
    at: 'species/oak-white',
    do: async (page) => {
      await press(page, 'Weigh P1');
      await field(dialog(page), 'Weight').fill('29');
      await save(page);
    },
    sign: (page) => row(page, /29(\.0)?.g/),
  },
  {
    act: 'ovenChecks.exclude',
    at: 'species/oak-white',
    do: async (page) => {
      await press(page, 'Exclude P1');
      await save(page, 'Knot');
    },
    sign: (page) => row(page, 'Excluded: Knot'),
  },
  {
    act: 'ovenChecks.include',
    at: 'species/oak-white',
    do: (page) => press(page, 'Include P1'),
    sign: (page) => row(page, 'Excluded: Knot'),
  },
  {
    act: 'rounds.start',
    at: 'stacks/1',
    do: async (page) => {
      await page
        .getByRole('link', { name: /^Probe/ })
        .first()
        .click();
      await field(page, 'Wood temperature').fill('18');
      await press(page, 'Start the round');
      await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-01');
    },
    sign: (page) => page.getByRole('link', { name: /^Resume/ }).first(),
  },
  {
    act: 'rounds.setTemperature',
    at: 'round/1',
    do: async (page) => {
      await press(page, /^Wood 18/);
      await field(dialog(page), 'Wood temperature').fill('12');
      await save(page);
    },
    sign: (page) => page.getByRole('button', { name: /^Wood 12/ }),
    line: 'Wood temperature set to 12',
  },
  {
    act: 'rounds.planCore',
    at: 'round/1',
    do: async (page) => {
      await page.keyboard.press('c');
      await dialog(page).getByRole('radio', { name: 'Fresh rip cut' }).check();
      await save(page);
    },
    sign: (page) => text(page, /rip/),
    line: 'Way to read the core chosen',
  },
  {
    act: 'rounds.saveTyped',
    at: 'round/1',
    do: (page) => typeReading(page, '14'),
    sign: (page) => excludeButtons(page).first(),
    line: 'Reading 14% saved on board OAK-01',
  },
  {
    act: 'rounds.undo',
    at: 'round/1',
    do: (page) => press(page, /^Undo last/),
    sign: (page) => excludeButtons(page).first(),
    line: 'A reading of board OAK-01 excluded',
  },
  {
    act: 'readings.exclude',
    at: 'boards/1',
    first: async (page) => {
      await open(page, 'round/1');
      await typeReading(page, '13');
      await expect(excludeButtons(page)).toHaveCount(1);
      await open(page, 'boards/1');
    },
    do: async (page) => {
      await press(page, /^Exclude .* reading/);
      await save(page, 'Wet face');
    },
    sign: (page) => text(page, 'Excluded: Wet face'),
  },
  {
    act: 'readings.include',
    at: 'boards/1',
    do: (page) => press(row(page, 'Wet face'), /^Include/),
    sign: (page) => text(page, 'Excluded: Wet face'),
  },
  {
    act: 'meters.add',
    at: 'meter',
    do: async (page) => {
      await press(page, 'Add a hand meter');
      await save(page);
    },
    sign: (page) => page.getByRole('heading', { name: 'Hand meter', exact: true }),
    by: 'notice',
  },
  {
    act: 'meters.edit',
    at: 'meter',
    do: async (page) => {
      await press(page, 'Edit Hand meter');
      await choose(dialog(page), 'How long are the pins?', '8 mm');
      await save(page);
    },
    sign: (page) => text(page, /^8.mm/),
    by: 'notice',
  },
  {
    act: 'meters.useFile',
    at: 'meter',
    do: async (page) => {
      const file = meterFileText(
        meterFileOf(null, { ...unknownProfile, pins: { lengthMm: 19, insulated: true } }),
      );
      await page
        .getByLabel('Use a meter file for Hand meter', { exact: true })
        .setInputFiles({ name: 'other.meter.json', mimeType: 'application/json', buffer: Buffer.from(file) });
    },
    sign: (page) => text(page, /^19.mm/),
    by: 'notice',
  },
  {
    act: 'readings.setMeter',
    at: 'boards/1',
    do: async (page) => {
      await pickMore(row(page, '13'), 'Details');
      await choose(dialog(page), 'Read with', 'Hand meter');
      await save(page);
    },
    sign: (page) => text(page, /\d.mm deep/),
    by: 'notice',
  },
  {
    act: 'meters.updateEarlier',
    at: 'meter',
    first: async (page) => {
      await press(page, 'Edit Hand meter');
      await choose(dialog(page), 'How long are the pins?', '11 mm');
      await save(page);
      await expect(dialog(page)).toHaveCount(0);
      await expect(page.getByRole('button', { name: 'Use this for it too' })).toBeVisible();
    },
    do: (page) => press(page, 'Use this for it too'),
    sign: (page) => page.getByRole('button', { name: 'Use this for it too' }),
    by: 'notice',
  },
  {
    act: 'readings.setDepth',
    at: 'boards/1',
    do: async (page) => {
      await pickMore(row(page, '13'), 'Change depth');
      await field(dialog(page), 'Pin tips below the face').fill('9');
      await save(page);
    },
    sign: (page) => text(page, /9 mm deep/),
    by: 'notice',
  },
  {
    act: 'readings.correct',
    at: 'boards/1',
    do: async (page) => {
      await press(row(page, '13'), /^Edit .* reading/);
      await field(dialog(page), 'What the meter showed').fill('13.5');
      await save(page);
    },
    sign: (page) => text(page, 'Edited by hand. Was 13%.'),
    by: 'notice',
  },
  {
    act: 'readings.moveToBoard',
    at: 'boards/1',
    do: async (page) => {
      await pickMore(row(page, '13.5'), 'Change board');
      await dialog(page)
        .getByRole('radio', { name: /^OAK-02/ })
        .click();
      await save(page, 'Change board');
    },
    sign: (page) => text(page, 'Moved to OAK-02'),
    by: 'notice',
  },
  {
    act: 'meters.typeFrom',
    at: 'meter',
    first: async (page) => {
      await press(page, 'Add a hand meter');
      await field(dialog(page), 'Name').fill('Spare');
      await save(page);
      await expect(dialog(page)).toHaveCount(0);
    },
    do: (page) => press(page, 'Use for typed readings: Spare'),
    sign: (page) => page.getByRole('button', { name: 'Use for typed readings: Spare' }),
  },
  {
    act: 'meters.delete',
    at: 'meter',
    do: (page) => press(page, 'Delete Spare'),
    sign: (page) => page.getByRole('heading', { name: 'Spare', exact: true }),
    by: 'notice',
  },
  {
    act: 'testBlocks.add',
    at: 'meter',
    do: async (page) => {
      await press(page, 'Add a test block for Hand meter');
      await field(dialog(page), 'It should show').fill('12');
      await save(page);
    },
    sign: (page) => text(page, 'Test block: 12.0%, 0.5 points either way.'),
    by: 'notice',
  },
  {
    act: 'testBlocks.edit',
    at: 'meter',
    do: async (page) => {
      await press(page, 'Edit Test block');
      await field(dialog(page), 'It may be off by').fill('0.4');
      await save(page);
    },
    sign: (page) => text(page, 'Test block: 12.0%, 0.4 points either way.'),
    by: 'notice',
  },
  {
    act: 'meterChecks.add',
    at: 'meter',
    do: async (page) => {
      await press(page, 'Check Hand meter');
      await field(dialog(page), 'The meter shows').fill('13');
      await save(page, 'Save the check');
      await press(dialog(page), 'Close');
    },
    sign: (page) => text(page, '13.0%: off by 1.0 points. It should show 12.0%.'),
  },
  {
    act: 'meterChecks.correct',
    at: 'meter',
    do: (page) => press(page, 'Correct from now on'),
    sign: (page) => text(page, 'Readings are corrected for it.'),
    by: 'notice',
  },
  {
    act: 'meterChecks.exclude',
    at: 'meter',
    do: async (page) => {
      await page.getByText('1 check', { exact: true }).click();
      await press(page, /^Exclude the check of/);
      await press(dialog(page), 'Not on the block');
    },
    sign: (page) => text(page, 'Excluded: Not on the block'),
    by: 'notice',
  },
  {
    act: 'meterChecks.include',
    at: 'meter',
    do: (page) => press(page, /^Include the check of/),
    sign: (page) => text(page, 'Excluded: Not on the block'),
    by: 'notice',
  },
  {
    act: 'testBlocks.close',
    at: 'meter',
    do: (page) => press(page, 'Remove Test block'),
    sign: (page) => text(page, 'Test block: 12.0%, 0.4 points either way.'),
    by: 'notice',
  },
  {
    act: 'rounds.finish',
    at: 'round/1',
    do: async (page) => {
      await press(page, 'Finish');
      await save(page, 'Finish the round');
    },
    sign: (page) => page.getByRole('heading', { name: 'Board by board' }),
    line: /^Round of stack .* finished/,
  },
  {
    act: 'rounds.edit',
    at: 'round/1',
    do: async (page) => {
      await press(page, /^Change the date/);
      await page.getByRole('spinbutton', { name: /year/ }).focus();
      await page.keyboard.type(`${dayBefore.toISOString().slice(0, 10).replaceAll('-', '')}0900a`);
      await save(page);
    },
    sign: (page) => text(page, new RegExp(`Probed \\w+\\.? ${dayBefore.getUTCDate()}\\b`)),
    by: 'notice',
  },
  {
    act: 'rounds.reopen',
    at: 'round/1',
    do: (page) => press(page, 'Reopen'),
    sign: (page) => page.getByRole('heading', { name: 'Board by board' }),
    line: /^Round of stack .* reopened/,
  },
  {
    act: 'boards.bringBack',
    at: 'boards/2',
    first: async (page) => {
      await pick(page, 'More', 'Mark as sold');
      await save(page, 'Mark as sold');
      await expect(text(page, /^Sold on/)).toBeVisible();
    },
    do: async (page) => {
      await press(page, 'Bring back');
      await save(page, 'Bring back');
    },
    sign: (page) => text(page, /^Sold on/),
    by: 'notice',
  },
  {
    act: 'pictures.add',
    at: 'boards/3',
    do: async (page) => {
      const asked = page.waitForEvent('filechooser');
      await press(page, 'Add pictures');
      await (await asked).setFiles(join(import.meta.dirname, '../unit/pictures/files/board-end.jpg'));
    },
    sign: (page) => page.getByRole('button', { name: /^Picture 1 of/ }),
    by: 'notice',
  },
  {
    act: 'pictures.edit',
    at: 'boards/3',
    do: async (page) => {
      await press(page, /^Picture 1 of/);
      await press(dialog(page), 'Edit caption');
      await page.keyboard.type('Blue stain');
      await page.keyboard.press('Enter');
      await expect(dialog(page).getByRole('figure')).toContainText('Blue stain');
      await page.keyboard.press('Escape');
    },
    sign: (page) => page.getByRole('button', { name: 'Blue stain' }),
  },
  {
    act: 'meters.close',
    at: 'meter',
    do: (page) => pick(page, 'More: Hand meter', 'Remove'),
    sign: (page) => page.getByRole('heading', { name: 'Hand meter', exact: true }),
    by: 'notice',
  },
];

/** In the demo yard: what takes a meter, oven checks that are worth using, or a stack that was probed. */
export const demoSteps: readonly Step[] = [
  {
    act: 'sensors.add',
    at: 'places',
    do: async (page) => {
      await press(page, 'Add a sensor at Shop');
      await choose(dialog(page), 'Sensor', 'Simulated hygrometer');
      await save(page, 'Add a sensor');
    },
    sign: (page) => text(page, 'Simulated hygrometer'),
    by: 'notice',
  },
  {
    act: 'air.exclude',
    at: 'places',
    do: async (page) => {
      await showDays(page);
      await press(page, /^Exclude /);
      await save(page, 'Exclude');
    },
    sign: (page) => text(page, /^1 day excluded/),
    by: 'notice',
  },
  {
    act: 'air.include',
    at: 'places',
    do: async (page) => {
      await showDays(page);
      await press(page, /^Include /);
      await save(page, 'Include');
    },
    sign: (page) => text(page, /^1 day excluded/),
    by: 'notice',
  },
  {
    act: 'sensors.edit',
    at: 'places',
    do: async (page) => {
      await pick(page, 'More: Simulated hygrometer', 'Rename');
      await field(dialog(page), 'Name').fill('North wall');
      await save(page);
    },
    sign: (page) => text(page, 'North wall'),
  },
  {
    act: 'sensors.move',
    at: 'places',
    do: async (page) => {
      await pick(page, 'More: North wall', 'Move');
      await choose(dialog(page), 'Place', 'Bench room');
      await save(page, 'Move');
    },
    sign: (page) => page.getByRole('list', { name: 'Sensors at Bench room' }),
    by: 'notice',
  },
  {
    act: 'sensors.remove',
    at: 'places',
    do: async (page) => {
      await pick(page, 'More: North wall', 'Remove');
      await save(page, 'Remove');
    },
    sign: (page) => text(page, 'North wall'),
    by: 'notice',
  },
  {
    act: 'ovenChecks.useFit',
    at: 'species/pine-eastern-white',
    do: (page) => press(page, 'Use them'),
    sign: (page) => page.getByRole('button', { name: 'Stop using them' }),
  },
  {
    act: 'boards.confirmSpecies',
    at: 'boards/4',
    // Elm reads some 3% lower than walnut, which has no curve.
    first: async (page) => {
      await press(page, 'Edit');
      await dialog(page).getByRole('combobox', { name: 'Species' }).fill('american elm');
      await page.keyboard.press('Enter');
      await save(page);
      await expect(dialog(page)).toHaveCount(0);
      await enterPage(page, ['20', '20.3', '19.8', '20.1', '20.2', '19.9']);
      await open(page, 'boards/4');
      await expect(page.getByRole('button', { name: /^Confirm/ })).toBeVisible({ timeout: 20_000 });
    },
    do: (page) => press(page, /^Confirm/),
    sign: (page) => page.getByRole('button', { name: /^Confirm/ }),
  },
  {
    act: 'rounds.saveLive',
    at: 'boards/1',
    first: async (page) => {
      await open(page, 'settings');
      await page.getByRole('checkbox', { name: /settle/ }).uncheck();
      await open(page, 'meter');
      await press(page, /simulated/);
      await startRound(page, 'Walnut from the lane', 9);
      await open(page, 'boards/1');
    },
    do: async (page) => {
      await open(page, 'stacks/1');
      await page
        .getByRole('link', { name: /^Resume/ })
        .first()
        .click();
      await expect(page.getByText('Pins out')).toBeVisible();
      await expect(page.getByText('Pins out')).toBeHidden();
      await press(page, /^Save now/);
    },
    sign: (page) => row(page, 'Saved at once'),
  },
];

/** Types yesterday's page of the first stack: one value a board, the same at every spot. */
async function enterPage(page: Page, values: readonly string[]): Promise<void> {
  await open(page, 'past-round/1');
  await page.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type(dayBefore.toISOString().slice(0, 10).replaceAll('-', ''));
  await field(page, 'Wood temperature').fill('14');
  await page
    .getByRole('textbox', { name: /, reading 1:/ })
    .first()
    .focus();
  await page.evaluate(
    (text) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text', text);
      const pasted = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
      document.activeElement?.dispatchEvent(pasted);
    },
    values.map((value) => Array(4).fill(value).join('\t')).join('\n'),
  );
  await press(page, /^Save \d+ readings/);
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
}

/** Undoes or redoes an act in the list of all. */
async function inHistory(page: Page, line: string | RegExp, name: 'Undo' | 'Redo'): Promise<void> {
  await open(page, 'history');
  await press(row(page, line), new RegExp(`^${name}: `));
  await expect(row(page, line)).toContainText(name === 'Undo' ? 'Redo' : 'Undo');
}

/** Does an act, undoes it and redoes it, and looks for its sign each time. */
export async function doUndoRedo(
  page: Page,
  acts: ActsSeen,
  { act, at, by, line, ...step }: Step,
): Promise<void> {
  const show = async (): Promise<void> => {
    await open(page, at);
    await settled(page);
  };
  await show();
  await step.first?.(page);
  const sign = step.sign(page);
  const isBefore = await sign.isVisible();
  const shows = (isDone: boolean) =>
    expect(sign, isDone ? 'done' : 'undone').toBeVisible({ visible: isDone !== isBefore });
  await step.do(page);
  await expect.poll(() => acts.newest()).toMatchObject({ name: act, isUndone: false });
  await expect(dialog(page)).toHaveCount(0);
  if (by === 'notice') {
    await page.getByRole('status').getByRole('button', { name: 'Undo', exact: true }).last().click();
    await show();
    await shows(false);
    await pressRedo(page);
  } else if (line !== undefined) {
    await shows(true);
    await inHistory(page, line, 'Undo');
    await show();
    await shows(false);
    await inHistory(page, line, 'Redo');
    await show();
  } else {
    await show();
    await shows(true);
    await pressUndo(page);
    await shows(false);
    await page.getByRole('status').getByRole('button', { name: 'Redo', exact: true }).last().click();
  }
  await shows(true);
  await expect.poll(() => acts.newest()).toMatchObject({ name: act, isRedone: true });
}
