import { useQuery } from './useQuery.ts';

/**
 * Whether calls and dates are still being made, so that those shown may be old.
 * @param stackId  of one stack; null: of any
 */
export function useUpdating(stackId: number | null = null): boolean {
  const { output } = useQuery('stacks.list', {});
  return output?.some(({ id, isForecasting }) => isForecasting && (stackId ?? id) === id) ?? false;
}
