import type { DayOrder } from '../contract/import.ts';
import { dayIn, figuresOf, isSerialDay } from './cells.ts';
import { MOST_OF, type Reader } from './table.ts';

/** What dates of one column say of the order of their figures. */
interface OrderOfDates {
  order: DayOrder;
  /** What proves it; a person's own order holds without a proof, and one date against it may be mistyped. */
  proof: 'own' | 'one-date' | 'dates';
}

/** With so many other dates in the person's own order, a single one against it is mistyped. Common practice, no source. */
const MANY_DATES = 3;

/** The order of dates in figures: where the column has days above 12, by those; else the person's own. */
export function orderOfDates(cells: readonly string[], own: DayOrder): OrderOfDates {
  const dates = cells.map(figuresOf).filter((date) => date !== null);
  if (dates.length === 0) {
    const serial = cells.filter(
      (cell) => /^\d{5}([.,]\d+)?$/.test(cell) && isSerialDay(Number.parseFloat(cell)),
    );
    return serial.length > cells.length / 2
      ? { order: 'serial', proof: 'dates' }
      : { order: own, proof: 'own' };
  }
  if (dates.every(([year]) => year.length === 4)) return { order: 'ymd', proof: 'dates' };
  const above12 = (part: 0 | 1): Set<string> =>
    new Set(
      dates
        .filter((date) => date[part].length <= 2 && Number(date[part]) > 12)
        .map((date) => date.slice(0, 2).join('/')),
    );
  const [dayFirst, daySecond] = [above12(0).size, above12(1).size];
  if (dayFirst > 0 !== daySecond > 0) {
    const order = dayFirst > 0 ? 'dmy' : 'mdy';
    const isAgainstOwn = (own === 'mdy' || own === 'dmy') && own !== order;
    const others = new Set(dates.map((date) => date.slice(0, 2).join('/'))).size - 1;
    if (!isAgainstOwn || others === 0 || dayFirst + daySecond > 1) return { order, proof: 'dates' };
    return others < MANY_DATES ? { order, proof: 'one-date' } : { order: own, proof: 'own' };
  }
  if (own === 'mdy' || own === 'dmy') return { order: own, proof: 'own' };
  // Points part figures where the day comes first. Common practice, no source.
  return { order: cells.some((cell) => /^\d{1,2}\.\d/.test(cell)) ? 'dmy' : 'mdy', proof: 'own' };
}

/**
 * The order of dates for each column of dates. One table has one order where no column proves another. Null where a person
 * has to choose it: a single date of few is against their own order, or one column is while another is not.
 */
export function ordersOf(
  columns: ReadonlyMap<number, readonly string[]>,
  own: DayOrder,
): ReadonlyMap<number, DayOrder | null> {
  const each = new Map([...columns].map(([column, cells]) => [column, orderOfDates(cells, own)]));
  const found = [...each.values()];
  const isInFigures = ({ order }: OrderOfDates) => order === 'mdy' || order === 'dmy';
  const proven = new Set(
    found.filter((of) => of.proof === 'dates' && isInFigures(of)).map(({ order }) => order),
  );
  const [shared] = proven.size === 1 ? proven : [];
  const isOpen = shared === undefined && found.some(({ proof }) => proof === 'one-date');
  return new Map(
    [...each].map(([column, of]) => {
      if (!isInFigures(of)) return [column, of.order];
      if (of.proof === 'dates') return [column, proven.size > 1 && of.order !== own ? null : of.order];
      return [column, isOpen ? null : (shared ?? of.order)];
    }),
  );
}

export function areDates(
  cells: readonly string[],
  { order, today }: Pick<Reader, 'order' | 'today'>,
): boolean {
  const dateOrder = orderOfDates(cells, order).order;
  const dates = cells.filter((cell) => dayIn(cell, dateOrder, today) !== null);
  return dateOrder !== 'serial' && cells.length > 0 && dates.length >= MOST_OF * cells.length;
}
