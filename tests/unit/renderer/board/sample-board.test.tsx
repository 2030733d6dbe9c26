// @vitest-environment jsdom
import '../parts/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SampleBoardSection } from '../../../../renderer/screens/board/SampleBoardSection.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { SampleBoardState } from '../../../../shared-core/contract/sample-board.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';

const none: SampleBoardState = {
  cuts: [],
  weights: [],
  wanted: null,
  sentence: 'No sections were cut beside it, so its mass does not tell its moisture content.',
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
  sentence: '1 of 2 sections is still drying.',
};

const followed: SampleBoardState = {
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
  wanted: { endUseName: 'Furniture', minKg: 2.915, maxKg: 2.97 },
  sentence: 'By its mass it holds 50.5 %, from 62.2 % when the sections were cut.',
};

function open(
  state: SampleBoardState,
  more: Parameters<typeof playMachine>[0] = {},
  units: DisplayUnits = 'metric',
) {
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
      <SampleBoardSection board={aBoardRow(1)} findings={[aFinding()]} units={units} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('A board by its mass', () => {
  test('not followed: it says how it is done, and takes the sections with the caution of the saw', async () => {
    const { machine, user } = open(none);
    expect(await screen.findByText(/its mass alone tells its moisture content/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Weigh the board' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Cut sections' }));
    const dialog = within(screen.getByRole('dialog'));
    expect(dialog.getByText(/thrown by a saw/)).toBeTruthy();
    await user.click(dialog.getByRole('button', { name: 'Keep the masses' }));
    expect(machine.inputsOf('samples.cut')).toEqual([]);
    await user.type(dialog.getByLabelText('First section, wet'), '98,55');
    await user.type(dialog.getByLabelText('Second section, wet'), '86.92');
    await user.type(dialog.getByLabelText('Mass of the board'), '4.46');
    await user.click(dialog.getByRole('button', { name: 'Keep the masses' }));
    expect(machine.inputsOf('samples.cut')).toEqual([
      { boardId: 1, boardKg: 4.46, wetGrams: [98.55, 86.92], at: expect.stringMatching(/Z$/) },
    ]);
    await expectNoBarriers();
  });

  test('a single section is taken too', async () => {
    const { machine, user } = open(none);
    await user.click(await screen.findByRole('button', { name: 'Cut sections' }));
    await user.type(screen.getByLabelText('First section, wet'), '100');
    await user.type(screen.getByLabelText('Mass of the board'), '3');
    await user.click(screen.getByRole('button', { name: 'Keep the masses' }));
    expect(machine.inputsOf('samples.cut')).toEqual([expect.objectContaining({ wetGrams: [100] })]);
  });

  test('a section in the oven is weighed dry, with the caution of the oven', async () => {
    const { machine, user } = open(drying);
    expect(await screen.findByText('1 of 2 sections is still drying.')).toBeTruthy();
    expect(screen.queryByRole('img')).toBeNull();
    await user.click(screen.getByRole('button', { name: 'It is dry: section 2 of the cut of 9 May 2026' }));
    expect(screen.getByText(/use gloves or tongs/)).toBeTruthy();
    await user.type(screen.getByLabelText('Oven-dry mass'), '55.02');
    await user.click(screen.getByRole('button', { name: 'Keep the mass' }));
    expect(machine.inputsOf('samples.drySection')).toEqual([
      { sectionId: 6, grams: 55.02, at: expect.stringMatching(/Z$/) },
    ]);
    await expectNoBarriers();
  });

  test('followed: what it holds, what the scale must show, and a drawing beside the meter’s finding', async () => {
    open(followed);
    expect(await screen.findByText(/By its mass it holds 50.5 %/)).toBeTruthy();
    expect(screen.getByText(/the scale must show 2.92 kg to 2.97 kg/)).toBeTruthy();
    const rows = screen.getAllByRole('row').map((row) =>
      within(row)
        .queryAllByRole('cell')
        .map((cell) => cell.textContent),
    );
    // The weight that was excluded is not drawn.
    expect(rows.slice(1)).toEqual([
      ['9 May 2026', '4.46 kg', '62.2', ''],
      ['9 Jun 2026', '4.14 kg', '50.5', ''],
      ['22 Aug 2026', '', '', '14.9'],
    ]);
    const dots = screen
      .getByRole('img', { name: 'Moisture content of OAK-01 by its mass' })
      .querySelectorAll('circle');
    expect(dots).toHaveLength(2);
    expect(Number(dots[1]!.getAttribute('cy'))).toBeGreaterThan(Number(dots[0]!.getAttribute('cy')));
    await expectNoBarriers();
  });

  test('weighed in pounds, it is kept in kilograms', async () => {
    const { machine, user } = open(followed, {}, 'imperial');
    await user.click(await screen.findByRole('button', { name: 'Weigh the board' }));
    await user.type(screen.getByLabelText('Mass of the board'), '10');
    await user.click(screen.getByRole('button', { name: 'Keep the mass' }));
    // A pound is 0.45359237 kg by definition.
    expect(machine.inputsOf('samples.weigh')).toEqual([
      { boardId: 1, kg: expect.closeTo(4.5359237, 9), at: expect.stringMatching(/Z$/) },
    ]);
  });

  test('a weight is excluded with a reason and included again; an excluded one is struck out and says why', async () => {
    const { machine, user } = open(followed);
    expect(await screen.findByText(/excluded: a slip of typing/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Include 41.4 kg' }));
    expect(machine.inputsOf('samples.include')).toEqual([{ what: 'weight', id: 9 }]);
    await user.click(screen.getByRole('button', { name: 'Exclude the cut of 9 May 2026' }));
    await user.type(screen.getByLabelText('Another reason'), 'sections mixed up');
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Exclude' }));
    expect(machine.inputsOf('samples.exclude')).toEqual([{ what: 'cut', id: 3, why: 'sections mixed up' }]);
  });

  test('a refused mass keeps what was typed and shows the sentence', async () => {
    const { user } = open(followed, {
      'samples.weigh': () => {
        throw new Refusal(message('refusal.weighed-to-come'));
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Weigh the board' }));
    await user.type(screen.getByLabelText('Mass of the board'), '3.2');
    await user.click(screen.getByRole('button', { name: 'Keep the mass' }));
    expect(await screen.findByText(/in the future/)).toBeTruthy();
    expect((screen.getByLabelText('Mass of the board') as HTMLInputElement).value).toBe('3.2');
  });

  test('what cannot be fetched says why', async () => {
    open(none, {
      'samples.get': () => {
        throw fileInUse();
      },
    });
    expect(await screen.findByText(/Another program is using the yard file/)).toBeTruthy();
  });
});
