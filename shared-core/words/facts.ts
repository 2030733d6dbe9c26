import type { Formats } from './formats.ts';
import type { DayRange, Fact, Message, PctRange, Thickness, When } from './message.ts';

/** The type of a fact by the end of its name. */
interface FactTypes {
  Pct: number;
  RhPct: number;
  ChancePct: number;
  BatteryPct: number;
  CertaintyPct: number;
  LimitPct: number;
  SharePct: number;
  Points: number;
  Range: PctRange | DayRange;
  Interval: PctRange;
  PointsInterval: PctRange;
  Mm: number;
  LengthMm: number;
  DistanceMm: number;
  ChangeMm: number;
  Thickness: Thickness;
  TempC: number;
  StepK: number;
  Kg: number;
  Grams: number;
  M3: number;
  BoardFeet: number;
  Ohm: number;
  Month: number;
  MonthsRange: DayRange;
  On: string;
  At: string;
  When: When;
  TypedText: string;
  SpeciesName: string;
  Species: string;
  UseName: string;
}
type Suffix = keyof FactTypes;

/** A sentence repeats no more of what was typed than tells a person which field it means. */
const MOST_TYPED = 30;

/** How a fact is shown by the end of its name; the longest ending that fits holds. */
const bySuffix: { [S in Suffix]: (value: FactTypes[S], formats: Formats) => string } = {
  Pct: (value, { mc }) => mc(value),
  RhPct: (value, { wholePercent }) => wholePercent(value),
  ChancePct: (value, { wholePercent }) => wholePercent(value),
  BatteryPct: (value, { wholePercent }) => wholePercent(value),
  CertaintyPct: (value, { percent }) => percent(value),
  LimitPct: (value, { percent }) => percent(value),
  SharePct: (value, { wholePercent }) => wholePercent(value),
  Points: (value, { points }) => points(value),
  Range: (value, { mcRange, dayRange }) => ('minPct' in value ? mcRange(value) : dayRange(value)),
  Interval: (value, { mcInterval }) => mcInterval(value),
  PointsInterval: (value, { pointsInterval }) => pointsInterval(value),
  Mm: (value, { shortLength }) => shortLength(value),
  LengthMm: (value, { longLength }) => longLength(value),
  DistanceMm: (value, { longLength }) => longLength(value),
  ChangeMm: (value, { lengthChange }) => lengthChange(value),
  Thickness: (value, { thickness }) => thickness(value),
  TempC: (value, { temperature }) => temperature(value),
  StepK: (value, { temperatureStep }) => temperatureStep(value),
  Kg: (value, { weight }) => weight(value),
  Grams: (value, { smallWeight }) => smallWeight(value),
  M3: (value, { volume }) => volume(value),
  BoardFeet: (value, { boardFeet }) => boardFeet(value),
  Ohm: (value, { ohms }) => ohms(value),
  Month: (value, { month }) => month(value),
  MonthsRange: (value, { monthRange }) => monthRange(value),
  On: (value, { day }) => day(value),
  At: (value, { dateTime }) => dateTime(value),
  When: (value, { when }) => when(value),
  SpeciesName: (value, { named }) => named(value),
  Species: (value, { named }) => named(value),
  UseName: (value, { named }) => named(value),
  TypedText: (value) => (value.length > MOST_TYPED ? `${value.slice(0, MOST_TYPED)}…` : value),
};
const suffixes = (Object.keys(bySuffix) as Suffix[]).sort((a, b) => b.length - a.length);

type OneOrMore<T> = T | readonly T[];
type Raw<Name extends string> = Name extends 'raw' | `raw${Capitalize<string>}` ? Name : never;
type Ending<Name extends string> = {
  [S in Suffix]: Name extends `${string}${S}` | Uncapitalize<S> ? S : never;
}[Suffix];

/** The type that a fact of this name has. */
export type FactNamed<Name extends string> = [Raw<Name>] extends [never]
  ? [Ending<Name>] extends [never]
    ? OneOrMore<string | number | Message>
    : OneOrMore<FactTypes[Ending<Name>]>
  : number;

/** A fact as its sentence shows it. `raw…` is shown as it was typed or sent; every other by the end of its name. */
export function factText(
  name: string,
  fact: Fact,
  formats: Formats,
  say: (message: Message) => string,
): string {
  if (isList(fact)) {
    const parts = fact.map((each) => factText(name, each, formats, say));
    if (name.endsWith('Sentences')) return parts.join(' ');
    return name.endsWith('Choices') ? formats.choices(parts) : formats.list(parts);
  }
  if (isMessage(fact)) return say(fact);
  if (/^raw($|[A-Z])/.test(name) && typeof fact === 'number') {
    if (name.endsWith('Pct')) return formats.rawPercent(fact);
    return name.endsWith('Ohm') ? formats.rawOhms(fact) : formats.raw(fact);
  }
  const suffix = suffixes.find(
    (each) => name.endsWith(each) || name === each[0]!.toLowerCase() + each.slice(1),
  );
  if (suffix) return (bySuffix[suffix] as (value: Fact, formats: Formats) => string)(fact, formats);
  if (typeof fact === 'number') return formats.number(fact);
  if (typeof fact === 'string') return fact;
  throw new RangeError(`The fact ${name} has no ending that tells how to show ${JSON.stringify(fact)}`);
}

const isList = (fact: Fact): fact is readonly Exclude<Fact, readonly unknown[]>[] => Array.isArray(fact);
const isMessage = (fact: Fact): fact is Message => typeof fact === 'object' && 'code' in fact;
