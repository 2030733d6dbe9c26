// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { useQuery } from '../../../../renderer/data/useQuery.ts';
import { setLink } from '../../../../renderer/stores/link.ts';
import { Await } from '../../../../renderer/ui/Await.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { fileInUse, forgetEverything, playMachine } from './machine.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

function Uses() {
  const uses = useQuery('endUses.list', {});
  return <Await of={[uses]}>{(listed) => <p>{listed.map(({ name }) => name).join()}</p>}</Await>;
}
const endUses = (name: string) => [
  {
    id: 'siding',
    version: 1,
    builtIn: true,
    name,
    minPct: 9,
    maxPct: 14,
    tolerancePoints: 3,
    minIsAdvice: true,
    maxShellCorePct: 3,
    cautions: [],
    note: '',
    source: '',
  },
];

test('a list that two parts show is asked for once, and shown at once by a third', async () => {
  const machine = playMachine({ 'endUses.list': () => endUses('Siding') });
  const { rerender } = render([<Uses key="1" />, <Uses key="2" />]);
  expect(await screen.findAllByText('Siding')).toHaveLength(2);
  rerender([<Uses key="1" />, <Uses key="2" />, <Uses key="3" />]);
  expect(screen.getAllByText('Siding')).toHaveLength(3);
  expect(machine.inputsOf('endUses.list')).toHaveLength(1);
});

test('a change of what is shown asks again, another change does not', async () => {
  const machine = playMachine({ 'endUses.list': () => endUses('Siding') });
  render(<Uses />);
  await screen.findByText('Siding');
  machine.answers['endUses.list'] = () => endUses('Flooring');
  machine.tell('changed', { yard: null, topics: ['places'] });
  machine.tell('changed', { yard: null, topics: ['endUses'] });
  await screen.findByText('Flooring');
  expect(machine.inputsOf('endUses.list')).toHaveLength(2);
});

test('changes while an answer is on its way are followed up once, when it is there', async () => {
  const answers: ((name: string) => void)[] = [];
  const machine = playMachine({
    'endUses.list': () => new Promise((resolve) => answers.push((name) => resolve(endUses(name)))),
  });
  render(<Uses />);
  await vi.waitFor(() => expect(answers).toHaveLength(1));
  for (let change = 0; change < 5; change++) machine.tell('changed', { yard: null, topics: ['endUses'] });
  answers[0]?.('Siding');
  await screen.findByText('Siding');
  await vi.waitFor(() => expect(answers).toHaveLength(2));
  answers[1]?.('Flooring');
  await screen.findByText('Flooring');
  expect(machine.inputsOf('endUses.list')).toHaveLength(2);
});

test('where a newer asking fails, the last answer stays and the reason is shown', async () => {
  const machine = playMachine({ 'endUses.list': () => endUses('Siding') });
  render(<Uses />);
  await screen.findByText('Siding');
  machine.answers['endUses.list'] = () => {
    throw fileInUse();
  };
  machine.tell('changed', { yard: null, topics: ['endUses'] });
  expect((await screen.findByRole('alert')).textContent).toContain('Another program is using the yard file');
  expect(screen.getByText('Siding')).toBeTruthy();
});

test('an answer that was lost with the link is no fault of the list, and is asked for again with it', async () => {
  const machine = playMachine({
    'endUses.list': () => {
      throw new Refusal(message('refusal.machine-stopped'));
    },
  });
  const { container } = render(<Uses />);
  await vi.waitFor(() => expect(machine.inputsOf('endUses.list')).toHaveLength(1));
  setLink('away');
  await vi.waitFor(() => expect(container.textContent).toContain('Loading'));
  expect(screen.queryByRole('alert')).toBeNull();
  machine.answers['endUses.list'] = () => endUses('Siding');
  setLink('open');
  expect(await screen.findByText('Siding')).toBeTruthy();
});
