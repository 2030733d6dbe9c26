import '../ui/drawing-room.ts';
import axe from 'axe-core';
import { expect } from 'vitest';
import type { StoreApi } from 'zustand';
import { client, followChanges } from '../../../../renderer/data/asking.ts';
import { installBridge, nameYard } from '../../../../renderer/data/bridge.ts';
import { dropHeldKeys } from '../../../../renderer/stores/held-keys.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { type EventData, type EventName, events } from '../../../../shared-core/contract/events.ts';
import {
  type RequestInput,
  type RequestName,
  type RequestOutput,
  requests,
} from '../../../../shared-core/contract/requests.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** What a machine answers whose file another program holds. */
export const fileInUse = (): Refusal =>
  new Refusal(
    message('refusal.file-in-use', {
      undone: message('refusal.undone'),
      again: message('refusal.try-again'),
    }),
  );

type Answers = {
  [N in RequestName]?: (input: RequestInput<N>) => RequestOutput<N> | Promise<RequestOutput<N>>;
};

/** Every store of the window. */
const stores = Object.values(
  import.meta.glob<Record<string, unknown>>('../../../../renderer/stores/*.ts', { eager: true }),
)
  .flatMap((module) => Object.values(module))
  .filter((each): each is StoreApi<object> => typeof each === 'function' && 'getInitialState' in each);

let stopFollowing = (): void => undefined;

/**
 * The machine's end of the contract, played by the test: it lists what is asked of it and gives the test's answers.
 * Inputs are checked against the contract, so the window cannot ask for what the machine would refuse to read.
 */
export function playMachine(given: Answers) {
  const answers: Answers = {
    // The frame asks this on every screen.
    'recovery.notes': () => [],
    'recovery.report': () => null,
    // Every round asks this; where it matters, the test answers.
    'meters.list': () => new Promise(() => undefined),
    'meterChecks.list': () => [],
    'meterChecks.ofRound': () => [],
    // Boards, stacks and rounds show them.
    'notes.get': () => ({ note: '' }),
    'pictures.list': () => [],
    'reservations.ofBoard': () => null,
    'plannedMoves.of': () => [],
    // Under the lists of stacks and of places, and beside that of meters.
    'stacks.closed': () => [],
    'places.closed': () => [],
    'meters.closed': () => [],
    // On every screen of a round.
    'sensors.probe': () => null,
    ...given,
  };
  const asked: { name: RequestName; input: unknown }[] = [];
  const listeners = new Map<EventName, Set<(data: never) => void>>();
  async function request(name: RequestName, input: unknown): Promise<never> {
    requests[name].input.parse(input);
    asked.push({ name, input });
    const answer = answers[name] as ((input: unknown) => unknown) | undefined;
    if (!answer) throw new Error(`The test has no answer for ${name}.`);
    return (await answer(input)) as never;
  }
  installBridge({
    query: request,
    command: request,
    on(name, listener) {
      const set = listeners.get(name) ?? new Set();
      listeners.set(name, set.add(listener));
      return () => set.delete(listener);
    },
  });
  stopFollowing();
  stopFollowing = followChanges();
  return {
    asked,
    /** What was asked under one name, oldest first. */
    inputsOf: (name: RequestName): unknown[] =>
      asked.filter((each) => each.name === name).map((each) => each.input),
    tell<N extends EventName>(name: N, data: EventData<N>): void {
      events[name].parse(data);
      for (const listener of listeners.get(name) ?? []) (listener as (data: unknown) => void)(data);
    },
    answers,
  };
}

/** Every store as it is when the window is first opened. */
export function forgetEverything(): void {
  stopFollowing();
  client.clear();
  dropHeldKeys();
  nameYard(null);
  for (const store of stores) store.setState(store.getInitialState(), true);
  localStorage.clear();
  sessionStorage.clear();
  location.hash = '';
}

/** Whether what is on screen can be used by everyone, as far as axe-core can tell without colors and sizes. */
export async function expectNoBarriers(): Promise<void> {
  // What needs real drawing (contrast) is checked in the browser tests.
  const { violations } = await axe.run(document.body, { rules: { 'color-contrast': { enabled: false } } });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual(
    [],
  );
}
