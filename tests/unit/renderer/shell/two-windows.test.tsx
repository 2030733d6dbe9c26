// @vitest-environment jsdom

import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { App } from '../../../../renderer/app/App.tsx';
import { setLink } from '../../../../renderer/stores/link.ts';
import { Conflict, Refusal } from '../../../../shared-core/contract/answer.ts';
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';
import { builtInEndUses } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import '../ui/drawing-room.ts';
import { aStack } from '../stacks/a-yard.ts';
import { aMeter } from './a-meter.ts';
import { aYard } from './a-yard-file.ts';
import { bringAllScreens } from './all-screens.ts';
import { expectNoBarriers, forgetEverything, playMachine } from './machine.ts';

const own = aYard({ file: '/own.sqlite', boards: 6 });
const demo: YardInfo = { ...own, uuid: '0a3f7f1b-9d53-4c3b-8f55-0b5c1d4e8f10', kind: 'demo' };

bringAllScreens();
beforeEach(forgetEverything);
afterEach(cleanup);

async function open(hash: string, answers: Parameters<typeof playMachine>[0] = {}) {
  location.hash = hash;
  let info = own;
  const machine = playMachine({
    'yard.info': () => info,
    'meter.state': () => aMeter(),
    'settings.get': () => usualSettings,
    'stacks.list': () => [aStack({ name: info === own ? 'Ridge oak' : 'Demo maple' })],
    'places.list': () => [],
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    ...answers,
  });
  await act(async () => {
    render(<App />);
  });
  return {
    machine,
    user: userEvent.setup(),
    openElsewhere: (opened: YardInfo) =>
      act(async () => {
        info = opened;
        machine.tell('changed', { yard: opened.uuid, topics: ['yard'] });
      }),
  };
}

test('when another window opens another yard, the screen stays, and a banner leads there', async () => {
  const { machine, user, openElsewhere } = await open('#/stacks');
  expect(await screen.findByRole('article', { name: 'Ridge oak' })).toBeTruthy();
  const asked = machine.inputsOf('stacks.list').length;
  await openElsewhere(demo);
  expect(
    screen.getByText('The demo yard is open now. This window still shows what was open before.'),
  ).toBeTruthy();
  expect(screen.getByRole('article', { name: 'Ridge oak' })).toBeTruthy();
  expect(machine.inputsOf('stacks.list')).toHaveLength(asked);
  await expectNoBarriers();

  await user.click(screen.getByRole('button', { name: 'Go to the demo yard' }));
  expect(await screen.findByRole('article', { name: 'Demo maple' })).toBeTruthy();
  expect(
    screen.queryByText('The demo yard is open now. This window still shows what was open before.'),
  ).toBeNull();
});

test('a window shows one banner when another yard was opened, even after a refused request of its own', async () => {
  const { machine, openElsewhere } = await open('#/stacks');
  machine.answers['settings.get'] = () => {
    throw new Refusal(message('refusal.other-yard', { kind: 'demo' }));
  };
  await openElsewhere(demo);
  act(() => setLink('away'));
  await act(async () => setLink('open'));
  expect(machine.inputsOf('settings.get').length).toBeGreaterThan(1);
  const alerts = screen.getAllByRole('alert').filter((alert) => !alert.closest('main'));
  expect(alerts.map((alert) => alert.textContent)).toEqual([
    expect.stringContaining('The demo yard is open now.'),
  ]);
});

test('when the other window comes back to this yard, the banner goes', async () => {
  const { openElsewhere } = await open('#/stacks');
  await openElsewhere(demo);
  await openElsewhere(own);
  expect(
    screen.queryByText('The demo yard is open now. This window still shows what was open before.'),
  ).toBeNull();
  expect(screen.getByRole('article', { name: 'Ridge oak' })).toBeTruthy();
});

async function editNote() {
  const current = { ...aStack(), version: 2, note: 'Stickers every 40 cm' };
  let conflicts = true;
  const { machine, user } = await open('#/stacks/1', {
    'stacks.get': () => aStack(),
    'stacks.edit': () => {
      if (conflicts) throw new Conflict(current);
      return current;
    },
    'boards.list': () => ({ total: 0, rows: [] }),
    'stacks.plan': () => null,
    'stacks.volume': () => new Promise(() => undefined),
  });
  await user.click(await screen.findByRole('button', { name: 'More' }));
  await user.click(screen.getByRole('menuitem', { name: 'Edit stack' }));
  const dialog = within(await screen.findByRole('dialog'));
  await user.type(dialog.getByLabelText('Note'), 'Weighted on top');
  await user.click(dialog.getByRole('button', { name: 'Save' }));
  conflicts = false;
  return { machine, user, dialog };
}

test('an edit that another window came before shows at its field what was saved; mine is saved over it', async () => {
  const { machine, user, dialog } = await editNote();
  expect((await dialog.findByRole('alert')).textContent).toContain(
    'edited in another window in the meantime',
  );
  const note = dialog.getByRole('textbox', {
    name: 'Note',
    description: 'Saved meanwhile: Stickers every 40 cm',
  });
  expect(note).toHaveProperty('value', 'Weighted on top');
  expect(document.activeElement).toBe(note);
  expect(dialog.getAllByText(/^Saved meanwhile/)).toHaveLength(1);
  await expectNoBarriers();
  await user.click(dialog.getByRole('button', { name: 'Use what I typed' }));
  expect(machine.inputsOf('stacks.edit')).toEqual([
    { id: 1, basedOn: 1, changed: { note: 'Weighted on top' } },
    { id: 1, basedOn: 2, changed: { note: 'Weighted on top' } },
  ]);
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('an edit that another window came before can take what that window saved, and go on from it', async () => {
  const { machine, user, dialog } = await editNote();
  await user.click(await dialog.findByRole('button', { name: 'Use what was saved' }));
  expect(dialog.queryByRole('alert')).toBeNull();
  expect(dialog.getByLabelText('Note')).toHaveProperty('value', 'Stickers every 40 cm');
  await user.type(dialog.getByLabelText('Note'), '; weighted');
  await user.click(dialog.getByRole('button', { name: 'Save' }));
  expect(machine.inputsOf('stacks.edit').at(-1)).toEqual({
    id: 1,
    basedOn: 2,
    changed: { note: 'Stickers every 40 cm; weighted' },
  });
});
