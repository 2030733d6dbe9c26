import { describe, expect, test } from 'vitest';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { roomYear } from '../../../shared-core/wood/climate/room-air.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** The air of a station, invented. */
const air = Array.from({ length: 12 }, (_, month) => ({ tempC: month, rh: 0.7, emcPct: 13.5 }));
const asheville = {
  kind: 'station',
  station: {
    wmo: '723150',
    name: 'Asheville',
    state: 'NC',
    latitude: 35.43,
    longitude: -82.53,
    elevationM: 652,
    days: { sdPct: 4.04, lag: 0.52 },
  },
} as const;
const oak = {
  name: 'Ridge oak',
  speciesId: 'oak-white',
  thicknessMm: 50.8,
  thicknessQuarters: 8,
  boards: 3,
  place: { name: 'Outdoors', kind: 'outdoors', air, airSource: asheville },
} as const;
const rows = async (stackId: number) =>
  (await yard.query('boards.list', { stackId, search: '', offset: 0, limit: 500 })).rows;

describe('A first stack', () => {
  test('comes with its place and its boards in one act', async () => {
    const { id, placeName, endUseId, boards } = await yard.command('stacks.start', { ...oak });
    expect({ placeName, endUseId, boards }).toEqual({
      placeName: 'Outdoors',
      endUseId: 'furniture',
      boards: 3,
    });
    expect(
      (await rows(id)).map(({ code, thicknessQuarters, log, sawnOn }) => [
        code,
        thicknessQuarters,
        log,
        sawnOn,
      ]),
    ).toEqual([
      ['RIDGE-01', 8, '', null],
      ['RIDGE-02', 8, '', null],
      ['RIDGE-03', 8, '', null],
    ]);
    const place = (await yard.query('places.list', {})).find(({ name }) => name === 'Outdoors');
    expect(place!.airSource).toEqual(asheville);
    expect(emcOfYear(place!.air).driestEmcPct).toBe(13.5);
  });

  test('has been at its place since it was sawn where the person says so, else since today', async () => {
    const known = { ...oak, sawnOn: '2026-03-10' };
    const { id } = await yard.command('stacks.start', { ...known, hereSinceOn: '2026-03-10' });
    const { id: later } = await yard.command('stacks.start', { ...known, name: 'Late oak' });
    const sinceOf = async (stackId: number) => (await rows(stackId)).map(({ placeSince }) => placeSince);
    const sawn = new Date('2026-03-10T00:00').toISOString();
    expect(await sinceOf(id)).toEqual([sawn, sawn, sawn]);
    const [laterSince] = await sinceOf(later);
    expect(new Date(laterSince!).toLocaleTimeString('sv-SE')).toBe('00:00:00');
    expect(laterSince! > sawn).toBe(true);
    const [board] = await rows(later);
    expect(await yard.query('boards.get', { id: board!.id })).toMatchObject({ moves: [{ datedBy: 'day' }] });
  });

  test('has been at its place since another day where the person gives one, after it was sawn and not to come', async () => {
    const known = { ...oak, sawnOn: '2026-03-10' };
    const { id } = await yard.command('stacks.start', { ...known, hereSinceOn: '2026-04-02' });
    const since = new Date('2026-04-02T00:00').toISOString();
    expect((await rows(id)).map(({ placeSince }) => placeSince)).toEqual([since, since, since]);
    const refused = (hereSinceOn: string) => yard.refusal('stacks.start', { ...known, hereSinceOn });
    expect(await refused('2026-03-09')).toMatch(/^It was sawn on Mar 10(, 2026)?, after that day\./);
    expect(await refused('2030-01-01')).toMatch('That day is in the future.');
  });

  test('has the use, the sawing date and the way of drying that were given', async () => {
    const known = { endUseId: 'framing', sawnOn: '2026-03-10', driedBy: 'kiln' } as const;
    const { id, endUseId } = await yard.command('stacks.start', { ...oak, ...known });
    expect(endUseId).toBe('framing');
    expect((await rows(id)).map(({ sawnOn, driedBy }) => [sawnOn, driedBy])).toEqual(
      Array.from({ length: 3 }, () => ['2026-03-10', 'kiln']),
    );
  });

  test('without a name is called by its species', async () => {
    expect((await yard.command('stacks.start', { ...oak, name: '' })).name).toBe('White oak');
  });

  test('passes over IDs that are taken', async () => {
    const { id } = await yard.command('stacks.start', { ...oak, name: 'Wal' });
    expect((await rows(id)).map(({ code }) => code)).toEqual(['WAL-03', 'WAL-04', 'WAL-05']);
  });

  test('takes a place that is there already, and numbers one with other air', async () => {
    await yard.command('stacks.start', { ...oak });
    const same = await yard.command('stacks.start', { ...oak, name: 'Second' });
    expect(same.placeName).toBe('Outdoors');
    const drier = air.map((month) => ({ ...month, emcPct: 9 }));
    const other = await yard.command('stacks.start', {
      ...oak,
      name: 'Third',
      place: { ...oak.place, air: drier },
    });
    expect(other.placeName).toBe('Outdoors 2');
    expect(await yard.query('places.list', {})).toHaveLength(3);
  });

  test('of a name that is taken is refused, and nothing of it is saved', async () => {
    expect(await yard.refusal('stacks.start', { ...oak, name: 'Walnut' })).toMatch(/Walnut/);
    expect(await yard.query('places.list', {})).toHaveLength(1);
  });

  test.each([
    ['an unknown species', { speciesId: 'zzzz' }],
    ['no species', { speciesId: '' }],
    ['no boards', { boards: 0 }],
    ['half a board', { boards: 1.5 }],
  ])('with %s is refused', async (_, changed) => {
    await yard.refusal('stacks.start', { ...oak, ...changed });
    expect(await yard.query('stacks.list', {})).toHaveLength(1);
  });
});

test.each([
  ['the rough air of a region', 'regional-air', 'outdoors'],
  ['the assumed air of a room', 'room-air', 'heated-room'],
] as const)('a board in %s says so with its forecast', async (_, assumed, kind) => {
  const { air, stations } = await yard.query('stations.ofRegion', { timeZone: 'America/New_York' });
  const { id } = await yard.command('stacks.start', {
    ...oak,
    boards: 1,
    place: {
      name: 'Here',
      kind,
      ...(kind === 'outdoors'
        ? { air, airSource: { kind: 'region', stations } }
        : { air: roomYear('heated', 0), airSource: { kind: 'room', room: 'heated' } }),
    },
  });
  const [board] = await rows(id);
  await yard.command('boards.edit', { id: board!.id, basedOn: 1, changed: { sawnOn: '2026-05-30' } });
  const { details } = await yard.query('boards.forecast', { id: board!.id });
  expect(details?.assumptions.map(({ code }) => code)).toContain(`forecast.assumed.${assumed}`);
});
