// @vitest-environment jsdom
import '../parts/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { dayWords } from '../../../../renderer/parts/days.ts';
import { ForecastOfBoard } from '../../../../renderer/screens/board/ForecastOfBoard.tsx';
import type { BoardForecast } from '../../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';
import { aForecast } from './a-forecast.ts';

const day = (atMs: number) => dayWords(new Date(atMs).toISOString());

function open(answer: BoardForecast | (() => BoardForecast), said: Partial<BoardRow> = {}) {
  playMachine({ 'boards.forecast': typeof answer === 'function' ? answer : () => answer });
  render(
    <main>
      <h1>OAK-01</h1>
      <ForecastOfBoard
        board={aBoardRow(1, { widthMm: 210, thicknessMm: 27, sawing: 'flat', ...said })}
        units="metric"
      />
    </main>,
  );
  return userEvent.setup();
}
const openForecast = (more: Parameters<typeof aForecast>[0] = {}) =>
  open({ details: aForecast(more), whyNot: null });

beforeEach(forgetEverything);
afterEach(cleanup);

describe('What to expect of a board', () => {
  test('begins with what it means, and ends with what it was made from', async () => {
    openForecast();
    await screen.findByText(/^Even the driest month’s air in Pole shed/);
    const sheet = within(screen.getByRole('region', { name: 'What to expect' }));
    const items = sheet.getAllByRole('listitem').map((item) => item.textContent);
    expect(items[0]).toMatch(
      /^Even the driest month’s air in Pole shed .* brings wood no lower than .*waiting there gains nothing/,
    );
    expect(items[1]).toMatch(/^Moved to Bench room today it should get there/);
    expect(sheet.getByText(/resting on 4 readings of its own and on 2 other boards/)).toBeTruthy();
    await expectNoBarriers();
  });

  test('the drawing has its values as a table: past, ahead and each reading with its interval', async () => {
    openForecast();
    await screen.findByRole('img', { name: 'Moisture content of OAK-01, past and foreseen in Pole shed' });
    const table = within(
      screen.getByRole('table', { name: 'Moisture content of OAK-01, past and foreseen in Pole shed' }),
    );
    const rows = table.getAllByRole('row').map((row) =>
      within(row)
        .queryAllByRole('cell')
        .map((c) => c.textContent),
    );
    const read = rows.filter(([first]) => first?.startsWith('Read'));
    expect(read.map((row) => row[0]?.split(', ')[1])).toEqual(['shell', 'core']);
    for (const [, middle, low, high] of read) {
      expect(Number(low)).toBeLessThan(Number(middle));
      expect(Number(middle)).toBeLessThan(Number(high));
    }
    expect(rows.some(([first]) => first === day(aForecast().nowMs))).toBe(true);
  });

  test('the time ahead can be looked at as if it stood elsewhere', async () => {
    const user = openForecast();
    await user.click(await screen.findByRole('radio', { name: 'Bench room' }));
    expect(
      screen.getByRole('img', { name: 'Moisture content of OAK-01, past and foreseen in Bench room' }),
    ).toBeTruthy();
    const { likelyMs } = aForecast().forecast.places[1]!.reach;
    expect(screen.getByText(new RegExp(`likely comes within 6 to 8 % on ${day(likelyMs!)}`))).toBeTruthy();
  });

  test('the places stand side by side with their dates and with what they never pass', async () => {
    openForecast();
    const table = within(await screen.findByRole('table', { name: /^Day on which it is within 6 to 8 %/ }));
    const [shed, room] = table.getAllByRole('row').slice(1) as [HTMLElement, HTMLElement];
    const { floorPct, reach } = aForecast().forecast.places[1]!;
    expect(shed.textContent).toMatch(/Pole shedwhere it stands.*Never: the air there is too damp/);
    expect(room.textContent).toContain(
      `Bench roomif moved today${day(reach.earlyMs!)}${day(reach.likelyMs!)}`,
    );
    expect(room.textContent).toContain(`${floorPct.median.toFixed(1)} %`);
  });

  test('the profile names shell, core, the air and the day of the readings, and has each depth in a table', async () => {
    openForecast();
    const sheet = within(await screen.findByRole('region', { name: 'Through the thickness' }));
    expect(sheet.getByText(/this month’s air draws wood to 13.4 %/)).toBeTruthy();
    const rows = sheet.getAllByRole('row').map((row) => row.textContent);
    expect(
      rows.filter((row) => row?.startsWith('Read at 13.5 mm') || row?.startsWith('Read at 14 mm')),
    ).toHaveLength(2);
    expect(rows.some((row) => row?.startsWith('27 mm'))).toBe(true);
  });
});

test('what was taken for granted is listed with what the forecast rests on', async () => {
  openForecast({ assumptions: ['It lies in course 1 (common practice, no source).'] });
  const basis = within(await screen.findByRole('region', { name: 'What it rests on' }));
  expect(basis.getAllByRole('listitem')[1]?.textContent).toBe(
    'It lies in course 1 (common practice, no source).',
  );
  await expectNoBarriers();
});

describe('Warp', () => {
  test('says the cup now and at the target, in millimetres', async () => {
    openForecast();
    const sheet = within(await screen.findByRole('region', { name: 'Warp' }));
    const { now, atTarget } = aForecast().warp!;
    expect(sheet.getByText(`${Math.abs(now.totalMm).toFixed(1)} mm hollow`)).toBeTruthy();
    expect(sheet.getByText(`${Math.abs(atTarget.totalMm).toFixed(1)} mm hollow`)).toBeTruthy();
  });

  test('what nobody said of its rings is named with what is taken instead', async () => {
    openForecast();
    const sheet = within(await screen.findByRole('region', { name: 'Warp' }));
    const assumed = within(sheet.getByRole('list', { name: 'Taken for granted' }))
      .getAllByRole('listitem')
      .map((item) => item.textContent);
    expect(assumed[0]).toMatch(/which face was nearer the bark.*the worse case/);
    expect(assumed[1]).toMatch(/150 mm is taken.*\(common practice, no source\).*Nearer the pith/);
    expect(assumed[2]).toMatch(/under “Change”/);
    expect(sheet.queryByText(/on its upper side/)).toBeNull();
  });

  test('where it was said, the hollow side is named, and pulls against each other are called that', async () => {
    const warp = {
      now: { ringsMm: 1.5, facesMm: -0.4, totalMm: 1.1 },
      atTarget: { ringsMm: -2, facesMm: 0, totalMm: -2 },
      advice: [],
    };
    open({ details: aForecast({ warp }), whyNot: null }, { ringRadiusMm: 90, barkSide: 'up' });
    const sheet = within(await screen.findByRole('region', { name: 'Warp' }));
    expect(sheet.getByText(/^Now:/).textContent).toBe(
      'Now: 1.1 mm hollow on its upper side over 210 mm1.5 mm from its rings, against 0.4 mm from unlike faces',
    );
    expect(sheet.getByText(/^At 7.0 %:/).textContent).toMatch(/2.0 mm hollow on its lower side/);
    expect(sheet.queryByRole('list', { name: 'Taken for granted' })).toBeNull();
  });

  test('each advice says what it is about, what to do and where that is from', async () => {
    const advice = [
      {
        about: 'casehardening' as const,
        sentence: 'Let it even out before ripping it.',
        source: 'from memory',
      },
    ];
    openForecast({ warp: { ...aForecast().warp!, advice } });
    const sheet = within(await screen.findByRole('region', { name: 'Warp' }));
    const todo = within(sheet.getByRole('list', { name: 'What to do about it' }));
    expect(todo.getByRole('listitem').textContent).toBe(
      'Casehardening. Let it even out before ripping it. from memory',
    );
  });

  test('what is missing for it is said', async () => {
    openForecast({ warp: null, whyNoWarp: 'Give its width under “Change”.' });
    expect(await screen.findByText('Give its width under “Change”.')).toBeTruthy();
  });
});

describe('Without a forecast', () => {
  test('it is said why not', async () => {
    open({ details: null, whyNot: 'Nothing can be foreseen of it yet: probe it once.' });
    expect(await screen.findByText(/probe it once/)).toBeTruthy();
    await expectNoBarriers();
  });

  test('a board never probed has a forecast without readings, and no marks for them', async () => {
    const { forecast } = aForecast();
    openForecast({ readings: [], learntFrom: 0, forecast: { ...forecast, residuals: [] } });
    expect(await screen.findByText(/resting on no reading of its own/)).toBeTruthy();
    expect(screen.queryByText('shell as read')).toBeNull();
  });

  test('a failure is told, and it can be asked for again', async () => {
    let failed = false;
    const user = open(() => {
      if (failed) return { details: aForecast(), whyNot: null };
      failed = true;
      throw fileInUse();
    });
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Another program is using the yard file',
    );
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByRole('img', { name: /foreseen in Pole shed/ })).toBeTruthy();
  });
});
