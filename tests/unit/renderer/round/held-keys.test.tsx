// @vitest-environment jsdom
import { act, cleanup, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { screenAt } from '../../../../renderer/app/screens.tsx';
import { isHolding } from '../../../../renderer/stores/held-keys.ts';
import { followAddress, useNavigation } from '../../../../renderer/stores/navigation.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { RoundState } from '../../../../shared-core/contract/round.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { bringAllScreens } from '../shell/all-screens.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack } from '../stacks/a-yard.ts';
import { aBoard, aRound } from './a-round.ts';
import { byHand, scan } from './by-hand.ts';

// Common practice, no source: who has read the meter types at once, and looks up only when something is wrong.

const Shown = () => <main>{screenAt(useNavigation(({ route }) => route))}</main>;
const ROUND = '#/round/12';

function answerLater() {
  let [resolve, reject] = [(_: RoundState) => {}, (_: Refusal) => {}];
  const promise = new Promise<RoundState>((yes, no) => {
    [resolve, reject] = [yes, no];
  });
  return { promise, resolve, reject };
}

/** A machine that opens and starts rounds only when the test lets it. */
async function open(address: string) {
  const started = answerLater();
  const opened = answerLater();
  const machine = playMachine({
    'stacks.list': () => [aStack({ id: 3, boards: 2 })],
    'rounds.clock': () => ({ problem: null }),
    'rounds.start': () => started.promise,
    'rounds.open': () => opened.promise,
    'rounds.leave': () => ({}),
    'rounds.aim': () => ({}),
    'rounds.saveTyped': () => ({ roundId: 12, boardId: 101, stackId: 3 }),
  });
  location.hash = address;
  stop = followAddress();
  render(<Shown />);
  await act(async () => undefined);
  return {
    user: byHand(),
    start: (round = aRound()) => act(async () => started.resolve(round)),
    refuse: (error: Refusal) => act(async () => started.reject(error)),
    openNow: async (round = aRound()) => {
      await act(async () => opened.resolve(round));
      await screen.findByRole('region', { name: 'Round' });
      // The keys come one after another, and whatever is pressed next comes after them.
      await waitFor(() => expect(isHolding()).toBe(false));
      await act(async () => undefined);
    },
    saved: () => machine.inputsOf('rounds.saveTyped'),
  };
}
let stop: () => void = () => undefined;
const field = () => screen.getByLabelText<HTMLInputElement>('Reading on the meter, %');

bringAllScreens();
beforeEach(forgetEverything);
afterEach(() => {
  cleanup();
  stop();
});

test('a value typed while the round opens is saved whole', async () => {
  const { user, openNow, saved } = await open(ROUND);
  await user.keyboard('11.9{Enter}');
  await openNow();
  expect(saved()).toMatchObject([{ boardId: 101, spotIndex: 0, raw: 11.9 }]);
});

test('what is begun while the round opens is in its field, and goes on there', async () => {
  const { user, openNow, saved } = await open(ROUND);
  await user.keyboard('118{Backspace}.');
  await openNow();
  expect(field().value).toBe('11.');
  await user.keyboard('9{Enter}');
  expect(saved()).toMatchObject([{ raw: 11.9 }]);
});

test('two values typed while the round opens are saved at two spots', async () => {
  const { user, openNow, saved } = await open(ROUND);
  await user.keyboard('11.9{Enter}13.2{Enter}');
  await openNow();
  expect(saved()).toMatchObject([
    { spotIndex: 0, raw: 11.9 },
    { spotIndex: 1, raw: 13.2 },
  ]);
});

test('keys count from the press that starts the round, and none goes to the temperature', async () => {
  const { user, start, openNow, saved } = await open('#/round?stack=3');
  await user.keyboard('20{Enter}');
  await user.keyboard('11');
  expect(screen.getByLabelText<HTMLInputElement>(/^Wood temperature/).value).toBe('20');
  await start();
  await user.keyboard('.9{Enter}');
  await openNow();
  expect(saved()).toMatchObject([{ raw: 11.9 }]);
});

test('with a key of another kind among them none is used, and that is said', async () => {
  const { user, openNow, saved } = await open(ROUND);
  await user.keyboard('11.9{PageDown}12.4{Enter}');
  await openNow();
  expect(saved()).toEqual([]);
  expect(field().value).toBe('');
  expect(screen.getByRole('alert').textContent).toContain(
    'Keys pressed before the round was open were not used. Type the value again.',
  );
});

test('a label scanned while the round opens leads to its board, and is no value', async () => {
  const { openNow, saved } = await open(ROUND);
  await scan('1204');
  await openNow(aRound([aBoard(1), aBoard(2, { code: '1204' })]));
  expect(saved()).toEqual([]);
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Board 1204');
});

test('where the round is not started, the keys are the form’s again', async () => {
  const { user, refuse } = await open('#/round?stack=3');
  await user.keyboard('20{Enter}1');
  await refuse(new Refusal(message('refusal.machine-stopped')));
  await user.clear(screen.getByLabelText(/^Wood temperature/));
  await user.keyboard('25');
  expect(screen.getByLabelText<HTMLInputElement>(/^Wood temperature/).value).toBe('25');
});
