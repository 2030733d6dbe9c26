import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hrefOf, parseRoute, type Route } from '../../../../renderer/stores/navigation.ts';
import { reportKindSchema } from '../../../../shared-core/contract/report.ts';

describe('an address', () => {
  test.each([
    ['', { name: 'stacks' }],
    ['#/', { name: 'stacks' }],
    ['#/stacks', { name: 'stacks' }],
    ['#/stacks/3', { name: 'stack', id: 3 }],
    ['#/boards/7', { name: 'board', id: 7 }],
    ['#/boards/7?tab=about', { name: 'board', id: 7, tab: 'about' }],
    ['#/round', { name: 'round-start', stackId: null }],
    ['#/round?stack=2', { name: 'round-start', stackId: 2 }],
    ['#/round?stack=2&place=7', { name: 'round-start', stackId: 2, placeId: 7 }],
    ['#/round/12', { name: 'round', id: 12 }],
    ['#/labels?boards=1,2', { name: 'labels', boardIds: [1, 2], stackId: null }],
    ['#/tally', { name: 'tally', stackId: null }],
    ['#/tally?stack=3', { name: 'tally', stackId: 3 }],
    ['#/report/3?kind=buyer', { name: 'report', kind: 'buyer', id: 3 }],
    ['#/report/3?kind=buyer&more=4,5', { name: 'report', kind: 'buyer', id: 3, more: [4, 5] }],
    ['#/check', { name: 'check' }],
    ['#/check?code=OAK-07%2FB39E', { name: 'check', code: 'OAK-07/B39E' }],
    ['#/meter', { name: 'meter' }],
    ['#/air', { name: 'air' }],
    ['#/species', { name: 'species-list' }],
    ['#/species/oak-northern-red', { name: 'species', id: 'oak-northern-red' }],
  ] as [string, Route][])('%s leads to %o', (hash, route) => {
    expect(parseRoute(hash)).toEqual(route);
  });

  test.each([
    '#/nothing',
    '#/stacks/0',
    '#/stacks/abc',
    '#/stacks/1/2',
    '#/meter/4',
    '#/round/-1',
    '#/species/No Wood',
    '#/air/2',
    '#/report/3',
    '#/report/3?kind=essay',
  ])('%s leads nowhere, and says so', (hash) => {
    expect(parseRoute(hash)).toEqual({ name: 'nowhere', hash });
  });

  // 2^53 + 1: no number holds it exactly, and the contract refuses such an ID.
  test('of a number that is too large is of a stack that is not there', () => {
    expect(parseRoute('#/stacks/9007199254740993')).toEqual({ name: 'stack', id: 2 ** 53 - 1 });
  });

  test('of labels passes over what is no board', () => {
    expect(parseRoute('#/labels?boards=4,x,,-2,9')).toMatchObject({ boardIds: [4, 9] });
  });

  test('is read back to the same place', () => {
    const id = fc.integer({ min: 1, max: 1e9 });
    const places = fc.oneof(
      fc.record({ name: fc.constantFrom('stack' as const, 'round' as const, 'board' as const), id }),
      fc.record({ name: fc.constantFrom('round-start' as const, 'tally' as const), stackId: fc.option(id) }),
      fc.record({ name: fc.constant('check' as const), code: fc.string({ minLength: 1 }) }),
      fc.record({
        name: fc.constant('report' as const),
        kind: fc.constantFrom(...reportKindSchema.options),
        id,
      }),
      fc.record({
        name: fc.constantFrom(
          'stacks' as const,
          'meter' as const,
          'species-list' as const,
          'settings' as const,
        ),
      }),
      fc.record({
        name: fc.constant('labels' as const),
        boardIds: fc.array(id, { minLength: 1, maxLength: 40 }),
        stackId: fc.constant(null),
      }),
    );
    fc.assert(
      fc.property(places, (route) => {
        expect(parseRoute(hrefOf(route))).toEqual(route);
      }),
    );
  });

  test('made of anything at all is never an error', () => {
    fc.assert(
      fc.property(fc.string(), (hash) => {
        expect(parseRoute(`#/${hash}`)).toHaveProperty('name');
      }),
    );
  });
});
