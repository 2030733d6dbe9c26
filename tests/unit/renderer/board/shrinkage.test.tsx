// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ShapeOfBoard } from '../../../../renderer/features/board/ShapeOfBoard.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import type { ForecastDetails } from '../../../../shared-core/contract/forecast.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../../shared-core/wood/species/species.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';
import { aForecast, answerOf } from './a-forecast.ts';

/** Commercial red oak's, Wood Handbook (FPL-GTR-282), Table 13-5; northern red oak has none there. */
const redOakCoefficients = { changeCoefficient: { radial: 0.00158, tangential: 0.00369 } };

const furniture = builtInEndUses.find((endUse) => endUse.id === 'furniture')!;

const redOak = builtInSpecies.find((species) => species.id === 'oak-northern-red')!;

/** A red oak board of 1 x 8 in, 8 ft long, of which no forecast can be made unless `details` is one. */
function open(
  more: Partial<BoardRow> = {},
  change: Partial<Species> = {},
  units: DisplayUnits = 'metric',
  details: ForecastDetails | null = null,
) {
  useSettings.setState({ settings: { units } as Settings });
  const board = aBoardRow(1, {
    widthMm: 203.2,
    thicknessMm: 25.4,
    lengthMm: 2438.4,
    sawing: 'flat',
    latest: aFinding({ averagePct: 12 }),
    ...more,
  });
  render(
    <main>
      <ShapeOfBoard
        board={board}
        species={{ ...redOak, ...change }}
        endUse={furniture}
        forecast={{
          output: answerOf(details, {
            found: board.latest,
            whyNot: details ? null : message('forecast.none-to-begin-with'),
          }),
          error: null,
          loading: false,
          again: () => {},
        }}
      />
    </main>,
  );
}

const section = () => screen.findByRole('region', { name: 'Size, volume, and weight' });
const cells = async () =>
  (await screen.findAllByRole('row')).slice(1).map((row) =>
    within(row)
      .getAllByRole('cell')
      .map((cell) => cell.textContent),
  );

beforeEach(forgetEverything);
afterEach(cleanup);

describe('Size, volume, and weight', () => {
  test('show what a board loses until it is dry, by both routes', async () => {
    open({}, redOakCoefficients);
    expect(await screen.findByText(/From 12.0% on Aug 22 to 7.0%, the target for Furniture/)).toBeTruthy();
    // Northern red oak, Wood Handbook, Table 4-3: tangential 8.6 %, radial 4.0 %.
    // By hand: 203.2 x (7 - 12) / (3000 / 8.6 - 30 + 12) = -3.07; 203.2 x 0.00369 x -5 = -3.75;
    // 25.4 x -5 / (3000 / 4.0 - 18) = -0.17; 25.4 x 0.00158 x -5 = -0.20.
    expect(await cells()).toEqual([
      ['203 mm', '−3.1 mm (−1.5%)', '−3.7 mm (−1.8%)'],
      ['25 mm', '−0.2 mm (−0.7%)', '−0.2 mm (−0.8%)'],
    ]);
    await expectNoBarriers();
  });

  test('a 4/4 board 8 in wide and 8 ft long has 5 board feet by the tally and 5.33 as it is', async () => {
    open();
    // 8 in x 8 ft / 12 = 5.33 square feet, 5 in whole ones, 1 in thick (NHLA rules, from memory).
    const part = within(await section());
    expect(await part.findByText('5 board feet')).toBeTruthy();
    expect(part.getByText('exact: 5.33 board feet')).toBeTruthy();
    // 0.0254 x 0.2032 x 2.4384 m.
    expect(part.getByText('exact: 0.0126 m³')).toBeTruthy();
  });

  test('in imperial, nothing is metric', async () => {
    open({}, redOakCoefficients, 'imperial');
    expect(await cells()).toEqual([
      ['8 in', '−1/8\u00A0in (−1.5%)', '−1/8\u00A0in (−1.8%)'],
      ['1 in', 'under 1/16\u00A0in (−0.7%)', 'under 1/16\u00A0in (−0.8%)'],
    ]);
    expect(within(await section()).getAllByText(/ lb$/)).toHaveLength(2);
    expect(screen.queryByText(/m³/)).toBeNull();
  });

  test('what was read is of its day, and a questionable average gives way to the forecast for today', async () => {
    open();
    expect(within(await section()).getByText('Weight when last probed')).toBeTruthy();
    expect(screen.getByRole('columnheader', { name: 'When probed' })).toBeTruthy();
    cleanup();

    const { forecast, ...rest } = aForecast();
    const average = { low: 15, median: 16.8, high: 18 };
    const details = { ...rest, forecast: { ...forecast, now: { ...forecast.now, average } } };
    open({ latest: aFinding({ averagePct: 12, isQuestionable: true }) }, {}, 'metric', details);
    const part = within(await section());
    expect(part.getByText(/^From about 16.8%, today’s forecast, to 7.0%, the target for/)).toBeTruthy();
    expect(part.getByText('Weight now').nextElementSibling?.nextElementSibling?.textContent).toBe(
      'at about 16.8%',
    );
    expect(part.getByRole('columnheader', { name: 'Now' })).toBeTruthy();
    expect(part.queryByText(/12\.0%/)).toBeNull();
  });

  test('never probed, it asks for readings and still shows the volume', async () => {
    open({ latest: null });
    expect(await screen.findByText(/Probe it first/)).toBeTruthy();
    expect(screen.queryByRole('table')).toBeNull();
    expect(screen.queryByText(/^Weight/)).toBeNull();
    expect(screen.getByText('exact: 5.33 board feet')).toBeTruthy();
    await expectNoBarriers();
  });

  test('of unknown sawing and width, it says so and shows both extremes of the thickness', async () => {
    open({ sawing: 'unknown', widthMm: null });
    expect((await screen.findAllByRole('rowheader')).map((head) => head.textContent)).toEqual([
      'Thicknessflat-sawn',
      'Thicknessquarter-sawn',
    ]);
    expect(screen.getByText(/Sawing unknown/)).toBeTruthy();
    expect(screen.getByText('Width unknown, so volume and weight are too.')).toBeTruthy();
  });

  test('of a species without data, it names what is missing and leads to the species', async () => {
    open({}, { radialPct: null, tangentialPct: null, changeCoefficient: null, basicSpecificGravity: null });
    expect(await screen.findByText(/shrinkage of Northern red oak is not fully known/)).toBeTruthy();
    expect(screen.getByText(/specific gravity of Northern red oak is unknown/)).toBeTruthy();
    expect(screen.queryByRole('table')).toBeNull();
    expect(screen.getAllByRole('link', { name: 'Data for Northern red oak' })[0]!.getAttribute('href')).toBe(
      '#/species/oak-northern-red',
    );
  });

  test('an average wetter than the species can be does not stop the page', async () => {
    open({ latest: aFinding({ averagePct: 190 }) });
    expect(await screen.findByText('Weight when last probed')).toBeTruthy();
  });
});
