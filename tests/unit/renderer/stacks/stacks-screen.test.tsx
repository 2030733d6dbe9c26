// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StacksScreen } from '../../../../renderer/features/stacks/StacksScreen.tsx';
import type { PlaceRow, StackRow } from '../../../../shared-core/contract/yard.ts';
import { builtInEndUses } from '../../../../shared-core/wood/species/built-in.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack } from './a-yard.ts';

const aPlace: PlaceRow = {
  id: 5,
  version: 1,
  name: 'Pole shed',
  kind: 'open-shed',
  air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 })),
  airSource: null,
  emcNowPct: 13.1,
  driestEmcPct: 13.1,
  driestMonth: 1,
};

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
  test('each shows its place, its use, the calls on its boards, and when it was probed', async () => {
    open([aStack()]);
    const card = within(await screen.findByRole('article', { name: 'Ridge oak' }));
    expect(card.getByText('Pole shed · Furniture')).toBeTruthy();
    const figures = card.getAllByRole('listitem').map((item) => item.textContent);
    expect(figures).toEqual(['1 ready', '3 to keep drying', '2 not probed yet']);
    expect(card.getByText('6 boards · last probed 3 days ago')).toBeTruthy();
    expect(screen.getByText('6 boards in 1 stack. 1 ready to use.')).toBeTruthy();
    await expectNoBarriers();
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
  test('shows in three steps what happens here and offers the demo yard', async () => {
    const { machine, user } = open([], {
      'yard.openDemo': () => ({
        uuid: '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10',
        kind: 'demo',
        file: '/demo.sqlite',
        problem: null,
        canStartAfresh: false,
        boards: 19,
        version: '0.1.0',
      }),
    });
    const steps = within(await screen.findByRole('region', { name: 'Get started' }));
    expect(steps.getAllByRole('listitem')).toHaveLength(3);
    await expectNoBarriers();
    await user.click(steps.getByRole('button', { name: 'Open the demo yard' }));
    expect(machine.inputsOf('yard.openDemo')).toHaveLength(1);
  });

  test('the first stack is added and gone to', async () => {
    const { machine, user } = open([], { 'stacks.add': (stack) => ({ ...aStack({ id: 3 }), ...stack }) });
    await user.click(await screen.findByRole('button', { name: 'Add your first stack' }));
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

  test('where there is no place yet, it asks for that first and then goes on', async () => {
    const { user } = open([], { 'places.list': () => [], 'places.add': () => aPlace });
    await user.click(await screen.findByRole('button', { name: 'Add your first stack' }));
    const place = within(await screen.findByRole('dialog', { name: 'Add a place' }));
    expect(place.getByText(/First, where is the stack\?/)).toBeTruthy();
    await user.click(place.getByRole('button', { name: 'Cancel' }));
    await user.type(screen.getByLabelText('Name'), 'Ridge oak');
    await user.click(screen.getByRole('button', { name: 'Add stack' }));
    expect(screen.getByText('Add the place where it is.')).toBeTruthy();
  });
});
