// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { unbroken } from '../../../../renderer/unbroken.ts';
import type { BoardForecast } from '../../../../shared-core/contract/forecast.ts';
import type { BoardRow, LatestFinding } from '../../../../shared-core/contract/yard.ts';
import { DAY_MS } from '../../../../shared-core/time.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, fileInUse, forgetEverything } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';
import { aForecast, answerOf, nowMs } from './a-forecast.ts';
import { found, openBoard, panel, region } from './open-board.tsx';

/** The page of a board of 27 x 210 mm with this forecast, at one of its tabs. */
const open = (
  answer: BoardForecast | (() => BoardForecast),
  tab: string | null = null,
  known: Partial<BoardRow> = {},
  units: DisplayUnits = 'metric',
) =>
  openBoard(
    {
      ...found,
      board: aBoardRow(1, { latest: aFinding(), widthMm: 210, thicknessMm: 27, sawing: 'flat', ...known }),
    },
    { 'boards.forecast': typeof answer === 'function' ? answer : () => answer },
    { tab, units },
  ).user;
const openForecast = (more: Parameters<typeof aForecast>[0] = {}, tab: string | null = null) =>
  open(answerOf(aForecast(more)), tab);

beforeEach(() => {
  forgetEverything();
  // A year is shown only where it is not this one.
  vi.setSystemTime(nowMs);
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('The forecast of a board', () => {
  test('says until when it still gains where no place dries it, and behind words, what it was made from', async () => {
    const { forecast, places } = aForecast();
    const user = openForecast({
      forecast: { ...forecast, places: forecast.places.slice(0, 1) },
      places: places.slice(0, 1),
    });
    const notes = await region('Worth knowing');
    expect(
      await notes.findByText(/^After .* it dries less than 0\.5 points more in Pole shed\.$/),
    ).toBeTruthy();
    await user.click(notes.getByText('Based on'));
    expect(
      notes.getByText('4 readings of this board, and 2 other boards of its stack and log.'),
    ).toBeTruthy();
    await expectNoBarriers();
  });

  test('the places are side by side, with their dates and their lowest EMC', async () => {
    openForecast();
    const table = within(
      await screen.findByRole('table', {
        name: unbroken('Dates for 6–8% on average and a shell–core difference of 2.0 points at most.'),
      }),
    );
    const [shed, room] = table.getAllByRole('row').slice(1) as [HTMLElement, HTMLElement];
    expect(shed.textContent).toMatch(
      /Pole shedhere now.*Unlikely: the air is too damp \(lowest EMC 13\.4%\)/,
    );
    expect(room.textContent).toMatch(
      /Bench roomAbout Jan 2027\. Unlikely before Nov 2026; it may take over two years/,
    );
    expect(room.textContent).toMatch(/[\d.]+%all yearMove$/);
    expect(table.getByRole('button', { name: 'Move to Bench room' })).toBeTruthy();
  });

  test('the line of time is left out where no place has a day', async () => {
    const { forecast, places } = aForecast();
    openForecast({
      forecast: { ...forecast, places: forecast.places.slice(0, 1) },
      places: places.slice(0, 1),
    });
    await screen.findByRole('table', { name: /^Dates for/ });
    expect(screen.queryByRole('columnheader', { name: /^Today →/ })).toBeNull();
  });

  test('the profile names shell, core, EMC and the day of the readings, and has each depth in a table', async () => {
    openForecast({}, 'thickness');
    const sheet = await panel('Through the thickness');
    expect(sheet.getByText(/EMC here this month: 13.4%.*The readings are from Aug 7/)).toBeTruthy();
    const rows = sheet.getAllByRole('row').map((row) => row.textContent);
    // Below the upper face, likely there, and each of the two readings of the core.
    expect(rows.filter((row) => /^14 mm.*17\.[03]% \(/.test(row!))).toHaveLength(2);
    expect(rows.some((row) => row?.startsWith('27 mm'))).toBe(true);
  });

  // A card said shell 27.9 and core 38.9 %, and this tab 25.6 and 39.4 %, on the day of the readings.
  test('on the day of its readings the profile has shell and core as the page has them', async () => {
    const at = new Date(nowMs).toISOString();
    const summaryWith = async (latest: Partial<LatestFinding>) => {
      open(answerOf(aForecast()), 'thickness', { latest: aFinding({ at, ...latest }) });
      const text = (await (await panel('Through the thickness')).findByText(/EMC here this month/))
        .textContent;
      cleanup();
      forgetEverything();
      return text;
    };
    const both = await summaryWith({ shellPct: 27.9, corePct: 38.9 });
    expect(both).toContain('Shell read today: 27.9%. Core read today: 38.9%.');
    expect(both).not.toContain('forecast');
    expect(await summaryWith({ shellPct: 27.9, corePct: null })).toMatch(
      /^Shell read today: 27\.9%\. By today’s forecast: core about [\d.]+%\./,
    );
    for (const old of [{ at: new Date(nowMs - 2 * DAY_MS).toISOString() }, { isQuestionable: true }])
      expect(await summaryWith({ shellPct: 27.9, corePct: 38.9, ...old })).toMatch(
        /^By today’s forecast: shell about/,
      );
  });
});

test('the assumptions are listed with what the forecast is based on', async () => {
  openForecast({
    assumptions: [message('forecast.assumed.lowest', { placeNames: ['Lane', 'Yard'], rateSharePct: 50 })],
  });
  const notes = await region('Worth knowing');
  fireEvent.click(notes.getByText('Based on'));
  expect(notes.getAllByRole('listitem')[1]?.textContent).toBe(
    'Layer 1, over the ground in Lane and Yard: its lower face is assumed to dry at 50% of the usual rate.',
  );
  await expectNoBarriers();
});

describe('Cup', () => {
  test('is shown now and at the target', async () => {
    openForecast({}, 'shape');
    const sheet = await region('Cup');
    expect(sheet.getAllByText(/^[\d.]+ mm across 210 mm, at most$/)).toHaveLength(2);
  });

  test('what is unknown of its rings is named with what is assumed', async () => {
    openForecast({}, 'shape');
    const sheet = await region('Cup');
    const assumed = within(sheet.getByRole('list', { name: 'Assumptions' }))
      .getAllByRole('listitem')
      .map((item) => item.textContent);
    expect(assumed).toEqual([
      'Bark side unknown: the worse case is shown.',
      'Distance from pith unknown: 150 mm assumed. Closer to the pith, it cups more.',
      'Look at the end grain, then enter it with Edit.',
    ]);
    expect(sheet.queryByText(/(upper|lower) face hollow/)).toBeNull();
  });

  test('in inches, what is finer than a tape is under its finest mark', async () => {
    const warp = {
      now: { ringsMm: 0.5, facesMm: 0.1, totalMm: 0.6 },
      atTarget: { ringsMm: 5, facesMm: 0, totalMm: 5 },
      advice: [],
    };
    open(answerOf(aForecast({ warp })), 'shape', { barkSide: 'up' }, 'imperial');
    const sheet = await region('Cup');
    expect(sheet.getByText('under 1/16 in across 8 1/4 in, upper face hollow')).toBeTruthy();
    expect(sheet.getByText('3/16 in across 8 1/4 in, upper face hollow')).toBeTruthy();
    expect(sheet.queryByText(/mm/)).toBeNull();
  });

  test('where the bark side is known, the hollow face is named, and causes against each other are subtracted', async () => {
    const warp = {
      now: { ringsMm: 1.5, facesMm: -0.4, totalMm: 1.1 },
      atTarget: { ringsMm: -2, facesMm: 0, totalMm: -2 },
      advice: [],
    };
    open(answerOf(aForecast({ warp })), 'shape', { ringRadiusMm: 90, barkSide: 'up' });
    const sheet = await region('Cup');
    expect(sheet.getByText('1 mm across 210 mm, upper face hollow')).toBeTruthy();
    expect(sheet.getByText('1.5 mm from the rings, 0.5 mm the other way from uneven drying')).toBeTruthy();
    expect(sheet.getByText('2 mm across 210 mm, lower face hollow')).toBeTruthy();
    expect(sheet.queryByRole('list', { name: 'Assumptions' })).toBeNull();
  });

  test('each advice names its subject and what to do', async () => {
    const advice = [{ about: 'end-seal' as const, message: message('cup.end-seal') }];
    openForecast({ warp: { ...aForecast().warp!, advice } }, 'shape');
    const sheet = await region('Cup');
    const todo = within(sheet.getByRole('list', { name: 'What to do' }));
    expect(todo.getByRole('listitem').textContent).toBe(
      'Ends. Seal the ends now. They dry many times faster than the faces, and check first.',
    );
  });

  test('where it cannot be forecast, it shows why', async () => {
    openForecast(
      { warp: null, whyNoWarp: message('cup.shrinkage-unknown', { speciesName: 'Yew' }) },
      'shape',
    );
    expect(
      await (await region('Cup')).findByText(/^Shrinkage of Yew unknown, so its cup is too\./),
    ).toBeTruthy();
  });
});

describe('Without a forecast', () => {
  test('it shows why not', async () => {
    open(answerOf(null, { whyNot: message('forecast.none-to-begin-with') }));
    expect(
      await (await region('Worth knowing')).findByText(/Probe it once, or enter the sawing date/),
    ).toBeTruthy();
    await expectNoBarriers();
  });

  test('a board never probed has a forecast without readings, and no marks for them', async () => {
    const { forecast } = aForecast();
    open(
      answerOf(aForecast({ readings: [], learnedFrom: 0, forecast: { ...forecast, residuals: [] } })),
      'thickness',
    );
    expect(await screen.findByText(/^No readings of this board/)).toBeTruthy();
    expect(within(screen.getByRole('tabpanel')).queryByText('Shell reading')).toBeNull();
  });

  test('a failure is shown, and can be tried again', async () => {
    let failed = false;
    const user = open(() => {
      if (failed) return answerOf(aForecast());
      failed = true;
      throw fileInUse();
    });
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Another program is using the yard file',
    );
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByText('Ready here')).toBeTruthy();
  });
});
