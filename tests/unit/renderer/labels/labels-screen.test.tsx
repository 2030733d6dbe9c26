// @vitest-environment jsdom

import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LabelsScreen } from '../../../../renderer/features/labels/LabelsScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { useYard } from '../../../../renderer/stores/yard.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { Archived } from '../../../../shared-core/contract/archive.ts';
import type { LabelBoard } from '../../../../shared-core/contract/requests/labels.ts';
import { type Settings, usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';
import type { LabelContent } from '../../../../shared-core/labels/label.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import '../ui/drawing-room.ts';
import { type Found, found } from '../board/open-board.tsx';
import { aBoardRow, aFinding, aStack } from '../stacks/a-yard.ts';

const aLabelBoard = (number: number, more: Partial<LabelBoard> = {}): LabelBoard => ({
  id: number,
  code: `OAK-0${number}`,
  speciesName: 'Northern red oak',
  call: 'keep-drying',
  label: 'none',
  ...more,
});

const boards: LabelBoard[] = [
  aLabelBoard(1, { call: 'ready', label: 'outdated' }),
  aLabelBoard(2),
  aLabelBoard(3, { label: 'current' }),
  aLabelBoard(4, { call: null }),
];

const contentOf = ({ code, speciesName, call }: LabelBoard): LabelContent => ({
  code,
  speciesName,
  thickness: { thicknessMm: 27, quarters: null },
  widthMm: null,
  lengthMm: 2400,
  endUseName: 'Furniture',
  latest: call && aFinding({ call }),
  targetRange: { minPct: 6, maxPct: 8 },
  stackName: 'North stack',
  placeName: 'Shed',
  log: '',
  sawnOn: null,
});

function open(boardIds: number[] = [], more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'stacks.list': () => [aStack()],
    'labels.boards': ({ search }) => {
      const found = boards.filter(({ code }) => code.includes(search));
      return { total: found.length, boards: found };
    },
    'labels.contents': (input) =>
      input.boardIds.map((id) => {
        const board = boards.find((each) => each.id === id);
        return board ? contentOf(board) : null;
      }),
    'labels.pdf': () => ({ pdfBase64: btoa('%PDF-1.7'), fileName: 'labels-2026-11-25.pdf' }),
    'labels.recordPrint': () => ({}),
    'printers.list': () => ({ printers: null, chosen: {} }),
    'boards.get': () => {
      throw new Refusal(message('refusal.not-found', { what: 'board' }));
    },
    ...more,
  });
  render(
    <main>
      <LabelsScreen boardIds={boardIds} stackId={null} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

const answerSettings = (changed: Partial<Settings>): Settings => ({
  ...useSettings.getState().settings,
  ...changed,
});

/** With a label for every board of the list. */
async function openWithAll(more: Parameters<typeof playMachine>[0] = {}) {
  const opened = open([], more);
  await opened.user.click(await screen.findByRole('button', { name: 'All (4)' }));
  await screen.findByText('4 labels on 1 page.');
  return opened;
}

beforeEach(() => {
  forgetEverything();
  useSettings.setState({
    settings: { ...usualSettings, units: 'metric' },
  });
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

test('calls that are still being made are named, and asked about before they go on paper', async () => {
  const { machine, user } = await openWithAll({ 'stacks.list': () => [aStack({ isForecasting: true })] });
  expect(await screen.findByText('Updating calls and dates …')).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Save as PDF' }));
  const dialog = within(screen.getByRole('dialog', { name: 'Calls are being updated' }));
  await expectNoBarriers();
  expect(machine.inputsOf('labels.pdf')).toEqual([]);
  await user.click(dialog.getByRole('button', { name: 'Save as PDF anyway' }));
  expect(screen.queryByRole('dialog')).toBeNull();
  expect(machine.inputsOf('labels.pdf')).toHaveLength(1);
});

test('says that the preview is being made until it is there, and prints nothing before', async () => {
  let answer = (_: LabelContent[]): void => undefined;
  const contents = new Promise<LabelContent[]>((resolve) => {
    answer = resolve;
  });
  open([1, 2], { 'labels.contents': () => contents });
  const waiting = await screen.findByText('Making the preview …');
  expect(waiting.getAttribute('role')).toBe('status');
  expect([isOff('Print'), isOff('Save as PDF')]).toEqual([true, true]);
  answer(boards.slice(0, 2).map(contentOf));
  await screen.findByText('2 labels on 1 page.');
  expect(screen.queryByText('Making the preview …')).toBeNull();
});

/** The IDs on the preview, in reading order. */
const previewed = () =>
  [...screen.getByRole('img', { name: /^Preview/ }).querySelectorAll('text')]
    .map((text) => text.textContent)
    .filter((text) => text?.startsWith('OAK-'));

const isOff = (name: string) => screen.getByRole<HTMLButtonElement>('button', { name }).disabled;

describe('Choosing boards for labels', () => {
  test('none is chosen to begin with, and there is nothing to print', async () => {
    open();
    expect(await screen.findByText('No boards chosen. Choose a board to see its label.')).toBeTruthy();
    const boxes = await screen.findAllByRole<HTMLInputElement>('checkbox', { name: /OAK/ });
    expect(boxes.map(({ checked }) => checked)).toEqual([false, false, false, false]);
    expect([isOff('Print'), isOff('Save as PDF')]).toEqual([true, true]);
    await expectNoBarriers();
  });

  test('all at one press, and the preview shows them as they will be printed', async () => {
    await openWithAll();
    expect(previewed()).toEqual(['OAK-01', 'OAK-02', 'OAK-03', 'OAK-04']);
    await expectNoBarriers();
  });

  test.each([
    ['Ready (1)', ['OAK-01']],
    ['Keep drying (2)', ['OAK-02', 'OAK-03']],
    ['No call yet (1)', ['OAK-04']],
    ['Label out of date (1)', ['OAK-01']],
    ['New or changed since printed (3)', ['OAK-01', 'OAK-02', 'OAK-04']],
  ])('"%s" chooses those and no others', async (name, codes) => {
    const { user } = await openWithAll();
    await user.click(screen.getByRole('button', { name }));
    await vi.waitFor(() => expect(previewed()).toEqual(codes));
  });

  test('of more boards than can be printed at once, that is said first, and those of one call can be had', async () => {
    const { machine, user } = open([], {
      'labels.boards': ({ filter }) => {
        const ofCall = boards.filter(({ call }) => filter === null || call === filter);
        return { total: filter === null ? 100_000 : ofCall.length, boards: ofCall };
      },
    });
    const sentence = await screen.findByText(
      'These are the first 4 of 100,000 boards. Choose a stack or a call to see the others.',
    );
    const all = screen.getByRole('button', { name: 'All (4)' });
    expect(sentence.compareDocumentPosition(all)).toBe(Node.DOCUMENT_POSITION_FOLLOWING);
    await user.click(screen.getByRole('radio', { name: 'Ready' }));
    expect(document.activeElement).toBe(screen.getByRole('radio', { name: 'Ready' }));
    await user.click(await screen.findByRole('button', { name: 'All (1)' }));
    await vi.waitFor(() => expect(previewed()).toEqual(['OAK-01']));
    expect(machine.inputsOf('labels.boards').at(-1)).toMatchObject({ filter: 'ready' });
    await user.click(screen.getByRole('radio', { name: 'Too dry' }));
    expect(await screen.findByText('No boards found.')).toBeTruthy();
    await user.click(screen.getByRole('radio', { name: 'All' }));
    expect(await screen.findByRole('button', { name: 'All (4)' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('one by one, and none again', async () => {
    const { user } = open();
    await user.click(await screen.findByRole('checkbox', { name: /OAK-03/ }));
    await user.click(screen.getByRole('checkbox', { name: /OAK-02/ }));
    expect(await screen.findByText('2 labels on 1 page.')).toBeTruthy();
    await vi.waitFor(() => expect(previewed()).toEqual(['OAK-02', 'OAK-03']));
    await user.click(screen.getByRole('button', { name: 'Select none' }));
    expect(screen.getByText('No boards chosen. Choose a board to see its label.')).toBeTruthy();
    // A button that turned itself off would lose the focus to the page.
    expect(isOff('Select none')).toBe(false);
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Select none' }));
  });

  test('what was chosen stays chosen while others are searched for', async () => {
    const { user } = open();
    await user.click(await screen.findByRole('checkbox', { name: /OAK-03/ }));
    await user.type(await screen.findByLabelText('Find a board'), '04');
    await vi.waitFor(() => expect(screen.getAllByRole('checkbox', { name: /OAK/ })).toHaveLength(1));
    await user.click(screen.getByRole('checkbox', { name: /OAK-04/ }));
    await vi.waitFor(() => expect(previewed()).toEqual(['OAK-03', 'OAK-04']));
  });

  test('boards chosen elsewhere come along', async () => {
    open([2, 3]);
    expect(await screen.findByText('2 labels on 1 page.')).toBeTruthy();
    await vi.waitFor(() => expect(previewed()).toEqual(['OAK-02', 'OAK-03']));
  });

  test('a board whose label is out of date says so', async () => {
    open();
    const row = await screen.findByRole('row', { name: /OAK-01/ });
    expect(row.textContent).toContain('Northern red oak · Ready Label out of date');
  });

  test('a board that is not in the yard is said so, and the others are printed', async () => {
    const { machine, user } = open([99, 2]);
    expect(await screen.findByText('1 chosen board is not in this yard.')).toBeTruthy();
    expect(await screen.findByText('1 label on 1 page.')).toBeTruthy();
    expect(screen.getByText('1 board chosen')).toBeTruthy();
    await vi.waitFor(() => expect(isOff('Save as PDF')).toBe(false));
    URL.createObjectURL = vi.fn(() => 'blob:labels');
    await user.click(screen.getByRole('button', { name: 'Save as PDF' }));
    expect(machine.inputsOf('labels.pdf')).toMatchObject([{ boardIds: [2] }]);
  });

  test('a board that was cut or left is told with what it became, or when it left', async () => {
    const gone = (id: number, archived: Archived, becameOf: Found['becameOf']): Found => ({
      ...found,
      board: aBoardRow(id, { archived }),
      becameOf,
    });
    const at = new Date(2026, 4, 9, 12).toISOString();
    const pieces = ['OAK-98-1', 'OAK-98-2'].map((code, index) => ({
      boardId: 200 + index,
      code,
      how: 'ripped' as const,
      at,
    }));
    open([97, 98, 2], {
      'boards.get': ({ id }) =>
        id === 98
          ? gone(id, { code: 'ripped', note: '', at }, pieces)
          : gone(id, { code: 'sold', note: '', at }, []),
    });
    expect(
      await screen.findByText(
        /^OAK-97 left the yard on May 9.*\. OAK-98 was ripped into OAK-98-1 and OAK-98-2\.$/,
      ),
    ).toBeTruthy();
    expect(await screen.findByText('1 label on 1 page.')).toBeTruthy();
  });

  test('one whose import was undone did not leave: it is not in the yard', async () => {
    const at = new Date(2026, 4, 9, 12).toISOString();
    const board = aBoardRow(98, { archived: { code: 'undone', note: '', at } });
    open([98, 2], { 'boards.get': () => ({ ...found, board }) });
    expect(await screen.findByText('1 chosen board is not in this yard.')).toBeTruthy();
    expect(screen.queryByText(/left the yard/)).toBeNull();
  });

  test('where none of them is in the yard, none is chosen', async () => {
    open([98, 99]);
    expect(await screen.findByText('2 chosen boards are not in this yard.')).toBeTruthy();
    expect(screen.getByText('No boards chosen')).toBeTruthy();
    expect(screen.queryByText(/on 0 pages/)).toBeNull();
  });

  test('a yard that cannot be read is a sentence', async () => {
    open([2], {
      'labels.contents': () => {
        throw fileInUse();
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Another program is using the yard file.',
    );
  });
});

describe('The paper', () => {
  test('labels used up on the first sheet are left out, and crossed out on the preview', async () => {
    const { user } = await openWithAll();
    await user.clear(await screen.findByLabelText('Labels already used on the first sheet'));
    await user.type(screen.getByLabelText('Labels already used on the first sheet'), '28');
    expect(await screen.findByText('4 labels on 2 pages.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01', 'OAK-02']);
    await user.click(screen.getByRole('button', { name: 'Next page' }));
    expect(previewed()).toEqual(['OAK-03', 'OAK-04']);
  });

  test('more used than a sheet has is refused in a sentence', async () => {
    const { user } = await openWithAll();
    await user.clear(await screen.findByLabelText('Labels already used on the first sheet'));
    await user.type(screen.getByLabelText('Labels already used on the first sheet'), '30');
    expect((await screen.findByRole('alert')).textContent).toBe(
      'This sheet has 30 labels. Type a whole number from 0 to 29.',
    );
    expect(isOff('Print')).toBe(true);
  });

  test('the first free label is clicked on the preview, or reached by arrow keys', async () => {
    const { user } = await openWithAll();
    await user.click(screen.getByRole('radio', { name: 'Row 2, label 2' }));
    const field = screen.getByLabelText<HTMLInputElement>('Labels already used on the first sheet');
    expect(field.value).toBe('4');
    await user.keyboard('{ArrowDown}{ArrowRight}');
    expect(document.activeElement).toBe(screen.getByRole('radio', { name: 'Row 3, label 3', checked: true }));
    expect(field.value).toBe('8');
    // There is no row above the first: it stays where it is.
    await user.keyboard('{Home}{ArrowUp}');
    expect(field.value).toBe('0');
    await user.keyboard('{End}{ArrowRight}');
    expect(field.value).toBe('29');
    expect(await screen.findByText('4 labels on 2 pages.')).toBeTruthy();
    await expectNoBarriers();
  });

  test('a new paper is saved with the sizes that were typed, and printed on', async () => {
    const { machine, user } = await openWithAll({ 'settings.edit': answerSettings });
    await user.click(screen.getByRole('button', { name: 'Add paper' }));
    const dialog = within(screen.getByRole('dialog', { name: 'New paper' }));
    await user.type(dialog.getByLabelText('Name'), 'Tags');
    await user.click(dialog.getByRole('radio', { name: 'Roll' }));
    for (const [label, text] of [
      ['Label width', '25'],
      ['Label height', '13'],
      ['Labels across', '2'],
      ['Gap between columns', '3'],
    ] as const) {
      await user.clear(dialog.getByLabelText(label));
      await user.type(dialog.getByLabelText(label), text);
    }
    await user.selectOptions(dialog.getByLabelText('Printer resolution'), '203 dots per inch');
    await expectNoBarriers();
    await user.click(dialog.getByRole('button', { name: 'Add paper' }));
    expect(await screen.findByText('4 labels on 2 pages.')).toBeTruthy();
    const [{ labelPapers = [] } = {}] = machine.inputsOf('settings.edit') as Partial<Settings>[];
    expect(labelPapers.at(-1)).toMatchObject({
      name: 'Tags',
      dotsPerInch: 203,
      layout: { kind: 'roll', pageWidthMm: 53, pageHeightMm: 13, columns: 2, rows: 1, columnGapMm: 3 },
    });
    expect(screen.getByLabelText<HTMLSelectElement>('Print on').selectedOptions[0]?.textContent).toBe('Tags');
  });

  test('sizes that do not fit the page are named, and nothing is saved', async () => {
    const { machine, user } = await openWithAll();
    await user.click(screen.getByRole('button', { name: 'Edit paper' }));
    const dialog = within(screen.getByRole('dialog', { name: 'Edit paper' }));
    await user.clear(dialog.getByLabelText('Label width'));
    await user.type(dialog.getByLabelText('Label width'), '90');
    await user.click(dialog.getByRole('button', { name: 'Save paper' }));
    expect(dialog.getByText(/65 mm too wide for the page/)).toBeTruthy();
    expect(machine.inputsOf('settings.edit')).toEqual([]);
  });

  test('sizes are typed and shown in inches, and what was not typed over stays exactly as it was', async () => {
    const { machine, user } = await openWithAll({ 'settings.edit': answerSettings });
    act(() => useSettings.setState(({ settings }) => ({ settings: { ...settings, units: 'imperial' } })));
    await user.click(screen.getByRole('button', { name: 'Edit paper' }));
    const dialog = within(screen.getByRole('dialog', { name: 'Edit paper' }));
    const width = dialog.getByLabelText<HTMLInputElement>('Label width');
    expect(width.value).toBe('2 5/8');
    await user.clear(width);
    await user.type(width, '2');
    await user.click(dialog.getByRole('button', { name: 'Save paper' }));
    const [{ labelPapers = [] } = {}] = machine.inputsOf('settings.edit') as Partial<Settings>[];
    // 2 in = 50.8 mm by definition.
    expect(labelPapers[0]?.layout).toEqual({ ...usualSettings.labelPapers[0]?.layout, labelWidthMm: 50.8 });
  });

  test('what was measured on the calibration page is saved with the paper', async () => {
    const { machine, user } = await openWithAll({ 'settings.edit': answerSettings });
    await user.click(screen.getByRole('button', { name: 'Calibrate' }));
    const dialog = within(screen.getByRole('dialog', { name: 'Calibrate the printer' }));
    const type = async (label: string, text: string) => {
      await user.clear(dialog.getByLabelText(label));
      await user.type(dialog.getByLabelText(label), text);
    };
    const save = () => user.click(dialog.getByRole('button', { name: 'Save calibration' }));
    await expectNoBarriers();
    await save();
    expect(dialog.getAllByText('Measure this line.')).toHaveLength(4);
    // Lines meant at 20 mm and 195.9 mm, 20 mm and 259.4 mm of US Letter.
    await type('Left edge to line A', '40');
    await type('Left edge to line B', '196.9');
    await type('Top edge to line C', '20');
    await type('Top edge to line D', '259.4');
    await save();
    expect(dialog.getByText(/^That is more than 10% or 25 mm off\./)).toBeTruthy();
    expect(machine.inputsOf('settings.edit')).toEqual([]);
    await type('Left edge to line A', '21');
    await save();
    const [{ labelPapers = [] } = {}] = machine.inputsOf('settings.edit') as Partial<Settings>[];
    expect(labelPapers[0]?.calibration).toEqual({
      offsetXMm: expect.closeTo(1),
      offsetYMm: expect.closeTo(0),
      scaleX: expect.closeTo(1),
      scaleY: expect.closeTo(1),
    });
  });

  test('the last paper cannot be deleted', async () => {
    const { user } = await openWithAll({ 'settings.edit': answerSettings });
    await user.click(screen.getByRole('button', { name: 'Delete paper' }));
    await user.click(screen.getByRole('button', { name: 'Delete paper' }));
    expect(useSettings.getState().settings.labelPapers).toHaveLength(1);
    expect(screen.queryByRole('button', { name: 'Delete paper' })).toBeNull();
  });

  test('single labels have a page each', async () => {
    const { user } = await openWithAll();
    await user.selectOptions(await screen.findByLabelText('Print on'), 'Roll, 60 mm × 30 mm');
    expect(await screen.findByText('4 labels on 4 pages.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01']);
  });
});

describe('What labels show', () => {
  test('a line that is taken in, moved up or left out shows so on the preview', async () => {
    const { user } = await openWithAll({ 'settings.edit': answerSettings });
    const shown = () =>
      [...screen.getByRole('img', { name: /^Preview/ }).querySelectorAll('text')].map(
        ({ textContent }) => textContent,
      );
    expect(shown()[1]).toBe('Ready');
    await user.click(screen.getByRole('checkbox', { name: 'Call' }));
    await vi.waitFor(() => expect(shown()).not.toContain('Ready'));
    await user.click(screen.getByRole('checkbox', { name: 'Place' }));
    for (let lines = 0; lines < 7; lines++) {
      await user.click(screen.getByRole('button', { name: 'Move up: Place' }));
    }
    await vi.waitFor(() => expect(shown().slice(0, 2)).toEqual(['OAK-01', 'Shed']));
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Move up: Place' }));
    expect(screen.getByRole<HTMLInputElement>('checkbox', { name: 'ID' }).disabled).toBe(true);
  });

  test('the code is chosen, and without one there is none', async () => {
    const { user } = await openWithAll({ 'settings.edit': answerSettings });
    const codes = () =>
      screen.getByRole('img', { name: /^Preview/ }).querySelectorAll('path[stroke=none]').length;
    await vi.waitFor(() => expect(codes()).toBe(4));
    await user.click(screen.getByRole('radio', { name: 'None' }));
    await vi.waitFor(() => expect(codes()).toBe(0));
    await user.click(screen.getByRole('radio', { name: 'Code 128' }));
    await vi.waitFor(() => expect(codes()).toBe(4));
  });
});

describe('Getting them on paper', () => {
  test('the PDF is asked for as it is previewed and handed over under its name', async () => {
    const bytes: Blob[] = [];
    URL.createObjectURL = vi.fn((blob) => {
      bytes.push(blob as Blob);
      return 'blob:labels';
    });
    URL.revokeObjectURL = vi.fn();
    const saved: string[] = [];
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      saved.push(this.download);
    });
    const { machine, user } = open([1, 3]);
    await screen.findByText('2 labels on 1 page.');
    await user.click(await screen.findByRole('button', { name: 'Save as PDF' }));
    expect(machine.inputsOf('labels.pdf')).toEqual([
      {
        boardIds: [1, 3],
        paperId: 'sheet',
        used: 0,
        region: { locale: 'en-US', timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone },
        work: expect.any(String),
      },
    ]);
    expect(saved).toEqual(['labels-2026-11-25.pdf']);
    await vi.waitFor(() =>
      expect(machine.inputsOf('labels.recordPrint')).toEqual([{ boardIds: [1, 3], paperId: 'sheet' }]),
    );
    expect(bytes[0]?.type).toBe('application/pdf');
    expect(bytes[0]?.size).toBe('%PDF-1.7'.length);
  });

  test('while the PDF is made, the person sees how far it is, and can stop it', async () => {
    let stop: () => void = () => undefined;
    const { machine, user } = open([1, 3], {
      'labels.pdf': () =>
        new Promise((_, reject) => {
          stop = () => reject(new Refusal(message('refusal.stopped')));
        }),
      'work.cancel': () => {
        stop();
        return {};
      },
    });
    await screen.findByText('2 labels on 1 page.');
    await user.click(await screen.findByRole('button', { name: 'Save as PDF' }));
    const [{ work }] = machine.inputsOf('labels.pdf') as [{ work: string }];
    act(() => machine.tell('work.progress', { work, done: 40, total: 160 }));
    const progress = screen.getByRole('progressbar', { name: 'Making the PDF …' });
    expect([progress.getAttribute('value'), progress.getAttribute('max')]).toEqual(['40', '160']);
    expect(screen.getByText('40 of 160')).toBeTruthy();
    await expectNoBarriers();
    const cancel = screen.getByRole('button', { name: 'Cancel' });
    // A second click on "Save as PDF" must not meet it: the buttons stay where they are.
    expect(screen.getByRole('button', { name: 'Save as PDF' }).closest('header')!.contains(cancel)).toBe(
      false,
    );
    await user.click(cancel);
    expect(machine.inputsOf('work.cancel')).toEqual([{ work }]);
    expect(screen.queryByRole('progressbar')).toBeNull();
    expect(useNotices.getState().notices).toMatchObject([
      { kind: 'done', sentence: 'Stopped. No PDF made.' },
    ]);
    expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
  });

  test('whoever opens another yard meanwhile stops it, and is not told of a problem', async () => {
    let stop: () => void = () => undefined;
    const { machine, user } = open([1, 3], {
      'labels.pdf': () =>
        new Promise((_, reject) => {
          stop = () => reject(new Refusal(message('refusal.stopped')));
        }),
      'work.cancel': () => {
        stop();
        return {};
      },
    });
    await screen.findByText('2 labels on 1 page.');
    await user.click(await screen.findByRole('button', { name: 'Save as PDF' }));
    useYard.setState({ info: { uuid: 'the demo yard' } as YardInfo });
    cleanup();
    await vi.waitFor(() =>
      expect(useNotices.getState().notices).toMatchObject([
        { kind: 'done', sentence: 'Stopped. No PDF made.' },
      ]),
    );
    expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
  });

  test('printing hands exactly the pages to the print dialog, each as large as its paper, and then they are gone', async () => {
    const sheets: string[] = [];
    vi.stubGlobal(
      'CSSStyleSheet',
      class {
        replaceSync(text: string): void {
          sheets.push(text);
        }
      },
    );
    Object.defineProperty(document, 'adoptedStyleSheets', { configurable: true, writable: true, value: [] });
    const pagesAtPrint: number[] = [];
    vi.stubGlobal('print', () => pagesAtPrint.push(document.querySelectorAll('[class*=printed] svg').length));
    const { machine, user } = await openWithAll();
    await user.selectOptions(await screen.findByLabelText('Print on'), 'Roll, 60 mm × 30 mm');
    await user.click(await screen.findByRole('button', { name: 'Print' }));
    expect(pagesAtPrint).toEqual([4]);
    expect(sheets).toEqual(['@page { size: 60mm 30mm; margin: 0 }']);
    const page = within(document.querySelector<HTMLElement>('[class*=printed]')!).getByRole('img', {
      name: 'Page 1 of 4',
    });
    expect([page.getAttribute('width'), page.getAttribute('height')]).toEqual(['60mm', '30mm']);
    expect(page.querySelector('[stroke-dasharray]')).toBeNull();
    expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
    dispatchEvent(new Event('afterprint'));
    await vi.waitFor(() => expect(document.querySelector('[class*=printed]')).toBeNull());
    await vi.waitFor(() => expect(document.adoptedStyleSheets).toEqual([]));
    expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
    expect(await screen.findByRole('dialog', { name: 'Did all 4 labels print?' })).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Yes, printed' }));
    await vi.waitFor(() =>
      expect(useNotices.getState().notices).toMatchObject([
        { kind: 'done', sentence: '4 labels marked as printed.' },
      ]),
    );
    expect(machine.inputsOf('labels.recordPrint')).toEqual([{ boardIds: [1, 2, 3, 4], paperId: 'roll' }]);
    vi.unstubAllGlobals();
  });

  describe('on a printer that was chosen for the paper', () => {
    const withPrinter = {
      'printers.list': () => ({
        printers: [{ name: 'tags', title: 'Tags by the saw', isStopped: false }],
        chosen: { sheet: 'tags' },
      }),
    };
    const opened = async (answer: () => { state: 'printed' | 'waiting'; why: string }) => {
      const found = open([1, 3], { ...withPrinter, 'printers.print': answer });
      await screen.findByText('2 labels on 1 page.');
      const choice = await screen.findByLabelText<HTMLSelectElement>('Printer');
      expect(choice.selectedOptions[0]?.textContent).toBe('Tags by the saw');
      await found.user.click(screen.getByRole('button', { name: 'Print' }));
      return found;
    };

    test('they print without a dialog, and count as printed', async () => {
      const { machine } = await opened(() => ({ state: 'printed', why: '' }));
      await vi.waitFor(() =>
        expect(useNotices.getState().notices).toMatchObject([
          { kind: 'done', sentence: 'Tags by the saw printed 2 labels. They are marked as printed.' },
        ]),
      );
      expect(machine.inputsOf('printers.print')).toMatchObject([
        { printer: 'tags', pages: { kind: 'labels', boardIds: [1, 3], paperId: 'sheet', used: 0 } },
      ]);
      expect(machine.inputsOf('labels.recordPrint')).toEqual([{ boardIds: [1, 3], paperId: 'sheet' }]);
      await expectNoBarriers();
    });

    test('while they wait in its queue, the person is asked', async () => {
      const { machine, user } = await opened(() => ({ state: 'waiting', why: 'Out of labels' }));
      await screen.findByRole('dialog', { name: 'Did all 2 labels print?' });
      expect(screen.getByText('Still in the queue of Tags by the saw: Out of labels.')).toBeTruthy();
      await user.click(screen.getByRole('button', { name: 'No' }));
      expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
    });

    test('a printer that refuses leaves them not printed', async () => {
      const { machine } = await opened(() => {
        throw new Refusal(message('refusal.printer-gone', { printerName: 'tags' }));
      });
      await vi.waitFor(() =>
        expect(useNotices.getState().notices).toMatchObject([
          {
            kind: 'problem',
            sentence: 'tags was not found. Nothing was printed. Choose another printer.',
          },
        ]),
      );
      expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
      expect(isOff('Print')).toBe(false);
    });
  });

  test('labels that did not print do not count as printed', async () => {
    vi.stubGlobal(
      'CSSStyleSheet',
      class {
        replaceSync(): void {}
      },
    );
    Object.defineProperty(document, 'adoptedStyleSheets', { configurable: true, writable: true, value: [] });
    vi.stubGlobal('print', () => undefined);
    const { machine, user } = open([1]);
    await screen.findByText('1 label on 1 page.');
    for (const answer of ['{Escape}', 'No']) {
      await user.click(await screen.findByRole('button', { name: 'Print' }));
      act(() => void dispatchEvent(new Event('afterprint')));
      await screen.findByRole('dialog', { name: 'Did the label print?' });
      if (answer === 'No') await user.click(screen.getByRole('button', { name: 'No' }));
      else await user.keyboard(answer);
      await vi.waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    }
    expect(machine.inputsOf('labels.recordPrint')).toEqual([]);
    vi.unstubAllGlobals();
  });
});
