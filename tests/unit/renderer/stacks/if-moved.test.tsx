// @vitest-environment jsdom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { IfMoved } from '../../../../renderer/features/stacks/IfMoved.tsx';
import { ReadyCautions } from '../../../../renderer/ui/ReadyCautions.tsx';
import type { RequestOutput } from '../../../../shared-core/contract/requests.ts';
import { builtInEndUses } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';

type Places = RequestOutput<'stacks.ifMoved'>['places'];
const when = { likely: '2090-03-14', from: '2090-03-01', to: '2090-04-02' };
const place = (placeId: number, placeName: string, more: Partial<Places[number]> = {}): Places[number] => ({
  placeId,
  placeName,
  lowestEmcPct: 12,
  ready: null,
  isForecast: true,
  driestInterval: null,
  leaving: 0,
  dated: 0,
  last: null,
  isLikely: true,
  cautions: [],
  ...more,
});

function open(boards: number, places: Places, placeId: number | null): void {
  playMachine({ 'stacks.ifMoved': () => ({ boards, places }) });
  render(<IfMoved boards={{ id: 1 }} butNot={1} placeId={placeId} />);
}
const lines = async () => {
  const list = await screen.findByRole('region', { name: 'Ready, if moved today' });
  return within(list)
    .getAllByRole('listitem')
    .map((line) => line.textContent);
};

beforeEach(forgetEverything);
afterEach(cleanup);

test('the form of a move names when a board is ready in each place but its own', async () => {
  open(
    1,
    [
      place(1, 'Pole shed', { ready: { kind: 'too-damp', driestPct: 12.5 } }),
      place(2, 'Bench room', { ready: { kind: 'likely', when } }),
      place(3, 'Fence row', { ready: { kind: 'too-damp', driestPct: 12.5 } }),
      place(4, 'Loft', { isForecast: false }),
    ],
    null,
  );
  expect(await lines()).toEqual([
    expect.stringMatching(/^Bench room: Likely .*2090/),
    'Fence row: Unlikely: the air is too damp (lowest EMC 12.0%)',
  ]);
});

test('of a stack, how many of its boards are ready there, and when the last; likely only where no late end is open', async () => {
  open(
    6,
    [
      place(2, 'Bench room', { dated: 5, last: when }),
      place(3, 'Fence row'),
      place(6, 'Lean-to', { driestInterval: { minPct: 8.6, maxPct: 9.2 } }),
      place(7, 'Yard', { leaving: 4 }),
      place(4, 'Shop', { dated: 1, isLikely: false }),
      place(5, 'Loft', { dated: 6, last: { ...when, to: null }, isLikely: false }),
    ],
    null,
  );
  expect(await lines()).toEqual([
    'Bench room: 5 of 6 likely ready, the last Mar 14, 2090',
    'Fence row: none likely within two years',
    'Lean-to: none likely within two years; driest about 8.6–\u20609.2% MC',
    'Yard: 4 of 6 would take up too much moisture',
    'Shop: 1 of 6 ready any day now',
    'Loft: 6 of 6 ready by about Mar 2090, maybe much later',
  ]);
});

test('only the place chosen says what it could do to the wood', async () => {
  const cautions = [message('caution.insects')];
  open(
    1,
    [place(2, 'Bench room', { cautions, ready: { kind: 'any-day' } }), place(3, 'Loft', { cautions })],
    2,
  );
  await lines();
  const [caution, ...others] = screen.getAllByText(/Air-drying does not kill insects/);
  expect(others).toEqual([]);
  // Under the choice itself: a small window shows no more.
  const dates = screen.getByRole('region', { name: 'Ready, if moved today' });
  expect(caution!.compareDocumentPosition(dates) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
});

test('beside Ready, framing and a copy of it have their caution, and furniture none', async () => {
  const copy = builtInEndUses.find(({ id }) => id === 'framing')!;
  const all = [...builtInEndUses, { ...copy, id: 'barn-posts', name: 'Barn posts' }];
  playMachine({ 'endUses.list': () => all.map((each) => ({ ...each, version: 1, builtIn: true })) });
  for (const useId of ['framing', 'barn-posts']) {
    render(<ReadyCautions useId={useId} />);
    expect(await screen.findByText(/Dry does not mean strong/)).toBeTruthy();
    cleanup();
  }
  const { container } = render(<ReadyCautions useId="furniture" />);
  await act(async () => undefined);
  expect(container.textContent).toBe('');
});
