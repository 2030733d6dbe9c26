// @vitest-environment jsdom

import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LabelsScreen } from '../../../../renderer/features/labels/LabelsScreen.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import type { LabelContent } from '../../../../shared-core/labels/label.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack } from '../stacks/a-yard.ts';

const boards: BoardRow[] = [
  aBoardRow(1, { latest: aFinding({ call: 'ready' }) }),
  aBoardRow(2, { latest: aFinding({ call: 'keep-drying' }) }),
  aBoardRow(3, { latest: aFinding({ call: 'keep-drying' }) }),
  aBoardRow(4),
];

const contentOf = ({
  code,
  speciesName,
  thicknessMm,
  widthMm,
  lengthMm,
  latest,
}: BoardRow): LabelContent => ({
  code,
  speciesName,
  thickness: { thicknessMm, quarters: null },
  widthMm,
  lengthMm,
  endUseName: 'Furniture',
  latest,
});

function open(boardIds: number[] = [], more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'stacks.list': () => [aStack()],
    'boards.list': () => ({ total: boards.length, rows: boards }),
    'labels.contents': (input) => input.boardIds.map((id) => contentOf(boards[id - 1]!)),
    'labels.pdf': () => ({ pdfBase64: btoa('%PDF-1.7'), fileName: 'labels-2026-11-25.pdf' }),
    ...more,
  });
  render(
    <main>
      <LabelsScreen boardIds={boardIds} stackId={null} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(() => {
  forgetEverything();
  useSettings.setState({
    settings: usualSettings,
  });
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

/** The IDs on the preview, in reading order. */
const previewed = () =>
  [...screen.getByRole('img', { name: /^Preview/ }).querySelectorAll('text')]
    .map((text) => text.textContent)
    .filter((text) => text?.startsWith('OAK-'));

describe('Choosing boards for labels', () => {
  test('all are chosen to begin with, and the preview shows them as they will be printed', async () => {
    open();
    expect(await screen.findByText('4 labels on 1 page.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01', 'OAK-02', 'OAK-03', 'OAK-04']);
    await expectNoBarriers();
  });

  test('by their call, each with its count', async () => {
    const { user } = open();
    await user.click(await screen.findByLabelText('Keep drying (2)'));
    await user.click(screen.getByLabelText('Not probed yet (1)'));
    expect(await screen.findByText('1 label on 1 page.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01']);
  });

  test('one by one', async () => {
    const { user } = open();
    await user.click(await screen.findByRole('checkbox', { name: /OAK-02/ }));
    expect(await screen.findByText('3 labels on 1 page.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01', 'OAK-03', 'OAK-04']);
  });

  test('with none left, a hint takes the place of the sheet', async () => {
    const { user } = open([1]);
    await user.click(await screen.findByRole('checkbox', { name: /OAK-01/ }));
    expect(screen.getByText('No boards chosen. Check a call or a board to see its label.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Print' })).toBeNull();
  });

  test('boards chosen elsewhere come along, and the choice can be given up', async () => {
    open([2, 3]);
    expect(await screen.findByText(/2 boards selected in the list/)).toBeTruthy();
    expect((await screen.findByRole('link', { name: 'Choose from all boards' })).getAttribute('href')).toBe(
      '#/labels',
    );
  });

  test('a board that is gone is a sentence', async () => {
    open([99], {
      'labels.contents': () => {
        throw new Refusal(message('refusal.not-found', { what: 'board' }));
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain('That board is not in this yard.');
  });
});

describe('The paper', () => {
  test('labels used up on the first sheet are left out, and crossed out on the preview', async () => {
    const { user } = open();
    await user.clear(await screen.findByLabelText('Labels already used on the first sheet'));
    await user.type(screen.getByLabelText('Labels already used on the first sheet'), '28');
    expect(await screen.findByText('4 labels on 2 pages.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01', 'OAK-02']);
    await user.click(screen.getByRole('button', { name: 'Next page' }));
    expect(previewed()).toEqual(['OAK-03', 'OAK-04']);
  });

  test('more used than a sheet has is refused in a sentence', async () => {
    const { user } = open();
    await user.clear(await screen.findByLabelText('Labels already used on the first sheet'));
    await user.type(screen.getByLabelText('Labels already used on the first sheet'), '30');
    expect((await screen.findByRole('alert')).textContent).toBe(
      'This sheet has 30 labels. Type a whole number from 0 to 29.',
    );
    expect(screen.queryByRole('button', { name: 'Print' })).toBeNull();
  });

  test('single labels have a page each', async () => {
    const { user } = open();
    await user.click(await screen.findByRole('radio', { name: /Single labels/ }));
    expect(await screen.findByText('4 labels on 4 pages.')).toBeTruthy();
    expect(previewed()).toEqual(['OAK-01']);
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
    await user.click(await screen.findByRole('button', { name: 'Save as PDF' }));
    expect(machine.inputsOf('labels.pdf')).toEqual([
      {
        boardIds: [1, 3],
        kind: 'sheet',
        used: 0,
        region: { locale: 'en-US', timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone },
      },
    ]);
    expect(saved).toEqual(['labels-2026-11-25.pdf']);
    expect(bytes[0]?.type).toBe('application/pdf');
    expect(bytes[0]?.size).toBe('%PDF-1.7'.length);
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
    vi.stubGlobal('print', () => pagesAtPrint.push(document.querySelectorAll('.print-pages svg').length));
    const { user } = open();
    await user.click(await screen.findByRole('radio', { name: /Single labels/ }));
    await user.click(await screen.findByRole('button', { name: 'Print' }));
    expect(pagesAtPrint).toEqual([4]);
    expect(sheets).toEqual(['@page { size: 60mm 30mm; margin: 0 }']);
    const page = within(document.querySelector<HTMLElement>('.print-pages')!).getByRole('img', {
      name: 'Page 1 of 4',
    });
    expect([page.getAttribute('width'), page.getAttribute('height')]).toEqual(['60mm', '30mm']);
    expect(page.querySelector('.label-edges')).toBeNull();
    dispatchEvent(new Event('afterprint'));
    await vi.waitFor(() => expect(document.querySelector('.print-pages')).toBeNull());
    await vi.waitFor(() => expect(document.adoptedStyleSheets).toEqual([]));
    vi.unstubAllGlobals();
  });
});
