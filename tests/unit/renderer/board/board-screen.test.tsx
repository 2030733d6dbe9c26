// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { dayOf } from '../../../../renderer/ui/days.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { MeterCheck } from '../../../../shared-core/contract/meter-checks.ts';
import { DAY_MS } from '../../../../shared-core/time.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { shownDay, typeDay } from '../form/type-day.ts';
import { aReading } from '../round/a-round.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';
import { aBoardRow, aFinding } from '../stacks/a-yard.ts';
import { aForecast, answerOf } from './a-forecast.ts';
import { found, openBoard, panel, region } from './open-board.tsx';

const latest = aFinding();

/** At the left and the right end of a 2.4 m board as planned, and once elsewhere. */
const spots = [
  aReading(11, {
    roundId: 7,
    spotIndex: 0,
    spot: { depth: 'shell', depthMm: 2.5, fromEndMm: 800, face: 'face' },
  }),
  aReading(12, {
    roundId: 7,
    spotIndex: 3,
    spot: { depth: 'core', depthMm: 13.5, fromEndMm: 800, face: 'face' },
  }),
  aReading(13, {
    roundId: 7,
    spotIndex: null,
    spot: { depth: 'core', depthMm: 13.5, fromEndMm: 750, face: 'fresh-cut' },
  }),
];

/** What is under the heading. */
const lead = async () =>
  (await screen.findByRole('heading', { level: 1, name: 'OAK-01' })).nextElementSibling?.textContent;

beforeEach(() => {
  forgetEverything();
  // A year is shown only where it is not this one.
  vi.setSystemTime(new Date(2026, 8, 20, 12));
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

describe('A board', () => {
  test('shows what it is, its size, its stack, and its place', async () => {
    openBoard({
      ...found,
      board: aBoardRow(1, {
        latest,
        thicknessMm: 31.75,
        thicknessQuarters: 5,
        widthMm: 210,
        lengthMm: 2400,
      }),
    });
    expect(await lead()).toBe('Northern red oak · 5/4 × 210 mm × 2.4 m · Ridge oak · Pole shed since Mar 3');
    expect(screen.getByRole('link', { name: 'Ridge oak' }).getAttribute('href')).toBe('#/stacks/1');
  });

  test('shows its call with one sentence, the figures under it, and what else is worth knowing beside', {
    tags: 'core',
  }, async () => {
    openBoard();
    const call = await region('Call');
    expect(call.getByText('Keep drying')).toBeTruthy();
    expect(call.getByText('Probed Aug 22', { exact: false })).toBeTruthy();
    expect(call.getByText(unbroken('Too wet: 14.9%. Target 6–8%.'))).toBeTruthy();
    expect(call.getByText(unbroken('Likely 13.7–16.1%'))).toBeTruthy();
    // Core 15.8 less shell 14.1; 2 points are allowed for furniture.
    expect(call.getByText('1.7 points')).toBeTruthy();
    expect(await call.findByText('2.0 points allowed')).toBeTruthy();
    expect(
      (await region('Worth knowing')).getByText('Pole shed may dry it to the target: EMC 7.5% all year.'),
    ).toBeTruthy();
    await expectNoBarriers();
  });

  test('its figures are drawn against the target and the lowest EMC of its place, and said in words', async () => {
    openBoard(found, { 'boards.forecast': () => answerOf(aForecast()) });
    const scale = await screen.findByRole('img', { name: /EMC in Pole shed, all year/ });
    expect(scale.getAttribute('aria-label')).toMatch(
      /^Average 14\.9%, likely 13\.7–\u206016\.1%\. Shell 14\.1%\. Core 15\.8%\. Target 6–\u20608%\. EMC in Pole shed, all year: [\d.]+%\.$/,
    );
    const at = (selector: string, attribute: string) =>
      Number(scale.querySelector(selector)!.getAttribute(attribute));
    const ofTarget = 'rect[fill="var(--ready-soft)"]';
    const target = at(ofTarget, 'x') + at(ofTarget, 'width');
    expect(at('circle', 'cx')).toBeGreaterThan(target);
  });

  test('likely ready here and where that comes first, it offers the move', async () => {
    const { user } = openBoard(found, {
      'boards.forecast': () => answerOf(aForecast()),
      'places.list': () => [],
    });
    const call = await region('Call');
    expect((await call.findByText('Ready here')).nextElementSibling?.textContent).toBe(
      'Unlikely: the air is too damp (lowest EMC 13.4%)',
    );
    expect(call.getByText('Ready in Bench room').nextElementSibling?.textContent).toBe(
      'About Jan 2027. Unlikely before Nov 2026; it may take over two years',
    );
    // Said once, by the date.
    expect(screen.getAllByText(/too damp/)).toHaveLength(2);
    await user.click(call.getByRole('button', { name: 'Move to Bench room' }));
    expect(await screen.findByRole('dialog', { name: 'Move OAK-01' })).toBeTruthy();
  });

  test('that today’s forecast takes to be ready says so, with both days, and offers another reading', async () => {
    const details = aForecast();
    details.forecast.now.probabilityReady = 0.7;
    details.forecast.nextProbe = { atMs: details.nowMs, why: message('forecast.probe.decides') };
    openBoard(found, { 'boards.forecast': () => answerOf(details) });
    const call = await region('Call');
    expect(
      await call.findByText('Aug 22: Keep drying. Forecast for today, Sep 20: should be ready.'),
    ).toBeTruthy();
    expect(call.getByRole('link', { name: 'Probe' }).getAttribute('href')).toBe('#/round?stack=1');
  });

  test('that only dries on can be probed all the same, beside the day from which that is of use', async () => {
    const details = aForecast();
    details.places[0]!.lowestEmcPct = 7.5;
    details.forecast.places[0]!.reach.likelyMs = details.nowMs + 90 * DAY_MS;
    details.forecast.nextProbe = {
      atMs: details.nowMs + 30 * DAY_MS,
      why: message('forecast.probe.not-sooner'),
    };
    openBoard(found, { 'boards.forecast': () => answerOf(details) });
    const call = await region('Call');
    expect(await call.findByText('Probe it next on Oct 20. Unlikely to be ready sooner.')).toBeTruthy();
    expect(call.getByRole('link', { name: 'Probe' }).getAttribute('href')).toBe('#/round?stack=1');
    expect(screen.getAllByRole('link', { name: 'Probe' })).toHaveLength(1);
  });

  test('with a shell wetter than its core says so in words', async () => {
    openBoard({ ...found, board: aBoardRow(1, { latest: aFinding({ shellPct: 20, corePct: 13.2 }) }) });
    expect(await (await region('Call')).findByText('6.8 points, shell wetter')).toBeTruthy();
  });

  test('read at a depth that nobody knows shows what was read, and neither shell nor core', async () => {
    const unknown = { isDepthUnknown: true as const, shellPct: 15.3, corePct: null };
    const latest = aFinding({
      ...unknown,
      averagePct: null,
      averageIs: 'unknown',
      lowPct: null,
      highPct: null,
    });
    openBoard({ ...found, board: aBoardRow(1, { latest }) });
    const call = await region('Call');
    expect((await call.findByText('MC, depth unknown')).parentElement?.textContent).toContain('15.3%');
    expect(call.queryByText(/^(Shell|Core|Not read)$/)).toBeNull();
  });

  test('with no difference that shows calls neither wetter', async () => {
    openBoard({ ...found, board: aBoardRow(1, { latest: aFinding({ shellPct: 14.14, corePct: 14.11 }) }) });
    expect(await (await region('Call')).findByText('0.0 points')).toBeTruthy();
  });

  test('that is ready offers its label', async () => {
    openBoard({ ...found, board: aBoardRow(1, { latest: aFinding({ call: 'ready' }) }) });
    expect((await screen.findByRole('link', { name: 'Print label' })).getAttribute('href')).toBe(
      '#/labels?boards=1',
    );
    expect(screen.queryByRole('link', { name: 'Label' })).toBeNull();
  });

  test('names what would make its dates and its cup better, and leads to where that is entered', async () => {
    const { user } = openBoard({
      ...found,
      missing: [message('missing.sawn-on'), message('missing.end', { lacking: 'both' })],
    });
    const notes = await region('Worth knowing');
    expect(notes.getAllByRole('listitem').map(({ textContent }) => textContent)).toEqual([
      'Sawing date: starts the forecast from green wood.',
      'Width and sawing: cup is then forecast.',
    ]);
    await user.click(notes.getByRole('button', { name: 'Edit this board' }));
    expect(await screen.findByRole('dialog', { name: 'Edit OAK-01' })).toBeTruthy();
  });

  test('opens at the tab of its address, and puts the tab that is shown there', async () => {
    const { user } = openBoard(found, {}, { tab: 'about' });
    await region('About this board');
    await user.click(screen.getByRole('tab', { name: 'Oven-dry checks' }));
    expect(await screen.findByText('No checks of Northern red oak yet.')).toBeTruthy();
    expect(location.hash).toBe('#/boards/1?tab=oven-checks');
    await user.keyboard('{Home}');
    expect(screen.getByRole('tab', { name: 'Readings (3)' }).getAttribute('aria-selected')).toBe('true');
    await expectNoBarriers();
  });

  test('its history is a drawing, a sentence and a table of the same values', async () => {
    openBoard();
    const history = await region('Past and forecast');
    expect(history.getByRole('img', { name: 'Moisture content of OAK-01 over time' })).toBeTruthy();
    expect(
      await history.findByText(
        /^From 21.2% on May 9 to 14.9% on Aug 22. Target 6–\u20608% \(Furniture.*\).$/,
      ),
    ).toBeTruthy();
    const rows = history.getAllByRole('row').map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows.slice(1)).toEqual([
      ['Mar 3', '', '', '', 'Fence row'],
      ['May 9', unbroken('21.2% (19.4–23.0%)'), '19.1%', '23.4%', ''],
      ['Jun 1', '', '', '', 'Pole shed'],
      ['Aug 22', unbroken('14.9% (13.7–16.1%)'), '14.1%', '15.8%', ''],
    ]);
  });

  test('the drawing puts a drier value lower and a later one further right', async () => {
    openBoard();
    const drawing = (await region('Past and forecast')).getByRole('img', { name: /Moisture content/ });
    const dots = [...drawing.querySelectorAll('[data-layer="Average reading"] circle')].map((dot) => ({
      x: Number(dot.getAttribute('cx')),
      y: Number(dot.getAttribute('cy')),
    }));
    expect(dots).toHaveLength(2);
    expect(dots[1]!.x).toBeGreaterThan(dots[0]!.x);
    expect(dots[1]!.y).toBeGreaterThan(dots[0]!.y);
  });

  test('where it has been is listed, the present place first', async () => {
    openBoard(found, {}, { tab: 'about' });
    const moves = (await region('Where it has been')).getAllByRole('listitem');
    expect(moves).toHaveLength(2);
    expect(moves[0]!.textContent).toMatch(/^Pole shed since Jun 1/);
    expect(moves[1]!.textContent).toMatch(/^Fence row: Mar 3 – Jun 1/);
  });

  test('a reading is excluded with a reason, and an excluded one is included again', async () => {
    const { machine, user } = openBoard();
    const readings = await panel(/^Readings/);
    expect(readings.getByText('Excluded: Wet face')).toBeTruthy();
    await user.click(readings.getAllByRole('button', { name: /^Exclude / })[0]!);
    await user.click(screen.getByRole('button', { name: 'Knot, pitch, or bark' }));
    expect(machine.inputsOf('readings.exclude')).toEqual([{ readingId: 11, why: { code: 'defect' } }]);
    await user.click(readings.getByRole('button', { name: /^Include / }));
    expect(machine.inputsOf('readings.include')).toEqual([{ readingId: 12 }]);
  });

  test('each reading names its spot, and the end that its distance is from', async () => {
    openBoard({
      ...found,
      board: aBoardRow(1, { latest, lengthMm: 2400, thicknessMm: 27 }),
      readings: spots,
    });
    const readings = await panel(/^Readings/);
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, 80 cm from the left end2.5 mm deep',
      'Core, 80 cm from the right end14 mm deep',
      'Core, 75 cm from an end, on a fresh crosscutmid-thickness, on the cut',
    ]);
  });

  test('a core reading that was at 8 mm of 54 is of the shell, in its buttons too', async () => {
    const shallow = {
      ...spots[1]!,
      depthFrom: 'person' as const,
      spot: { ...spots[1]!.spot, depthMm: 8 },
    };
    openBoard({
      ...found,
      board: aBoardRow(1, { latest, lengthMm: 2400, thicknessMm: 54 }),
      readings: [spots[0]!, shallow],
    });
    const readings = await panel(/^Readings/);
    expect(readings.getAllByRole('rowheader')[1]!.textContent).toBe(
      'Shell, 80 cm from the right end8 mm deep',
    );
    expect(readings.queryByRole('button', { name: /core/i })).toBeNull();
  });

  test('a pair stays apart by its ends after the length of the board was edited', async () => {
    openBoard({
      ...found,
      board: aBoardRow(1, { latest, lengthMm: 3000, thicknessMm: 27 }),
      readings: spots,
    });
    const readings = await panel(/^Readings/);
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, 80 cm from the left end2.5 mm deep',
      'Core, 80 cm from the right end14 mm deep',
      'Core, 75 cm from an end, on a fresh crosscutmid-thickness, on the cut',
    ]);
  });

  test('what speaks against several readings is said once, under a number that each of them names', async () => {
    const suspicions = [
      {
        rule: 'temperature-unknown' as const,
        severity: 'note' as const,
        why: message('suspicion.temperature-unknown', { perStepK: 8 }),
        whatToDo: message('suspicion.temperature-unknown.do'),
      },
    ];
    openBoard({
      ...found,
      readings: [11, 12, 13].map((id) =>
        aReading(id, { roundId: 7, suspicions: id === 13 ? [] : suspicions }),
      ),
    });
    const readings = await panel(/^Readings/);
    const remarks = within(readings.getByRole('list', { name: 'Remarks' })).getAllByRole('listitem');
    expect(remarks.length).toBe(1);
    expect(readings.getAllByText('See note 1.').length).toBe(2);
    await expectNoBarriers();
  });

  test('advice that two remarks share is given once, after both', async () => {
    const far = (id: number, rawPct: number) =>
      aReading(id, {
        roundId: 7,
        suspicions: [
          {
            rule: 'temperature-unknown' as const,
            severity: 'note' as const,
            why: message('suspicion.temperature-unknown', { perStepK: rawPct }),
            whatToDo: message('suspicion.temperature-unknown.do'),
          },
        ],
      });
    openBoard({ ...found, readings: [far(11, 8), far(12, 9)] });
    const readings = await panel(/^Readings/);
    const remarks = within(readings.getByRole('list', { name: 'Remarks' })).getAllByRole('listitem');
    const advice = 'Measure the wood temperature and enter it for the round.';
    expect(remarks.map(({ textContent }) => textContent.endsWith(advice))).toEqual([false, true]);
  });

  test('what is corrected by a check of its meter says so, with the day of the check', async () => {
    const byCheck = (id: number, meterId: number) =>
      aReading(id, {
        raw: 13,
        meterId,
        takenAt: '2026-05-04T08:01:00.000Z',
        corrected: {
          mcPct: 12.1,
          steps: [{ step: 'meter-check', pct: 12.1 }],
          standardUncertaintyPct: 0.8,
          warnings: [],
        },
      });
    const check = (id: number, at: string, changes: Partial<MeterCheck> = {}): MeterCheck => ({
      id,
      blockId: 3,
      at,
      right: 12,
      tolerance: 0.5,
      shown: 12.9,
      tempC: null,
      off: 0.9,
      correctedBy: 0,
      state: 'off',
      excluded: null,
      isAhead: false,
      ...changes,
    });
    const checks = [
      check(4, '2026-05-09T15:00:00.000Z'),
      check(3, '2026-05-03T15:00:00.000Z', { excluded: { text: 'Wet block' } }),
      check(2, '2026-05-02T15:00:00.000Z'),
      check(1, '2026-05-01T15:00:00.000Z'),
    ];
    const block = {
      id: 3,
      version: 1,
      meterId: 1,
      name: 'Block',
      expected: 12,
      unit: 'pct' as const,
      tolerance: 0.5,
      checkEvery: 'day' as const,
    };
    const meter = { block, meterName: 'Yard meter', unit: 'pct' as const, right: 12, isDue: false };
    openBoard(
      { ...found, readings: [byCheck(11, 1), byCheck(12, 2), aReading(13)] },
      { 'meterChecks.list': () => [{ ...meter, checks, last: checks[0]!, toCorrect: null }] },
    );
    const readings = await panel(/^Readings/);
    expect(await readings.findByText(/Corrected by the check of May 2.* \(−0\.9.points\)\./)).toBeTruthy();
    expect(readings.getAllByText(/Corrected by/)).toHaveLength(2);
    expect(readings.getByText(/Corrected by a check \(−0\.9.points\)\./)).toBeTruthy();
  });

  test('after a reading is excluded the focus is on its own button, to include it again', async () => {
    const { user, machine } = openBoard();
    const readings = await panel(/^Readings/);
    await user.click(readings.getAllByRole('button', { name: /^Exclude / })[1]!);
    machine.answers['boards.get'] = () => ({
      ...found,
      readings: found.readings.map((each) =>
        each.id === 9 ? { ...each, excluded: { code: 'defect' } } : each,
      ),
    });
    await user.click(screen.getByRole('button', { name: 'Knot, pitch, or bark' }));
    machine.tell('changed', { yard: null, topics: ['board:1'] });
    await waitFor(() => expect(readings.getAllByRole('button', { name: /^Include / }).length).toBe(2));
    expect(document.activeElement).toBe(readings.getAllByRole('button', { name: /^Include / })[1]);
  });

  test('on a board of unknown length, each reading names how far along it is', async () => {
    const [left, right] = [0, 2].map((spotIndex) =>
      aReading(11 + spotIndex, {
        roundId: 7,
        spotIndex,
        spot: { depth: 'shell', depthMm: 2.5, fromEndMm: null, face: 'face' },
      }),
    );
    openBoard({ ...found, board: aBoardRow(1, { latest, lengthMm: null }), readings: [left!, right!] });
    const readings = await panel(/^Readings/);
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, left third2.5 mm deep',
      'Shell, right third2.5 mm deep',
    ]);
  });

  test.each([
    [1.45, 'pct', '1.45%'],
    [1_234_500, 'ohm', '1.2345 MΩ'],
  ] as const)('a raw value of %f %s is shown whole: %s', async (raw, unit, text) => {
    const { user } = openBoard({ ...found, readings: [aReading(11, { roundId: 7, raw, unit })] });
    const readings = await panel(/^Readings/);
    expect(readings.getByText(`raw ${text}`, { exact: false })).toBeTruthy();
    await user.click(readings.getByRole('button', { name: `Exclude shell reading ${text}` }));
    expect(within(screen.getByRole('dialog')).getByText(text)).toBeTruthy();
  });

  test('an average at the end of its readings says why', async () => {
    const whyAverage = message('board.why-average', { where: 'lowest', how: 'drier', part: 'faces' });
    openBoard({ ...found, board: aBoardRow(1, { latest: aFinding({ whyAverage }) }) });
    const call = await region('Call');
    expect(call.getByText(/^The average is at the low end of the readings\./)).toBeTruthy();
  });

  test('never probed, it says so, and offers to probe its stack', async () => {
    openBoard({ ...found, board: aBoardRow(1), readings: [], findings: [] });
    const call = await region('Call');
    expect(call.getByText('Not probed yet')).toBeTruthy();
    expect((await call.findByRole('link', { name: 'Probe' })).getAttribute('href')).toBe('#/round?stack=1');
    expect(screen.queryByText(/Probe again/)).toBeNull();
    expect((await panel('Readings (0)')).getByText('No readings yet.')).toBeTruthy();
    expect(
      (await region('Worth knowing')).getByText(
        'No forecast yet: never probed, and the sawing date is missing. Probe it once, or enter the sawing date.',
      ),
    ).toBeTruthy();
    await expectNoBarriers();
  });

  test('without an average, it shows the call and no figures', async () => {
    const unsound = aFinding({
      averagePct: null,
      lowPct: null,
      highPct: null,
      shellPct: null,
      corePct: null,
      call: 'probe-again',
    });
    openBoard({ ...found, board: aBoardRow(1, { latest: unsound }), findings: [unsound] });
    const call = await region('Call');
    expect(call.getAllByText('Probe again')).toHaveLength(1);
    expect(call.queryByText(/likely/i)).toBeNull();
    expect((await region('Past and forecast')).getByText(/^No average read yet\./)).toBeTruthy();
  });

  test('is edited: only what was typed is sent changed', async () => {
    const { machine, user } = openBoard(found, {
      'boards.edit': () => found.board,
    });
    await user.click(await screen.findByRole('button', { name: 'Edit' }));
    await screen.findByRole('combobox', { name: 'Species' });
    await user.type(screen.getByLabelText('Log'), 'Ridge');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.edit')).toEqual([{ id: 1, basedOn: 1, changed: { log: 'Ridge' } }]);
  });

  // As on its label: tests/unit/labels/label-lines.test.ts.
  test('of 9.5 mm is 9.5 mm thick on its page', async () => {
    openBoard({ ...found, board: aBoardRow(1, { latest, thicknessMm: 9.5 }) }, {}, { tab: 'about' });
    expect(await lead()).toContain('9.5 mm × 2.4 m');
    expect((await region('About this board')).getByText('9.5 mm')).toBeTruthy();
  });

  test.each(['metric', 'imperial'] as const)(
    'given as 8/4 is 8/4 wherever its thickness is shown in %s units, and no longer once that is typed',
    async (units) => {
      const board = aBoardRow(1, { latest, thicknessMm: 50.8, thicknessQuarters: 8 });
      const { machine, user } = openBoard(
        { ...found, board },
        { 'boards.edit': () => board },
        { tab: 'about', units },
      );
      expect(await lead()).toContain('8/4 × ');
      expect((await region('About this board')).getByText('8/4')).toBeTruthy();
      await user.click(screen.getByRole('tab', { name: 'Shrinkage and cup' }));
      const sizes = await region('Size, volume, and weight');
      expect((await sizes.findAllByRole('cell', { name: '8/4' })).length).toBeGreaterThan(0);
      await user.click(await screen.findByRole('button', { name: 'Edit' }));
      const field = await screen.findByLabelText('Thickness');
      expect(field).toHaveProperty('value', '8/4');
      await user.clear(field);
      await user.type(field, '54 mm');
      await user.click(screen.getByRole('button', { name: 'Save' }));
      expect(machine.inputsOf('boards.edit')).toMatchObject([
        { changed: { thicknessMm: 54, thicknessQuarters: null } },
      ]);
    },
  );

  test('whose bark came off asks for the day, today at first', async () => {
    const { machine, user } = openBoard(
      { ...found, board: aBoardRow(1, { latest, sawing: 'flat', barkSide: 'up-bark-on' }) },
      { 'boards.edit': () => found.board },
    );
    await user.click(await screen.findByRole('button', { name: 'Edit' }));
    await screen.findByRole('combobox', { name: 'Species' });
    expect(screen.queryByRole('group', { name: 'Bark removed on' })).toBeNull();
    await user.selectOptions(screen.getByLabelText('Bark side'), 'Up');
    expect(shownDay('Bark removed on')).toBe(dayOf(new Date()));
    await expectNoBarriers();
    await typeDay(user, 'Bark removed on', '2026-05-03');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.edit')).toMatchObject([
      { changed: { barkSide: 'up', barkOffOn: '2026-05-03' } },
    ]);
  });

  test('of a questionable species asks which it is, with both ways to settle it', async () => {
    const suspicion = {
      rule: 'species-unlike-stack' as const,
      severity: 'questionable' as const,
      why: message('suspicion.species-unlike-stack', {
        ownSpecies: 'Elm',
        otherSpecies: 'Oak',
        depth: 'core',
        mcPct: 17,
        otherPct: 20,
      }),
      whatToDo: message('suspicion.species-unlike-stack.do', { ownSpecies: 'Elm', otherSpecies: 'Oak' }),
    };
    const readings = [aReading(11, { roundId: 7, suspicions: [suspicion] })];
    const { machine, user } = openBoard(
      {
        ...found,
        readings,
      },
      {
        'boards.confirmSpecies': () => ({}),
        'boards.forecast': () => {
          const { judgement, ...answer } = answerOf(aForecast());
          const unused = message('call.questionable-unused', { questionable: 1, why: suspicion.why });
          return { ...answer, judgement: { ...judgement, reasons: [...judgement.reasons, unused] } };
        },
      },
    );
    const call = await region('Call');
    expect(call.getByText(/As Elm, this board’s core is at 17\.0%/)).toBeTruthy();
    const notes = await region('Worth knowing');
    expect(notes.getByText(/^Dry enough to bring in/)).toBeTruthy();
    expect(notes.queryByText(/As Elm/)).toBeNull();
    await user.click(call.getByRole('button', { name: 'Confirm Northern red oak' }));
    expect(machine.inputsOf('boards.confirmSpecies')).toEqual([{ id: 1 }]);
    await user.click(call.getByRole('button', { name: 'Change species' }));
    expect(await screen.findByRole('combobox', { name: 'Species' })).toBeTruthy();
    await expectNoBarriers();
  });

  test.each(['dry-too-soon', 'drier-than-its-air'] as const)(
    'that is %s can be said to come from drier air',
    async (rule) => {
      const suspicion = {
        rule,
        severity: 'questionable' as const,
        why: message('suspicion.drier-than-its-air', { readPct: 7.4, lowestEmcPct: 10.8 }),
        whatToDo: message('suspicion.drier-than-its-air.do'),
      };
      const { machine, user } = openBoard(
        { ...found, readings: [aReading(11, { roundId: 7, suspicions: [suspicion] })] },
        { 'boards.edit': () => ({ ...found.board, driedBy: 'kiln', version: found.board.version + 1 }) },
      );
      const call = await region('Call');
      await user.click(call.getByRole('button', { name: 'Yes' }));
      const { id, version } = found.board;
      const said = { id, basedOn: version, changed: { driedBy: 'kiln' } };
      expect(machine.inputsOf('boards.edit')).toEqual([said]);
      expect(useNotices.getState().notices.at(-1)?.sentence).toBe(
        `Saved: ${found.board.code} came from a kiln or drier air. Its call is updated.`,
      );
      await user.click(call.getByRole('button', { name: 'No, correct date or species' }));
      expect(await screen.findByRole('combobox', { name: 'Species' })).toBeTruthy();
      await expectNoBarriers();
    },
  );

  test('whose species is confirmed shows it', async () => {
    openBoard({ ...found, isSpeciesConfirmed: true }, {}, { tab: 'about' });
    expect((await region('About this board')).getByText('Northern red oak, confirmed')).toBeTruthy();
  });

  test('that is not there shows so and leads to all boards', async () => {
    openBoard(found, {
      'boards.get': () => {
        throw new Refusal(message('refusal.not-found', { what: 'board' }));
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain('That board is not in this yard.');
    expect(screen.getByRole('link', { name: 'All boards' })).toBeTruthy();
  });
});
