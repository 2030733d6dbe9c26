// @vitest-environment jsdom
import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { typeDay } from '../form/type-day.ts';
import { forgetEverything } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';
import { found, openBoard } from './open-board.tsx';

const known: Partial<BoardRow> = {
  thicknessMm: 27,
  widthMm: 210,
  lengthMm: 2440,
  sawnOn: '2025-10-01',
  sawing: 'flat',
  ringRadiusMm: 140,
  barkSide: 'down-bark-on',
  log: 'Ridge',
  layer: 1,
  column: 2,
};

/** The form of a board, and what it has sent. */
async function openForm(
  units: DisplayUnits,
  more: Partial<BoardRow> = {},
  /** What another window saved meanwhile. */
  meanwhile: Partial<BoardRow> | null = null,
) {
  const board = aBoardRow(1, { ...known, ...more });
  const edit = () => {
    if (meanwhile) throw new Conflict({ ...board, ...meanwhile, version: 2 });
    return board;
  };
  const { machine, user } = openBoard({ ...found, board }, { 'boards.edit': edit }, { units });
  await user.click(await screen.findByRole('button', { name: 'Edit' }));
  const form = within(await screen.findByRole('dialog'));
  await form.findByLabelText('Thickness');
  const type = async (label: string, text: string) => {
    await user.clear(form.getByLabelText(label));
    if (text !== '') await user.type(form.getByLabelText(label), text);
  };
  const save = async () => {
    await user.click(form.getByRole('button', { name: 'Save' }));
    return (machine.inputsOf('boards.edit') as { changed: Partial<BoardRow> }[])[0]?.changed;
  };
  return { form, type, save, user };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('A board in its form', () => {
  test.each(['metric', 'imperial'] as const)(
    'opened and saved untouched in %s units stays exactly as it was: only what is shown is rounded',
    async (units) => {
      const { save } = await openForm(units);
      expect(await save()).toBeUndefined();
      expect(screen.queryByRole('dialog')).toBeNull();
    },
  );

  test('its sizes are written as its page shows them', async () => {
    const { form } = await openForm('imperial', { thicknessMm: 29 });
    const shown = (label: string) => form.getByLabelText<HTMLInputElement>(label).value;
    expect(['Thickness', 'Width', 'Length'].map(shown)).toEqual(['1 1/8', '8 1/4', '8']);
  });

  describe('given an earlier sawing date', () => {
    const sawn = async (datedBy: 'clock' | 'day') => {
      const board = aBoardRow(1, { ...known, sawnOn: null });
      const [first] = found.moves;
      const moves = [{ ...first!, datedBy }];
      const { machine, user } = openBoard({ ...found, board, moves }, { 'boards.edit': () => board });
      await user.click(await screen.findByRole('button', { name: 'Edit' }));
      await typeDay(user, 'Sawn on', '2025-10-01');
      return { machine, user };
    };

    test('is asked whether it has been here since, where it is here since it was entered', async () => {
      const { machine, user } = await sawn('clock');
      const question = screen.getByRole('group', { name: 'Has it been here since it was sawn?' });
      expect(within(question).getByLabelText(/^No, since Mar 3/)).toBeTruthy();
      await user.click(screen.getByRole('button', { name: 'Save' }));
      expect(await screen.findByText('Say whether it has been here since it was sawn.')).toBeTruthy();
      expect(machine.inputsOf('boards.edit')).toEqual([]);
      await user.click(within(question).getByLabelText('Yes'));
      await user.click(screen.getByRole('button', { name: 'Save' }));
      expect(machine.inputsOf('boards.edit')).toMatchObject([
        { changed: { sawnOn: '2025-10-01', hereSinceOn: '2025-10-01' } },
      ]);
    });

    test('is asked nothing where a person gave the day it came', async () => {
      const { machine, user } = await sawn('day');
      await user.click(screen.getByRole('button', { name: 'Save' }));
      expect(machine.inputsOf('boards.edit')).toEqual([
        { id: 1, basedOn: 1, changed: { sawnOn: '2025-10-01' } },
      ]);
    });
  });

  test('a sawing date after its first move is saved once its log was there, and that is told with Undo', async () => {
    const board = aBoardRow(1, known);
    const asks = message('refusal.sawn-after-move', {
      boardCode: board.code,
      placeName: 'Shed',
      movedOn: '2025-09-01',
    });
    const { machine, user } = openBoard(
      { ...found, board },
      {
        'boards.edit': ({ changed }) => {
          if (!changed.isBeforeSawing) throw new Refusal(asks);
          return { ...board, sawnOn: '2025-10-12', version: 2 };
        },
      },
      { units: 'metric' },
    );
    await user.click(await screen.findByRole('button', { name: 'Edit' }));
    const form = within(await screen.findByRole('dialog'));
    await typeDay(user, 'Sawn on', '2025-10-12');
    await user.click(form.getByRole('button', { name: 'Save' }));
    await user.click(await form.findByRole('button', { name: 'Yes, it was a log then' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('boards.edit')).toMatchObject([
      { changed: { sawnOn: '2025-10-12' } },
      { changed: { sawnOn: '2025-10-12', isBeforeSawing: true } },
    ]);
    expect(useNotices.getState().notices).toMatchObject([
      { kind: 'done', sentence: `${board.code} changed.` },
    ]);
  });

  test('a board with readings says why it is not deleted, and what to do instead', async () => {
    const { id: boardId } = found.board;
    const { user } = openBoard({ ...found, readings: found.readings.map((each) => ({ ...each, boardId })) });
    await user.click(await screen.findByRole('button', { name: 'More' }));
    await user.click(await screen.findByRole('menuitem', { name: 'Delete' }));
    const dialog = within(await screen.findByRole('dialog'));
    expect(dialog.getByText('It has readings, and these stay on record.')).toBeDefined();
    await user.click(dialog.getByRole('button', { name: 'Mark as scrapped' }));
    expect((await screen.findByRole('dialog')).textContent).toMatch(/scrapped/i);
  });

  test('a person says that it came from a kiln', async () => {
    const { form, save, user } = await openForm('metric');
    await user.selectOptions(form.getByLabelText('Before it came here'), 'Dried in a kiln or drier air');
    expect(await save()).toEqual({ driedBy: 'kiln' });
  });

  test('its page says that it came from a kiln', async () => {
    openBoard({ ...found, board: aBoardRow(1, { driedBy: 'kiln' }) }, {}, { tab: 'about' });
    expect(await screen.findByText('Dried in a kiln or drier air')).toBeTruthy();
  });

  test('a size typed in inches is saved in mm, and no other with it', async () => {
    const { type, save } = await openForm('imperial');
    await type('Thickness', '1 1/8');
    // 1 in = 25.4 mm exactly, by definition.
    expect(await save()).toEqual({ thicknessMm: expect.closeTo(28.575, 9) });
  });

  test('a board cannot be sawn on a day still to come, and nothing is saved', async () => {
    const { form, save, user } = await openForm('metric');
    await typeDay(user, 'Sawn on', '2999-03-10');
    expect(await save()).toBeUndefined();
    expect(form.getByText(/^No later than /)).toBeTruthy();
  });

  test('what is left blank is unknown, never zero', async () => {
    const { type, save } = await openForm('metric');
    for (const label of ['Width', 'Length', 'Layer', 'Column', 'Distance from pith', 'Log']) {
      await type(label, '');
    }
    expect(await save()).toEqual({
      widthMm: null,
      lengthMm: null,
      layer: null,
      column: null,
      ringRadiusMm: null,
      log: '',
    });
  });

  test.each([
    [
      'metric',
      {
        ID: ['OAK 7', 'A board ID has up to 16 letters, digits, and hyphens, like OAK-07.'],
        Thickness: ['500', 'At most 400 mm.'],
        Width: ['wide', '“wide” is not a length. Type it like 27 mm or 5/4.'],
        Length: ['0.01', 'At least 5 cm.'],
        'Distance from pith': ['4', 'At least 5 mm.'],
        Layer: ['1.5', 'Type a whole number.'],
        Column: ['101', 'At most 100.'],
      },
    ],
    [
      'imperial',
      {
        Thickness: ['20', 'At most 15 3/4 in.'],
        Width: ['wide', '“wide” is not a length. Type it like 1 1/16 in or 5/4.'],
        Length: ['0.1', 'At least 2 in.'],
      },
    ],
    ['metric', { Thickness: ['', 'Type the thickness. It sets how deep the pins go.'] }],
  ] as const)(
    'in %s units, says at each field what is wrong with it, and saves nothing',
    async (units, wrong) => {
      const { form, type, save } = await openForm(units);
      for (const [label, [typed]] of Object.entries(wrong)) await type(label, typed);
      expect(await save()).toBeUndefined();
      for (const [label, [, sentence]] of Object.entries(wrong)) {
        const field = form.getByLabelText(label).closest('.field') as HTMLElement;
        expect(within(field).getByText(sentence)).toBeTruthy();
      }
    },
  );

  test.each([
    ['Width', '-3', '“-3” is not a length. Type it like 1 1/16 in or 5/4.'],
    ['Width', '1e309', '“1e309” is not a length. Type it like 1 1/16 in or 5/4.'],
    ['Width', '900', 'At most 118 1/8 in.'],
    ['Length', '7 ft 99 in', '“7 ft 99 in” is not a length. Type it like 7 ft 10 in.'],
    ['Layer', '1.5', 'Type a whole number.'],
  ])('says what is wrong with a %s of %s once its field is left', async (label, typed, sentence) => {
    const { form, type, user } = await openForm('imperial');
    await type(label, typed);
    await user.tab();
    expect(form.getByText(sentence)).toBeTruthy();
  });

  test.each([
    [{ thicknessMm: 27 }, '27 mm'],
    [{ thicknessMm: 31.75, thicknessQuarters: 5 }, '5/4'],
  ])(
    'edited in two windows, each field that both changed shows what was saved: %o',
    async (thickness, saved) => {
      const { form, type, save, user } = await openForm(
        'metric',
        {},
        { ...thickness, note: 'Wane', widthMm: 200, log: '', sawing: 'flat', sawnOn: null },
      );
      await type('Thickness', '8/4');
      await type('Note', 'Wane');
      await type('Log', 'Lane');
      await user.selectOptions(form.getByLabelText('Sawing'), 'Quarter-sawn');
      await save();
      const described = form
        .getAllByText(/^Saved meanwhile/)
        .map((text) => [text.closest('.field')?.firstElementChild?.textContent, text.textContent]);
      expect(described).toEqual([
        ['Thickness', `Saved meanwhile: ${saved}`],
        ['Log', 'Saved meanwhile: (blank)'],
        ['Sawing', 'Saved meanwhile: Flat-sawn'],
      ]);
      expect(document.activeElement).toBe(form.getByLabelText('Thickness'));
    },
  );

  test('edited alike in two windows, it is saved', async () => {
    const { type, save } = await openForm('metric', {}, { note: 'Wane' });
    await type('Note', 'Wane');
    await save();
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  // 1 in = 25.4 mm exactly, by definition.
  test.each([
    ['8/4', 50.8, 8],
    ['5/4', 31.75, 5],
    ['3/4', 19.05, null],
    ['54 mm', 54, null],
    ['2 1/8 in', 53.975, null],
  ])('of a thickness typed as %s is %f mm, quarters: %s', async (typed, thicknessMm, thicknessQuarters) => {
    const { type, save } = await openForm('metric');
    await type('Thickness', typed);
    expect(await save()).toEqual({
      thicknessMm: expect.closeTo(thicknessMm, 9),
      ...(thicknessQuarters !== null && { thicknessQuarters }),
    });
  });

  test.each([
    [{ thicknessMm: 50.8, thicknessQuarters: 8 }, 'metric', '8/4'],
    [{ thicknessMm: 50.8, thicknessQuarters: 8 }, 'imperial', '8/4'],
    [{ thicknessMm: 54, thicknessQuarters: null }, 'imperial', '2 1/8'],
    [{ thicknessMm: 53.975, thicknessQuarters: null }, 'imperial', '2 1/8'],
    [{ thicknessMm: 9.5, thicknessQuarters: null }, 'metric', '9.5'],
  ] as const)('%o in %s units is "%s" in its field', async (thickness, units, text) => {
    const { form } = await openForm(units, thickness);
    expect(form.getByLabelText('Thickness')).toHaveProperty('value', text);
  });

  test.each(['54', '2 in'])('given as 8/4 and then changed to %s is no longer 8/4', async (typed) => {
    const { type, save } = await openForm('metric', { thicknessMm: 50.8, thicknessQuarters: 8 });
    await type('Thickness', typed);
    expect(await save()).toMatchObject({ thicknessQuarters: null });
  });
});
