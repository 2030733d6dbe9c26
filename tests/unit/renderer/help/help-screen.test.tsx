// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import ids from '../../../../renderer/help/guide/chapters.json' with { type: 'json' };
import { HelpScreen } from '../../../../renderer/help/HelpScreen.tsx';
import { showLanguage } from '../../../../renderer/stores/language.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

function open(chapter: string | null = null, heading: string | null = null) {
  playMachine({});
  render(
    <main>
      <HelpScreen chapter={chapter} heading={heading} />
    </main>,
  );
  return userEvent.setup();
}
const hrefs = (links: HTMLElement[]) => links.map((link) => link.getAttribute('href'));

beforeEach(() => {
  forgetEverything();
  Element.prototype.scrollIntoView = vi.fn();
});
afterEach(cleanup);

describe('Help', () => {
  test('lists the chapters in the order in which they are read, each with its first sentence', async () => {
    open();
    const links = within(screen.getByRole('list')).getAllByRole('link');
    expect(hrefs(links)).toEqual([...ids.map((id) => `#/help/${id}`), '#/methods', '#/licenses']);
    expect(screen.getByText('Where and how deep the pins go decides what a reading is worth.')).toBeTruthy();
    await expectNoBarriers();
  });

  test('finds parts of chapters by words, and says where nothing is found', async () => {
    const user = open();
    await user.type(screen.getByLabelText('Find in the guide'), 'chimney');
    const [link] = screen.getAllByRole('link');
    expect(link?.textContent).toBe('Take care: Firewood');
    expect(link?.getAttribute('href')).toBe('#/help/cautions?at=firewood');
    await user.type(screen.getByLabelText('Find in the guide'), ' zzz');
    expect(screen.getByRole('status').textContent).toBe('Nothing in the guide has “chimney zzz”.');
    expect(screen.queryAllByRole('link')).toEqual([]);
  });

  test('shows a chapter with its caution, and leads to the one before and the one after', async () => {
    open('pins');
    expect(screen.getByRole('heading', { level: 1, name: 'How to push the pins' })).toBeTruthy();
    expect(screen.getByText(/Pins are sharp and break under side load/)).toBeTruthy();
    const around = within(screen.getByRole('navigation', { name: 'Other chapters' })).getAllByRole('link');
    const at = ids.indexOf('pins');
    expect(hrefs(around)).toEqual([`#/help/${ids[at - 1]}`, `#/help/${ids[at + 1]}`]);
    await expectNoBarriers();
  });

  test('opens at the heading that a link leads to, which then has the focus', () => {
    open('pins', 'how-deep');
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'How deep' }));
  });

  test('says that a chapter does not exist, and lists those that do', () => {
    open('zebras');
    expect(screen.getByText('The guide has no such chapter. Choose one below.')).toBeTruthy();
    expect(screen.getAllByRole('link').length).toBeGreaterThan(ids.length);
  });

  test('prints a chapter', async () => {
    window.print = vi.fn();
    const user = open('calls');
    await user.click(screen.getByRole('button', { name: 'Print' }));
    expect(window.print).toHaveBeenCalledOnce();
  });
});

describe('Help in German', () => {
  beforeEach(() => showLanguage('de'));
  afterEach(() => showLanguage('en'));

  test('lists, finds and shows the German chapters, in the language of the page', async () => {
    const user = open();
    expect(screen.getByRole('link', { name: 'So werden die Spitzen eingestochen' })).toBeTruthy();
    await user.type(screen.getByLabelText('In der Anleitung suchen'), 'schornstein');
    const [link] = screen.getAllByRole('link');
    expect(link?.textContent).toBe('Vorsicht: Brennholz');
    expect(link?.getAttribute('href')).toBe('#/help/cautions?at=brennholz');
    cleanup();
    open('pins', 'wie-tief');
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'Wie tief' }));
    expect(screen.getByRole('link', { name: 'Vorsicht' }).closest('[lang]')).toBe(document.documentElement);
    expect(screen.getByRole('article').closest('[lang]')?.getAttribute('lang')).toBe('de');
    await expectNoBarriers();
  });

  test('stays at the chapter when the language changes', async () => {
    open('calls');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('So werden die Urteile gelesen');
    await act(() => showLanguage('en'));
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('How to read the calls');
  });
});
