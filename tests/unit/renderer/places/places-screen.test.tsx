// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PlacesScreen } from '../../../../renderer/features/places/PlacesScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { NewPlace, PlaceRow } from '../../../../shared-core/contract/yard.ts';
import { airFromOutdoors } from '../../../../shared-core/wood/climate/air-from-outdoors.ts';
import { emcOfYear } from '../../../../shared-core/wood/climate/climate.ts';
import { roomYear } from '../../../../shared-core/wood/climate/room-air.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { epwText } from '../../../reference/epw-text.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';

function aPlace(name: string, rhPct: number, more: Partial<PlaceRow> = {}): PlaceRow {
  const air = Array.from({ length: 12 }, (_, month) => ({ tempC: 10 + month, rh: rhPct / 100 }));
  return {
    id: rhPct,
    version: 1,
    name,
    kind: 'open-shed',
    air,
    airSource: null,
    airMovement: null,
    airOffset: null,
    stacks: [],
    ...more,
  };
}

const year = (name: string, state: string, emcPct: number) => ({
  station: {
    wmo: `${name} ${state}`,
    name,
    state,
    latitude: 35,
    longitude: -82,
    elevationM: 600,
    days: { sdPct: 4, lag: 0.5 },
  },
  air: Array.from({ length: 12 }, () => ({ tempC: 10, rh: 0.7, emcPct })),
});
const asheville = year('Asheville', 'NC', 16);
const springfields = [year('Springfield', 'MO', 15), year('Springfield', 'IL', 14)];
const ohio = [year('Dayton', 'OH', 14), year('Zanesville', 'OH', 15)];
const region = { air: asheville.air.map((air) => ({ ...air, emcSdPct: 2 })), stations: 314 };

/** Stations as the machine finds them: one Asheville, two Springfields, and no Athens in Ohio. */
const stations: Parameters<typeof playMachine>[0] = {
  'stations.find': ({ text }) => {
    if (text === 'Athens, Ohio') return { years: ohio, more: 0, isClear: false, onlyState: 'Ohio' };
    const years = /^ash/i.test(text) ? [asheville] : /^spr/i.test(text) ? springfields : [];
    return { years, more: 0, isClear: years.length === 1, onlyState: null };
  },
  'stations.ofRegion': () => region,
};

function open(places: PlaceRow[], more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'places.list': () => places,
    'sensors.list': () => [],
    'air.ofPlace': () => ({ days: [], typed: [], from: null, usedDays: 0, last: null, shiftPct: 0 }),
    ...stations,
    ...more,
  });
  render(
    <main>
      <PlacesScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('Places', () => {
  test('each shows its EMC now, the lowest of the year, and the year as a drawing and a table', async () => {
    open([aPlace('Pole shed', 60), aPlace('Loft', 35)]);
    const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
    const { monthlyEmcPct, driestEmcPct } = emcOfYear(aPlace('Pole shed', 60).air);
    const [now, lowest] = shed.getAllByRole('definition').map(({ textContent }) => textContent);
    expect(now!.trim()).toBe(`${monthlyEmcPct[new Date().getMonth()]!.toFixed(1)}%`);
    expect(lowest).toBe(`${driestEmcPct.toFixed(1)}% in December`);
    expect(shed.getByRole('img', { name: 'EMC at Pole shed, by month' })).toBeTruthy();
    expect(shed.getAllByRole('row')).toHaveLength(13);
    await expectNoBarriers();
  });

  test('all places are drawn to one scale', async () => {
    open([aPlace('Pole shed', 90), aPlace('Loft', 35)]);
    const scales = (await screen.findAllByRole('img', { name: /^EMC at/ })).map((drawing) =>
      [...drawing.querySelectorAll('text')]
        .map((text) => text.textContent)
        .filter((text) => /^\d+%$/.test(text)),
    );
    expect(scales).toHaveLength(2);
    expect(scales[0]!.length).toBeGreaterThan(2);
    expect(scales[1]).toEqual(scales[0]);
  });

  test('one scale holds what readings say, too: the drawings reach above the highest of all', async () => {
    const airOffset = { offsetPct: 6, boards: 1 };
    open([aPlace('Pole shed', 60, { airOffset }), aPlace('Loft', 35)]);
    const loft = await screen.findByRole('img', { name: 'EMC at Loft, by month' });
    const ticks = [...loft.querySelectorAll('text')].map((text) => text.textContent);
    const highestPct = Math.max(...emcOfYear(aPlace('', 60).air, 6).monthlyEmcPct);
    expect(Math.max(...ticks.filter((text) => /^\d+%$/.test(text)).map(Number.parseFloat))).toBeGreaterThan(
      highestPct - 5,
    );
  });

  test('air that a person typed has a day and no time', async () => {
    const last = { at: '2026-05-30T16:00:00.000Z', tempC: 20, rh: 0.6, isOfDay: true };
    open([aPlace('Pole shed', 60)], {
      'air.ofPlace': () => ({ days: [], typed: [], from: last.at, usedDays: 1, last, shiftPct: 0 }),
    });
    expect(await screen.findByText(/^Measured May 30(, 2026)?: /)).toBeTruthy();
    expect(screen.getByText(/^1 day measured, May 30(, 2026)?\.$/)).toBeTruthy();
  });

  test('each measured day is listed, with why it is not used and what can be done about it', async () => {
    const dayMs = Date.UTC(2026, 4, 29);
    const day = { dayMs, tempC: 20, rh: 0.45, emcPct: 8.5, values: 1, doubt: null };
    const days = [
      { ...day, doubt: 'stuck' as const, values: 24 },
      { ...day, dayMs: dayMs + 86_400_000 },
      { ...day, dayMs: dayMs + 2 * 86_400_000, doubt: 'excluded' as const },
    ];
    const typed = [{ id: 7, at: '2026-05-30T16:00:00.000Z', tempC: 20, rh: 0.45, isOutdated: false }];
    const act = '0c9e5d0e-54a4-4b6c-9d7c-0a3f2b1c4d5e';
    const { machine, user } = open([aPlace('Pole shed', 60)], {
      'air.ofPlace': () => ({ days, typed, from: null, usedDays: 1, last: null, shiftPct: 0 }),
      'air.edit': ({ isReplacing }) => {
        if (isReplacing) return { act };
        const other = { measuredOn: '2026-05-30', airTempC: 20, humidityRhPct: 40 };
        throw new Refusal(message('refusal.air-other', other));
      },
      'air.exclude': () => ({ act, days: 1 }),
    });
    await user.click(await screen.findByText('All 3 measured days'));
    const list = screen.getByRole('list', { name: 'Measured days at Pole shed' });
    const lines = within(list).getAllByRole('listitem');
    expect(lines.map(({ textContent }) => textContent)).toEqual([
      expect.stringMatching(/^May 31.* Excluded\.Include$/),
      expect.stringMatching(/^May 30.*45% humidity.* Entered for the whole day\.More/),
      expect.stringMatching(/^May 29.* Not used: every value was the same\. Check the sensor\.Exclude$/),
    ]);
    await user.click(within(list).getByRole('button', { name: /^Exclude May 29/ }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Exclude' }));
    await waitFor(() =>
      expect(machine.inputsOf('air.exclude')).toEqual([
        { placeId: 60, fromOn: '2026-05-29', toOn: '2026-05-29' },
      ]),
    );
    await user.click(within(list).getByRole('button', { name: /^More: 45% on May 30/ }));
    await user.click(await screen.findByRole('menuitem', { name: 'Edit' }));
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByText(/already\. Replace it\?$/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Replace' }));
    await waitFor(() =>
      expect(machine.inputsOf('air.edit')).toMatchObject([
        {},
        { id: 7, measuredOn: '2026-05-30', rh: 0.45, isReplacing: true },
      ]),
    );
    await expectNoBarriers();
  });

  test('of two values given for one day, the one that is not used is named; an odd one is to be checked', async () => {
    const day = { dayMs: Date.UTC(2026, 4, 30), tempC: 48, rh: 0.1, emcPct: 2, values: 2 };
    const typed = { id: 7, at: '2026-05-30T16:00:00.000Z', tempC: 48, rh: 0.1, isOutdated: false };
    const { user } = open([aPlace('Pole shed', 60)], {
      'air.ofPlace': () => ({
        days: [{ ...day, doubt: 'unlike' as const }],
        typed: [{ ...typed, id: 6, tempC: 20, rh: 0.45, isOutdated: true }, typed],
        from: null,
        usedDays: 0,
        last: null,
        shiftPct: 0,
      }),
    });
    expect(await screen.findByText(/unlike the usual air here\. Check what was entered\.$/)).toBeTruthy();
    await user.click(screen.getByText('The measured day'));
    const list = screen.getByRole('list', { name: 'Measured days at Pole shed' });
    expect(list.textContent).toMatch(/.*45% humidity, entered earlier for this day, is not used\./);
  });

  test('where a day of a sensor begins at another hour, the list says when', async () => {
    vi.stubEnv('TZ', 'America/New_York');
    const day = { dayMs: Date.UTC(2026, 4, 29), tempC: 20, rh: 0.45, emcPct: 8.5, values: 24, doubt: null };
    const log = { days: [day], typed: [], from: null, usedDays: 1, last: null, shiftPct: 0 };
    const { user } = open([aPlace('Pole shed', 60)], { 'air.ofPlace': () => log });
    await user.click(await screen.findByText('The measured day'));
    const says = /^May 29 runs from May 28, .*8:00.PM to May 29, .*8:00.PM here/;
    expect(screen.getByText(says)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: /^Exclude May 29/ }));
    expect(within(screen.getByRole('dialog')).getByText(says)).toBeTruthy();
    vi.unstubAllEnvs();
  });

  test('a sensor is read when a person asks, and what it shows is said, or why it is not read', async () => {
    const sensor = { id: 3, version: 1, name: 'Wall', deviceId: 'a1', kind: 'air' as const, placeId: 60 };
    let isInReach = false;
    const { user } = open([aPlace('Pole shed', 60)], {
      'sensors.list': () => [{ ...sensor, since: '2026-05-30T16:00:00.000Z', last: null }],
      'sensors.read': () => {
        if (isInReach) return { at: '2026-05-30T16:00:00.000Z', tempC: 20, rh: 0.45 };
        throw new Refusal(message('refusal.sensor-silent', { sensorName: 'Wall' }));
      },
    });
    const readNow = async () => {
      await user.click(await screen.findByRole('button', { name: 'More: Wall' }));
      await user.click(await screen.findByRole('menuitem', { name: 'Read now' }));
    };
    await readNow();
    expect(await screen.findByText(/^Wall did not answer\./)).toBeTruthy();
    isInReach = true;
    await readNow();
    await waitFor(() =>
      expect(useNotices.getState().notices.map(({ sentence }) => sentence)).toEqual([
        'Wall shows 20°C, 45% humidity.',
      ]),
    );
    expect(screen.queryByText(/did not answer/)).toBeNull();
    await expectNoBarriers();
  });

  test.each([
    ['meter', 'Bluetooth is in use for a meter. On the Meter page, press Disconnect to look for sensors.'],
    ['meter-search', 'Pintally is looking for meters. On the Meter page, press Stop to look for sensors.'],
  ] as const)(
    'while Bluetooth is in use for a %s, nothing is said of sensors in reach',
    async (busyWith, said) => {
      const near = { isSearching: false, busyWith, problem: null, sensors: [] };
      const { user } = open([aPlace('Pole shed', 60)], {
        'sensors.search': () => near,
        'sensors.near': () => near,
      });
      await user.click(await screen.findByRole('button', { name: 'Add a sensor at Pole shed' }));
      expect(await screen.findByText(said)).toBeTruthy();
      expect(screen.queryByText(/in reach/)).toBeNull();
    },
  );

  test('where readings tell of other air, the EMC is theirs, and the card says what typical air gives', async () => {
    open([aPlace('Pole shed', 60, { airOffset: { offsetPct: -2, boards: 6 } })]);
    const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
    const typicalPct = emcOfYear(aPlace('', 60).air).driestEmcPct;
    expect(shed.getAllByRole('definition')[1]!.textContent).toBe(
      `${(typicalPct - 2).toFixed(1)}% in December`,
    );
    expect(
      shed.getByText(
        `Lowest EMC in typical air: ${typicalPct.toFixed(1)}%. Readings of 6 boards put it 2.0 points lower.`,
      ),
    ).toBeTruthy();
    expect(shed.getByRole('columnheader', { name: 'EMC of typical air' })).toBeTruthy();
    await expectNoBarriers();
  });

  test.each([
    [
      13,
      0.2,
      'Readings of 13 boards and measured air put it 0.5 points higher.',
      'EMC from readings and measured air',
    ],
    [0, 0.5, 'Measured air puts it 0.5 points higher.', 'EMC from measured air'],
    [
      0,
      0.2,
      'Measured air, and readings at other places of this kind, put it 0.5 points higher.',
      'EMC from readings and measured air',
    ],
  ])(
    'with readings of %i boards and %f measured, it names what says so',
    async (boards, measuredPct, said, line) => {
      open([aPlace('Pole shed', 60, { airOffset: { offsetPct: 0.5, boards, measuredPct } })]);
      const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
      expect(shed.getByText((text) => text.endsWith(said))).toBeTruthy();
      expect(shed.getByRole('columnheader', { name: line })).toBeTruthy();
    },
  );

  test('where no reading says otherwise, there is no second figure', async () => {
    open([aPlace('Pole shed', 60)]);
    const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
    expect(shed.queryByText(/EMC of typical air/)).toBeNull();
  });

  test('air that is the same all year has no lowest month', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.38 }));
    open([aPlace('Bench room', 38, { air })]);
    const room = within(await screen.findByRole('region', { name: 'Bench room' }));
    expect(room.getByRole('term').textContent).toBe('EMC all year');
    // 20 °C and 38 % RH, eq. 4-5 of the Wood Handbook (2021).
    expect(room.getByRole('definition').textContent).toBe('7.4%');
    expect(room.queryByText(/Lowest|January/, { selector: 'dt, dd, p' })).toBeNull();
  });

  test('each says where its air is from, and which stacks are there', async () => {
    open([
      aPlace('Pole shed', 60, {
        airSource: { kind: 'region', stations: 12 },
        stacks: [
          { id: 3, name: 'Creek walnut', boards: 12 },
          { id: 4, name: 'Oak', boards: 1 },
        ],
      }),
      aPlace('Loft', 35),
    ]);
    const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
    expect(
      shed.getByText('Open shed · Average of 12 weather stations in the region: rough', { exact: false }),
    ).toBeTruthy();
    const stacks = within(shed.getByRole('list', { name: 'Stacks at Pole shed' }));
    expect(stacks.getAllByRole('listitem').map(({ textContent }) => textContent)).toEqual([
      'Creek walnut (12 boards)',
      'Oak (1 board)',
    ]);
    expect(stacks.getByRole('link', { name: 'Oak' }).getAttribute('href')).toBe('#/stacks/4');
    const loft = within(screen.getByRole('region', { name: 'Loft' }));
    expect(loft.getByText('No boards here.')).toBeTruthy();
  });

  test('where there is none yet, the screen says what one is for, beside the button that adds it', async () => {
    open([]);
    expect(await screen.findByText(/No places yet/)).toBeTruthy();
    expect(screen.getAllByRole('button', { name: 'Add a place' })).toHaveLength(1);
  });

  test('where the list cannot be loaded, the sentence says why', async () => {
    open([], {
      'places.list': () => {
        throw fileInUse();
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Another program is using the yard file',
    );
  });

  test('an indoor place takes one decision, its kind: its usual air is there, called an assumption', async () => {
    const { machine, user } = open([], {
      'places.add': (place) => ({ ...aPlace('Room', 40), ...place }) as PlaceRow,
    });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Bench room');
    await user.selectOptions(screen.getByLabelText('Kind'), 'Heated room');
    expect(screen.getByLabelText('Air')).toHaveProperty('value', 'heated');
    expect(
      screen.getByText(
        'An assumption: EMC from 6.0% in winter to 10.0% in summer. Replace it once you know your own.',
      ),
    ).toBeTruthy();
    expect(screen.getByRole('img', { name: 'EMC at Bench room, by month' })).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    const [place] = machine.inputsOf('places.add') as [NewPlace];
    expect(place).toMatchObject({ kind: 'heated-room', airSource: { kind: 'room', room: 'heated' } });
    expect(emcOfYear(place.air).driestEmcPct).toBeCloseTo(6, 6);
  });

  test('where the outdoor air is known, a room is made from it, can be edited, and then is the person’s own', async () => {
    const yard = aPlace('Yard', 70, {
      kind: 'outdoors',
      air: asheville.air,
      airSource: { kind: 'station', station: asheville.station },
    });
    const { machine, user } = open([yard], {
      'places.add': (place) => ({ ...aPlace('Room', 40), ...place }) as PlaceRow,
    });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Bench room');
    await user.selectOptions(screen.getByLabelText('Kind'), 'Heated room');
    const made = airFromOutdoors('heated', asheville.air);
    expect(screen.getByText(/^From the air of Yard: EMC [\d.]+%/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Edit the months' }));
    expect(screen.getByLabelText('January, relative humidity')).toHaveProperty(
      'value',
      String(Math.round(made[0]!.rh * 1000) / 10),
    );
    await user.selectOptions(screen.getByLabelText('Air'), 'Heated in winter');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([
      { air: made, airSource: { kind: 'room', room: 'heated', outdoors: 'Yard' } },
    ]);
  });

  test('an open shed begins with the outdoor air of the yard', async () => {
    const yard = aPlace('Yard', 70, { kind: 'outdoors', air: asheville.air, airSource: null });
    const { user } = open([yard]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    expect(screen.getByRole('option', { name: 'Outdoor air of this yard' })).toHaveProperty('selected', true);
  });

  test('a room keeps its saved air until it is made again from the outdoor air', async () => {
    const yard = aPlace('Yard', 70, { kind: 'outdoors', air: asheville.air, airSource: null });
    const room = aPlace('Bench room', 40, {
      kind: 'heated-room',
      air: roomYear('heated', 0),
      airSource: { kind: 'room', room: 'heated' },
    });
    const { machine, user } = open([yard, room], { 'places.edit': () => room });
    await user.click(await screen.findByRole('button', { name: 'Edit Bench room' }));
    expect(screen.getByText(/^An assumption/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Use the outdoor air of Yard' }));
    expect(screen.getByText(/^From the air of Yard/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    await waitFor(() =>
      expect(machine.inputsOf('places.edit')).toMatchObject([
        { changed: { air: airFromOutdoors('heated', asheville.air) } },
      ]),
    );
  });

  test.each([
    ['Shop, heated now and then', 'Heated now and then'],
    ['Heated room', 'Heated in winter'],
  ])('%s begins with “%s”', async (kind, way) => {
    const { user } = open([]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.selectOptions(screen.getByLabelText('Kind'), kind);
    expect(screen.getByRole('option', { name: way })).toHaveProperty('selected', true);
    // Back outdoors, a station is asked for.
    await user.selectOptions(screen.getByLabelText('Kind'), 'Outdoors');
    expect(screen.getByRole('combobox', { name: 'Nearest weather station' })).toBeTruthy();
    expect(screen.queryByRole('option', { name: way })).toBeNull();
  });

  test('a place of assumed air says so on its card', async () => {
    open([
      aPlace('Bench room', 40, { kind: 'heated-room', airSource: { kind: 'room', room: 'conditioned' } }),
    ]);
    expect(await screen.findByText('Heated room · Assumed: heated and air-conditioned')).toBeTruthy();
  });

  test.each([
    ['heated', 'Heated room · From the outdoor air of Yard, heated in winter'],
    ['part-heated', 'Heated room · From the outdoor air of Yard, heated now and then'],
    ['open-shed', 'Heated room · Outdoor air of Yard'],
  ] as const)('a place made from the outdoor air says so on its card: %s', async (room, card) => {
    open([aPlace('Room', 40, { kind: 'heated-room', airSource: { kind: 'room', room, outdoors: 'Yard' } })]);
    expect(await screen.findByText(card)).toBeTruthy();
  });

  test('a room that is held all year is added with one pair of figures', async () => {
    const { machine, user } = open([], {
      'places.add': (place) => ({ ...aPlace('Room', 40), ...place }) as PlaceRow,
    });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Bench room');
    await user.selectOptions(screen.getByLabelText('Kind'), 'Heated room');
    await user.selectOptions(screen.getByLabelText('Air'), 'The same all year');
    await user.type(screen.getByLabelText('Temperature'), '20,5');
    await user.type(screen.getByLabelText('Relative humidity'), '140');
    await user.tab();
    expect(screen.getByText('At most 99%.')).toBeTruthy();
    await user.clear(screen.getByLabelText('Relative humidity'));
    await user.type(screen.getByLabelText('Relative humidity'), '40');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toEqual([
      {
        name: 'Bench room',
        kind: 'heated-room',
        air: Array.from({ length: 12 }, () => ({ tempC: 20.5, rh: 0.4 })),
        airSource: null,
        airMovement: null,
      },
    ]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('twelve lines pasted into a field fill the year', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Shed', 60) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Shed');
    await user.selectOptions(screen.getByLabelText('Air'), 'Your own monthly averages');
    await user.click(screen.getByLabelText('January, temperature'));
    await user.paste(Array.from({ length: 12 }, (_, month) => `${month}\t${60 + month}`).join('\n'));
    expect(screen.getByLabelText('December, relative humidity')).toHaveProperty('value', '71');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([{ air: { 11: { tempC: 11, rh: 0.71 } } }]);
  });

  test('with something missing, nothing is sent, what was typed stays, and the focus goes to the mistake', async () => {
    const { machine, user } = open([]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.selectOptions(screen.getByLabelText('Air'), 'Your own monthly averages');
    await user.type(screen.getByLabelText('January, temperature'), '4');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(screen.getByText('Give it a name.')).toBeTruthy();
    expect(screen.getByLabelText('January, relative humidity').getAttribute('aria-invalid')).toBe('true');
    expect(screen.getAllByText('Fill this in.')).toHaveLength(23);
    expect(machine.inputsOf('places.add')).toEqual([]);
    expect(screen.getByLabelText('January, temperature')).toHaveProperty('value', '4');
    expect(document.activeElement).toBe(screen.getByLabelText('Name'));
  });

  test('a new place takes the air of the nearest station, its EMC included, and then has the focus', async () => {
    const places: PlaceRow[] = [];
    const { machine, user } = open(places, {
      'places.add': (place) => {
        const added = { ...aPlace('Yard', 70), ...place } as PlaceRow;
        places.push(added);
        return added;
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    await user.type(screen.getByRole('combobox', { name: 'Nearest weather station' }), 'asheville');
    await user.tab();
    expect(await screen.findByText('Air of Asheville, NC, typical year')).toBeTruthy();
    expect(screen.queryByLabelText('January, temperature')).toBeNull();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toEqual([
      {
        name: 'Yard',
        kind: 'open-shed',
        air: asheville.air,
        airSource: { kind: 'station', station: asheville.station },
        airMovement: null,
      },
    ]);
    act(() => machine.tell('changed', { yard: null, topics: ['places'] }));
    expect(await screen.findByText('Open shed · Air of Asheville, NC, typical year')).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Edit Yard' }));
  });

  test('how the air moves at the boards is as its kind has it, until a person chooses', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Bench room', 40) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    const movement = screen.getByRole('combobox', { name: 'Air movement' });
    expect(movement).toHaveProperty('value', 'open-shed');
    await user.selectOptions(movement, 'Fan');
    await user.selectOptions(screen.getByLabelText('Kind'), 'Heated room');
    expect(movement).toHaveProperty('value', 'still-room');
    expect(
      within(movement)
        .getAllByRole('option')
        .map(({ textContent }) => textContent),
    ).toEqual(['Still', 'Sheltered', 'Windy', 'Fan', 'Dehumidifier', 'Solar kiln']);
    await user.selectOptions(movement, 'Dehumidifier');
    await user.type(screen.getByLabelText('Name'), 'Bench room');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([
      { kind: 'heated-room', airMovement: 'dehumidified' },
    ]);
  });

  // Fast air on wet oak: common practice, no source.
  test.each(['Fan', 'Dehumidifier', 'Solar kiln'])(
    '%s: the field warns of checks in wet oak',
    async (name) => {
      const { user } = open([]);
      await user.click(await screen.findByRole('button', { name: 'Add a place' }));
      const movement = screen.getByRole('combobox', { name: 'Air movement' });
      expect(movement.getAttribute('aria-describedby')).toBeNull();
      await user.selectOptions(movement, name);
      expect(screen.getByText(/^Wet oak can dry too fast.*check/).id).toBe(
        movement.getAttribute('aria-describedby'),
      );
      await expectNoBarriers();
    },
  );

  test('a card says how the air moves at the boards, and what that can do', async () => {
    open([aPlace('Pole shed', 60), aPlace('Kiln', 35, { kind: 'outdoors', airMovement: 'solar-kiln' })]);
    const shed = within(await screen.findByRole('region', { name: 'Pole shed' }));
    expect(shed.getByText('Air movement: Sheltered')).toBeTruthy();
    const kiln = within(screen.getByRole('region', { name: 'Kiln' }));
    expect(kiln.getByText('Air movement: Solar kiln')).toBeTruthy();
    expect(kiln.getByText(/^Wet oak can dry too fast here, and check/)).toBeTruthy();
    expect(shed.queryByText(/Wet oak/)).toBeNull();
  });

  test('what another window saved of it meanwhile is shown at the field', async () => {
    const saved = aPlace('Pole shed', 60, { airMovement: 'fan' });
    const theirs = { ...saved, version: 2, airMovement: null };
    const { machine, user } = open([saved], {
      'places.edit': () => {
        throw new Conflict(theirs);
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Edit Pole shed' }));
    await user.selectOptions(screen.getByRole('combobox', { name: 'Air movement' }), 'Dehumidifier');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('places.edit')).toMatchObject([{ changed: { airMovement: 'dehumidified' } }]);
    expect(await screen.findByRole('button', { name: 'Use what was saved' })).toBeTruthy();
    const field = { name: 'Air movement', description: /Saved meanwhile: Sheltered/ };
    expect(screen.getByRole('combobox', field)).toHaveProperty('value', 'dehumidified');
  });

  test('without a station a place has the rough air of the region, and says so', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Yard', 70) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    expect(screen.getByText(/Leave blank for rough dates/)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([
      { air: region.air, airSource: { kind: 'region', stations: 314 } },
    ]);
  });

  test.each([
    ['spr', '“spr” could be Springfield, MO or Springfield, IL. Choose one.'],
    ['zzzz', 'No weather station matches “zzzz”. Try a larger town, add the state, or leave it blank.'],
    ['Athens, Ohio', '“Athens, Ohio” has no weather station. Choose the nearest in Ohio.'],
  ])('a text that means no one station is not guessed at: %s', async (text, sentence) => {
    const { machine, user } = open([]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    const station = screen.getByRole('combobox', { name: 'Nearest weather station' });
    await user.type(station, text);
    await user.tab();
    expect((await screen.findAllByText(sentence)).length).toBeGreaterThan(0);
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(await screen.findByText('Not saved yet. Fix the highlighted fields.')).toBeTruthy();
    expect(document.activeElement).toBe(station);
    expect(machine.inputsOf('places.add')).toEqual([]);
  });

  test('one of several stations is chosen from the list by the keyboard, as a species is', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Yard', 70) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    const station = screen.getByRole('combobox', { name: 'Nearest weather station' });
    await user.type(station, 'spr');
    expect((await screen.findAllByRole('option')).map(({ textContent }) => textContent)).toEqual([
      'Springfield, MO',
      'Springfield, IL',
    ]);
    await user.keyboard('{ArrowDown}{ArrowDown}{Enter}');
    expect(station).toHaveProperty('value', 'Springfield, IL');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([
      { airSource: { kind: 'station', station: springfields[1]!.station } },
    ]);
  });

  test('a town without a station lists those of its state, and one is chosen', async () => {
    const { user } = open([]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    const station = screen.getByRole('combobox', { name: 'Nearest weather station' });
    await user.type(station, 'Athens, Ohio');
    expect(
      await screen.findByText('“Athens, Ohio” has no weather station. Choose the nearest in Ohio.'),
    ).toBeTruthy();
    await user.click(screen.getByRole('option', { name: 'Zanesville, OH' }));
    expect(station).toHaveProperty('value', 'Zanesville, OH');
  });

  test('leaving the station takes the one that is meant, by its full name', async () => {
    const { user } = open([]);
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    const station = screen.getByRole('combobox', { name: 'Nearest weather station' });
    await user.type(station, 'ashe');
    expect(await screen.findByText('Air of Asheville, NC, typical year')).toBeTruthy();
    await user.tab();
    expect(station).toHaveProperty('value', 'Asheville, NC');
  });

  test('a weather file gives its months; what is no weather file is refused', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Yard', 70) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    await user.selectOptions(screen.getByLabelText('Air'), 'Outdoor air of an EPW file');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(screen.getByText('Choose a file.')).toBeTruthy();
    const field = screen.getByLabelText('EPW weather file', { selector: 'input[type=file]' });
    await user.upload(field, new File(['<html>'], 'page.epw'));
    expect(await screen.findByText(/^page\.epw was refused\. This is not an EPW file/)).toBeTruthy();
    const hours = Array.from({ length: 8760 }, () => [20, 50] as const);
    await user.upload(field, new File([epwText(hours, 'Oslo', 'NOR')], 'oslo.epw'));
    expect(await screen.findByText('To be saved: Air of Oslo, NOR, typical year.')).toBeTruthy();
    expect(screen.queryByText(/was refused/)).toBeNull();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add' }));
    const [place] = machine.inputsOf('places.add') as [NewPlace];
    expect(place.airSource).toMatchObject({ kind: 'file', siteName: 'Oslo, NOR' });
    expect(place.air[6]?.rh).toBeCloseTo(0.5, 9);
  });

  test('after a refused file the form says at the field that the earlier file’s air is to be saved', async () => {
    const { machine, user } = open([], { 'places.add': () => aPlace('Yard', 70) });
    await user.click(await screen.findByRole('button', { name: 'Add a place' }));
    await user.type(screen.getByLabelText('Name'), 'Yard');
    await user.selectOptions(screen.getByLabelText('Air'), 'Outdoor air of an EPW file');
    const field = screen.getByLabelText('EPW weather file', { selector: 'input[type=file]' });
    const hours = Array.from({ length: 8760 }, () => [20, 50] as const);
    await user.upload(field, new File([epwText(hours, 'Oslo', 'NOR')], 'oslo.epw'));
    await screen.findByText('To be saved: Air of Oslo, NOR, typical year.');
    await user.upload(field, new File(['<html>'], 'page.epw'));
    expect(await screen.findByText(/^page\.epw was refused/)).toBeTruthy();
    expect(screen.getByText('To be saved: Air of Oslo, NOR, typical year.')).toBeTruthy();
    expect(field.getAttribute('aria-invalid')).toBe('true');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('places.add')).toMatchObject([{ airSource: { siteName: 'Oslo, NOR' } }]);
  });

  const sixth = region.air.map(({ tempC }, month) => ({ tempC, rh: month / 60 + 1 / 6 }));
  test.each([
    ['of its region', region.air, { kind: 'region', stations: 12 } as const],
    ['of a station', asheville.air, { kind: 'station', station: asheville.station } as const],
    ['as typed, finer than the fields show', sixth, null],
    ['assumed', roomYear('heated', 0), { kind: 'room', room: 'heated' } as const],
  ])('renaming a place leaves its air as it was: %s', async (_, air, airSource) => {
    const place = { ...aPlace('Yard', 70), air, airSource };
    const { machine, user } = open([place], { 'places.edit': () => place });
    await user.click(await screen.findByRole('button', { name: 'Edit Yard' }));
    await user.type(screen.getByLabelText('Name'), ' 2');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    await waitFor(() =>
      expect(machine.inputsOf('places.edit')).toEqual([{ id: 70, basedOn: 1, changed: { name: 'Yard 2' } }]),
    );
  });

  test('a refusal of the machine is shown in the form, which stays open', async () => {
    const { user } = open([aPlace('Pole shed', 60)], {
      'places.edit': () => {
        throw new Refusal(message('refusal.place-name-taken', { placeName: 'Loft' }));
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Edit Pole shed' }));
    await user.clear(screen.getByLabelText('Name'));
    await user.type(screen.getByLabelText('Name'), 'Loft');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect((await screen.findByRole('alert')).textContent).toContain('There is already a place called Loft.');
    expect(screen.getByLabelText('Name')).toHaveProperty('value', 'Loft');
  });

  test('where another window gave it other air meanwhile, the form says whose', async () => {
    const place = aPlace('Yard', 70);
    const { air, station } = asheville;
    const { user } = open([place], {
      'places.edit': () => {
        throw new Conflict({ ...place, version: 2, air, airSource: { kind: 'station', station } });
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Edit Yard' }));
    await user.clear(screen.getByLabelText('January, relative humidity'));
    await user.type(screen.getByLabelText('January, relative humidity'), '60');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByRole('button', { name: 'Use what was saved' })).toBeTruthy();
    const described = screen.getByRole('combobox', { name: 'Air', description: /^Saved meanwhile: / });
    expect(described.closest('.field')?.textContent).toContain('Asheville, NC');
    await user.click(screen.getByRole('button', { name: 'Use what was saved' }));
    expect(screen.getByRole('combobox', { name: /nearest/i })).toHaveProperty('value', 'Asheville, NC');
  });
});

describe('A place that is no longer used', () => {
  test('merged into another, with the air that is right', async () => {
    const places = [aPlace('Pole shed', 60), aPlace('Lean-to', 62)];
    const { machine, user } = open(places, { 'places.merge': () => places[0]! });
    await user.click(await screen.findByRole('button', { name: 'More: Lean-to' }));
    await user.click(screen.getByRole('menuitem', { name: 'Merge into another place' }));
    const dialog = within(await screen.findByRole('dialog', { name: 'Merge Lean-to' }));
    await user.selectOptions(await dialog.findByLabelText('Merge into'), 'Pole shed');
    await user.click(dialog.getByLabelText('The air of Lean-to'));
    await user.click(dialog.getByRole('button', { name: 'Merge' }));
    expect(machine.inputsOf('places.merge')).toMatchObject([{ id: 62, basedOn: 1, intoId: 60, air: 'own' }]);
  });

  test('is closed, found under the open ones, and reopened', async () => {
    const closed = {
      id: 9,
      version: 2,
      name: 'Old barn',
      kind: 'shop' as const,
      closedAt: '2026-05-01T12:00:00.000Z',
    };
    const { machine, user } = open([aPlace('Pole shed', 60)], {
      'places.close': () => ({ act: crypto.randomUUID() }),
      'places.reopen': () => aPlace('Old barn', 50),
      'places.closed': () => [closed],
    });
    await user.click(await screen.findByRole('button', { name: 'More: Pole shed' }));
    await user.click(screen.getByRole('menuitem', { name: 'Close place' }));
    const dialog = within(await screen.findByRole('dialog', { name: 'Close Pole shed?' }));
    await user.click(dialog.getByRole('button', { name: 'Close place' }));
    expect(machine.inputsOf('places.close')).toEqual([{ id: 60, basedOn: 1 }]);
    await user.click(await screen.findByText('Closed places: 1'));
    await user.click(screen.getByRole('button', { name: 'Reopen Old barn' }));
    const reopening = within(await screen.findByRole('dialog', { name: 'Reopen Old barn' }));
    await user.click(reopening.getByRole('button', { name: 'Reopen' }));
    expect(machine.inputsOf('places.reopen')).toEqual([{ id: 9, basedOn: 2, name: 'Old barn' }]);
  });
});
