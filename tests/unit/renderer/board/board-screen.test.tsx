// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { BoardScreen } from '../../../../renderer/features/board/BoardScreen.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { dayOf } from '../../../../renderer/ui/days.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RequestOutput } from '../../../../shared-core/contract/requests.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { shownDay, typeDay } from '../form/type-day.ts';
import { aReading } from '../round/a-round.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack } from '../stacks/a-yard.ts';

type Found = RequestOutput<'boards.get'>;

const first = aFinding({
  roundId: 6,
  at: new Date(2026, 4, 9, 12).toISOString(),
  averagePct: 21.2,
  lowPct: 19.4,
  highPct: 23,
  shellPct: 19.1,
  corePct: 23.4,
});
const latest = aFinding();

const found: Found = {
  board: aBoardRow(1, { latest }),
  moves: [
    { id: 1, boardId: 1, placeId: 1, placeName: 'Fence row', since: new Date(2026, 2, 3, 12).toISOString() },
    { id: 2, boardId: 1, placeId: 2, placeName: 'Pole shed', since: new Date(2026, 5, 1, 12).toISOString() },
  ],
  readings: [
    aReading(11, { roundId: 7 }),
    aReading(12, { roundId: 7, counts: false, excluded: { text: 'Wet face' } }),
    aReading(9, { roundId: 6 }),
  ],
  findings: [first, latest],
  isSpeciesConfirmed: false,
  missing: [],
  reasons: [
    message('call.too-wet', { averagePct: 14.9, targetRange: { minPct: 6, maxPct: 8 } }),
    message('call.air-dries-only-to', { placeName: 'Pole shed', emcPct: 12.5 }),
  ],
};

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

/** What the machine answers when a reading was excluded; the board's page asks for all of it again. */
const owner = { roundId: 1, boardId: 1, stackId: 1 };

function open(board: Found = found, more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'boards.get': () => board,
    'stacks.list': () => [aStack()],
    'samples.get': () => ({
      boardId: 1,
      cuts: [],
      weights: [],
      target: null,
      status: message('weights.no-sections'),
    }),
    'boards.forecast': () => ({ details: null, whyNot: message('forecast.none-to-begin-with') }),
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
    'readings.exclude': () => owner,
    'readings.include': () => owner,
    ...more,
  });
  render(
    <main>
      <BoardScreen id={1} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

const region = async (name: string) => within(await screen.findByRole('region', { name }));

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
  test('shows its call, the figures under it, and why, the deciding reason first', async () => {
    open();
    const call = await region('Latest call');
    expect(call.getByText('Keep drying')).toBeTruthy();
    expect(call.getByText(unbroken('Likely 13.7–16.1%'))).toBeTruthy();
    // Core 15.8 less shell 14.1.
    expect(call.getByText('1.7 points')).toBeTruthy();
    expect(call.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      unbroken('Too wet: 14.9%. Target 6–8%.'),
      'The air in Pole shed that month can dry it to about 12.5%. After that it needs drier air.',
    ]);
    await expectNoBarriers();
  });

  test('its history is a drawing, a sentence and a table of the same values', async () => {
    open();
    const history = await region('History and forecast');
    expect(history.getByRole('img', { name: 'Moisture content of OAK-01 over time' })).toBeTruthy();
    expect(
      await history.findByText(
        /^From 21.2% on May 9 to 14.9% on Aug 22. Target for Furniture.*: 6–\u20608%.$/,
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
    open();
    const drawing = (await region('History and forecast')).getByRole('img', { name: /Moisture content/ });
    const dots = [...drawing.querySelectorAll('[data-layer="Average read"] circle')].map((dot) => ({
      x: Number(dot.getAttribute('cx')),
      y: Number(dot.getAttribute('cy')),
    }));
    expect(dots).toHaveLength(2);
    expect(dots[1]!.x).toBeGreaterThan(dots[0]!.x);
    expect(dots[1]!.y).toBeGreaterThan(dots[0]!.y);
  });

  test('where it has been is listed, the present place first', async () => {
    open();
    const moves = (await region('Where it has been')).getAllByRole('listitem');
    expect(moves.map((move) => move.textContent)).toEqual([
      'Pole shed since Jun 1',
      'Fence row: Mar 3 – Jun 1',
    ]);
  });

  test('a reading is excluded with a reason, and an excluded one is included again', async () => {
    const { machine, user } = open();
    const readings = await region('Readings');
    expect(readings.getByText('Excluded: Wet face')).toBeTruthy();
    await user.click(readings.getAllByRole('button', { name: /^Exclude / })[0]!);
    await user.click(screen.getByRole('button', { name: 'Knot, pitch or bark' }));
    expect(machine.inputsOf('readings.exclude')).toEqual([{ readingId: 11, why: { code: 'defect' } }]);
    await user.click(readings.getByRole('button', { name: /^Include / }));
    expect(machine.inputsOf('readings.include')).toEqual([{ readingId: 12 }]);
  });

  test('each reading names its spot, and the end that its distance is from', async () => {
    open({ ...found, board: aBoardRow(1, { latest, lengthMm: 2400, thicknessMm: 27 }), readings: spots });
    const readings = await region('Readings');
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, 80 cm from the left end2.5 mm deep',
      'Core, 80 cm from the right end14 mm deep',
      'Core, 75 cm from an end, on a fresh cut14 mm deep',
    ]);
  });

  test('a pair stays apart by its ends after the length of the board was edited', async () => {
    open({ ...found, board: aBoardRow(1, { latest, lengthMm: 3000, thicknessMm: 27 }), readings: spots });
    const readings = await region('Readings');
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, 80 cm from the left end2.5 mm deep',
      'Core, 80 cm from the right end14 mm deep',
      'Core, 75 cm from an end, on a fresh cut14 mm deep',
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
    open({
      ...found,
      readings: [11, 12, 13].map((id) =>
        aReading(id, { roundId: 7, suspicions: id === 13 ? [] : suspicions }),
      ),
    });
    const readings = await region('Readings');
    const remarks = within(readings.getByRole('list', { name: 'Remarks' })).getAllByRole('listitem');
    expect(remarks.length).toBe(1);
    expect(readings.getAllByText('Note. See 1.').length).toBe(2);
    await expectNoBarriers();
  });

  test('after a reading is excluded the focus is on its own button, to include it again', async () => {
    const { user, machine } = open();
    const readings = await region('Readings');
    await user.click(readings.getAllByRole('button', { name: /^Exclude / })[1]!);
    machine.answers['boards.get'] = () => ({
      ...found,
      readings: found.readings.map((each) =>
        each.id === 9 ? { ...each, excluded: { code: 'defect' } } : each,
      ),
    });
    await user.click(screen.getByRole('button', { name: 'Knot, pitch or bark' }));
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
    open({ ...found, board: aBoardRow(1, { latest, lengthMm: null }), readings: [left!, right!] });
    const readings = await region('Readings');
    expect(readings.getAllByRole('rowheader').map(({ textContent }) => textContent)).toEqual([
      'Shell, 33% of the way from the left end2.5 mm deep',
      'Shell, 67% of the way from the left end2.5 mm deep',
    ]);
  });

  test.each([
    [1.45, 'pct', '1.45%'],
    [1_234_500, 'ohm', '1.2345 MΩ'],
  ] as const)('a raw value of %f %s is shown whole: %s', async (raw, unit, text) => {
    const { user } = open({ ...found, readings: [aReading(11, { roundId: 7, raw, unit })] });
    const readings = await region('Readings');
    expect(readings.getByText(text)).toBeTruthy();
    await user.click(readings.getByRole('button', { name: `Exclude shell reading ${text}` }));
    expect(within(screen.getByRole('dialog')).getByText(text)).toBeTruthy();
  });

  test('never probed, it offers to probe its stack', async () => {
    open({ ...found, board: aBoardRow(1), readings: [], findings: [], reasons: [] });
    expect(await screen.findByText(/^No readings yet/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Probe Ridge oak' }).getAttribute('href')).toBe(
      '#/round?stack=1',
    );
    expect(screen.queryByRole('region', { name: 'Readings' })).toBeNull();
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
    open({ ...found, board: aBoardRow(1, { latest: unsound }), findings: [unsound] });
    const call = await region('Latest call');
    expect(call.getByText('Probe again')).toBeTruthy();
    expect(call.queryByText(/likely/i)).toBeNull();
    expect((await region('History and forecast')).getByText(/^No average yet\./)).toBeTruthy();
  });

  test('is edited: only what was typed is sent changed', async () => {
    const { machine, user } = open(found, {
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
    open({ ...found, board: aBoardRow(1, { latest, thicknessMm: 9.5 }) });
    expect(await screen.findByText(/^Northern red oak, 9\.5 mm /)).toBeTruthy();
    expect((await region('About this board')).getByText('9.5 mm')).toBeTruthy();
  });

  test.each(['metric', 'imperial'] as const)(
    'given as 8/4 is 8/4 wherever its thickness is shown in %s units, and no longer once that is typed',
    async (units) => {
      useSettings.setState({ settings: { units } as Settings });
      const board = aBoardRow(1, { latest, thicknessMm: 50.8, thicknessQuarters: 8 });
      const { machine, user } = open({ ...found, board }, { 'boards.edit': () => board });
      expect(await screen.findByText(/^Northern red oak, 8\/4 /)).toBeTruthy();
      expect((await region('About this board')).getByText('8/4')).toBeTruthy();
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
    const { machine, user } = open(
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
        corePct: 17,
        otherCorePct: 20,
      }),
      whatToDo: message('suspicion.species-unlike-stack.do', { ownSpecies: 'Elm', otherSpecies: 'Oak' }),
    };
    const readings = [aReading(11, { roundId: 7, suspicions: [suspicion] })];
    const { machine, user } = open({ ...found, readings });
    const call = await region('Latest call');
    expect(call.getByText(/As Elm, this board’s core is at 17\.0%/)).toBeTruthy();
    await user.click(call.getByRole('button', { name: 'Confirm Northern red oak' }));
    expect(machine.inputsOf('boards.confirmSpecies')).toEqual([{ id: 1 }]);
    await user.click(call.getByRole('button', { name: 'Change species' }));
    expect(await screen.findByRole('combobox', { name: 'Species' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('whose species is confirmed shows it', async () => {
    open({ ...found, isSpeciesConfirmed: true });
    expect((await region('About this board')).getByText('Northern red oak, confirmed')).toBeTruthy();
  });

  test('that is not there shows so and leads to all boards', async () => {
    open(found, {
      'boards.get': () => {
        throw new Refusal(message('refusal.not-found', { what: 'board' }));
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain('That board is not in this yard.');
    expect(screen.getByRole('link', { name: 'All boards' })).toBeTruthy();
  });
});
