// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StacksScreen } from '../../../../renderer/features/stacks/StacksScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { useUnsavedForms } from '../../../../renderer/stores/unsaved-forms.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { PlaceRow, StackRow } from '../../../../shared-core/contract/yard.ts';
import type { StackDue } from '../../../../shared-core/probing/plan/stack-call.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { typeDay } from '../form/type-day.ts';
import { aYard } from '../shell/a-yard-file.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack } from './a-yard.ts';

const aPlace: PlaceRow = {
  id: 5,
  version: 1,
  name: 'Pole shed',
  kind: 'open-shed',
  air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 })),
  airSource: null,
  airMovement: null,
  airOffset: null,
  stacks: [],
};

const MOVED = '3f1e6c1a-8f5f-4f57-9d0c-5b2a7b1c9e10';

function open(stacks: StackRow[], more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'stacks.list': () => stacks,
    'places.list': () => [aPlace],
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    ...more,
  });
  render(
    <main>
      <StacksScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

beforeEach(forgetEverything);
afterEach(cleanup);

describe('The stacks', () => {
  test('each shows its place, its use, the calls on its boards, how dry they are, and when they are ready', async () => {
    const when = { likely: '2090-03-14', from: '2090-03-01', to: '2090-04-02' };
    open([
      aStack({
        nextReady: { when, placeName: null },
        lastReady: { when: { ...when, likely: '2090-03-20' }, placeName: null },
        averageRead: {
          from: new Date(2025, 2, 15, 12).toISOString(),
          to: new Date(2025, 10, 20, 12).toISOString(),
        },
      }),
    ]);
    const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
    expect(card.getByRole('link', { name: 'Ridge oak' }).getAttribute('href')).toBe('#/stacks/1');
    expect(card.getByText('Pole shed · Furniture')).toBeTruthy();
    const figures = card
      .getAllByRole('definition')
      .map((figure) => [
        figure.textContent,
        [...figure.nextElementSibling!.childNodes].map((node) => node.textContent?.trim()),
      ]);
    expect(figures).toEqual([
      ['3 to keep drying', ['of 6 boards', '1 ready', '2 not probed yet']],
      ['14.9%', [unbroken('average, target 6–8%'), unbroken('probed Mar 15 – Nov 20, 2025')]],
      ['Mar 14, 2090', ['next ready', 'last Mar 20, 2090']],
    ]);
    expect(screen.getByText('6 boards. 1 ready. Next likely ready Mar 14, 2090.')).toBeTruthy();
    expect(card.queryByRole('link', { name: /^Open/ })).toBeNull();
    await expectNoBarriers();
  });

  test('lead to adding a place where none is dry enough, and offer no move', async () => {
    const calls = { ready: 0, 'bring-in': 3, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 0 };
    const { user } = open([
      aStack({
        calls,
        probed: 3,
        withoutPlace: 3,
        due: { kind: 'add-place', why: message('stack-call.add-place', { boards: 3 }) },
      }),
    ]);
    const banner = within(await screen.findByRole('region', { name: 'To do first' }));
    expect(banner.getByRole('button', { name: /^Add a place/ })).toBeTruthy();
    const card = within(screen.getByRole('article', { name: 'Ridge oak' }));
    expect(card.getByText('3 need a drier place')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^Move/ })).toBeNull();
    await user.click(card.getByRole('button', { name: /^Add a place/ }));
    const form = within(await screen.findByRole('dialog', { name: 'Add a place' }));
    expect(form.getByLabelText('Kind')).toHaveProperty('value', 'heated-room');
  });

  test.each([
    [
      'a reading is questionable',
      { due: { kind: 'probe-again', why: message('stack-call.not-probed-yet') } },
    ],
    [
      'a round is open',
      { openRoundId: 7, due: { kind: 'open-round', why: message('stack-call.not-probed-yet') } },
    ],
    ['nothing is due', { due: null }],
  ] as const)('offer a place beside a probe where %s and boards need a drier one', async (_, more) => {
    const calls = { ready: 0, 'bring-in': 2, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 1 };
    open([aStack({ calls, probed: 3, withoutPlace: 2, ...more })]);
    const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
    expect(card.getByRole('link', { name: /^(Probe|Resume): / })).toBeTruthy();
    expect(card.getByRole('button', { name: 'Add a place: Ridge oak' })).toBeTruthy();
  });

  test('a day without a latest one is about then, and never likely', async () => {
    const when = { likely: '2090-03-14', from: '2090-01-01', to: null };
    const last = { ...when, likely: '2090-09-20' };
    open([aStack({ nextReady: { when, placeName: null }, lastReady: { when: last, placeName: null } })]);
    const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
    expect(card.getByText('About Mar 2090')).toBeTruthy();
    expect(card.getByText('last about Sep 2090')).toBeTruthy();
    expect(screen.getByText('6 boards. 1 ready. Next ready about Mar 2090, maybe much later.')).toBeTruthy();
    expect(document.body.textContent).not.toMatch(/\blikely\b/i);
  });

  test('dates that only a move brings name the place; what should be ready by now says so', async () => {
    const when = { likely: '2090-03-14', from: '2090-03-01', to: '2090-04-02' };
    open([
      aStack({
        nextReady: { when, placeName: 'Bench room' },
        withDay: 1,
        calls: { ...aStack().calls, 'bring-in': 2 },
      }),
      aStack({ id: 2, name: 'Lane walnut', shouldBeReady: 2, averaged: 3 }),
    ]);
    const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
    // The day of one board is not the stack's.
    expect(card.getByText('ready if moved to Bench room: 1 of 6 boards')).toBeTruthy();
    expect(card.getByRole('button', { name: 'Move: Ridge oak' })).toBeTruthy();
    const walnut = screen.getByRole('article', { name: 'Lane walnut' }).textContent;
    expect(walnut).toContain('2more should be ready now');
    expect(walnut).toContain(unbroken('average of 3 boards, target 6–8%'));
    const lead = '12 boards. 2 ready, 2 more should be ready now. If moved to Bench room, next likely ready';
    expect(screen.getByText(new RegExp(`^${lead} Mar 14, 2090\\.`))).toBeTruthy();
  });

  test('while forecasts are made it says so, and no stack leaves its place', async () => {
    const due = { kind: 'probe-again', why: message('stack-call.not-probed-yet') } as const;
    let stacks = [aStack({ name: 'Airy', isForecasting: true }), aStack({ id: 2, name: 'Dry', due })];
    const { machine } = open([], { 'stacks.list': () => stacks });
    const names = () =>
      screen.getAllByRole('article').map((card) => within(card).getByRole('heading').textContent);
    expect(await screen.findByText('12 boards. 2 ready. Updating calls and dates …')).toBeTruthy();
    expect(names()).toEqual(['Airy', 'Dry']);
    expect(screen.queryByRole('region', { name: 'To do first' })).toBeNull();
    stacks = [aStack({ name: 'Airy' }), aStack({ id: 2, name: 'Dry', due })];
    machine.tell('changed', { yard: null, topics: ['outlooks'] });
    expect(await screen.findByRole('heading', { name: 'Dry is due' })).toBeTruthy();
    expect(names()).toEqual(['Dry', 'Airy']);
    stacks = [aStack({ name: 'Airy', due }), aStack({ id: 2, name: 'Dry', isForecasting: true })];
    machine.tell('changed', { yard: null, topics: ['outlooks'] });
    expect(await screen.findByText(/ready[.] Updating calls and dates …$/)).toBeTruthy();
    expect(names()).toEqual(['Dry', 'Airy']);
  });

  test.each([
    [8, 0, '8 boards', 'not probed yet'],
    [1, 0, '1 board', 'not probed yet'],
    [8, 3, '3 partly probed', 'of 8 boards5 not probed yet'],
  ])(
    '%d boards without a call, %d of them partly probed, read as one plain sentence',
    async (boards, half, large, small) => {
      const calls = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 0 };
      open([aStack({ boards, calls, probed: 0, halfProbed: half, averagePct: null, averaged: 0 })]);
      const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
      const figure = card.getByRole('definition');
      expect([figure.textContent, figure.nextElementSibling?.textContent]).toEqual([large, small]);
    },
  );

  test('boards moved elsewhere are in no card, and in the count of the yard', async () => {
    open([aStack({ elsewhere: { boards: 3, ready: 2, places: [] } })]);
    expect(await screen.findByText('9 boards. 3 ready.')).toBeTruthy();
    expect(screen.getByText('of 6 boards')).toBeTruthy();
  });

  test('what needs doing first is on top with its reason, and the cards are in that order', async () => {
    const due = (kind: StackDue['kind']) => ({ kind, why: message('stack-call.not-probed-yet') });
    open([
      aStack({ name: 'Dry' }),
      aStack({ id: 2, name: 'Airy', due: due('bring-in') }),
      aStack({ id: 3, name: 'Fresh', due: due('first-round') }),
      aStack({ id: 4, name: 'Swapped', due: due('probe-again') }),
    ]);
    const first = within(await screen.findByRole('region', { name: 'To do first' }));
    expect(first.getByRole('heading').textContent).toBe('Fresh is due');
    expect(first.getByText('Not probed yet.')).toBeTruthy();
    expect(first.getByRole('link', { name: 'Probe now: Fresh' }).getAttribute('href')).toBe(
      '#/round?stack=3',
    );
    const names = screen.getAllByRole('article').map((card) => within(card).getByRole('heading').textContent);
    expect(names).toEqual(['Fresh', 'Swapped', 'Airy', 'Dry']);
    await expectNoBarriers();
  });

  test('what is to be brought in is moved from there, and no other board of the stack', async () => {
    const why = { boards: 3, now: 2, later: 1, dryEnoughLimitPct: 20, coreLimitPct: 25 };
    const { machine, user } = open(
      [aStack({ due: { kind: 'bring-in', why: message('stack-call.to-move', why) } })],
      {
        'places.list': () => [
          { ...aPlace, id: 1 },
          { ...aPlace, name: 'Shop', kind: 'shop' },
        ],
        'stacks.ifMoved': () => ({ boards: 2, places: [] }),
        'stacks.dueToMove': () => ({
          boards: [
            { id: 2, version: 1, code: 'OAK-02' },
            { id: 3, version: 4, code: 'OAK-03' },
          ],
          stay: ['THICK-01'],
        }),
        'boards.editTogether': () => ({ act: MOVED, boards: [], callsBefore: [] }),
        'acts.undo': () => ({
          id: MOVED,
          at: '2026-06-01T08:00:00.000Z',
          line: message('act.title'),
          isUndone: true,
        }),
      },
    );
    await user.click(await screen.findByRole('button', { name: 'Move now: Ridge oak' }));
    const dialog = within(await screen.findByRole('dialog', { name: 'Move 2 boards' }));
    expect(
      dialog.getByText('Moves OAK-02 and OAK-03. Not due, and left where they are: THICK-01.'),
    ).toBeTruthy();
    await user.selectOptions(await dialog.findByRole('combobox', { name: 'To' }), 'Shop');
    await user.click(dialog.getByRole('button', { name: 'Move' }));
    await waitFor(() => expect(machine.inputsOf('boards.editTogether')).toHaveLength(1));
    expect(machine.inputsOf('boards.editTogether')[0]).toMatchObject({
      boards: [
        { id: 2, basedOn: 1 },
        { id: 3, basedOn: 4 },
      ],
      move: { placeId: 5 },
    });
    const told = await waitFor(() => {
      const [notice] = useNotices.getState().notices;
      expect(notice?.sentence).toBe('2 boards moved to Shop.');
      return notice!;
    });
    await told.undo!(MOVED);
    expect(machine.inputsOf('acts.undo')).toMatchObject([{ act: MOVED }]);
  });

  test('with nothing due there is no banner', async () => {
    open([aStack()]);
    await screen.findByRole('article', { name: 'Ridge oak' });
    expect(screen.queryByRole('region', { name: 'To do first' })).toBeNull();
  });

  test('probing starts a round on the stack, or resumes the one that is open', async () => {
    open([aStack(), aStack({ id: 2, name: 'Lane walnut', openRoundId: 9 })]);
    expect((await screen.findByRole('link', { name: 'Probe: Ridge oak' })).getAttribute('href')).toBe(
      '#/round?stack=1',
    );
    expect(screen.getByRole('link', { name: 'Resume: Lane walnut' }).getAttribute('href')).toBe('#/round/9');
    expect(screen.getByRole('link', { name: 'Labels: Ridge oak' }).getAttribute('href')).toBe(
      '#/labels?stack=1',
    );
  });

  test('a stack without boards offers to add them and nothing that needs them', async () => {
    open([aStack({ boards: 0, probed: 0, lastProbedAt: null })]);
    expect(await screen.findByRole('link', { name: 'Add boards: Ridge oak' })).toBeTruthy();
    expect(screen.queryByRole('link', { name: /Probe/ })).toBeNull();
    expect(screen.getByText('No boards yet.')).toBeTruthy();
  });

  test('where the list does not come, a sentence gives the reason, and Try again asks once more', async () => {
    let refused = true;
    const { user } = open([], {
      'stacks.list': () => {
        if (refused) throw fileInUse();
        return [aStack()];
      },
    });
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Another program is using the yard file',
    );
    refused = false;
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByRole('article', { name: 'Ridge oak' })).toBeTruthy();
  });
});

describe('The first start', () => {
  const air = Array.from({ length: 12 }, () => ({ tempC: 10, rh: 0.7, emcPct: 14 }));
  const station = {
    wmo: '723150',
    name: 'Asheville',
    state: 'NC',
    latitude: 35.43,
    longitude: -82.53,
    elevationM: 652,
    days: { sdPct: 4, lag: 0.5 },
  };
  const begin = (more: Parameters<typeof playMachine>[0] = {}) =>
    open([], {
      'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
      'stations.find': ({ text }) =>
        text.startsWith('Ash')
          ? { years: [{ station, air }], more: 0, isClear: true, onlyState: null }
          : { years: [], more: 0, isClear: false, onlyState: null },
      'stations.ofRegion': () => ({ air, stations: 314 }),
      'stacks.start': () => aStack({ id: 3 }),
      ...more,
    });
  const nameField = () => screen.findByLabelText('What do you call this stack?');

  test('asks five things and shows the use, the focus in the first, and offers the demo yard beside them', async () => {
    const { machine, user } = begin({
      'yard.openDemo': () => aYard({ kind: 'demo', file: '/demo.sqlite', boards: 19 }),
    });
    const name = await nameField();
    expect(document.activeElement).toBe(name);
    const form = within(screen.getByRole('form', { name: 'Your first stack' }));
    expect([...form.getAllByRole('textbox'), ...form.getAllByRole('combobox')]).toHaveLength(7);
    // The use is chosen already; how it dried is folded.
    expect(form.getByLabelText('Use')).toHaveProperty('value', 'furniture');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Open the demo yard' }));
    expect(machine.inputsOf('yard.openDemo')).toHaveLength(1);
  });

  test('makes the stack with its place and boards, and goes on to its round', async () => {
    const { machine, user } = begin();
    await user.type(await nameField(), 'Walnut behind the barn');
    await user.type(screen.getByRole('combobox', { name: 'Species' }), 'walnut{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '8/4');
    await user.type(screen.getByLabelText('How many boards?'), '12');
    await user.type(screen.getByLabelText('Nearest weather station'), 'Asheville{Enter}');
    expect(
      screen.getByText(
        'Drying in a shed or a shop? Add it in Places later. Pintally works out its air from the outdoor air.',
      ),
    ).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Start probing' }));
    expect(machine.inputsOf('stacks.start')).toEqual([
      {
        name: 'Walnut behind the barn',
        speciesId: 'walnut-black',
        thicknessMm: 50.8,
        thicknessQuarters: 8,
        boards: 12,
        sawnOn: null,
        hereSinceOn: null,
        driedBy: 'air',
        endUseId: 'furniture',
        place: { name: 'Outdoors', kind: 'outdoors', air, airSource: { kind: 'station', station } },
      },
    ]);
    expect(location.hash).toBe('#/round?stack=3');
  });

  test('keeps what is typed for as long as the window lasts, until it is saved', async () => {
    const { user } = begin();
    await user.type(await nameField(), 'Walnut behind the barn');
    await user.type(screen.getByRole('combobox', { name: 'Species' }), 'walnut{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '8/4');
    await user.type(screen.getByLabelText('How many boards?'), '12');
    await user.type(screen.getByLabelText('Nearest weather station'), 'Asheville{Enter}');
    await typeDay(user, 'Sawn on', '2025-04-10');
    await user.click(screen.getByRole('radio', { name: 'Yes' }));
    // To Help and back, and after a reload.
    for (const reload of [false, true]) {
      cleanup();
      if (reload) await useUnsavedForms.persist.rehydrate();
      begin();
      expect(await nameField()).toHaveProperty('value', 'Walnut behind the barn');
      await waitFor(() =>
        expect(screen.getByRole('combobox', { name: 'Species' })).toHaveProperty('value', 'Black walnut'),
      );
      expect(screen.getByLabelText('Thickness')).toHaveProperty('value', '8/4');
      expect(screen.getByLabelText('How many boards?')).toHaveProperty('value', '12');
      expect(screen.getByLabelText('Nearest weather station')).toHaveProperty('value', 'Asheville, NC');
      expect(screen.getByRole('radio', { name: 'Yes' })).toHaveProperty('checked', true);
    }
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(location.hash).toBe('#/stacks/3');
    cleanup();
    begin();
    expect(await nameField()).toHaveProperty('value', '');
  });

  test('leaves a person who goes elsewhere meanwhile where they are', async () => {
    let made: (stack: ReturnType<typeof aStack>) => void = () => undefined;
    const { machine, user } = begin({ 'stacks.start': () => new Promise((resolve) => (made = resolve)) });
    await user.type(await screen.findByRole('combobox', { name: 'Species' }), 'red oak{Enter}{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '27');
    await user.type(screen.getByLabelText('How many boards?'), '1');
    await user.click(screen.getByRole('button', { name: 'Start probing' }));
    expect(machine.inputsOf('stacks.start')).toHaveLength(1);
    location.hash = '#/backups';
    await act(async () => made(aStack({ id: 3 })));
    expect(location.hash).toBe('#/backups');
  });

  test('asks whether it has been here since it was sawn only where it was sawn before today', async () => {
    const { machine, user } = begin();
    const question = 'Has it been here since it was sawn?';
    await user.type(await screen.findByRole('combobox', { name: 'Species' }), 'red oak{Enter}{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '27');
    await user.type(screen.getByLabelText('How many boards?'), '1');
    expect(screen.queryByRole('group', { name: question })).toBeNull();
    await typeDay(user, 'Sawn on', '2025-04-10');
    const asked = within(screen.getByRole('group', { name: question }));
    // Nothing is said for the person.
    for (const answer of asked.getAllByRole('radio')) expect(answer).toHaveProperty('checked', false);
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(await screen.findByText('Say whether it has been here since it was sawn.')).toBeTruthy();
    expect(machine.inputsOf('stacks.start')).toEqual([]);
    await user.click(asked.getByLabelText('No, since another day'));
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(await screen.findByText('Give the day it came here.')).toBeTruthy();
    await typeDay(user, 'Here since', '2025-03-10');
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(await screen.findByText(/^It was sawn on Apr 10, 2025, after that day\./)).toBeTruthy();
    await typeDay(user, 'Here since', '2025-06-10');
    await expectNoBarriers();
    expect(machine.inputsOf('stacks.start')).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(machine.inputsOf('stacks.start')).toMatchObject([
      { sawnOn: '2025-04-10', hereSinceOn: '2025-06-10' },
    ]);
  });

  test('that it has been here since it was sawn asks for no other day', async () => {
    const { machine, user } = begin();
    await user.type(await screen.findByRole('combobox', { name: 'Species' }), 'red oak{Enter}{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '27');
    await user.type(screen.getByLabelText('How many boards?'), '1');
    await typeDay(user, 'Sawn on', '2025-04-10');
    await user.click(screen.getByLabelText('Yes'));
    expect(screen.queryByRole('group', { name: 'Here since' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(machine.inputsOf('stacks.start')).toMatchObject([
      { sawnOn: '2025-04-10', hereSinceOn: '2025-04-10' },
    ]);
  });

  test('only adds the stack where that is asked, in rough air where no station is named', async () => {
    const { machine, user } = begin();
    await user.type(await screen.findByRole('combobox', { name: 'Species' }), 'red oak{Enter}{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '27');
    await user.type(screen.getByLabelText('How many boards?'), '1');
    // Without a name of its own it is called as its field shows.
    const usualName = (await nameField()).getAttribute('placeholder');
    expect(usualName).toMatch(/red oak/i);
    await user.click(screen.getByRole('button', { name: 'Add the stack only' }));
    expect(machine.inputsOf('stacks.start')).toMatchObject([
      { name: usualName, place: { airSource: { kind: 'region', stations: 314 } } },
    ]);
    expect(location.hash).toBe('#/stacks/3');
  });

  test('marks what is missing, and sends nothing', async () => {
    const { machine, user } = begin();
    await user.type(await screen.findByLabelText('Thickness'), '3');
    expect(screen.getByText('3 mm is very thin. Did you mean 3/4 in (19 mm)?')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Start probing' }));
    expect(screen.getByText('Choose a species.')).toBeTruthy();
    expect(screen.getByText('Fill this in.')).toBeTruthy();
    expect(machine.inputsOf('stacks.start')).toEqual([]);
  });

  test('keeps what was typed where another window adds a stack, until it is discarded', async () => {
    const { machine, user } = begin();
    await user.type(await nameField(), 'Walnut');
    machine.answers['stacks.list'] = () => [aStack()];
    machine.tell('changed', { yard: null, topics: ['stacks'] });
    expect(
      await screen.findByText(/^Another window added a stack\. What you typed is still here\./),
    ).toBeTruthy();
    expect(screen.getByRole('article', { name: 'Ridge oak' })).toBeTruthy();
    expect(await nameField()).toHaveProperty('value', 'Walnut');
    expect(document.activeElement).toBe(await nameField());
    await user.click(screen.getByRole('button', { name: 'Discard' }));
    expect(screen.queryByRole('form')).toBeNull();
  });

  test('gives way to a stack of another window where nothing was typed', async () => {
    const { machine } = begin();
    await nameField();
    machine.answers['stacks.list'] = () => [aStack()];
    machine.tell('changed', { yard: null, topics: ['stacks'] });
    expect(await screen.findByRole('article', { name: 'Ridge oak' })).toBeTruthy();
    expect(screen.queryByRole('form')).toBeNull();
  });

  test('changes the units at once', async () => {
    useSettings.setState({ settings: usualSettings });
    const { machine, user } = begin({ 'settings.edit': (changed) => ({ ...usualSettings, ...changed }) });
    // The browser of the tests is American.
    expect(await screen.findByText(/^Inches and °F, from your computer’s region\./)).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Change to millimeters and °C' }));
    expect(await screen.findByText(/^Millimeters and °C\./)).toBeTruthy();
    expect(machine.inputsOf('settings.edit')).toEqual([{ units: 'metric' }]);
  });
});

test('another stack is added with its use, and gone to', async () => {
  const { machine, user } = open([aStack()], {
    'stacks.add': (stack) => ({ ...aStack({ id: 3 }), ...stack }),
  });
  await user.click(await screen.findByRole('button', { name: 'Add a stack' }));
  await user.type(await screen.findByLabelText('Name'), 'Ridge oak');
  await user.selectOptions(screen.getByLabelText('Use'), screen.getByRole('option', { name: /^Firewood/ }));
  await user.selectOptions(screen.getByLabelText('Top of the stack'), 'sun');
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Add stack' }));
  expect(machine.inputsOf('stacks.add')).toEqual([
    { name: 'Ridge oak', placeId: 5, endUseId: 'firewood', topCover: 'sun', note: '' },
  ]);
  expect(location.hash).toBe('#/stacks/3');
});
