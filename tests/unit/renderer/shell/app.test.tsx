// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { App } from '../../../../renderer/app/App.tsx';
import { setLink } from '../../../../renderer/stores/link.ts';
import { useMeter } from '../../../../renderer/stores/meter.ts';
import { go, useNavigation } from '../../../../renderer/stores/navigation.ts';
import { tellDone, tellProblem, useNotices } from '../../../../renderer/stores/notices.ts';
import { openOwnYard } from '../../../../renderer/stores/yard.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aRound } from '../round/a-round.ts';
import { aLiveMeter, aLiveValue, aMeter } from './a-meter.ts';
import { aYard, backupsAre } from './a-yard-file.ts';
import { bringAllScreens } from './all-screens.ts';
import { expectNoBarriers, forgetEverything, playMachine } from './machine.ts';

async function open(info: YardInfo = aYard(), answers: Parameters<typeof playMachine>[0] = {}) {
  location.hash = '#/meter';
  const machine = playMachine({
    'yard.info': () => info,
    'meter.state': () => aMeter(),
    'settings.get': () => usualSettings,
    'stacks.list': () => [],
    'species.list': () => [],
    'backups.state': () => backupsAre(),
    'backups.list': () => [],
    'recovery.newestActAt': () => null,
    ...answers,
  });
  setLink('open');
  render(<App />);
  // The address is followed from the first drawing on.
  act(() => dispatchEvent(new HashChangeEvent('hashchange')));
  await act(async () => undefined);
  return { machine, user: userEvent.setup() };
}

async function goTo(...route: Parameters<typeof go>) {
  go(...route);
  await act(async () => {
    dispatchEvent(new HashChangeEvent('hashchange'));
  });
}

bringAllScreens();
beforeEach(forgetEverything);
afterEach(cleanup);

test('the frame: where one can go, where one is, how the meter is', async () => {
  await open();
  const nav = screen.getByRole('navigation', { name: 'Main' });
  // Here they are behind the menu's button, as in a narrow window.
  const links = within(nav).getAllByRole('link', { hidden: true });
  expect(links.map((link) => link.textContent)).toEqual([
    'Stacks',
    'Dates',
    'Meter',
    'Labels',
    'Places',
    'Air',
    'Species',
    'Files',
    'Settings',
    'Help',
  ]);
  expect(within(nav).getByRole('link', { current: 'page', hidden: true }).textContent).toBe('Meter');
  expect(screen.getByRole('link', { name: 'Meter: No meter' })).toBeTruthy();
  await expectNoBarriers();
});

test('no screen is there to type in before the person’s units have come', async () => {
  let come = (): void => undefined;
  const settings = new Promise<typeof usualSettings>((resolve) => {
    come = () => resolve(usualSettings);
  });
  await open(aYard(), { 'settings.get': () => settings as never });
  expect(screen.queryByRole('heading', { name: 'Meter' })).toBeNull();
  come();
  expect(await screen.findByRole('heading', { name: 'Meter' })).toBeTruthy();
});

test('the meter’s state is in sight on every screen, with its battery', async () => {
  const { machine } = await open();
  act(() => machine.tell('meter.state', aLiveMeter()));
  expect(screen.getByRole('link', { name: /^Meter: Live · battery.76%$/ })).toBeTruthy();
  act(() => machine.tell('meter.state', aLiveMeter({ phase: 'reconnecting' })));
  expect(screen.getByRole('link', { name: /Reconnecting/ })).toBeTruthy();
  const failed = { phase: 'failed' } as const;
  act(() => machine.tell('meter.state', aMeter({ ...failed, message: message('meter.adapter.missing') })));
  expect(screen.getByRole('link', { name: 'Meter: No Bluetooth' })).toBeTruthy();
  act(() => machine.tell('meter.state', aLiveMeter(failed)));
  expect(screen.getByRole('link', { name: /^Meter: Not connected/ })).toBeTruthy();
});

test('after a change of place the new screen’s heading has the focus, and the window its title', async () => {
  await open();
  await goTo({ name: 'round-start', stackId: null });
  expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1, name: 'Start a round' }));
  expect(document.title).toBe('Start a round · Pintally');
});

test('an address that leads nowhere says so and leads back', async () => {
  await open();
  await goTo({ name: 'nowhere', hash: '#/attic' });
  expect(screen.getByRole('heading', { name: 'Nothing here' })).toBeTruthy();
  await expectNoBarriers();
});

test('a backup that failed is said on every screen, and tried again from there', async () => {
  const problem = message('refusal.backup-no-room', { folder: '/media/disk' });
  const { machine, user } = await open(aYard(), {
    'backups.state': () => backupsAre({ problem }),
    'backups.make': () => backupsAre(),
  });
  expect(screen.getByText(/The last backup failed\./).textContent).toContain(
    'Nothing could be saved in /media/disk: there is not enough room. Your yard is unchanged.',
  );
  await user.click(screen.getByRole('button', { name: 'Try again' }));
  expect(machine.inputsOf('backups.make')).toEqual([{}]);
});

test('a backup that failed cannot be tried again while Pintally is not responding', async () => {
  const problem = message('refusal.backup-no-room', { folder: '/media/disk' });
  await open(aYard(), { 'backups.state': () => backupsAre({ problem }) });
  act(() => setLink('away'));
  expect(screen.getByText(/The last backup failed\./)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Try again' })).toBeNull();
});

test('the backups page says once that the newest backup went elsewhere, and does not lead to itself', async () => {
  const [chosenFolder, usualFolder] = ['/media/disk', '/home/sawyer/backups'];
  const elsewhere = message('backups.went-elsewhere', { chosenFolder, usualFolder });
  const { user } = await open(aYard(), {
    'backups.state': () => backupsAre({ elsewhere, chosenFolder, isAway: true }),
    'backups.make': () => backupsAre({ elsewhere, chosenFolder, isAway: true }),
  });
  await goTo({ name: 'backups' });
  expect(screen.getByText(/^The backup folder \/media\/disk could not be used\./)).toBeTruthy();
  expect(screen.queryByText(/is not available/)).toBeNull();
  expect(screen.queryByRole('link', { name: 'Go to backups' })).toBeNull();
  await user.click(screen.getByRole('button', { name: 'Back up now' }));
  expect(await screen.findByText(`Backup checked and saved in ${usualFolder}.`)).toBeTruthy();
  await expectNoBarriers();
});

test('the backups page says that the backup folder is away where no backup has failed yet', async () => {
  await open(aYard(), { 'backups.state': () => backupsAre({ chosenFolder: '/media/disk', isAway: true }) });
  await goTo({ name: 'backups' });
  expect(screen.getByText(/^The backup folder is not available\./)).toBeTruthy();
});

test('a backup that went elsewhere is said on every screen, and is no failure', async () => {
  const elsewhere = message('backups.went-elsewhere', {
    chosenFolder: '/media/disk',
    usualFolder: '/home/sawyer/backups',
  });
  await open(aYard(), { 'backups.state': () => backupsAre({ elsewhere, chosenFolder: '/media/disk' }) });
  expect(screen.getByText(/The newest backup is in \/home\/sawyer\/backups/).textContent).not.toContain(
    'failed',
  );
});

describe('A backup that went elsewhere', () => {
  const elsewhere = message('backups.went-elsewhere', {
    chosenFolder: '/media/disk',
    usualFolder: '/home/sawyer/backups',
  });
  const sentence = /The newest backup is in \/home\/sawyer\/backups/;
  const answers = { 'backups.state': () => backupsAre({ elsewhere, chosenFolder: '/media/disk' }) };

  test('can be dismissed until the window is opened again, and is still on the page of the backups', async () => {
    const { user } = await open(aYard(), answers);
    await user.click(screen.getByRole('button', { name: 'Dismiss' }));
    expect(screen.queryByText(sentence)).toBeNull();
    await goTo({ name: 'places' });
    expect(screen.queryByText(sentence)).toBeNull();
    await goTo({ name: 'backups' });
    expect(screen.getByText(sentence)).toBeTruthy();
  });

  test('is one line in a round, with a button that shows what can be done', async () => {
    const { user } = await open(aYard(), { ...answers, 'rounds.open': () => aRound() });
    expect(screen.queryByRole('button', { name: 'Show all' })).toBeNull();
    await goTo({ name: 'round', id: 1 });
    const showAll = screen.getByRole('button', { name: 'Show all' });
    expect(showAll.getAttribute('aria-expanded')).toBe('false');
    await user.click(showAll);
    expect(screen.getByRole('button', { name: 'Show less' }).getAttribute('aria-expanded')).toBe('true');
  });
});

describe('a settled value that could not save itself', () => {
  const problem = message('refusal.file-in-use', {
    undone: message('refusal.value-not-saved'),
    again: message('refusal.press-space'),
  });
  const sentence =
    'Another program is using the yard file. The settled reading was not saved. Earlier readings are safe. Close that program. Then press Space with the pins still in.';

  test('is shown in the round, where Space saves it', { tags: 'core' }, async () => {
    const { machine, user } = await open(aYard(), {
      'rounds.open': () => aRound(),
      'rounds.saveLive': () => ({ roundId: 12, boardId: 101, stackId: 3 }),
    });
    await goTo({ name: 'round', id: 12 });
    act(() => {
      machine.tell('meter.state', aLiveMeter());
      machine.tell('meter.live', aLiveValue());
      machine.tell('round.notSaved', { roundId: 12, problem });
    });
    const alerts = screen.getAllByRole('alert');
    expect(alerts.map((alert) => alert.textContent)).toEqual([expect.stringContaining(sentence)]);
    expect(screen.getByRole('region', { name: 'Reading' }).contains(alerts[0]!)).toBe(true);
    await user.keyboard(' ');
    expect(machine.inputsOf('rounds.saveLive')).toEqual([
      { roundId: 12, boardId: 101, spotIndex: 0, newestReadingId: null },
    ]);
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('is shown on any other screen too', async () => {
    const { machine } = await open();
    act(() => machine.tell('round.notSaved', { roundId: 12, problem }));
    expect(screen.getByRole('alert').textContent).toContain(sentence);
  });
});

test('that calls are not up to date is said on any screen, until they are', async () => {
  const { machine } = await open();
  const problem = message('refusal.disk-failed', {
    undone: message('refusal.saved-not-updated'),
    again: message('refusal.goes-on'),
  });
  act(() => machine.tell('updates.delayed', { problem }));
  expect(screen.getByRole('alert').textContent).toContain(
    'What was saved is safe, but calls are not up to date.',
  );
  act(() => machine.tell('updates.delayed', { problem: null }));
  expect(screen.queryByRole('alert')).toBeNull();
});

test('that another window changes many boards is said while it does, with how far it is', async () => {
  const { machine } = await open();
  act(() => machine.tell('work.ofOther', { progress: { done: 24_000, total: 96_000 } }));
  const sentence = 'Another window is changing many boards. Some are changed, and some are not yet.';
  const bar = screen.getByRole<HTMLProgressElement>('progressbar', { name: sentence });
  expect(bar.position).toBe(0.25);
  expect(screen.getByText('24,000 of 96,000')).toBeDefined();
  await expectNoBarriers();
  act(() => machine.tell('work.ofOther', { progress: null }));
  expect(screen.queryByText(sentence)).toBeNull();
});

test('of a machine that went away nobody says that it changes boards', async () => {
  const { machine } = await open();
  act(() => machine.tell('work.ofOther', { progress: { done: 24_000, total: 96_000 } }));
  act(() => setLink('away'));
  await act(async () => setLink('open'));
  expect(screen.queryByRole('progressbar')).toBeNull();
});

describe('when the machine cannot be reached', () => {
  test('it says so until it can be again, and everything is asked for again', { tags: 'core' }, async () => {
    const { machine } = await open();
    act(() => setLink('away'));
    expect(screen.getByRole('alert').textContent).toContain('Pintally is not responding.');
    const before = machine.inputsOf('meter.state').length;
    await act(async () => setLink('open'));
    expect(screen.queryByRole('alert')).toBeNull();
    expect(machine.inputsOf('meter.state').length).toBe(before + 1);
  });

  test.each([
    ['locked', 'Pintally was restarted.'],
    ['foreign', 'Another program answers at this address.'],
  ] as const)('a window that is %s says so over what it shows', async (state, sentence) => {
    await open();
    act(() => setLink('away'));
    act(() => setLink(state));
    expect(screen.getByRole('alert').textContent).toContain(sentence);
    expect(screen.getByRole('heading', { level: 1, name: 'Meter' })).toBeTruthy();
  });

  test('a window that was never let in says what to do, and opens by itself once it is', async () => {
    let answer: (info: YardInfo) => void = () => undefined;
    await open(aYard(), { 'yard.info': () => new Promise((resolve) => (answer = resolve)) });
    act(() => setLink('locked'));
    expect(screen.getByRole('heading', { name: 'Use the start link to open Pintally' })).toBeTruthy();
    await expectNoBarriers();
    await act(async () => setLink('open'));
    await act(async () => answer(aYard()));
    expect(screen.getByRole('heading', { level: 1, name: 'Meter' })).toBeTruthy();
  });

  test('the meter is not said to be live, and is once it is asked for again', async () => {
    await open(aYard(), { 'meter.state': () => aLiveMeter() });
    const chip = () => screen.getByRole('link', { name: /^Meter:/ });
    expect(chip().textContent).toContain('Live');
    act(() => setLink('away'));
    expect(chip().textContent).toBe('Meter: Meter status unknown');
    await expectNoBarriers();
    await act(async () => setLink('open'));
    expect(chip().textContent).toContain('Live');
  });

  test('what is tried meanwhile has no notice of its own: the one at the top is read out again', async () => {
    await open();
    act(() => setLink('away'));
    const before = screen.getByRole('alert');
    act(() => tellProblem(new Refusal(message('refusal.machine-away'))));
    const after = screen.getByRole('alert');
    expect(after.textContent).toBe(before.textContent);
    expect(after).not.toBe(before);
  });

  test('a change whose answer was lost is to be checked when it can be, and not before', async () => {
    await open();
    act(() => setLink('away'));
    act(() => tellProblem(new Refusal(message('refusal.machine-stopped'))));
    expect(screen.getAllByRole('alert')).toHaveLength(1);
    await act(async () => setLink('open'));
    expect(screen.getByRole('alert').textContent).toContain('Check your last change');
  });

  test('no value that the meter showed before is shown as its value', async () => {
    const { machine } = await open(aYard(), { 'meter.state': () => aLiveMeter() });
    act(() => machine.tell('meter.live', aLiveValue()));
    expect(useMeter.getState().live).not.toBeNull();
    act(() => setLink('away'));
    expect(useMeter.getState()).toMatchObject({ live: null, trace: [], insertion: null });
  });

  test('a yard that cannot be asked for says why and can be tried again', async () => {
    let there = false;
    const { user } = await open(aYard(), {
      'yard.info': () => {
        if (!there) throw new Refusal(message('refusal.no-yard'));
        return aYard();
      },
    });
    expect(
      screen
        .getAllByRole('alert')
        .map((alert) => alert.textContent)
        .join(),
    ).toContain('No yard is open. Open one first.');
    there = true;
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByRole('heading', { level: 1, name: 'Meter' })).toBeTruthy();
  });
});

describe('the demo yard', () => {
  test('is marked on every screen and left from there', async () => {
    const { machine, user } = await open(aYard({ kind: 'demo' }), { 'yard.openOwn': () => aYard() });
    expect(screen.getByText('Demo yard: invented data.')).toBeTruthy();
    await expectNoBarriers();
    await user.click(screen.getByRole('button', { name: /^Demo yard: invented data\./ }));
    await user.click(screen.getByRole('menuitem', { name: /^Go to my own yard/ }));
    expect(machine.inputsOf('yard.openOwn')).toEqual([{}]);
    expect(screen.queryByText('Demo yard: invented data.')).toBeNull();
  });

  test('is removed after one question that says what is deleted', async () => {
    const { machine, user } = await open(aYard({ kind: 'demo' }), {
      'yard.removeDemo': () => ({ ...aYard(), notRemoved: null }),
    });
    await user.click(screen.getByRole('button', { name: /^Demo yard: invented data\./ }));
    await user.click(screen.getByRole('menuitem', { name: 'Remove the demo yard' }));
    const dialog = screen.getByRole('dialog', { name: 'Remove the demo yard?' });
    await expect.poll(() => document.activeElement?.textContent).toBe('Cancel');
    expect(dialog.textContent).toContain('Your own yard opens, unchanged.');
    await user.click(within(dialog).getByRole('button', { name: 'Remove the demo yard' }));
    expect(machine.inputsOf('yard.removeDemo')).toEqual([{}]);
  });

  test('that could not be removed says so, and the own yard is shown all the same', async () => {
    const notRemoved = message('refusal.demo-not-removed', { file: '/home/sawyer/demo-yard.sqlite' });
    const { user } = await open(aYard({ kind: 'demo' }), {
      'yard.removeDemo': () => ({ ...aYard(), notRemoved }),
    });
    await user.click(screen.getByRole('button', { name: /^Demo yard: invented data\./ }));
    await user.click(screen.getByRole('menuitem', { name: 'Remove the demo yard' }));
    const dialog = screen.getByRole('dialog', { name: 'Remove the demo yard?' });
    await user.click(within(dialog).getByRole('button', { name: 'Remove the demo yard' }));
    expect((await screen.findByRole('alert')).textContent).toContain('The demo yard was not removed');
    expect(screen.queryByText('Demo yard: invented data.')).toBeNull();
  });
});

describe('a yard that cannot be opened', () => {
  const damaged = aYard({
    problem: message('refusal.yard-damaged', { file: '/home/sawyer/yard.sqlite' }),
    canStartAfresh: true,
  });

  test('takes the whole window: what is wrong, which file, the ways on', async () => {
    await open(damaged);
    expect(screen.getByRole('alert').textContent).toContain(
      'Pintally cannot read all of the yard file /home/sawyer/yard.sqlite. It changes nothing in it.',
    );
    expect(screen.getByRole('button', { name: 'Open the demo yard' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('is opened on request once its file is repaired', async () => {
    const { machine, user } = await open(damaged, { 'yard.openOwn': () => aYard() });
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(machine.inputsOf('yard.openOwn')).toEqual([{}]);
    expect(await screen.findByRole('navigation', { name: 'Main' })).toBeTruthy();
  });

  test('is replaced by its newest backup that can be read, after a look inside', async () => {
    const backup = {
      file: '/backups/newest.sqlite',
      at: '2026-05-03T17:10:00.000Z',
      why: 'round' as const,
      sizeBytes: 400_000,
      contents: {
        uuid: null,
        stacks: 2,
        boards: 12,
        readings: 96,
        pictures: 0,
        lastRoundAt: '2026-05-03T16:00:00.000Z',
        layout: 12,
        isOlderLayout: false,
      },
      isOfOtherYard: false,
      isOfPresent: true,
    };
    const { machine, user } = await open(damaged, {
      'backups.list': () => [{ ...backup, file: '/backups/torn.sqlite', contents: null }, backup],
      'backups.look': () => ({ ...backup, missing: null }),
      'backups.restore': () => aYard(),
    });
    await user.click(await screen.findByRole('button', { name: /^Restore the newest backup, of May 3/ }));
    const dialog = screen.getByRole('dialog', { name: /^Restore the backup of May 3/ });
    expect(dialog.textContent).toContain('The damaged file stays in the same folder under another name.');
    await expectNoBarriers();
    await user.click(await within(dialog).findByRole('button', { name: 'Restore this backup' }));
    expect(machine.inputsOf('backups.restore')).toEqual([{ file: '/backups/newest.sqlite' }]);
    expect(await screen.findByRole('navigation', { name: 'Main' })).toBeTruthy();
  });

  const file = '/home/sawyer/yard.sqlite';
  const backupAt = (at: string) => ({
    file: '/backups/newest.sqlite',
    at,
    why: 'round' as const,
    sizeBytes: 400_000,
    contents: {
      uuid: null,
      stacks: 2,
      boards: 12,
      readings: 96,
      pictures: 0,
      lastRoundAt: null,
      layout: 12,
      isOlderLayout: false,
    },
    isOfOtherYard: false,
    isOfPresent: true,
  });
  const wayOn = (name: string) => screen.getByRole('region', { name }).textContent;

  test('recommends the newest backup where nothing was saved after it', async () => {
    await open(damaged, {
      'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z')],
      'recovery.newestActAt': () => '2026-05-03T17:09:00.000Z',
    });
    expect(wayOn('Newest backup')).toMatch(/96 readings\..*Recommended: nothing was saved after it\./);
    expect(wayOn('From the damaged file')).not.toContain('Recommended');
    expect(screen.getByText(/^Neither deletes the damaged file\./)).toBeTruthy();
  });

  test('and has no backup has one way on, and says nothing of a second', async () => {
    await open(damaged);
    expect(wayOn('From the damaged file')).toContain('There is no backup.');
    expect(screen.getByText('The damaged file is not deleted.')).toBeTruthy();
    expect(document.body.textContent).not.toMatch(/Neither|Recommended|No backups yet/);
  });

  test('and is the demo yard is offered no backup of the own one', async () => {
    await open(
      { ...damaged, kind: 'demo' },
      { 'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z')] },
    );
    expect(wayOn('From the damaged file')).toContain('There is no backup.');
    expect(screen.queryByRole('button', { name: /Restore/ })).toBeNull();
    expect(screen.getByText('The damaged file is not deleted.')).toBeTruthy();
  });

  test('shows its newest backup once, and other backups in a list', async () => {
    const older = { ...backupAt('2026-05-02T17:10:00.000Z'), file: '/backups/older.sqlite' };
    await open(damaged, { 'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z'), older] });
    expect(screen.getAllByRole('button', { name: /^Restore the .*backup/ })).toHaveLength(2);
    const others = screen.getByRole('region', { name: 'Other backups' });
    expect(within(others).getByRole('button', { name: /^Restore the backup of May 2/ })).toBeTruthy();
    expect(within(others).queryByText(/May 3/)).toBeNull();
    expect(screen.getByRole('button', { name: 'Try again' }).className).toContain('button-quiet');
    expect(screen.getByRole('button', { name: 'Open the error report' }).className).toContain('button-quiet');
  });

  test.each([
    ['/media/disk', true],
    ['/backups', false],
  ])(
    'says which folder each backup is in only where there are two: the others in %s',
    async (other, isSaid) => {
      const list = [3, 2, 1].map((day) => ({
        ...backupAt(`2026-05-0${day}T17:10:00.000Z`),
        file: `${day === 1 ? other : '/backups'}/${day}.sqlite`,
      }));
      await open(damaged, { 'backups.list': () => list });
      const others = within(screen.getByRole('region', { name: 'Other backups' }));
      expect(others.queryByText('/media/disk') !== null).toBe(isSaid);
      expect(others.queryByText('/backups') !== null).toBe(isSaid);
    },
  );

  test('never offers another yard’s backup, nor the restored yard that was undone', async () => {
    const newest = backupAt('2026-05-03T17:10:00.000Z');
    const own = { ...backupAt('2026-05-01T09:00:00.000Z'), file: '/backups/own.sqlite' };
    const lastRoundAt = '2026-05-01T08:00:00.000Z';
    await open(damaged, {
      'backups.list': () => [
        { ...newest, isOfOtherYard: true, isOfPresent: false },
        { ...newest, file: '/backups/perhaps.sqlite', isOfOtherYard: null },
        { ...newest, file: '/backups/undone.sqlite', why: 'undo' as const, isOfPresent: false },
        { ...own, contents: { ...own.contents, lastRoundAt } },
      ],
      'recovery.newestActAt': () => '2026-04-30T17:09:00.000Z',
    });
    expect(wayOn('Newest backup')).toMatch(/May 1.*: 12 boards, 96 readings\. Last round: May 1/);
    const list = screen.getByRole('table').textContent;
    for (const label of ['Another yard', 'Perhaps another yard', 'Before a restore or a merge was undone']) {
      expect(list).toContain(label);
    }
  });

  test('one that cannot be opened after a restore offers to undo that', async () => {
    const { machine, user } = await open(aYard({ problem: message('refusal.yard-unreadable', { file }) }), {
      'backups.state': () =>
        backupsAre({
          restored: {
            backedUpAt: null,
            restoredAt: '2026-05-03T17:10:00.000Z',
            undoFile: '/home/sawyer/yard.sqlite.damaged-2026-05-03',
            wasDamaged: true,
            wasMerged: false,
            missing: null,
          },
        }),
      'backups.undoRestore': () => aYard(),
    });
    await user.click(await screen.findByRole('button', { name: 'Undo the restore' }));
    const dialog = screen.getByRole('dialog', { name: 'Undo the restore?' });
    expect(dialog.textContent).toContain('The damaged file comes back.');
    await expectNoBarriers();
    await user.click(within(dialog).getByRole('button', { name: 'Undo it' }));
    expect(machine.inputsOf('backups.undoRestore')).toEqual([{}]);
  });

  test.each([['2026-05-03T17:11:00.000Z'], [null]])(
    'recommends to recover where the newest change is of %s, so that the backup may lack it',
    async (newestActAt) => {
      await open(damaged, {
        'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z')],
        'recovery.newestActAt': () => newestActAt,
      });
      expect(wayOn('From the damaged file')).toContain('Recommended');
      expect(wayOn('Newest backup')).not.toContain('Recommended');
    },
  );

  const owned = {
    file,
    program: 'window',
    openedAt: '2026-05-03T17:10:00.000Z',
    processId: 7,
    computerName: 'shed',
  };
  test.each([
    [message('refusal.yard-owned', owned as never), 'Your yard is already open'],
    [message('refusal.yard-newer', { file }), 'This yard needs a newer Pintally'],
    [message('refusal.yard-foreign', { file }), 'This file is not a yard'],
    [message('refusal.yard-name-taken', { file, name: `${file}-wal` }), 'Your yard file cannot be opened'],
  ])(
    'and is not damaged (%o) offers to try again, and nothing that would replace it',
    async (problem, title) => {
      await open(aYard({ problem }), { 'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z')] });
      expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(title);
      expect(document.body.textContent).not.toContain('damaged');
      expect(screen.queryByRole('button', { name: /Restore|Recover|Rename|new yard/ })).toBeNull();
      expect(screen.getByRole('button', { name: 'Try again' }).className).toContain('button-main');
    },
  );

  test('and cannot be opened offers to try again, and to restore a backup', async () => {
    const backup = backupAt('2026-05-03T17:10:00.000Z');
    const { user } = await open(aYard({ problem: message('refusal.yard-unreadable', { file }) }), {
      'backups.list': () => [backup],
      'backups.state': () => backupsAre(),
      'backups.look': () => ({ ...backup, missing: null }),
    });
    expect(screen.queryByRole('button', { name: /Recover|Rename|new yard/ })).toBeNull();
    await user.click(await screen.findByRole('button', { name: /^Restore the backup/ }));
    expect(screen.getByRole('dialog').textContent).toContain(
      'The file that cannot be opened stays in the same folder under another name.',
    );
  });

  test('and whose file is missing offers a backup and a new yard, in words of its own', async () => {
    const { user } = await open(
      aYard({ problem: message('refusal.yard-missing', { file }), canStartAfresh: true }),
      {
        'backups.list': () => [backupAt('2026-05-03T17:10:00.000Z')],
        'backups.look': () => ({ ...backupAt('2026-05-03T17:10:00.000Z'), missing: null }),
      },
    );
    expect(screen.getByRole('heading', { level: 1, name: 'Your yard file is missing' })).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Recover|Rename/ })).toBeNull();
    await user.click(await screen.findByRole('button', { name: /^Restore the newest backup/ }));
    const asked = screen.getByRole('dialog');
    expect(asked.textContent).toContain('What is left of the earlier yard stays in the same folder.');
    expect(asked.textContent).not.toContain('damaged');
    await user.click(within(asked).getByRole('button', { name: 'Cancel' }));
    await user.click(screen.getByRole('button', { name: 'Start a new yard' }));
    expect(screen.getByRole('dialog').textContent).not.toContain('damaged');
  });

  test('and was written by a newer Pintally offers no backup in its place', async () => {
    await open({
      ...damaged,
      problem: message('refusal.yard-newer', { file: '/home/sawyer/yard.sqlite' }),
      canStartAfresh: false,
    });
    expect(screen.queryByRole('button', { name: /^Restore/ })).toBeNull();
  });

  test('is recovered as far as it can be read, and what was recovered can be read and saved as text', async () => {
    const report = {
      kinds: [
        { kind: 'readings' as const, saved: 118, lost: 2 },
        { kind: 'places' as const, saved: 3, lost: 0 },
      ],
      damagedFile: 'yard.sqlite.damaged-2026-05-03',
      recovered: ['RECOVERED-7'],
      roundsMadeAgain: ['2026-05-01T15:00:00.000Z'],
    };
    const { machine, user } = await open(damaged, {
      'recovery.salvage': () => aYard(),
      'recovery.notes': () => [
        message('yard-note.salvaged', {
          boards: 12,
          readings: 118,
          nextSentences: [
            message('yard-note.salvaged.lost', { lost: 2 }),
            message('yard-note.salvaged.more'),
            message('yard-note.salvaged.backup', { backupAt: '2026-05-02T15:01:00.000Z', more: 1 }),
            message('yard-note.salvaged.file', { damagedFile: 'yard.sqlite.damaged-2026-05-03' }),
          ],
        }),
      ],
      'recovery.report': () => report,
    });
    await user.click(screen.getByRole('button', { name: 'Recover what can be read' }));
    expect(machine.inputsOf('recovery.salvage')).toEqual([{}]);
    expect(
      await screen.findByText(
        /^Recovered from the damaged file: 12 boards and 118 readings\. 2 readings are lost or damaged\. More may be lost: not all can be counted\. The backup of .* has 1 more reading\. The damaged file is in the same folder: yard\.sqlite\.damaged-2026-05-03\.$/,
      ),
    ).toBeTruthy();
    await user.click(await screen.findByRole('button', { name: 'Show what was recovered' }));
    const dialog = screen.getByRole('dialog', { name: 'Recovered from the damaged file' });
    expect(dialog.textContent).toContain('Readings: 118 recovered, 2 lost or damaged.');
    expect(within(dialog).getByText('Places: 3 recovered.')).toBeTruthy();
    expect(dialog.textContent).toContain('RECOVERED-7');
    expect(dialog.textContent).toMatch(
      /1 lost round was rebuilt from its readings: May 1, .*Check its date\./,
    );
    expect(within(dialog).getByRole('button', { name: 'Save as text' })).toBeTruthy();
    await expectNoBarriers();
  });

  test('is replaced only after the person read that nothing is deleted', async () => {
    const { machine, user } = await open(damaged, { 'yard.startAfresh': () => aYard({ boards: 0 }) });
    await user.click(screen.getByRole('button', { name: 'Rename this file and start a new yard' }));
    expect(machine.inputsOf('yard.startAfresh')).toEqual([]);
    expect(screen.getByRole('dialog').textContent).toContain('The damaged file is not deleted');
    await user.click(screen.getByRole('button', { name: 'Start a new yard' }));
    expect(machine.inputsOf('yard.startAfresh')).toEqual([{}]);
    expect(await screen.findByRole('navigation', { name: 'Main' })).toBeTruthy();
  });

  test('because its file was lost meanwhile offers the copy that was rescued', async () => {
    const rescuedFile = '/home/sawyer/yard.sqlite.rescued-2026-06-01';
    const { machine, user } = await open(
      aYard({
        problem: message('refusal.yard-moved', {
          file: '/home/sawyer/yard.sqlite',
          what: 'file',
          how: 'deleted',
          rescuedFile,
          state: 'gone',
          unsaved: 'no',
        }),
        rescuedFile,
      }),
      {
        'yard.openRescued': () => aYard(),
        'backups.look': () => ({ ...backupAt('2026-05-03T17:10:00.000Z'), missing: null }),
      },
    );
    expect(screen.getByRole('alert').textContent).toBe(
      `✕The yard file /home/sawyer/yard.sqlite was deleted or moved while it was open. Everything saved is in this copy: ${rescuedFile}. Open the copy, or put the file back and try again.`,
    );
    await expectNoBarriers();
    expect(screen.getByRole('heading', { level: 1, name: 'Your yard file is gone' })).toBeTruthy();
    expect(screen.getByText('The copy has 12 boards and 96 readings.')).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Open the rescued copy' }).className).toContain('button-main');
    expect(document.body.textContent).not.toContain('damaged');
    await user.click(screen.getByRole('button', { name: 'Open the rescued copy' }));
    expect(machine.inputsOf('yard.openRescued')).toEqual([{}]);
    expect(await screen.findByRole('navigation', { name: 'Main' })).toBeTruthy();
  });

  const lost = { file, what: 'file', how: 'overwritten', rescuedFile: `${file}.rescued`, unsaved: 'no' };
  test.each([
    [message('refusal.yard-moved', { ...lost, state: 'spoiled' }), 'Something outside Pintally changed'],
    [message('refusal.yard-moved', { ...lost, what: 'changes', state: 'replaced' }), 'Something outside'],
    [message('refusal.yard-moved', { ...lost, how: 'replaced', state: 'replaced' }), 'was replaced'],
    [message('refusal.yard-cut-not-rescued', lost), 'Do not close Pintally'],
    [message('refusal.yard-not-rescued', lost), 'Do not close Pintally'],
  ])('and is not gone (%o) is not called gone', async (problem, title) => {
    await open(aYard({ problem, rescuedFile: lost.rescuedFile }));
    const heading = screen.getByRole('heading', { level: 1 });
    expect(heading.textContent).toContain(title);
    expect(document.body.textContent).not.toMatch(/ gone|-wal/);
  });

  test('and cannot be moved aside offers no such button', async () => {
    await open({ ...damaged, canStartAfresh: false });
    expect(screen.queryByRole('button', { name: /Move this file aside/ })).toBeNull();
  });
});

describe('notices', () => {
  test('a problem stays until it is dismissed; shown again it is still one', async () => {
    const { user } = await open();
    act(() => {
      tellProblem(new Refusal(message('refusal.board-code-taken', { boardCode: 'OAK-08' })));
      tellDone('Six boards were added.');
      tellProblem(new Refusal(message('refusal.board-code-taken', { boardCode: 'OAK-08' })));
    });
    expect(screen.getAllByText(/There is already a board OAK-08\./)).toHaveLength(1);
    expect(screen.getByRole('alert').textContent).toContain('There is already a board OAK-08.');
    await user.click(within(screen.getByRole('alert')).getByRole('button', { name: 'Dismiss' }));
    expect(screen.queryByRole('alert')).toBeNull();
    expect(screen.getByText('Six boards were added.')).toBeTruthy();
  });

  test('the two newest are shown, and how many more there are', async () => {
    const { user } = await open();
    act(() => {
      for (const count of ['One', 'Two', 'Three', 'Four']) tellDone(`${count} of them.`);
    });
    expect(screen.getAllByText(/of them\.$/).map(({ textContent }) => textContent)).toEqual([
      'Three of them.',
      'Four of them.',
    ]);
    expect(screen.getByText('And 2 more')).toBeTruthy();
    await user.click(screen.getAllByRole('button', { name: 'Dismiss' })[0]!);
    expect(screen.getByText('Two of them.')).toBeTruthy();
    expect(screen.getByText('And 1 more')).toBeTruthy();
  });

  test('what was done or refused goes with its page, and a fault does not', async () => {
    await open();
    act(() => {
      tellProblem(new Refusal(message('refusal.board-code-taken', { boardCode: 'OAK-08' })));
      tellProblem(new Error('a fault'));
      tellDone('Six boards were added.');
    });
    act(() => go({ name: 'places' }));
    await waitFor(() => expect(screen.queryByText('Six boards were added.')).toBeNull());
    expect(screen.queryByText(/There is already a board OAK-08\./)).toBeNull();
    expect(useNotices.getState().notices.map(({ kind }) => kind)).toEqual(['problem']);
    // Told after going, it is of the new page.
    act(() => {
      go({ name: 'air' });
      tellDone('Six boards were moved.');
    });
    await waitFor(() => expect(useNavigation.getState().route.name).toBe('air'));
    expect(screen.getByText('Six boards were moved.')).toBeTruthy();
  });

  test('of one yard are gone once another is shown', async () => {
    await open(aYard({ kind: 'demo', uuid: 'demo' }), { 'yard.openOwn': () => aYard() });
    act(() => {
      tellProblem(new Refusal(message('refusal.meter-used', { meterName: 'Long-pin meter' })));
      tellDone('Six boards were added.');
    });
    expect(screen.getByRole('alert').textContent).toContain('Long-pin meter was not deleted');
    await act(openOwnYard);
    expect(screen.queryByText(/Long-pin meter/)).toBeNull();
    expect(screen.queryByText('Six boards were added.')).toBeNull();
  });

  test('a fault of ours shows no details, which go to the fault log', async () => {
    await open();
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const fault = new TypeError('x is undefined');
    act(() => tellProblem(fault));
    expect(screen.getByRole('alert').textContent).toContain('Something went wrong. Saved readings are safe.');
    expect(screen.getByRole('alert').textContent).not.toContain('undefined');
    expect(log).toHaveBeenCalledWith(fault);
    log.mockRestore();
  });
});
