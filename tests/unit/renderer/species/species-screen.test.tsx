// @vitest-environment jsdom
import { usualSettings } from '../../../../shared-core/contract/settings.ts';
import '../ui/drawing-room.ts';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SpeciesScreen } from '../../../../renderer/features/species/SpeciesScreen.tsx';
import { useMeter } from '../../../../renderer/stores/meter.ts';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { MeterOfYard } from '../../../../shared-core/contract/meter.ts';
import type { OwnFit } from '../../../../shared-core/contract/oven-checks.ts';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { clearField, shownText, typeDay, typeTime } from '../form/type-day.ts';
import { aLiveMeter, aLiveValue } from '../shell/a-meter.ts';
import { expectNoBarriers, fileInUse, forgetEverything, playMachine } from '../shell/machine.ts';
import { aCheck, aFit } from './a-species.ts';

function open(id: string, fits: OwnFit[] = [], more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
    'ovenChecks.ofSpecies': () => fits,
    'ovenChecks.add': () => fits,
    'ovenChecks.weigh': () => fits,
    'ovenChecks.exclude': () => fits,
    'ovenChecks.include': () => fits,
    'ovenChecks.useFit': () => fits,
    'species.add': (species) => ({ ...species, version: 1, builtIn: false }),
    ...more,
  });
  render(
    <main>
      <SpeciesScreen id={id} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

const region = async (name: string) => within(await screen.findByRole('region', { name }));
const checks = () => region('Your oven-dry checks');

beforeEach(forgetEverything);
afterEach(cleanup);

describe('A species', () => {
  test('shows its figures, and leads to where they come from', async () => {
    open('walnut-black');
    const known = await region('About this species');
    // Wood Handbook (FPL-GTR-282), Table 4-3: black walnut 5.5, 7.8, 12.8 %.
    for (const figure of ['5.5%', '7.8%', '12.8%']) expect(known.getByText(figure)).toBeTruthy();
    expect(known.getByText(/by the curve for Black walnut/)).toBeTruthy();
    // Where they are from, and what is from memory, is on the methods page.
    expect(known.getByRole('link', { name: 'Sources' }).getAttribute('href')).toBe('#/methods?part=species');
    expect(known.queryByText(/from memory|Handbook/)).toBeNull();
    await expectNoBarriers();
  });

  test('shows which figures are missing, and what that prevents', async () => {
    // No resistance curve is published for red alder in our sources.
    open('alder-red');
    const known = await region('About this species');
    const missing = within(known.getByRole('list', { name: 'Missing figures' })).getAllByRole('listitem');
    expect(missing.map((item) => item.textContent)).toEqual([
      expect.stringMatching(/No correction for this species\..*oven-dry checks fix this/),
    ]);
  });

  test('a similar one is added with its figures, and a source that says so', async () => {
    const { machine, user } = open('walnut-black');
    await user.click(await screen.findByRole('button', { name: 'Add a similar species' }));
    await user.type(screen.getByLabelText('Name'), 'Yard walnut');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(machine.inputsOf('species.add')).toEqual([
      expect.objectContaining({
        id: 'yard-walnut',
        radialPct: 5.5,
        note: '',
        source: 'Figures of Black walnut, where nothing else is given.',
      }),
    ]);
  });

  test('figures outside their bounds, and half of a pair, are named at their fields, and nothing is saved', async () => {
    const { machine, user } = open('walnut-black');
    await user.click(await screen.findByRole('button', { name: 'Add a similar species' }));
    await user.type(screen.getByLabelText('Name'), 'Yard walnut');
    const gravity = screen.getByLabelText('Basic specific gravity');
    await user.clear(gravity);
    await user.type(gravity, '14');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(await screen.findByText('At most 1.4.')).toBeTruthy();

    await user.clear(gravity);
    await user.type(screen.getByLabelText('Linear coefficient a'), '1');
    await user.click(screen.getByRole('button', { name: 'Add' }));
    expect(await screen.findByText('Fill in both coefficients, or leave both blank.')).toBeTruthy();
    expect(machine.inputsOf('species.add')).toEqual([]);
  });

  test('that is not in the yard gets a page that says so', async () => {
    open('no-such-wood');
    expect(await screen.findByText('This species is not in this yard.')).toBeTruthy();
    await expectNoBarriers();
  });
});

describe('Oven-dry checks', () => {
  test('none yet: the screen says how to make one, cautions about the oven, and offers the first', async () => {
    open('walnut-black');
    const section = await checks();
    expect(section.getByText(/Dry it at 101°C to 105°C\./)).toBeTruthy();
    expect(section.getByText(/gloves or tongs/)).toBeTruthy();
    expect(await section.findByRole('button', { name: 'Add the first check' })).toBeTruthy();
  });

  test('in inch mode the oven is in °F, and the weights are in the grams of the balance', async () => {
    useSettings.setState({
      settings: { ...usualSettings, units: 'imperial' },
    });
    open('walnut-black', [aFit({ fit: null, status: message('own-fit.too-few-dry', { dry: 1, least: 3 }) })]);
    const section = await checks();
    expect(section.getByText(/Dry it at 214°F to 221°F\./)).toBeTruthy();
    expect(section.getByText(/Never go above 221°F\./)).toBeTruthy();
    expect(await section.findByText(/^Read 11% and 11.2% on May 3(, 2026)?\. Wood at 68°F\.$/)).toBeTruthy();
    expect(section.getAllByText('112.40 g')).toHaveLength(5);
    expect(document.body.textContent).not.toContain('°C');
  });

  test('a piece that was read and weighed is saved, with numbers as they were typed', async () => {
    const { machine, user } = open('walnut-black');
    await user.click(await (await checks()).findByRole('button', { name: 'Add the first check' }));
    const dialog = within(screen.getByRole('dialog'));
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(dialog.getByText('Type at least one reading.')).toBeTruthy();
    expect(dialog.getByText(/^Type the wood temperature/)).toBeTruthy();
    const readings = dialog.getByLabelText('Readings, in %');
    await user.type(readings, '12,4 twelve');
    expect(dialog.getByText('Type numbers separated by spaces.')).toBeTruthy();
    expect(machine.inputsOf('ovenChecks.add')).toEqual([]);

    await user.clear(readings);
    await user.type(readings, '12,4 12.6');
    await user.type(dialog.getByLabelText('Wood temperature'), '18');
    await user.type(dialog.getByLabelText('Wet weight'), '112.4');
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('ovenChecks.add')).toEqual([
      {
        speciesId: 'walnut-black',
        meterId: null,
        piece: '1',
        readings: [12.4, 12.6],
        unit: 'pct',
        woodTempC: 18,
        wetGrams: 112.4,
        balanceGrams: 0.1,
        rule: 'EN 13183-1',
        note: '',
      },
    ]);
  });

  test('with a meter connected, its value is taken into the row of readings', async () => {
    const state = aLiveMeter();
    useMeter.setState({ state, live: aLiveValue({ raw: 13.7 }) });
    const { machine, user } = open('walnut-black');
    await user.click(await (await checks()).findByRole('button', { name: 'Add a check' }));
    const dialog = within(screen.getByRole('dialog'));
    await user.selectOptions(dialog.getByLabelText('Read with'), String(state.meterId));
    await user.click(dialog.getByRole('button', { name: 'Take 13.7%' }));
    await user.click(dialog.getByLabelText('I don’t know'));
    await user.type(dialog.getByLabelText('Wet weight'), '80');
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('ovenChecks.add')).toEqual([
      expect.objectContaining({ meterId: state.meterId, readings: [13.7], woodTempC: null }),
    ]);
  });

  test('with hand meters, it says off which one it was typed', async () => {
    const handMeter = (id: number, name: string): MeterOfYard => ({
      id,
      version: 1,
      kind: 'typed',
      name,
      unit: 'pct',
      profile: null,
      isTypedFrom: id === 4,
    });
    const { machine, user } = open('walnut-black', [], {
      'meters.list': () => [handMeter(4, 'Old one'), handMeter(5, 'New one')],
    });
    await user.click(await (await checks()).findByRole('button', { name: 'Add a check' }));
    const dialog = within(screen.getByRole('dialog'));
    await user.selectOptions(await dialog.findByLabelText('Read with'), 'New one');
    expect(dialog.queryByRole('button', { name: /^Take|^No value/ })).toBeNull();
    await user.type(dialog.getByLabelText('Readings, in %'), '12.4');
    await user.click(dialog.getByLabelText('I don’t know'));
    await user.type(dialog.getByLabelText('Wet weight'), '80');
    await user.click(dialog.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('ovenChecks.add')).toEqual([
      expect.objectContaining({ meterId: 5, unit: 'pct', readings: [12.4] }),
    ]);
  });

  test('a piece in the oven says what to do next and takes its next weight', async () => {
    const status = message('oven-check.weigh-again', { ovenDryPct: 12, hours: 2 });
    const fits = [
      aFit({
        checks: [aCheck(1, { dry: false, status })],
        fit: null,
        status: message('own-fit.too-few-dry-yet', { dry: 0, least: 3, drying: 1 }),
      }),
    ];
    const { machine, user } = open('walnut-black', fits);
    const section = await checks();
    expect(
      await section.findByText(/^At least 12\.0% so far\. Weigh it again 2 h after the last time/),
    ).toBeTruthy();
    expect(section.getByText('at least 12.0%')).toBeTruthy();
    expect(section.getByText(/Too early to tell/)).toBeTruthy();
    expect(section.queryByRole('img')).toBeNull();
    await user.click(section.getByRole('button', { name: 'Weigh A1' }));
    await user.type(screen.getByLabelText('Weight'), '99,87');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('ovenChecks.weigh')).toEqual([
      { checkId: 1, grams: 99.87, at: expect.stringMatching(/Z$/) },
    ]);
    await expectNoBarriers();
  });

  test('a piece is weighed at the time that was typed, and never now where only a part of it was', async () => {
    const { machine, user } = open('walnut-black', [
      aFit({ checks: [aCheck(1, { dry: false })], fit: null }),
    ]);
    const section = await checks();
    await user.click(await section.findByRole('button', { name: 'Weigh A1' }));
    await user.type(screen.getByLabelText('Weight'), '99.87');
    await typeDay(user, 'Weighed at', '2026-05-12');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(screen.getByText('Give the date and time.')).toBeTruthy();
    expect(shownText('Weighed at')).toContain('5/12/2026');
    expect(machine.inputsOf('ovenChecks.weigh')).toEqual([]);
    await typeTime(user, 'Weighed at', '2026-05-12T14:05');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(machine.inputsOf('ovenChecks.weigh')).toEqual([
      { checkId: 1, grams: 99.87, at: new Date(2026, 4, 12, 14, 5).toISOString() },
    ]);
  });

  test('a part of a time that was taken away again is a blank, which is now', async () => {
    const { machine, user } = open('walnut-black', [
      aFit({ checks: [aCheck(1, { dry: false })], fit: null }),
    ]);
    const section = await checks();
    await user.click(await section.findByRole('button', { name: 'Weigh A1' }));
    await user.type(screen.getByLabelText('Weight'), '99.87');
    await typeDay(user, 'Weighed at', '2026-05-12');
    await clearField(user, 'Weighed at');
    const beganAt = Date.now();
    await user.click(screen.getByRole('button', { name: 'Save' }));
    const [weighed] = machine.inputsOf('ovenChecks.weigh') as { at: string }[];
    expect(Date.parse(weighed!.at)).toBeGreaterThanOrEqual(beganAt);
  });

  test('the plot is a drawing, a sentence and a table of the same values', async () => {
    open('walnut-black', [aFit()]);
    const section = await checks();
    const drawing = await section.findByRole('img', { name: 'Meter against oven: Black walnut' });
    const dots = [...drawing.querySelectorAll('circle')].map((dot) => ({
      x: Number(dot.getAttribute('cx')),
      y: Number(dot.getAttribute('cy')),
    }));
    expect(dots).toHaveLength(5);
    // On their line: the pieces rise together, evenly.
    for (let i = 1; i < dots.length; i++) {
      expect(dots[i]!.x).toBeGreaterThan(dots[i - 1]!.x);
      expect(dots[i]!.y).toBeLessThan(dots[i - 1]!.y);
    }
    expect(drawing.textContent).toContain('A3');
    const rows = section.getAllByRole('row').map((row) => [...row.children].map((cell) => cell.textContent));
    // Its reading, its mark, by the oven, without the checks, how far the line without it is off, by the line.
    expect(rows[1]).toEqual(['11.1%', 'A1', '12.0%', '12.8%', '−0.2 points', '12.0%']);
    expect(section.getByText(/MC = reading \+ 0\.9\. A slope would not/)).toBeTruthy();
    await expectNoBarriers();
  });

  test('worth using, they are used with one button', async () => {
    const { machine, user } = open('walnut-black', [aFit()]);
    const section = await checks();
    expect(await section.findByText(/off by about 0\.3 points, without them by 0\.8 points/)).toBeTruthy();
    await user.click(section.getByRole('button', { name: 'Use them' }));
    expect(machine.inputsOf('ovenChecks.useFit')).toEqual([
      { speciesId: 'walnut-black', meterId: null, inUse: true },
    ]);
  });

  test('not worth using, it says so and offers no button', async () => {
    const fit = { ...aFit().fit!, worthUsing: false };
    open('walnut-black', [
      aFit({ fit, status: message('own-fit.no-better', { errorPoints: 1, publishedPoints: 0.8 }) }),
    ]);
    const section = await checks();
    expect(await section.findByText('Not worth using.')).toBeTruthy();
    expect(section.queryByRole('button', { name: 'Use them' })).toBeNull();
  });

  test.each([
    [true, 'In use.'],
    [false, 'Chosen, but not in use.'],
  ])('chosen and applied %s: it says “%s” and can be stopped', async (applied, words) => {
    const { machine, user } = open('walnut-black', [aFit({ inUse: true, applied })]);
    const section = await checks();
    expect(await section.findByText(words)).toBeTruthy();
    await user.click(section.getByRole('button', { name: 'Stop using them' }));
    expect(machine.inputsOf('ovenChecks.useFit')).toEqual([
      { speciesId: 'walnut-black', meterId: null, inUse: false },
    ]);
  });

  test('a piece or a weight is excluded only with a reason, and included again', async () => {
    const checksOf = [
      aCheck(1),
      aCheck(2, { excluded: { text: 'a knot' } }),
      aCheck(3, {
        weights: [{ id: 30, grams: 10.3, at: aCheck(3).at, excluded: { text: 'a digit left out' } }],
      }),
    ];
    const { machine, user } = open('walnut-black', [aFit({ checks: checksOf, fit: null })]);
    const section = await checks();
    expect(await section.findByText('Excluded: a knot')).toBeTruthy();
    await user.click(section.getByRole('button', { name: 'Include A2' }));
    await user.click(section.getByRole('button', { name: 'Include 10.30 g of A3' }));
    expect(machine.inputsOf('ovenChecks.include')).toEqual([
      { checkId: 2, weightId: null },
      { checkId: 3, weightId: 30 },
    ]);
    await user.click(section.getByRole('button', { name: 'Exclude 100.30 g of A1' }));
    const dialog = within(screen.getByRole('dialog'));
    await user.click(dialog.getByRole('button', { name: 'Exclude' }));
    expect(dialog.getByText('Choose a reason above, or type one.')).toBeTruthy();
    await user.type(dialog.getByLabelText('Another reason'), 'another piece');
    await user.click(dialog.getByRole('button', { name: 'Exclude' }));
    expect(machine.inputsOf('ovenChecks.exclude')).toEqual([
      { checkId: 1, weightId: 10, why: { text: 'another piece' } },
    ]);
  });

  test('a refused weight leaves what was typed and shows the sentence', async () => {
    const { user } = open('walnut-black', [aFit()], {
      'ovenChecks.weigh': () => {
        throw new Refusal(
          message('refusal.piece-heavier-than-wet', { weightGrams: 120, wetGrams: 112.4, piece: 'A1' }),
        );
      },
    });
    const section = await checks();
    await user.click(await section.findByRole('button', { name: 'Weigh A1' }));
    await user.type(screen.getByLabelText('Weight'), '120');
    await user.click(screen.getByRole('button', { name: 'Save' }));
    expect(await screen.findByText(/120 g is more than 112.4 g, the wet weight of A1/)).toBeTruthy();
    expect((screen.getByLabelText('Weight') as HTMLInputElement).value).toBe('120');
  });

  test('that cannot be loaded show why, and are loaded again at a press', async () => {
    let fails = true;
    const { user } = open('walnut-black', [], {
      'ovenChecks.ofSpecies': () => {
        if (fails) throw fileInUse();
        return [aFit()];
      },
    });
    expect(await screen.findByText(/Another program is using the yard file/)).toBeTruthy();
    fails = false;
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(await screen.findByText('Worth using.')).toBeTruthy();
  });
});
