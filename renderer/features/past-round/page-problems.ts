import { useState } from 'react';
import type { z } from 'zod';
import { givenDepthSchema } from '../../../shared-core/contract/requests/rounds.ts';
import { woodTempSchema } from '../../../shared-core/contract/round.ts';
import { problemOfField } from '../../../shared-core/contract/validation.ts';
import { dayUntil } from '../../../shared-core/contract/yard.ts';
import { useWords } from '../../words.ts';
import type { PageDraft } from './page-draft.ts';

/** What is wrong with the page's fields, each shown once it was to be saved. */
export function usePageProblems(page: PageDraft, today: string) {
  const { say } = useWords();
  const [isShown, setShown] = useState(false);
  const problem = (field: string, schema: z.ZodType, value: unknown): string | null => {
    const issue = schema.safeParse(value).error?.issues[0];
    return issue ? say(problemOfField(field, issue)) : null;
  };
  const day = problem('day', dayUntil(today), page.day ?? '');
  const isTempMissing = page.temperatureOf !== 'unknown' && page.tempC === null;
  const temp = isTempMissing
    ? say('past-round.temp-missing')
    : page.temperatureOf === 'unknown'
      ? null
      : problem('tempC', woodTempSchema, page.tempC);
  const depths = Array.from({ length: page.columns }, (_, column) => {
    const depthMm = page.depthsMm[column] ?? null;
    return page.depth !== 'typed' || depthMm === null ? null : problem('depthMm', givenDepthSchema, depthMm);
  });
  return {
    any: [day, temp, ...depths].some((each) => each !== null),
    show: (): void => setShown(true),
    day: isShown ? day : null,
    temp: isShown ? temp : null,
    depths: isShown ? depths : [],
  };
}
export type PageProblems = ReturnType<typeof usePageProblems>;
