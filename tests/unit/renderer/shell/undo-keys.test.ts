// @vitest-environment jsdom
import { waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { bridge, installBridge, wireBridge } from '../../../../renderer/data/bridge.ts';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { followUndoKeys } from '../../../../renderer/stores/undoing.ts';
import type { Answer } from '../../../../shared-core/contract/answer.ts';
import { type Message, message } from '../../../../shared-core/words/message.ts';
import { forgetEverything } from './machine.ts';

/** What was asked of the machine, each answered when the test says so. */
interface Asked {
  what: string;
  act: string;
  answer: () => void;
  refuse: (problem: Message) => void;
}
let asked: Asked[];
let unfollow: () => void;

beforeEach(() => {
  forgetEverything();
  asked = [];
  const request = (name: string, input: unknown, { act }: { act: string | null }) =>
    new Promise<Answer>((resolve) => {
      const { act: of, name: named } = input as { act?: string; name?: string };
      const output = { id: of, line: `What ${name} did` };
      asked.push({
        what: named ?? name,
        act: of ?? String(act),
        answer: () => resolve({ ok: true, output } as Answer),
        refuse: (problem) => resolve({ ok: false, problem } as Answer),
      });
    });
  installBridge(wireBridge({ request, on: () => () => undefined } as never, () => undefined));
  unfollow = followUndoKeys();
});
afterEach(() => unfollow());

function press(key: string, held: KeyboardEventInit = {}, agoMs = 0): void {
  const event = new KeyboardEvent('keydown', { key, ctrlKey: true, bubbles: true, ...held });
  Object.defineProperty(event, 'timeStamp', { value: performance.now() - agoMs });
  document.body.dispatchEvent(event);
}

/** A place is made; its answer is still to come. */
const make = (name: string) =>
  void bridge().command('places.add', { name, kind: 'shed', region: null, humidityPct: null } as never);

async function answerNext(what: string): Promise<Asked> {
  await waitFor(() => expect(asked[0]?.what).toBe(what));
  const next = asked.shift()!;
  next.answer();
  return next;
}

test('pressed while a change is being saved, Ctrl+Z undoes that change', async () => {
  make('Barn');
  const barn = await answerNext('Barn');
  make('Shop');
  press('z');
  const shop = await answerNext('Shop');
  expect(await answerNext('acts.undo')).toMatchObject({ act: shop.act });
  expect(shop.act).not.toBe(barn.act);
});

test('pressed faster than they are followed, each of the keys takes its turn', async () => {
  make('Barn');
  const barn = await answerNext('Barn');
  make('Shop');
  const shop = await answerNext('Shop');
  press('z');
  press('z');
  press('Z', { shiftKey: true });
  expect(await answerNext('acts.undo')).toMatchObject({ act: shop.act });
  expect(await answerNext('acts.undo')).toMatchObject({ act: barn.act });
  expect(await answerNext('acts.redo')).toMatchObject({ act: barn.act });
});

test('what another window undid first is left behind: the next press undoes the act before it', async () => {
  make('Barn');
  const barn = await answerNext('Barn');
  make('Shop');
  await answerNext('Shop');
  press('z');
  await waitFor(() => expect(asked).toHaveLength(1));
  asked.shift()!.refuse(message('refusal.undone-already'));
  press('z');
  expect(await answerNext('acts.undo')).toMatchObject({ act: barn.act });
});

test('a dialog that is closing is not in the way, one that stays open is', async () => {
  const dialog = document.body.appendChild(document.createElement('section'));
  dialog.setAttribute('role', 'dialog');
  make('Barn');
  await answerNext('Barn');
  press('z');
  dialog.remove();
  await answerNext('acts.undo');
  document.body.append(dialog);
  press('Z', { shiftKey: true });
  await new Promise((resolve) => setTimeout(resolve, 500));
  dialog.remove();
  expect(asked).toEqual([]);
});

test('a key held down goes back no further than is followed', async () => {
  make('Barn');
  await answerNext('Barn');
  make('Shop');
  await answerNext('Shop');
  press('z');
  press('z', { repeat: true });
  press('z', { repeat: true });
  await answerNext('acts.undo');
  await waitFor(() => expect(useNotices.getState().notices).toHaveLength(1));
  expect(asked).toEqual([]);
});

test('a key that waited for long undoes nothing, and says so', async () => {
  make('Barn');
  press('z', {}, 6000);
  await answerNext('Barn');
  await waitFor(() =>
    expect(useNotices.getState().notices).toMatchObject([
      { sentence: expect.stringContaining('nothing was undone or redone. Press the keys again.') },
    ]),
  );
  expect(asked).toEqual([]);
});
