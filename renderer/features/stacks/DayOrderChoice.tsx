import { type DayOrder, dayOrderSchema } from '../../../shared-core/probing/readings/order-of-day.ts';
import { Choice } from '../../form/Choice.tsx';
import { useWords } from '../../words.ts';

/** Which came first on a day on which boards were moved and probed. */
export function DayOrderChoice({
  value,
  onValue,
}: {
  /** Null while unknown. */
  value: DayOrder | null;
  onValue: (order: DayOrder) => void;
}) {
  const { say } = useWords();
  return (
    <Choice<DayOrder>
      label={say('life.day-order')}
      value={value}
      options={dayOrderSchema.options.map((order) => ({
        value: order,
        label: say(`life.day-order.${order}`),
      }))}
      onValue={onValue}
    />
  );
}
