// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { HistoryChart } from '../../../../renderer/features/board/HistoryChart.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { History } from '../../../../shared-core/history-chart/history-layers.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';
import { aFinding } from '../stacks/a-yard.ts';
import { aForecast, nowMs } from './a-forecast.ts';

/** Probed on August 7, when `aForecast` has its readings. */
const found = aFinding({
  at: '2026-08-07T12:00:00.000Z',
  averagePct: 16,
  lowPct: 15,
  highPct: 17,
  shellPct: 15.1,
  corePct: 17.2,
});

function open(more: Partial<History> = {}) {
  const forecast = aForecast();
  render(
    <main>
      <h1>OAK-01</h1>
      <HistoryChart
        code="OAK-01"
        history={{ findings: [found], stays: forecast.stays, endUse: forecast.endUse, forecast, ...more }}
      />
    </main>,
  );
  return userEvent.setup();
}

/** The table's rows by the head of each cell. */
function rows(): Record<string, string>[] {
  const table = screen.getByRole('table');
  const heads = within(table)
    .getAllByRole('columnheader')
    .map((head) => head.textContent);
  return within(table)
    .getAllByRole('row')
    .slice(1)
    .map((row) =>
      Object.fromEntries([...row.children].map((cell, index) => [heads[index]!, cell.textContent!])),
    );
}

beforeEach(() => {
  forgetEverything();
  useSettings.setState({ settings: { units: 'metric' } as Settings });
  // A year is shown only where it is not this one.
  vi.setSystemTime(nowMs);
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('Past and forecast of a board in one chart', () => {
  test('its table has the likely past, the time ahead, and what was read, each with its interval', async () => {
    open();
    const read = rows().filter((row) => row['Average reading']);
    expect(read.map(({ Day }) => Day)).toEqual(['Aug 7']);
    for (const head of ['Average reading', 'Shell reading', 'Core reading', 'Forecast average']) {
      const [middle, low, high] = read[0]![head]!.match(/[\d.]+/g)!.map(Number) as [number, number, number];
      expect(low).toBeLessThan(middle);
      expect(high).toBeGreaterThan(middle);
    }
    const ahead = rows().find(({ Day }) => Day === 'Jan 1, 2027');
    expect(ahead?.['Forecast shell']).toMatch(/^[\d.]+%$/);
    await expectNoBarriers();
  });

  test('on the day of its readings, they are what it is now', async () => {
    open();
    expect(screen.getByText(/Forecast for today: /)).toBeTruthy();
    cleanup();
    open({ findings: [{ ...found, at: new Date(nowMs - 3_600_000).toISOString() }] });
    expect(screen.queryByText(/Forecast for today: /)).toBeNull();
  });

  test('a forecast by questionable readings says so, and calls nothing likely', async () => {
    open({ forecast: aForecast({ isByQuestionable: true }) });
    expect(screen.getByText(/Forecast for today: [\d.]+%, questionable\./)).toBeTruthy();
    expect(screen.queryByText(/likely/)).toBeNull();
  });

  test('it begins at the last round, says how many there were before, and shows all of it when asked', async () => {
    const earlier = ['2026-04-02', '2026-06-01'].map((at) => ({ ...found, at: `${at}T12:00:00.000Z` }));
    const user = open({ findings: [...earlier, found] });
    expect(rows()[0]!.Day).toMatch(/^Aug /);
    expect(rows()[0]).not.toHaveProperty('Moved to');
    await user.click(screen.getByRole('button', { name: 'Show 2 earlier rounds' }));
    // Sawn and brought to the shed on March 10.
    expect(rows()[0]).toMatchObject({ Day: 'Mar 10', 'Moved to': 'Pole shed' });
    await user.click(screen.getByRole('button', { name: 'Show from the last round on' }));
    expect(rows()[0]!.Day).toMatch(/^Aug /);
  });

  test('the forecast can be shown for another place, with the day it is likely ready there', async () => {
    const user = open();
    expect(screen.queryByText('Ready')).toBeNull();
    await user.click(screen.getByRole('radio', { name: 'Bench room' }));
    const drawing = screen.getByRole('img', {
      name: 'Moisture content of OAK-01, past and forecast in Bench room',
    });
    expect(drawing.textContent).toContain('Today: moved to Bench room');
    const ready = 'About Jan 2027. Unlikely before Nov 2026; it may take over two years';
    expect(drawing.textContent).toContain('About Jan 2027');
    expect(rows().map((row) => row.Ready)).toContain(ready);
    // "Likely" is 8 chances in 10, like the interval around it.
    expect(
      screen.getByText(
        /Forecast for today: [\d.]+%, likely [\d.]+–\u2060[\d.]+%\. Ready in Bench room: About Jan 2027\. Unlikely before Nov 2026; it may take over two years\.$/,
      ),
    ).toBeTruthy();
  });

  test('of the places of one day, the last alone is named', () => {
    const stays = [
      { fromMs: nowMs - 40 * 86_400_000, placeName: 'Fence row' },
      { fromMs: nowMs - 7_200_000, placeName: 'Outdoors' },
      { fromMs: nowMs - 3_600_000, placeName: 'Shop' },
    ];
    open({ findings: [{ ...found, at: new Date(nowMs - 10_800_000).toISOString() }], stays });
    const { textContent } = screen.getByRole('img', { name: /Moisture content/ });
    expect(textContent).toContain('Shop');
    expect(textContent).not.toContain('Outdoors');
  });

  test('never probed, it has the forecast, no marks for readings, and no last reading to begin at', () => {
    const { forecast } = aForecast();
    open({ findings: [], forecast: aForecast({ readings: [], forecast: { ...forecast, residuals: [] } }) });
    const legend = within(screen.getByRole('list', { name: 'Legend' }));
    expect(legend.getByText('Forecast average')).toBeTruthy();
    expect(legend.queryByText(/read$/)).toBeNull();
    expect(screen.queryByRole('button', { name: /^Show (the|\d)/ })).toBeNull();
  });

  test('without a forecast it is the history alone', () => {
    open({ forecast: null });
    expect(screen.getByRole('img', { name: 'Moisture content of OAK-01 over time' })).toBeTruthy();
    expect(screen.queryByRole('radio')).toBeNull();
    expect(rows().at(-1)).toMatchObject({ Day: 'Aug 7', 'Shell reading': '15.1%', 'Core reading': '17.2%' });
  });
});
