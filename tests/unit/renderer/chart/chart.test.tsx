// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Chart } from '../../../../renderer/chart/Chart.tsx';
import { svgFileOf } from '../../../../renderer/chart/saved-picture.tsx';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { wordsNow } from '../../../../renderer/words.ts';
import { mcAxis, timeAxis } from '../../../../shared-core/drawing/chart/axes.ts';
import type { ChartDescription, Layer } from '../../../../shared-core/drawing/chart/description.ts';
import { layoutOf } from '../../../../shared-core/drawing/chart/layout.ts';
import { widthOf } from '../../../../shared-core/drawing/chart/place-words.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';

const day = (year: number, month: number, date: number) => new Date(year, month - 1, date, 12).getTime();

/** An invented board: read twice, forecast into the next year. */
const layers: Layer[] = [
  {
    kind: 'marks',
    name: 'Moved to',
    color: 'line-strong',
    stroke: 'dashed',
    values: [{ x: day(2026, 10, 5), word: 'Shop', isName: true }],
  },
  {
    kind: 'line',
    name: 'Forecast',
    color: 'accent',
    stroke: 'solid',
    values: [
      { x: day(2026, 10, 5), y: 14, low: 13, high: 15 },
      { x: day(2027, 3, 4), y: 9, low: 7, high: 11 },
    ],
  },
  {
    kind: 'points',
    name: 'Average',
    color: 'ink',
    shape: 'disc',
    values: [
      { x: day(2026, 9, 5), y: 18, low: 17, high: 19 },
      { x: day(2026, 10, 5), y: 14 },
    ],
  },
  { kind: 'points', name: 'Never drawn', color: 'ink', shape: 'ring', values: [] },
  {
    kind: 'interval',
    name: 'Ready',
    color: 'ready',
    from: day(2027, 2, 1),
    to: null,
    likely: day(2027, 3, 1),
    text: 'Mar 1',
  },
  { kind: 'level', name: 'Lowest', color: 'ink-soft', y: 5, word: 'Lowest 5%' },
  { kind: 'target', name: 'Target 6–8%', color: 'ready', low: 6, high: 8 },
];

function described(more: Partial<ChartDescription> = {}): ChartDescription {
  const words = wordsNow();
  return {
    title: 'Moisture of OAK-01',
    summary: 'It dries.',
    x: timeAxis(day(2026, 9, 5), day(2027, 3, 4), words),
    y: mcAxis('Moisture content', words),
    layers,
    ...more,
  };
}

function open(more: Partial<ChartDescription> = {}) {
  render(
    <main>
      <h1>OAK-01</h1>
      <Chart {...described(more)} />
    </main>,
  );
  return userEvent.setup();
}

const reading = () => [...screen.getByRole('status').children].map((line) => line.textContent);

beforeEach(() => {
  forgetEverything();
  // A year is shown only where it is not this one.
  vi.setSystemTime(day(2026, 9, 20));
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('A chart, described once,', () => {
  test('has axes with titles, and each year under its first tick', async () => {
    open();
    const texts = [...screen.getByRole('img', { name: 'Moisture of OAK-01' }).querySelectorAll('text')].map(
      (text) => text.textContent,
    );
    expect(texts).toEqual(expect.arrayContaining(['Moisture content', 'Day', '0%', '20%']));
    expect(texts.filter((text) => /^20\d\d$/.test(text))).toEqual(['2026', '2027']);
    const januaryAt = texts.indexOf('Jan');
    expect(texts[januaryAt + 1]).toBe('2027');
    await expectNoBarriers();
  });

  test('has a legend of what is drawn, but for what is named beside itself', () => {
    open();
    const legend = within(screen.getByRole('list', { name: 'Legend' })).getAllByRole('listitem');
    expect(legend.map((item) => item.textContent)).toEqual(['Forecast', 'Average', 'Ready']);
    for (const item of legend) expect(item.querySelector('svg path, svg circle')).toBeTruthy();
    const drawing = screen.getByRole('img', { name: 'Moisture of OAK-01' });
    for (const word of ['Shop', 'Lowest 5%', 'Target 6–8%']) expect(drawing.textContent).toContain(word);
  });

  test('names in the legend what has no room for its words', () => {
    const crowd = ['Fence row', 'Pole shed', 'Lane', 'Bench room', 'Loft', 'Kiln shed', 'Porch', 'Barn'];
    const values = crowd.map((word) => ({ x: day(2026, 10, 5), word }));
    open({ layers: [{ kind: 'marks', name: 'Moved to', color: 'ink', stroke: 'dashed', values }] });
    expect(within(screen.getByRole('list', { name: 'Legend' })).getByText('Moved to')).toBeTruthy();
  });

  test('has its values as a table, a line read where it is told to be', () => {
    open({ stops: [day(2026, 11, 5), day(2030, 1, 1)] });
    const rows = screen
      .getAllByRole('row')
      .map((row) => [...row.children].map((cell) => cell.textContent!.replaceAll('\u2060', '')));
    expect(rows).toEqual([
      ['Day', 'Moved to', 'Forecast', 'Average', 'Ready'],
      ['Sep 5', '', '', '18.0% (17.0–19.0%)', ''],
      ['Oct 5', 'Shop', '14.0% (13.0–15.0%)', '14.0%', ''],
      // 31 of the 150 days from 14% to 9%.
      ['Nov 5', '', '13.0% (11.8–14.2%)', '', ''],
      ['Mar 1, 2027', '', '9.1% (7.1–11.1%)', '', 'Mar 1'],
    ]);
  });

  test('is read with the arrow keys: a cursor moves, and the day and its values are read out', async () => {
    const user = open();
    await user.tab();
    const slider = screen.getByRole('slider', { name: 'Values: Moisture of OAK-01' });
    expect(document.activeElement).toBe(slider);
    await user.keyboard('{Home}');
    expect(slider.getAttribute('aria-valuetext')).toBe('Sep 5');
    expect(reading()).toEqual(['Sep 5', unbroken('Average: 18.0% (17.0–19.0%)')]);
    const cursor = () => document.querySelector('[data-cursor]')?.getAttribute('d');
    const before = cursor();
    await user.keyboard('{ArrowRight}');
    expect(cursor()).not.toBe(before);
    expect(reading()).toEqual([
      'Oct 5',
      'Moved to: Shop',
      'Average: 14.0%',
      unbroken('Forecast: 14.0% (13.0–15.0%)'),
    ]);
    await user.keyboard('{ArrowLeft}{ArrowLeft}');
    expect(slider.getAttribute('aria-valuetext')).toBe('Sep 5');
    await user.keyboard('{Escape}');
    expect(cursor()).toBeUndefined();
  });

  test('is read where the pointer is', () => {
    const { x, left } = layoutOf(described(), 640);
    open();
    fireEvent.pointerMove(screen.getByRole('slider'), { clientX: x.at(day(2026, 9, 9)) - left });
    expect(reading()[0]).toBe('Sep 5');
    fireEvent.pointerLeave(screen.getByRole('slider'));
    expect(reading()).toEqual([]);
  });

  test('is saved as an SVG with every series, its legend and its colors, and no need of the page', async () => {
    const root = document.documentElement.style;
    for (const color of [
      'accent',
      'ink',
      'ink-soft',
      'line',
      'line-strong',
      'ready',
      'ready-soft',
      'sheet',
    ]) {
      root.setProperty(`--${color}`, '#123456');
    }
    root.setProperty('--face', '"Our Face", sans-serif');
    const text = await new Promise<string>((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(String(reader.result));
      reader.readAsText(svgFileOf(described()));
    });
    const picture = new DOMParser().parseFromString(text, 'image/svg+xml');
    expect(picture.querySelector('parsererror')).toBeNull();
    expect(text).not.toContain('var(');
    expect(picture.documentElement.namespaceURI).toBe('http://www.w3.org/2000/svg');
    const drawn = [...picture.querySelectorAll('[data-layer]')].map((group) =>
      group.getAttribute('data-layer'),
    );
    expect(drawn.sort()).toEqual(
      ['Average', 'Forecast', 'Lowest', 'Moved to', 'Ready', 'Target 6–8%'].sort(),
    );
    for (const color of picture.querySelectorAll('[stroke], [fill]')) {
      expect(['#123456', 'none', null]).toContain(color.getAttribute('stroke'));
    }
    expect(picture.documentElement.textContent).toContain('Moisture of OAK-01');
  });
});

test.each([250, 320, 640, 960])('no text of a chart %i px wide is on another or cut off', (width) => {
  const values = Array.from({ length: 9 }, (_, index) => ({
    x: day(2026, 9, 5 + 14 * index),
    y: 12 + (index % 2),
    word: `Piece ${index}`,
  }));
  const { words } = layoutOf(
    described({
      layers: [...layers, { kind: 'points', name: 'Pieces', color: 'ink', shape: 'ring', values }],
    }),
    width,
  );
  expect(words.length).toBeGreaterThan(3);
  const boxes = words.map((word) => ({ text: word.text, ...boxOf(word) }));
  for (const [index, a] of boxes.entries()) {
    expect(a.left).toBeGreaterThanOrEqual(0);
    expect(a.right).toBeLessThanOrEqual(width);
    for (const b of boxes.slice(index + 1)) {
      const isOn = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
      expect(isOn, `${a.text} on ${b.text}`).toBe(false);
    }
  }
});

/** The room of a text, px. */
function boxOf({
  text,
  x,
  y,
  anchor,
}: {
  text: string;
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
}) {
  const wide = widthOf(text);
  const left = x - { start: 0, middle: wide / 2, end: wide }[anchor];
  return { left, right: left + wide, top: y - 11, bottom: y + 3 };
}

test.each([320, 640, 960])(
  '%i px wide, what was read on one day is drawn within a few pixels of it',
  (width) => {
    const read = (name: string, hour: number): Layer => ({
      kind: 'points',
      name,
      color: 'ink',
      shape: 'disc',
      values: [{ x: day(2026, 9, 5) + hour * 3_600_000, y: 14, low: 13, high: 15 }],
    });
    const { aside } = layoutOf(
      described({ layers: [read('Average', 0), read('Shell', 1), read('Core', 2), ...layers.slice(1, 2)] }),
      width,
    );
    // Apart, so that no whisker hides another, but no wider than one of the marks.
    expect([...aside.values()]).toEqual([-4, 0, 4]);
  },
);

test('what was read on different days does not move, however near they are drawn', () => {
  const values = [1, 2, 3].map((date) => ({ x: day(2026, 9, date), y: 14, low: 13, high: 15 }));
  const points: Layer = { kind: 'points', name: 'Average', color: 'ink', shape: 'disc', values };
  const x = timeAxis(day(2026, 9, 1), day(2028, 9, 1), wordsNow());
  expect([...layoutOf(described({ x, layers: [points] }), 320).aside.values()]).toEqual([0, 0, 0]);
});

test.each([320, 640, 960])(
  '%i px wide, no rule or curve cuts a text where the text has room elsewhere',
  (width) => {
    const marks = (word: string, x: number): Layer => ({
      kind: 'marks',
      name: null,
      color: 'ink',
      stroke: 'solid',
      values: [{ x, word }],
    });
    const from = day(2026, 9, 5);
    const [shed, today] = [marks('Pole shed', from), marks('Today', from + 18 * 86_400_000)];
    const target: Layer = { kind: 'target', name: 'Target 6–8%', color: 'ready', low: 6, high: 8 };
    const level: Layer = { kind: 'level', name: 'Lowest', color: 'ink-soft', y: 10, word: 'Lowest 10%' };
    const curve: Layer = {
      kind: 'line',
      name: 'Forecast',
      color: 'accent',
      stroke: 'solid',
      values: [
        { x: from, y: 14 },
        { x: day(2027, 3, 4), y: 10.5 },
      ],
    };
    const { x, y, bottom, words, ruleTops } = layoutOf(
      described({ layers: [today, curve, level, target, shed] }),
      width,
    );
    expect(words.map(({ text }) => text).sort()).toEqual(['Lowest 10%', 'Pole shed', 'Target 6–8%', 'Today']);
    for (const word of words) {
      const { left, right, top, bottom: low } = boxOf(word);
      for (const layer of [shed, today]) {
        const mark = layer.kind === 'marks' && layer.values[0];
        if (!mark) continue;
        const cuts = x.at(mark.x) > left && x.at(mark.x) < right && ruleTops.get(mark)! < low && bottom > top;
        expect(cuts, `${word.text} by ${mark.word}`).toBe(false);
      }
    }
    const lowest = boxOf(words.find(({ text }) => text === 'Lowest 10%')!);
    // The curve falls straight from 14% to 10.5%: the word is all under it.
    const share = (lowest.right - x.at(from)) / (x.at(day(2027, 3, 4)) - x.at(from));
    expect(y.at(14 - 3.5 * share)).toBeLessThan(lowest.top);
  },
);

test('a target whose ends are crowded has its name where nothing crosses it', () => {
  const from = day(2026, 9, 5);
  const crowded: Layer = {
    kind: 'line',
    name: 'Forecast',
    color: 'accent',
    stroke: 'solid',
    // Through the middle of the target at both ends, and above it between them.
    values: [
      { x: from, y: 7 },
      { x: day(2026, 10, 20), y: 12 },
      { x: day(2027, 1, 20), y: 12 },
      { x: day(2027, 3, 4), y: 7 },
    ],
  };
  const target: Layer = { kind: 'target', name: 'Target 6–8%', color: 'ready', low: 6, high: 8 };
  const { x, words } = layoutOf(described({ layers: [crowded, target] }), 960);
  const { left, right } = boxOf(words.find(({ text }) => text === 'Target 6–8%')!);
  expect(left).toBeGreaterThan(x.at(day(2026, 9, 20)));
  expect(right).toBeLessThan(x.at(day(2027, 2, 20)));
});

test('a day that is likely today has its word beside today, not far from it', () => {
  const now = day(2026, 9, 20);
  const today: Layer = {
    kind: 'marks',
    name: null,
    color: 'ink',
    stroke: 'solid',
    values: [{ x: now, word: 'Today' }],
  };
  const ready: Layer = {
    kind: 'interval',
    name: 'Ready',
    color: 'ready',
    from: now,
    to: now,
    likely: now,
    text: 'Now',
  };
  const { x, words } = layoutOf(described({ layers: [today, ready] }), 640);
  expect(words.find(({ text }) => text === 'Now')!.x - x.at(now)).toBeLessThan(10);
});
