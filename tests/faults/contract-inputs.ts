import type { z } from 'zod';
import { oneOf, type Random } from './random.ts';

/** What no request expects, or only just. */
const HOSTILE: readonly unknown[] = [
  null,
  undefined,
  '',
  'x'.repeat(5000),
  '\ud800',
  '\u0000',
  '__proto__',
  "'; DROP TABLE board; --",
  0,
  -0,
  -1,
  0.5,
  5e-324,
  1e-320,
  1e308,
  Number.MAX_SAFE_INTEGER,
  2 ** 53,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  true,
  [],
  {},
  [[[[[[[[]]]]]]]],
  JSON.parse('{"__proto__": {"polluted": 1}}'),
  '2026-02-30',
  '9999-12-31T23:59:59.999Z',
];
const TEXTS = [
  'Ä',
  'OAK-01',
  'A',
  'walnut-black',
  'furniture',
  'x'.repeat(80),
  'x'.repeat(81),
  '2026-01-05',
  '2026-01-05T08:00:00.000Z',
  'America/Chicago',
  'en-US',
  '00000000-0000-4000-8000-000000000000',
];

interface Def {
  type: string;
  shape?: Record<string, z.ZodType>;
  element?: z.ZodType;
  items?: z.ZodType[];
  options?: z.ZodType[];
  innerType?: z.ZodType;
  in?: z.ZodType;
  getter?: () => z.ZodType;
  entries?: Record<string, string>;
  values?: unknown[];
  checks?: {
    _zod: { def: { check: string; value?: number; minimum?: number; maximum?: number; length?: number } };
  }[];
}

/** An input that fits the schema, nearly fits it, or does not at all. */
export function inputFor(schema: z.ZodType, random: Random, hostility = random() < 0.4 ? 0 : 0.08): unknown {
  if (random() < hostility) return oneOf(random, HOSTILE);
  const def = schema._zod.def as unknown as Def;
  const inner = (of: z.ZodType | undefined): unknown => (of ? inputFor(of, random, hostility) : undefined);
  switch (def.type) {
    case 'object':
      return Object.fromEntries(Object.entries(def.shape ?? {}).map(([name, of]) => [name, inner(of)]));
    case 'array': {
      const fixed = def.checks?.map(({ _zod }) => _zod.def.length).find((length) => length !== undefined);
      const made = Array.from({ length: fixed ?? Math.floor(random() * 4) + 1 }, () => inner(def.element));
      // The same record twice.
      return random() < 0.1 ? [...made, made[0]] : made;
    }
    case 'tuple':
      return (def.items ?? []).map(inner);
    case 'string':
      return oneOf(random, TEXTS);
    case 'number':
      return numberFor(def, random);
    case 'boolean':
      return random() < 0.5;
    case 'enum':
      return oneOf(random, Object.values(def.entries ?? { none: '' }));
    case 'literal':
      return oneOf(random, def.values ?? [null]);
    case 'union':
      return inner(oneOf(random, def.options ?? []));
    case 'nullable':
      return random() < 0.3 ? null : inner(def.innerType);
    case 'optional':
    case 'default':
      return random() < 0.3 ? undefined : inner(def.innerType);
    case 'pipe':
      return inner(def.in);
    case 'lazy':
      return inner(def.getter?.());
    default:
      return def.innerType ? inner(def.innerType) : oneOf(random, HOSTILE);
  }
}

/** At a bound, beside it, or between. */
function numberFor({ checks = [] }: Def, random: Random): number {
  const bounds = checks.flatMap(({ _zod: { def } }) =>
    def.value === undefined ? [] : [{ least: def.check === 'greater_than', value: def.value }],
  );
  const low = bounds.find(({ least }) => least)?.value ?? 1;
  const high = bounds.find(({ least }) => !least)?.value ?? 40;
  const between = low + random() * (Math.min(high, low + 40) - low);
  return oneOf(random, [low, high, low + 1, Math.ceil(between), Math.round(between), between, high + 1]);
}
