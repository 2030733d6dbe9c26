// @vitest-environment jsdom
import './drawing-room.ts';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { Profiler, useState } from 'react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { columnsShown } from '../../../../renderer/ui/column-choice.ts';
import { type Column, DataTable } from '../../../../renderer/ui/DataTable.tsx';
import { expectNoBarriers } from '../shell/machine.ts';

interface Lot {
  id: number;
  name: string;
  mcPct: number | null;
}

const lots: Lot[] = [
  { id: 1, name: 'Lot 10', mcPct: 12 },
  { id: 2, name: 'Lot 9', mcPct: null },
  { id: 3, name: 'Lot 2', mcPct: 8 },
];

const columns: Column<Lot>[] = [
  { id: 'name', head: 'Lot', cell: ({ name }) => name, sortBy: ({ name }) => name },
  {
    id: 'mc',
    head: 'MC',
    cell: ({ mcPct }) => mcPct,
    sortBy: ({ mcPct }) => mcPct,
    align: 'end',
    optional: true,
  },
];

/** A table of lots whose selection is its own. */
function Lots({ rows }: { rows: readonly Lot[] | Parameters<typeof DataTable<Lot>>[0]['rows'] }) {
  const [selected, setSelected] = useState<ReadonlySet<number>>(new Set());
  return (
    <main>
      <DataTable
        name="Lots"
        columns={columns}
        columnsName="lots"
        rows={rows}
        keyOf={({ id }) => id}
        hrefOf={({ id }) => `#/boards/${id}`}
        selection={{
          isSelected: ({ id }) => selected.has(id),
          selected: selected.size,
          onSelect: (those, isSelected) => {
            const changed = new Set(selected);
            for (const { id } of those) isSelected ? changed.add(id) : changed.delete(id);
            setSelected(changed);
          },
          nameOf: ({ name }) => name,
          summary: `${selected.size} lots selected`,
        }}
      />
    </main>
  );
}

const manyLots = (count: number): Lot[] =>
  Array.from({ length: count }, (_, index) => ({ id: index + 1, name: `Lot ${index + 1}`, mcPct: 10 }));

function open(rows: readonly Lot[] = lots) {
  render(<Lots rows={rows} />);
  return userEvent.setup();
}

const names = () => screen.getAllByRole('rowheader').map((head) => head.textContent);
const focused = () => document.activeElement?.textContent;

beforeEach(() => localStorage.clear());
afterEach(cleanup);

describe('A table', () => {
  test('is a table to screen readers: heads, row heads, and where each row is', async () => {
    open();
    const table = screen.getByRole('table', { name: 'Lots' });
    expect(table.getAttribute('aria-rowcount')).toBe('4');
    expect(screen.getAllByRole('columnheader').map((head) => head.textContent)).toEqual([
      'Select all',
      'Lot',
      'MC',
    ]);
    const rows = within(table).getAllByRole('row');
    expect(rows.map((row) => row.getAttribute('aria-rowindex'))).toEqual(['1', '2', '3', '4']);
    await expectNoBarriers();
  });

  test('a press on a head sorts by it, another turns it around; rows without a value stay last', async () => {
    const user = open();
    const mc = screen.getByRole('columnheader', { name: 'MC' });
    expect(mc.getAttribute('aria-sort')).toBe('none');
    await user.click(screen.getByRole('button', { name: 'MC' }));
    expect([mc.getAttribute('aria-sort'), ...names()]).toEqual(['ascending', 'Lot 2', 'Lot 10', 'Lot 9']);
    await user.click(screen.getByRole('button', { name: 'MC' }));
    expect([mc.getAttribute('aria-sort'), ...names()]).toEqual(['descending', 'Lot 10', 'Lot 2', 'Lot 9']);
    await user.click(screen.getByRole('button', { name: 'Lot' }));
    expect(names()).toEqual(['Lot 2', 'Lot 9', 'Lot 10']);
  });

  test('an optional column can be hidden, and stays so when the table is opened again', async () => {
    const user = open();
    await user.click(screen.getByLabelText('MC'));
    expect(screen.queryByRole('columnheader', { name: 'MC' })).toBeNull();
    cleanup();
    open();
    expect(screen.queryByRole('columnheader', { name: 'MC' })).toBeNull();
    expect(screen.getByLabelText('MC')).toHaveProperty('checked', false);
  });

  test('the last optional columns give way in a narrow table, but not those that a person chose', () => {
    const wide = ['a', 'b', 'c', 'd'].map((id) => ({ id, widthRem: 10, optional: id !== 'a' }));
    const shown = (choice: Record<string, boolean>, roomRem: number) =>
      columnsShown(wide, choice, roomRem).map(({ id }) => id);
    expect(shown({}, 40)).toEqual(['a', 'b', 'c', 'd']);
    expect(shown({}, 25)).toEqual(['a', 'b']);
    expect(shown({ d: true }, 25)).toEqual(['a', 'd']);
    // As on a card.
    expect(shown({ d: true }, 0)).toEqual(['a', 'd']);
    expect(shown({ b: false }, 40)).toEqual(['a', 'c', 'd']);
  });
});

describe('Rows are selected', () => {
  test('one by one, all up to here with Shift, and all at once', async () => {
    const user = open(manyLots(6));
    await user.click(screen.getByRole('checkbox', { name: 'Select Lot 2' }));
    await user.keyboard('{Shift>}');
    await user.click(screen.getByRole('checkbox', { name: 'Select Lot 5' }));
    await user.keyboard('{/Shift}');
    expect(screen.getByRole('status').textContent).toBe('4 lots selected');
    const all = screen.getByRole('checkbox', { name: 'Select all' }) as HTMLInputElement;
    expect(all.indeterminate).toBe(true);
    await user.click(all);
    expect(screen.getByRole('status').textContent).toBe('6 lots selected');
    await user.click(all);
    expect(screen.getByRole('status').textContent).toBe('0 lots selected');
  });

  test('as they are sorted', async () => {
    const user = open();
    await user.click(screen.getByRole('button', { name: 'Lot' }));
    await user.click(screen.getByRole('checkbox', { name: 'Select Lot 2' }));
    await user.keyboard('{Shift>}');
    await user.click(screen.getByRole('checkbox', { name: 'Select Lot 9' }));
    await user.keyboard('{/Shift}');
    expect(screen.getByRole('checkbox', { name: 'Select Lot 10' })).toHaveProperty('checked', false);
    expect(screen.getByRole('status').textContent).toBe('2 lots selected');
  });
});

describe('By keyboard alone', () => {
  test('Tab stops at one row, and the arrows lead to the others', async () => {
    const user = open(manyLots(6));
    await user.tab();
    while (focused() !== 'Lot 1') await user.tab();
    await user.keyboard('{ArrowDown}{ArrowDown}');
    expect(focused()).toBe('Lot 3');
    await user.keyboard('{End}');
    expect(focused()).toBe('Lot 6');
    await user.keyboard('{ArrowDown}');
    expect(focused()).toBe('Lot 6');
    await user.keyboard('{Home}');
    expect(focused()).toBe('Lot 1');
    await user.keyboard('{ArrowDown}');
    await user.tab();
    expect(document.activeElement).toBe(document.body);
    await user.tab({ shift: true });
    expect(focused()).toBe('Lot 2');
  });

  test('Space selects, with Shift all up to here, and Enter opens', async () => {
    const user = open(manyLots(6));
    screen.getByRole('link', { name: 'Lot 1' }).focus();
    await user.keyboard(' {ArrowDown}{ArrowDown}{Shift>} {/Shift}');
    expect(screen.getByRole('status').textContent).toBe('3 lots selected');
    screen.getByRole('checkbox', { name: 'Select Lot 3' }).focus();
    await user.keyboard('{ArrowDown}{Enter}');
    expect(location.hash).toBe('#/boards/4');
  });
});

describe('100,000 rows', () => {
  test('are drawn as far as they are in sight, and fetched as they come into sight', async () => {
    const all = manyLots(100_000);
    const ranges: number[] = [];
    render(
      <Lots
        rows={{
          count: all.length,
          rowAt: (index) => all[index],
          onRange: (first, last) => ranges.push(first, last),
          fetch: async (first, last) => all.slice(first, last + 1),
        }}
      />,
    );
    const user = userEvent.setup();
    screen.getByRole('link', { name: 'Lot 1' }).focus();
    expect(screen.getAllByRole('row').length).toBeLessThan(60);
    await user.keyboard('{End}');
    expect(focused()).toBe('Lot 100000');
    const frame = screen.getByRole('table').parentElement as HTMLElement;
    frame.scrollTop = 50_000 * 64;
    fireEvent.scroll(frame);
    await screen.findByRole('link', { name: 'Lot 50010' });
    expect(ranges.at(-1)).toBeGreaterThan(50_000);
    expect(screen.getAllByRole('row').length).toBeLessThan(60);
    await user.click(screen.getByRole('checkbox', { name: 'Select all' }));
    expect(await screen.findByText('100000 lots selected')).toBeTruthy();
  });

  test('that become 100 by a search show those in sight first, then all; and never 100,000 after that', () => {
    const drawn: number[] = [];
    const rowsDrawn = () => screen.queryAllByRole('rowheader').length;
    const table = (rows: readonly Lot[]) => (
      <Profiler id="lots" onRender={() => drawn.push(rowsDrawn())}>
        <Lots rows={rows} />
      </Profiler>
    );
    const all = manyLots(100_000);
    const { rerender } = render(table(all));
    drawn.length = 0;
    rerender(table(all.slice(0, 100)));
    expect(drawn[0]).toBeLessThan(50);
    expect(rowsDrawn()).toBe(100);
    rerender(table(all));
    expect(Math.max(...drawn)).toBe(100);
    expect(rowsDrawn()).toBeLessThan(50);
  });

  test('a row that has the focus before it has come keeps it', async () => {
    const rows = (isHere: boolean) => ({
      count: 200,
      rowAt: (index: number) => (isHere || index < 50 ? manyLots(200)[index] : undefined),
      onRange: () => undefined,
      fetch: async () => undefined,
    });
    const { rerender } = render(<Lots rows={rows(false)} />);
    const user = userEvent.setup();
    screen.getByRole('link', { name: 'Lot 1' }).focus();
    await user.keyboard('{End}');
    expect(focused()).toBe('…');
    rerender(<Lots rows={rows(true)} />);
    expect(focused()).toBe('Lot 200');
  });
});
