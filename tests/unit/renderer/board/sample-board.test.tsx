// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { SampleBoardSection } from '../../../../renderer/features/board/SampleBoardSection.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { SampleBoardState } from '../../../../shared-core/contract/sample-board.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';

const none: SampleBoardState = {
  boardId: 1,
  cuts: [],
  weights: [],
  target: null,
  status: message('weights.no-sections'),
};

const drying: SampleBoardState = {
  ...none,
  cuts: [
    {
      id: 3,
      boardKg: 4.46,
      at: new Date(2026, 4, 9, 12).toISOString(),
      sections: [
        { id: 5, wetGrams: 98.55, dryGrams: 59.2 },
        { id: 6, wetGrams: 86.92, dryGrams: null },
      ],
      excluded: null,
      estimate: null,
    },
  ],
  status: message('weights.sections-drying', { drying: 1, sections: 2 }),
};

const followed: SampleBoardState = {
  boardId: 1,
  cuts: [
    {
      ...drying.cuts[0]!,
      sections: [
        { id: 5, wetGrams: 98.55, dryGrams: 59.2 },
        { id: 6, wetGrams: 86.92, dryGrams: 55.02 },
      ],
      estimate: { ovenDryKg: 2.75, mcWhenCutPct: 62.2, standardErrorPct: 4.2 },
    },
  ],
  weights: [
    { id: 8, kg: 4.14, at: new Date(2026, 5, 9, 12).toISOString(), excluded: null, mcPct: 50.5 },
    {
      id: 9,
      kg: 41.4,
      at: new Date(2026, 6, 9, 12).toISOString(),
      excluded: { text: 'a slip of typing' },
      mcPct: 1405,
    },
  ],
  target: { endUseName: 'Furniture', minKg: 2.915, maxKg: 2.97 },
  status: message('weights.mc-now', { mcPct: 50.5, mcWhenCutPct: 62.2 }),
};

function open(
  state: SampleBoardState,
  more: Parameters<typeof playMachine>[0] = {},
  units: DisplayUnits = 'metric',
) {
  useSettings.setState({ settings: { units } as Settings });
  const machine = playMachine({
    'samples.get': () => state,
    'samples.cut': () => state,
    'samples.drySection': () => state,
    'samples.weigh': () => state,
    'samples.exclude': () => state,
    'samples.include': () => state,
    ...more,
  });
  render(
    <main>
      <SampleBoardSection board={aBoardRow(1)} findings={[aFinding()]} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(() => {
  forgetEverything();
  // A year is shown only where it is not this one.
  vi.setSystemTime(new Date(2026, 8, 20, 12));
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('A board by its weight', () => {
  test('not followed: it shows how to, and takes the sections with the caution of the saw', async () => {
    const { machine, user } = open(none);
    expect(await screen.findByText(/You can follow a board by its weight/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Weigh' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Cut sections' }));
    const dialog = within(screen.getByRole('dialog'));
    expect(dialog.getByText(/A saw can throw short pieces/)).toBeTruthy();
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('samples.cut')).toEqual([]);
    await user.type(dialog.getByLabelText('First section, wet'), '98,55');
    await user.type(dialog.getByLabelText('Second section, wet'), '86.92');
    await user.type(dialog.getByLabelText('Weight of the board'), '4.46');
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('samples.cut')).toEqual([
      { boardId: 1, boardKg: 4.46, wetGrams: [98.55, 86.92], at: expect.stringMatching(/Z$/) },
    ]);
    await expectNoBarriers();
  });

  test('a single section is taken too', async () => {
    const { machine, user } = open(none);
    await user.click(await screen.findByRole('button', { name: 'Cut sections' }));
    await user.type(screen.getByLabelText('First section, wet'), '100');
    await user.type(screen.getByLabelText('Weight of the board'), '3');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('samples.cut')).toEqual([expect.objectContaining({ wetGrams: [100] })]);
  });

  test('a section in the oven is weighed dry, with the caution of the oven', async () => {
    const { machine, user } = open(drying);
    expect(await screen.findByText('1 of 2 sections in the oven. Weigh it when dry.')).toBeTruthy();
    expect(screen.queryByRole('img')).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Weigh dry: section 2 of the cut of May 9' }));
    expect(screen.getByText(/Use gloves or tongs/)).toBeTruthy();
    await user.type(screen.getByLabelText('Oven-dry weight'), '55.02');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('samples.drySection')).toEqual([
      { sectionId: 6, grams: 55.02, at: expect.stringMatching(/Z$/) },
    ]);
    await expectNoBarriers();
  });

  test('followed: its MC, its target weight, and a drawing beside the meter’s averages', async () => {
    open(followed);
    expect(
      await screen.findByText(/^50.5% by weight. It was at 62.2% when the sections were cut./),
    ).toBeTruthy();
    expect(screen.getByText(/Target weight for Furniture: 2.92 kg to 2.97 kg/)).toBeTruthy();
    const drawn = within(screen.getByRole('table', { name: 'Moisture content of OAK-01 by weight' }));
    const rows = drawn.getAllByRole('row').map((row) => [...row.children].map((cell) => cell.textContent));
    // The weight that was excluded is not drawn.
    expect(rows.slice(1)).toEqual([
      ['May 9', '62.2%', '4.46 kg', ''],
      ['Jun 9', '50.5%', '4.14 kg', ''],
      ['Aug 22', '', '', '14.9%'],
    ]);
    const dots = screen
      .getByRole('img', { name: 'Moisture content of OAK-01 by weight' })
      .querySelectorAll('circle');
    expect(dots).toHaveLength(2);
    expect(Number(dots[1]!.getAttribute('cy'))).toBeGreaterThan(Number(dots[0]!.getAttribute('cy')));
    await expectNoBarriers();
  });

  test('weighed in pounds, it is saved in kilograms; the oven is in °F', async () => {
    const { machine, user } = open(followed, {}, 'imperial');
    await user.click(await screen.findByRole('button', { name: 'Weigh' }));
    await user.type(screen.getByLabelText('Weight of the board'), '10');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    // A pound is 0.45359237 kg by definition.
    expect(machine.inputsOf('samples.weigh')).toEqual([
      { boardId: 1, kg: expect.closeTo(4.5359237, 9), at: expect.stringMatching(/Z$/) },
    ]);
    await user.click(screen.getByRole('button', { name: 'Weigh again: section 1 of the cut of May 9' }));
    expect(screen.getByText(/oven at 214°F to 221°F.*It weighed 98.55 g wet/)).toBeTruthy();
  });

  test('a weight is excluded with a reason and included again; an excluded one is struck out and says why', async () => {
    const { machine, user } = open(followed);
    expect(await screen.findByText(/Excluded: a slip of typing/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Include 41.4 kg' }));
    expect(machine.inputsOf('samples.include')).toEqual([{ what: 'weight', id: 9 }]);
    await user.click(screen.getByRole('button', { name: 'Exclude the cut of May 9' }));
    await user.type(screen.getByLabelText('Another reason'), 'sections mixed up');
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Exclude' }));
    expect(machine.inputsOf('samples.exclude')).toEqual([
      { what: 'cut', id: 3, why: { text: 'sections mixed up' } },
    ]);
  });

  test('a refused weight leaves what was typed and shows why', async () => {
    const { user } = open(followed, {
      'samples.weigh': () => {
        throw new Refusal(message('refusal.weighed-to-come'));
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Weigh' }));
    await user.type(screen.getByLabelText('Weight of the board'), '3.2');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByText(/in the future/)).toBeTruthy();
    expect((screen.getByLabelText('Weight of the board') as HTMLInputElement).value).toBe('3.2');
  });

  test('what cannot be loaded shows why', async () => {
    open(none, {
      'samples.get': () => {
        throw fileInUse();
      },
    });
    expect(await screen.findByText(/Another program is using the yard file/)).toBeTruthy();
  });
});
