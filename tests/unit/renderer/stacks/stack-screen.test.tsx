// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, fireEvent, render, screen, act as testAct, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BoardsScreen } from '../../../../renderer/features/stacks/BoardsScreen.tsx';
import { StackScreen } from '../../../../renderer/features/stacks/StackScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { unbroken } from '../../../../renderer/unbroken.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RequestInput, RequestOutput } from '../../../../shared-core/contract/requests.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { BoardRow, NewBoard } from '../../../../shared-core/contract/yard.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { typeDay } from '../form/type-day.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack, judgedReady } from './a-yard.ts';

/** Answers as the store does: a page of what the search finds. */
const listOf =
  (boards: number, make: (number: number) => BoardRow = aBoardRow) =>
  ({ offset, limit, search }: RequestInput<'boards.list'>): RequestOutput<'boards.list'> => {
    const all = Array.from({ length: boards }, (_, index) => index + 1);
    const found = search === '' ? all : all.filter((number) => make(number).code.includes(search));
    return { total: found.length, rows: found.slice(offset, offset + limit).map(make) };
  };

function play(boards: number, more: Parameters<typeof playMachine>[0] = {}) {
  return playMachine({
    'stacks.get': ({ id }) => {
      if (id !== 1) throw new Refusal(message('refusal.not-found', { what: 'stack' }));
      return aStack({ boards, call: boards === 0 ? null : aStack().call });
    },
    'stacks.plan': () => null,
    'stacks.ifMoved': () => ({ boards, places: [] }),
    'stacks.volume': () => ({
      boards: 6,
      measured: 0,
      boardFeet: 0,
      cubicMeters: 0,
      mass: null,
      targetPct: 7,
      missing: [{ code: 'stacks.size-missing', facts: { boards: 6 } }],
    }),
    'boards.list': listOf(boards),
    'boards.nextCode': () => ({ code: 'OAK-07' }),
    'stacks.nextLayer': () => ({ layer: 4 }),
    'stacks.hereSince': () => ({ since: null }),
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
    'places.list': () => [
      {
        id: 5,
        version: 1,
        name: 'Shop',
        kind: 'shop',
        air: Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5 })),
        airSource: null,
        airMovement: null,
        airOffset: null,
        stacks: [],
      },
    ],
    ...more,
  });
}

function open(boards: number, more: Parameters<typeof playMachine>[0] = {}) {
  const machine = play(boards, more);
  render(
    <main>
      <StackScreen id={1} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

/** The boards of the yard, without the drawing of a stack. */
function openAll(boards: number, more: Parameters<typeof playMachine>[0] = {}) {
  const machine = play(boards, more);
  render(
    <main>
      <BoardsScreen />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

/** Rows with a board in them, without the heading. */
const boardRows = () => screen.getAllByRole('row').filter((row) => within(row).queryByRole('checkbox'));

beforeEach(forgetEverything);
afterEach(cleanup);

describe('The boards of a stack', () => {
  test('each row shows the board, its average, shell and core, its call, when it is ready, and when it was read', {
    tags: 'core',
  }, async () => {
    const { user } = open(1, {
      'boards.list': listOf(1, (number) =>
        aBoardRow(number, {
          log: 'Ridge',
          placeSince: new Date(2024, 2, 3, 12).toISOString(),
          latest: aFinding({ at: new Date(2024, 7, 22, 12).toISOString() }),
          judgement: judgedReady({
            kind: 'likely',
            when: { likely: '2090-05-12', from: '2090-04-20', to: '2090-06-15' },
          }),
        }),
      ),
    });
    // They give way in a window this narrow.
    for (const column of ['Species', 'Ranges', 'Place', 'Log', 'Shell · core']) {
      await user.click(await screen.findByLabelText(column));
    }
    const [, head] = screen.getAllByRole('rowheader', { name: 'OAK-01' });
    const row = within((head ?? screen.getByRole('rowheader', { name: 'OAK-01' })).closest('tr')!);
    expect(row.getByRole('checkbox', { name: 'Select OAK-01' })).toBeTruthy();
    expect(row.getByRole('link', { name: 'OAK-01' }).getAttribute('href')).toBe('#/boards/1');
    expect(row.getAllByRole('cell').map((cell) => cell.textContent)).toEqual([
      '',
      '14.9%',
      '14.1% · 15.8%',
      'Keep drying',
      'May 12, 2090',
      'Aug 22, 2024',
      'Northern red oak27 mm',
      unbroken('13.7–16.1%likely ready May 12, 2090 (Apr 20 – Jun 15, 2090)'),
      'Pole shedsince Mar 3, 2024',
      'Ridge',
    ]);
    await expectNoBarriers();
  });

  test('a board that only a move makes ready names the place; one to be probed again, the reason', async () => {
    const when = { likely: '2090-01-18', from: '2090-01-02', to: '2090-02-02' };
    const reason = message('call.would-change', { questionable: 2 });
    const boards = [
      aBoardRow(1, {
        judgement: judgedReady({ kind: 'too-damp', driestPct: 12.5 }, { kind: 'likely', when }),
        bestPlaceName: 'Bench room',
      }),
      aBoardRow(2, { latest: aFinding({ call: 'probe-again', reason }) }),
      aBoardRow(3, { judgement: judgedReady({ kind: 'any-day' }) }),
      aBoardRow(4, { judgement: judgedReady({ kind: 'now' }) }),
      aBoardRow(5, { judgement: judgedReady({ kind: 'too-damp', driestPct: 12.5 }) }),
      aBoardRow(6, {
        judgement: judgedReady({
          kind: 'unlikely',
          best: { from: '2090-01-02', to: '2090-03-02' },
          driestPct: 8.4,
        }),
      }),
      aBoardRow(7, { judgement: judgedReady({ kind: 'likely', when: { ...when, to: null } }) }),
    ];
    open(7, { 'boards.list': () => ({ total: 7, rows: boards }) });
    expect(await screen.findByText('Jan 18, 2090 in Bench room')).toBeTruthy();
    expect(screen.getByText('2 questionable readings would change this call.')).toBeTruthy();
    expect(screen.getByText('Any day now')).toBeTruthy();
    expect(screen.getByText('Now')).toBeTruthy();
    expect(screen.getByText('About Jan 2090')).toBeTruthy();
    // A board that gets nowhere says so.
    expect(screen.getByText('Unlikely here: too damp')).toBeTruthy();
    expect(screen.getByText('Unlikely within two years')).toBeTruthy();
  });

  test('are filtered by call; those elsewhere are only shown when asked for', async () => {
    const { machine, user } = open(6, {
      'stacks.get': () => aStack({ elsewhere: { boards: 2, ready: 0, places: [] } }),
    });
    const options = (await screen.findAllByRole('radio')).map((radio) => radio.closest('label')?.textContent);
    expect(options).toEqual([' All 6', ' Ready 1', ' Keep drying 3', ' No call yet 2', ' Moved elsewhere 2']);
    await user.click(screen.getByRole('radio', { name: 'Keep drying 3' }));
    await user.click(screen.getByRole('radio', { name: 'Moved elsewhere 2' }));
    const filters = (machine.inputsOf('boards.list') as RequestInput<'boards.list'>[]).map(
      ({ filter }) => filter,
    );
    expect(filters).toContain('keep-drying');
    expect(filters.at(-1)).toBe('elsewhere');
    await expectNoBarriers();
  });

  test.each(['metric', 'imperial'] as const)('a board given as 8/4 is 8/4 in %s units', async (units) => {
    const board = aBoardRow(1, { thicknessMm: 50.8, thicknessQuarters: 8 });
    open(1, { 'boards.list': () => ({ total: 1, rows: [board] }) });
    useSettings.setState({ settings: { units } as Settings });
    fireEvent.click(await screen.findByLabelText('Species'));
    expect(await screen.findByRole('cell', { name: 'Northern red oak8/4' })).toBeTruthy();
  });

  test('a board never probed shows that, and so does one without a usable reading', async () => {
    const latest = aFinding({
      averagePct: null,
      lowPct: null,
      highPct: null,
      shellPct: null,
      call: 'probe-again',
    });
    open(2, { 'boards.list': listOf(2, (number) => aBoardRow(number, number === 2 ? { latest } : {})) });
    expect(await screen.findByRole('cell', { name: 'not probed yet' })).toBeTruthy();
    expect(screen.getByText('no usable reading')).toBeTruthy();
  });

  test('the day of a board never probed is by its forecast alone, which it says', async () => {
    const judgement = judgedReady({ kind: 'any-day' });
    const rows = [
      aBoardRow(1, { judgement }),
      aBoardRow(2, { judgement, latest: aFinding({}) }),
      aBoardRow(3),
    ];
    open(3, { 'boards.list': () => ({ total: 3, rows }) });
    expect(await screen.findAllByText('Any day now')).toHaveLength(2);
    expect(screen.getAllByText('by forecast alone')).toHaveLength(1);
  });

  test('a board of which only the shell was read shows its shell, and an average only as estimated', async () => {
    const unknown = aFinding({
      averagePct: null,
      averageIs: 'unknown',
      lowPct: null,
      highPct: null,
      shellPct: 22,
    });
    const estimated = aFinding({ averagePct: 12.9, averageIs: 'estimated', shellPct: 12.3, corePct: null });
    open(2, {
      'boards.list': listOf(2, (number) => aBoardRow(number, { latest: number === 2 ? unknown : estimated })),
    });
    expect(await screen.findByText('Shell 22.0%')).toBeTruthy();
    expect(screen.getByText('Estimated')).toBeTruthy();
    expect(await screen.findByText('12.3% · not read')).toBeTruthy();
  });

  test('a board read at a depth that nobody knows shows what was read, and no shell', async () => {
    const unknown = { isDepthUnknown: true as const, shellPct: 15.3, corePct: null };
    const alone = aFinding({
      ...unknown,
      averagePct: null,
      averageIs: 'unknown',
      lowPct: null,
      highPct: null,
    });
    const estimated = aFinding({ ...unknown, averagePct: 16.1, averageIs: 'estimated' });
    open(2, {
      'boards.list': listOf(2, (number) => aBoardRow(number, { latest: number === 2 ? alone : estimated })),
    });
    expect(await screen.findByText('15.3%, depth unknown')).toBeTruthy();
    expect(screen.getByText('Estimated, depth unknown')).toBeTruthy();
    expect(screen.queryByText(/^Shell \d|not read/)).toBeNull();
  });

  test('an average estimated from questionable readings says both', async () => {
    const latest = aFinding({ averagePct: 9.9, averageIs: 'estimated', isQuestionable: true, shellPct: 10 });
    open(1, { 'boards.list': listOf(1, (number) => aBoardRow(number, { latest })) });
    expect(await screen.findByText('Estimated, questionable')).toBeTruthy();
  });

  test('a press on a head has the machine sort by it, and keeps the focus there', async () => {
    const { machine, user } = open(6);
    await user.click(await screen.findByRole('button', { name: 'Average' }));
    await user.click(screen.getByRole('button', { name: 'Average' }));
    const asked = machine.inputsOf('boards.list') as RequestInput<'boards.list'>[];
    // The drawing asks for the boards too, 500 at a time.
    const pages = asked.filter(({ limit }) => limit === 100);
    expect(pages.map(({ sort, descending }) => [sort, descending])).toEqual([
      [undefined, undefined],
      ['average', false],
      ['average', true],
    ]);
    expect(screen.getByRole('columnheader', { name: 'Average' }).getAttribute('aria-sort')).toBe(
      'descending',
    );
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Average' }));
    await screen.findByText('OAK-01');
  });

  test('an empty stack invites to add boards', async () => {
    open(0);
    expect(await screen.findByText(/No boards in this stack yet/)).toBeTruthy();
  });

  test('a search that finds nothing leads back to all boards', async () => {
    const { user } = open(6);
    await user.type(await screen.findByLabelText('Find a board'), 'ELM');
    await screen.findByText('No boards match “ELM”.');
    await user.click(screen.getByRole('button', { name: 'Show all' }));
    expect(await screen.findByText('6 boards')).toBeTruthy();
  });

  test('selected boards go to the labels', async () => {
    const { user } = open(6);
    await user.click(await screen.findByLabelText('Select OAK-02'));
    await user.click(screen.getByLabelText('Select OAK-05'));
    expect(screen.getByText('2 of 6 boards selected')).toBeTruthy();
    const labels = screen.getByRole('link', { name: 'Labels' });
    expect(labels.getAttribute('href')).toBe('#/labels?boards=2,5');
  });
});

const act = '3f1e6c1a-8f5f-4f57-9d0c-5b2a7b1c9e10';
const undoneAct = { id: act, at: '2026-06-01T08:00:00.000Z', line: message('act.title'), isUndone: true };

describe('Editing several boards', () => {
  const edit = {
    'boards.editTogether': () => ({
      act,
      boards: [
        { id: 2, version: 2 },
        { id: 5, version: 2 },
      ],
      callsBefore: [],
    }),
    'boards.callsChanged': () => ({
      isUndone: false,
      isJudging: false,
      changed: [{ code: 'OAK-05', call: 'ready' as const }],
    }),
  };
  const select = async (user: ReturnType<typeof userEvent.setup>) => {
    await user.click(await screen.findByLabelText('Select OAK-05'));
    await user.click(screen.getByLabelText('Select OAK-02'));
    await user.click(screen.getByRole('button', { name: 'Edit boards' }));
    await screen.findByRole('dialog');
  };

  const turnOn = (user: ReturnType<typeof userEvent.setup>, name: string) =>
    user.click(screen.getByRole('checkbox', { name }));
  const selected = [
    { id: 2, basedOn: 1 },
    { id: 5, basedOn: 1 },
  ];
  const nothingElse = {
    stackOrder: null,
    move: null,
    endUseId: null,
    latestReadings: null,
    work: expect.any(String),
  };

  test('a wrong species is set right by keyboard alone, and nothing else changes', async () => {
    const { machine, user } = openAll(6, edit);
    (await screen.findByRole('link', { name: 'OAK-01' })).focus();
    await user.keyboard('{ArrowDown} {ArrowDown}{ArrowDown}{ArrowDown} ');
    screen.getByRole('button', { name: 'Edit boards' }).focus();
    await user.keyboard('{Enter}');
    (await screen.findByRole('checkbox', { name: 'Species' })).focus();
    await user.keyboard(' ');
    const field = await screen.findByRole('combobox', { name: /^Species/ });
    field.focus();
    await user.keyboard('white oak{Enter}{Enter}');
    await waitFor(() => expect(machine.inputsOf('boards.editTogether').length).toBe(1));
    expect(machine.inputsOf('boards.editTogether')).toEqual([
      { boards: selected, changed: { speciesId: 'oak-white' }, ...nothingElse },
    ]);
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  });

  test('sizes, log, and sawing date change as typed; a blank erases nothing', async () => {
    const { machine, user } = openAll(6, edit);
    await select(user);
    for (const name of ['Thickness', 'Width', 'Length', 'Sawn on', 'Before they came here', 'Log', 'Sawing'])
      await turnOn(user, name);
    await user.type(screen.getByRole('textbox', { name: /^Thickness/ }), '8/4');
    await user.type(screen.getByRole('textbox', { name: /^Width/ }), '15 cm');
    await user.type(screen.getByRole('textbox', { name: /^Log/ }), 'Ridge');
    await user.selectOptions(
      screen.getByRole('combobox', { name: /^Before it came here/ }),
      'Dried in a kiln or drier air',
    );
    await user.selectOptions(screen.getByRole('combobox', { name: /^Sawing/ }), 'Flat-sawn');
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.editTogether')).toEqual([]);
    expect(screen.getByText('Give the day.')).toBeTruthy();
    await user.type(screen.getByRole('textbox', { name: /^Length/ }), '2.4 m');
    await typeDay(user, 'Sawn on', '2026-03-10');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.editTogether')).toEqual([
      {
        boards: selected,
        changed: {
          thicknessMm: 50.8,
          thicknessQuarters: 8,
          widthMm: 150,
          lengthMm: 2400,
          sawnOn: '2026-03-10',
          driedBy: 'kiln',
          log: 'Ridge',
          sawing: 'flat',
        },
        ...nothingElse,
      },
    ]);
  });

  test('place, use, and the readings of the last round change in the same act', async () => {
    const { machine, user } = openAll(6, edit);
    await select(user);
    for (const name of ['Place', 'Use of the whole stack', 'Readings of the last round'])
      await turnOn(user, name);
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByText('Choose a place.')).toBeTruthy();
    expect(screen.getByText('Choose a use.')).toBeTruthy();
    expect(machine.inputsOf('boards.editTogether')).toEqual([]);
    await user.selectOptions(screen.getByRole('combobox', { name: 'To' }), 'Shop');
    await typeDay(user, 'Day of the move', '2026-03-10');
    expect(screen.getByText('Changes every board of Ridge oak, selected or not.')).toBeTruthy();
    const use = builtInEndUses[1]!;
    await user.selectOptions(screen.getByRole('combobox', { name: 'Use' }), use.id);
    await user.selectOptions(
      screen.getByRole('combobox', { name: 'Readings of the last round' }),
      'Exclude: Wet face',
    );
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.editTogether')).toMatchObject([
      {
        boards: selected,
        changed: {},
        move: { placeId: 5, since: new Date(2026, 2, 10, 12).toISOString() },
        endUseId: use.id,
        latestReadings: { exclude: { code: 'wet-face' } },
      },
    ]);
  });

  test('the boards are laid in the order of their list', async () => {
    const { machine, user } = openAll(6, edit);
    await select(user);
    await turnOn(user, 'Bark side');
    await turnOn(user, 'Layers');
    await user.selectOptions(screen.getByRole('combobox', { name: 'Bark side' }), 'Down, bark still on');
    expect(screen.queryByLabelText('Bark removed on')).toBeNull();
    await user.type(screen.getByLabelText('Boards per layer'), '1');
    await user.type(screen.getByLabelText('First layer'), '3');
    expect(screen.getByText('Layers 3 to 4, from the bottom up.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('boards.editTogether')).toEqual([
      {
        boards: selected,
        changed: { barkSide: 'down-bark-on', barkOffOn: null },
        ...nothingElse,
        stackOrder: { perLayer: 1, firstLayer: 3, firstColumn: 1 },
      },
    ]);
  });

  test('with no field turned on nothing is sent; what is no length is marked at its field', async () => {
    const { machine, user } = openAll(6, edit);
    await select(user);
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Change at least one field.');
    await turnOn(user, 'Distance from pith');
    expect(screen.queryByText('Change at least one field.')).toBeNull();
    await user.type(screen.getByRole('textbox', { name: /^Distance from pith/ }), 'far');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByText(/“far” is not a length/)).toBeTruthy();
    expect(machine.inputsOf('boards.editTogether')).toEqual([]);
  });

  describe('that another window edited meanwhile', () => {
    const now = aBoardRow(5, { version: 3, log: 'Creek', sawing: 'rift' });
    const clash = (): void => {
      throw new Conflict(
        [now],
        message('refusal.boards-edited-meanwhile', { boards: 1, someCodes: ['OAK-05'] }),
      );
    };
    /** Saves a log for two boards, one of which is another now. */
    async function saveLog() {
      let clashes = true;
      const opened = openAll(6, {
        ...edit,
        'boards.editTogether': () => {
          if (clashes) clash();
          return edit['boards.editTogether']();
        },
      });
      await select(opened.user);
      await turnOn(opened.user, 'Log');
      await opened.user.type(screen.getByRole('textbox', { name: /^Log/ }), 'Ridge');
      await opened.user.click(screen.getByRole('button', { name: 'Save' }));
      expect((await screen.findByRole('alert')).textContent).toContain(
        '1 board was edited meanwhile: OAK-05.',
      );
      clashes = false;
      return opened;
    }
    const sent = (machine: ReturnType<typeof playMachine>) =>
      (machine.inputsOf('boards.editTogether').at(-1) as RequestInput<'boards.editTogether'>).boards;

    test('are listed with what changed, and can be edited as they are now', async () => {
      const { machine, user } = await saveLog();
      const row = screen.getByRole('row', { name: /OAK-05/ });
      expect(row.textContent).toBe('OAK-05Sawing and Log');
      expect(screen.getByRole('textbox', { name: /^Log/ })).toHaveProperty('value', 'Ridge');
      await expectNoBarriers();
      await user.click(screen.getByRole('button', { name: 'Save over the boards as they are now' }));
      expect(sent(machine)).toEqual([
        { id: 2, basedOn: 1 },
        { id: 5, basedOn: 3 },
      ]);
    });

    test('are skipped where the person says so', async () => {
      const { machine, user } = await saveLog();
      await user.click(screen.getByRole('button', { name: 'Skip that board' }));
      expect(screen.getByRole('dialog', { name: 'Edit 1 board' })).toBeTruthy();
      await user.click(screen.getByRole('button', { name: 'Save' }));
      expect(sent(machine)).toEqual([{ id: 2, basedOn: 1 }]);
    });
  });

  test('that cannot be undone any more says so where Undo was, and not over the page', async () => {
    const { user } = openAll(6, {
      ...edit,
      'acts.undo': () => {
        throw new Refusal(
          message('refusal.undo-changed', {
            record: message('act.record.board', { recordName: 'OAK-02' }),
            what: 'undo',
          }),
        );
      },
    });
    await user.click(await screen.findByLabelText('Select OAK-02'));
    await user.click(screen.getByRole('button', { name: 'Edit boards' }));
    await turnOn(user, 'Log');
    fireEvent.change(screen.getByRole('textbox', { name: /^Log/ }), { target: { value: 'Ridge' } });
    await user.click(screen.getByRole('button', { name: 'Save' }));
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    expect((await screen.findByRole('alert')).textContent).toContain('OAK-02 was changed later.');
    expect(screen.queryByRole('button', { name: 'Undo' })).toBeNull();
    expect(useNotices.getState().notices).toEqual([]);
    await user.click(screen.getByRole('button', { name: 'Dismiss' }));
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('shows how far it is where that takes long, and is stopped by Cancel with everything typed kept', async () => {
    let stop = (): void => undefined;
    const { machine, user } = openAll(6, {
      'boards.editTogether': () =>
        new Promise((_, reject) => {
          stop = () => reject(new Refusal(message('refusal.stopped')));
        }),
      'work.cancel': () => {
        stop();
        return {};
      },
    });
    await select(user);
    await turnOn(user, 'Log');
    await user.type(screen.getByRole('textbox', { name: /^Log/ }), 'Ridge');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.queryByRole('progressbar')).toBeNull();
    const [{ work }] = machine.inputsOf('boards.editTogether') as [{ work: string }];
    testAct(() => machine.tell('work.progress', { work, done: 250, total: 6000 }));
    const progress = screen.getByRole('progressbar', { name: 'Changing boards …' });
    expect([progress.getAttribute('value'), progress.getAttribute('max')]).toEqual(['250', '6000']);
    await expectNoBarriers();
    // By keys alone: Save, which had the focus, gave way to it.
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Cancel' }));
    await user.keyboard('{Enter}');
    expect(machine.inputsOf('work.cancel')).toEqual([{ work }]);
    expect((await screen.findByRole('alert')).textContent).toContain('Stopped. Nothing was changed.');
    expect(screen.getByRole('textbox', { name: /^Log/ })).toHaveProperty('value', 'Ridge');
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Save' }));
  });

  test('says how many changed and whose calls, and undoes it', async () => {
    let isUndone = false;
    const { machine, user } = openAll(6, {
      ...edit,
      'boards.editTogether': () => ({
        ...edit['boards.editTogether'](),
        act: isUndone ? '3f1e6c1a-8f5f-4f57-9d0c-5b2a7b1c9e11' : act,
      }),
      'boards.callsChanged': (asked) => ({
        ...edit['boards.callsChanged'](),
        isUndone: isUndone && asked.act === act,
      }),
      'boards.list': (input) =>
        listOf(6, (number) => aBoardRow(number, { version: isUndone ? 3 : 1 }))(input),
      'acts.undo': () => {
        isUndone = true;
        return undoneAct;
      },
    });
    const save = async (log: string) => {
      await user.click(screen.getByRole('button', { name: 'Edit boards' }));
      await turnOn(user, 'Log');
      fireEvent.change(screen.getByRole('textbox', { name: /^Log/ }), { target: { value: log } });
      await user.click(screen.getByRole('button', { name: 'Save' }));
      await screen.findByText('2 boards changed. 1 call changed: OAK-05 (Ready).');
    };
    await user.click(await screen.findByLabelText('Select OAK-05'));
    await user.click(screen.getByLabelText('Select OAK-02'));
    await save('Ridge');
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    expect(machine.inputsOf('acts.undo')).toEqual([{ act, work: expect.any(String) }]);
    testAct(() => machine.tell('changed', { yard: null, topics: ['yard'] }));
    await waitFor(() => expect(screen.queryByText(/2 boards changed/)).toBeNull());
    // The next edit goes on from there.
    await save('Creek');
    expect(machine.inputsOf('boards.editTogether').at(-1)).toMatchObject({
      boards: [
        { id: 2, basedOn: 3 },
        { id: 5, basedOn: 3 },
      ],
    });
  });
});

test('more boards than can be added at once are refused at the field, while they are typed', async () => {
  const { user } = open(6);
  await user.click(await screen.findByRole('button', { name: 'Add boards' }));
  const dialog = within(await screen.findByRole('dialog'));
  await user.clear(await dialog.findByLabelText('How many'));
  await user.type(dialog.getByLabelText('How many'), '500');
  expect(dialog.getByRole('button', { name: 'Add 500 boards' })).toBeTruthy();
  expect(dialog.queryByRole('alert')).toBeNull();
  await user.clear(dialog.getByLabelText('How many'));
  await user.type(dialog.getByLabelText('How many'), '600');
  expect(dialog.getByRole('alert').textContent).toBe('At most 500 at a time. Add the rest after these.');
  expect(dialog.getByRole('button', { name: 'Add boards' })).toBeTruthy();
});

describe('Moving several boards', () => {
  const moved = {
    'boards.editTogether': () => ({
      act,
      boards: [
        { id: 2, version: 1 },
        { id: 5, version: 1 },
      ],
      callsBefore: [],
    }),
    'boards.callsChanged': () => ({ isUndone: false, isJudging: false, changed: [] }),
    'stacks.get': () => aStack({ boards: 6, elsewhere: { boards: 2, ready: 0, places: [] } }),
  };
  async function move(user: ReturnType<typeof userEvent.setup>): Promise<void> {
    await user.click(await screen.findByLabelText('Select OAK-05'));
    await user.click(screen.getByLabelText('Select OAK-02'));
    await user.click(screen.getByRole('button', { name: 'Move boards' }));
    const dialog = within(await screen.findByRole('dialog', { name: 'Move 2 boards' }));
    await user.selectOptions(await dialog.findByRole('combobox', { name: 'To' }), 'Shop');
    await user.click(dialog.getByRole('button', { name: 'Move' }));
  }

  test('has a button of its own, and says where they are, with a way to see them', async () => {
    const { machine, user } = open(6, moved);
    await move(user);
    expect(await screen.findByText(/^2 boards moved to Shop\./)).toBeTruthy();
    expect(machine.inputsOf('boards.editTogether')).toMatchObject([
      {
        boards: [
          { id: 2, basedOn: 1 },
          { id: 5, basedOn: 1 },
        ],
        changed: {},
        move: { placeId: 5 },
      },
    ]);
    await user.click(screen.getByRole('button', { name: 'Show them' }));
    await waitFor(() =>
      expect(machine.inputsOf('boards.list').at(-1)).toMatchObject({ stackId: 1, filter: 'elsewhere' }),
    );
    expect(screen.queryByRole('button', { name: 'Show them' })).toBeNull();
  });

  test('can still be undone after going elsewhere and back', async () => {
    let isUndone = false;
    const { machine, user } = open(6, {
      ...moved,
      'boards.callsChanged': () => ({ isUndone, isJudging: false, changed: [] }),
      'acts.undo': () => {
        isUndone = true;
        return undoneAct;
      },
    });
    await move(user);
    await screen.findByText(/^2 boards moved to Shop\./);
    cleanup();
    render(
      <main>
        <StackScreen id={1} />
      </main>,
    );
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    expect(machine.inputsOf('acts.undo')).toEqual([{ act, work: expect.any(String) }]);
    testAct(() => machine.tell('changed', { yard: null, topics: ['yard'] }));
    await waitFor(() => expect(screen.queryByText(/2 boards moved to/)).toBeNull());
  });

  test('a stack of which all boards are elsewhere says so, and does not ask for boards', async () => {
    const { machine, user } = open(0, {
      ...moved,
      'stacks.get': () => aStack({ boards: 0, call: null, elsewhere: { boards: 500, ready: 0, places: [] } }),
    });
    expect(await screen.findByText(/^All 500 boards of this stack are elsewhere\./)).toBeTruthy();
    expect(screen.queryByText(/No boards in this stack yet/)).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Show them' }));
    await waitFor(() =>
      expect(machine.inputsOf('boards.list').at(-1)).toMatchObject({ filter: 'elsewhere' }),
    );
  });
});

describe('A yard of 100,000 boards', () => {
  test('draws the rows in sight and fetches their pages only, also far down', async () => {
    const machine = play(100_000);
    render(
      <main>
        <BoardsScreen />
      </main>,
    );
    expect(await screen.findByText('100,000 boards')).toBeTruthy();
    await screen.findByText('OAK-01');
    expect(boardRows().length).toBeLessThan(60);
    expect(screen.getByRole('table').getAttribute('aria-rowcount')).toBe('100001');

    const frame = screen.getByRole('table').parentElement as HTMLElement;
    frame.scrollTop = 50_000 * 64;
    fireEvent.scroll(frame);
    const row = await screen.findByText('OAK-50010');
    expect(row.closest('tr')?.getAttribute('aria-rowindex')).toBe('50011');
    expect(boardRows().length).toBeLessThan(60);
    const asked = machine.inputsOf('boards.list') as RequestInput<'boards.list'>[];
    expect(asked.every(({ limit }) => limit === 100)).toBe(true);
    expect(asked.length).toBeLessThanOrEqual(6);
  });

  test('after a change the rows in sight are asked for again and stay on screen until they come', async () => {
    const machine = play(300);
    render(
      <main>
        <BoardsScreen />
      </main>,
    );
    await screen.findByText('OAK-01');
    fireEvent.click(screen.getByLabelText('Stack and place'));
    machine.answers['boards.list'] = listOf(300, (number) => aBoardRow(number, { stackName: 'Lane oak' }));
    machine.tell('changed', { yard: null, topics: ['stacks'] });
    expect(screen.getAllByText('Ridge oak').length).toBeGreaterThan(0);
    await waitFor(() => expect(screen.queryByText('Ridge oak')).toBeNull());
    expect(screen.getAllByText('Lane oak').length).toBeGreaterThan(0);
  });
});

describe('Adding boards', () => {
  /** Types over the thickness of the board added last. */
  async function thick(user: ReturnType<typeof userEvent.setup>, typed: string): Promise<void> {
    await user.clear(await screen.findByLabelText('Thickness'));
    await user.type(screen.getByLabelText('Thickness'), typed);
  }
  const add = {
    'boards.add': (boards: RequestInput<'boards.add'>) =>
      boards.map((board, index) => aBoardRow(index + 7, { code: board.code })),
  };

  test('several alike are numbered on from the next free ID, a quarter name is understood', async () => {
    const { machine, user } = open(0, add);
    await user.click((await screen.findAllByRole('button', { name: 'Add boards' }))[0]!);
    await user.clear(await screen.findByLabelText('How many'));
    await user.type(screen.getByLabelText('How many'), '3');
    expect(screen.getByText('OAK-07 to OAK-09')).toBeTruthy();
    await user.type(screen.getByRole('combobox', { name: 'Species' }), 'red oak{Enter}');
    await user.type(screen.getByLabelText('Thickness'), '5/4');
    // 5/4 is 1 1/4 in of rough thickness (common practice, no source); 31.75 mm by the inch of 25.4 mm.
    expect(screen.getByText('That is 32 mm.')).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add 3 boards' }));
    const [boards] = machine.inputsOf('boards.add') as [NewBoard[]];
    expect(
      boards.map(({ code, thicknessMm, thicknessQuarters }) => [code, thicknessMm, thicknessQuarters]),
    ).toEqual([
      ['OAK-07', 31.75, 5],
      ['OAK-08', 31.75, 5],
      ['OAK-09', 31.75, 5],
    ]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  test('several are laid layer by layer, above what is there, with their end grain', async () => {
    const { machine, user } = open(6, add);
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    await user.clear(await screen.findByLabelText('How many'));
    await user.type(screen.getByLabelText('How many'), '3');
    await thick(user, '27');
    await user.type(screen.getByLabelText('Boards per layer'), '2');
    expect(screen.getByText('Layers 4 to 5, from the bottom up.')).toBeTruthy();
    // What every forecast begins with is not folded away.
    expect(screen.getByRole('group', { name: 'Sawn on' }).closest('details')).toBeNull();
    await user.click(screen.getByText('More fields'));
    await user.selectOptions(screen.getByLabelText('Sawing'), 'Flat-sawn');
    await user.selectOptions(screen.getByLabelText('Bark side'), 'Up');
    await user.type(screen.getByLabelText('Distance from pith'), '12 cm');
    await user.click(screen.getByRole('button', { name: 'Add 3 boards' }));
    const [boards] = machine.inputsOf('boards.add') as [NewBoard[]];
    expect(boards.map(({ layer, column }) => [layer, column])).toEqual([
      [4, 1],
      [4, 2],
      [5, 1],
    ]);
    for (const board of boards) {
      expect(board).toMatchObject({ sawing: 'flat', barkSide: 'up', ringRadiusMm: 120 });
    }
  });

  test('what is open is taken from the board added last and can be changed, and nothing folded away', async () => {
    const last = aBoardRow(6, { log: 'Creek walnut', sawnOn: '2026-03-01', note: 'Bowed', lengthMm: 2400 });
    const { machine, user } = open(6, {
      ...add,
      'boards.list': () => ({ total: 6, rows: [last] }),
    });
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    expect(await screen.findByLabelText('Thickness')).toHaveProperty('value', '27');
    await thick(user, '3');
    expect(screen.getByText('3 mm is very thin. Did you mean 3/4 in (19 mm)?')).toBeTruthy();
    await user.click(screen.getByLabelText('Yes'));
    await user.click(screen.getByRole('button', { name: 'Add board' }));
    expect(machine.inputsOf('boards.add')).toMatchObject([
      [
        {
          speciesId: 'oak-northern-red',
          thicknessMm: 3,
          sawnOn: '2026-03-01',
          hereSinceOn: '2026-03-01',
          log: '',
          note: '',
          lengthMm: null,
        },
      ],
    ]);
  });

  test('boards sawn before today are asked whether they have been here since, with the day of the stack', async () => {
    const since = new Date(2025, 11, 15, 10).toISOString();
    const { machine, user } = open(6, { ...add, 'stacks.hereSince': () => ({ since }) });
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    await user.clear(await screen.findByLabelText('How many'));
    await user.type(screen.getByLabelText('How many'), '2');
    await thick(user, '27');
    await typeDay(user, 'Sawn on', '2025-11-02');
    const question = 'Have they been here since they were sawn?';
    const asked = within(screen.getByRole('group', { name: question }));
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: 'Add 2 boards' }));
    expect(await screen.findByText('Say whether they have been here since they were sawn.')).toBeTruthy();
    expect(machine.inputsOf('boards.add')).toEqual([]);
    await user.click(asked.getByLabelText('No, since Dec 15, 2025, like the rest of the stack'));
    await user.click(screen.getByRole('button', { name: 'Add 2 boards' }));
    expect(machine.inputsOf('boards.add')).toMatchObject([
      [{ hereSinceOn: '2025-12-15' }, { hereSinceOn: '2025-12-15' }],
    ]);
  });

  test('the day of the stack is not offered to boards sawn after it', async () => {
    const since = new Date(2025, 11, 15, 10).toISOString();
    const { machine, user } = open(6, { ...add, 'stacks.hereSince': () => ({ since }) });
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    await thick(user, '27');
    await typeDay(user, 'Sawn on', '2026-01-02');
    expect(screen.queryByLabelText(/like the rest of the stack/)).toBeNull();
    await user.click(screen.getByLabelText('Yes'));
    await user.click(screen.getByRole('button', { name: 'Add board' }));
    expect(machine.inputsOf('boards.add')).toMatchObject([[{ hereSinceOn: '2026-01-02' }]]);
  });

  test('a first layer without the boards per layer is asked about, and nothing is sent', async () => {
    const { machine, user } = open(6, add);
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    await user.clear(await screen.findByLabelText('How many'));
    await user.type(screen.getByLabelText('How many'), '3');
    await thick(user, '27');
    await user.type(screen.getByLabelText('First layer'), '2');
    await user.click(screen.getByRole('button', { name: 'Add 3 boards' }));
    expect(await screen.findByText(/Give the boards per layer/)).toBeTruthy();
    expect(machine.inputsOf('boards.add')).toEqual([]);
  });

  test('without species or thickness nothing is sent, and each missing field is marked', async () => {
    const { machine, user } = open(0, add);
    await user.click((await screen.findAllByRole('button', { name: 'Add boards' }))[0]!);
    await user.type(await screen.findByLabelText('Thickness'), 'thick');
    await user.click(screen.getByRole('button', { name: 'Add board' }));
    expect(screen.getByText('Choose a species.')).toBeTruthy();
    expect(screen.getByText(/“thick” is not a length/)).toBeTruthy();
    expect(machine.inputsOf('boards.add')).toEqual([]);
  });

  test('an ID that is taken is refused, and what was typed stays', async () => {
    const { user } = open(6, {
      'boards.add': () => {
        throw new Refusal(message('refusal.board-code-taken', { boardCode: 'OAK-07' }));
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Add boards' }));
    // The species of the newest board is offered again.
    expect(await screen.findByRole('combobox', { name: 'Species' })).toHaveProperty(
      'value',
      'Northern red oak',
    );
    await thick(user, '27');
    await user.click(screen.getByRole('button', { name: 'Add board' }));
    const form = within(screen.getByRole('dialog'));
    expect((await form.findByRole('alert')).textContent).toContain('There is already a board OAK-07.');
    expect(screen.getByLabelText('Thickness')).toHaveProperty('value', '27');
  });
});

describe('What to do with a stack', () => {
  test('is its call in a sentence, with the reason and the dates', async () => {
    const when = { likely: '2090-01-18', from: '2090-01-02', to: '2090-02-02' };
    open(8, {
      'stacks.get': () =>
        aStack({
          boards: 8,
          call: {
            call: 'bring-in',
            reasons: [
              message('stack-call.some.bring-in', { boards: 5, probed: 8 }),
              message('stack-call.also.probe-again', { boards: 3 }),
            ],
          },
          due: {
            kind: 'bring-in',
            why: message('stack-call.to-move', {
              boards: 5,
              now: 5,
              later: 0,
              dryEnoughLimitPct: 20,
              coreLimitPct: 25,
            }),
          },
          nextReady: { when, placeName: 'Bench room' },
        }),
    });
    expect(await screen.findByText('Bring in 5 of 8 probed boards.')).toBeTruthy();
    expect(screen.getByText('5 boards are unlikely to reach the target where they are.')).toBeTruthy();
    expect(
      screen.getByText('3 to probe again. If moved to Bench room, next likely ready Jan 18, 2090.'),
    ).toBeTruthy();
    // The sentence says to move them: so does the first button.
    const [first] = screen.getAllByRole('button');
    expect(first?.getAttribute('aria-label')).toBe('Move: Ridge oak');
    expect(screen.getByText('Northern red oak').parentElement?.textContent).toMatch(
      /^Northern red oak · 8 boards · Pole shed · Furniture, target/,
    );
  });

  const moreOf = async (user: ReturnType<typeof userEvent.setup>) => {
    await user.click(await screen.findByRole('button', { name: 'More' }));
    return screen.getAllByRole('menuitem').map(({ textContent }) => textContent);
  };

  test('is probed and added to at its head; what else can be done with it is behind More', async () => {
    const { user } = open(6, { 'stacks.get': () => aStack({ lastRoundId: 9 }) });
    expect(await screen.findByRole('link', { name: 'Probe: Ridge oak' })).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Add boards' })).toBeTruthy();
    expect(await moreOf(user)).toEqual([
      'Last round',
      'Enter a past round',
      'Labels',
      'Print report',
      'Move stack',
      'Plan a move',
      'Edit stack',
      'Merge into another stack',
      'Close stack',
    ]);
    await expectNoBarriers();
    await user.click(screen.getByRole('menuitem', { name: 'Move stack' }));
    expect(screen.getByRole('dialog', { name: 'Move Ridge oak' })).toBeTruthy();
  });

  test.each([
    ['Last round', '#/round/9'],
    ['Labels', '#/labels?stack=1'],
  ])('%s leads there', async (name, address) => {
    const { user } = open(6, { 'stacks.get': () => aStack({ lastRoundId: 9 }) });
    await moreOf(user);
    await user.click(screen.getByRole('menuitem', { name }));
    expect(location.hash).toBe(address);
  });

  test('without boards and rounds is only moved and edited', async () => {
    const { user } = open(0);
    expect(await moreOf(user)).toEqual([
      'Move stack',
      'Edit stack',
      'Merge into another stack',
      'Close stack',
      'Delete stack',
    ]);
  });
});

describe('A stack that is not there', () => {
  test('is missing, and the stacks are offered', async () => {
    play(3);
    render(
      <main>
        <StackScreen id={99} />
      </main>,
    );
    expect(await screen.findByText(/That stack is not in this yard/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Go to stacks' })).toBeTruthy();
  });
});
