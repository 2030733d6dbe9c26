import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';

/** What of a run took so long, in seconds. */
export interface Took {
  name: string;
  seconds: number;
}

/** So many files of each runner are named. */
const SLOWEST = 12;

/** The parts of a run, then the files of each report that took longest. */
export function whereTimeWent(parts: readonly Took[], reports: readonly (readonly Took[])[]): string {
  const slowest = reports.flatMap((files) =>
    files.toSorted((a, b) => b.seconds - a.seconds).slice(0, SLOWEST),
  );
  const line = ({ name, seconds }: Took) => `${seconds.toFixed(1).padStart(8)} s  ${name}`;
  return ['— where time went', ...parts.map(line), '  the slowest files', ...slowest.map(line)].join('\n');
}

/** The files of vitest's report. */
export function filesOfVitest(report: string, root: string): Took[] {
  if (!existsSync(report)) return [];
  const { testResults } = JSON.parse(readFileSync(report, 'utf8')) as {
    testResults: { name: string; startTime: number; endTime: number }[];
  };
  return testResults.map(({ name, startTime, endTime }) => ({
    name: relative(root, name),
    seconds: (endTime - startTime) / 1000,
  }));
}

interface Suite {
  file: string;
  suites?: Suite[];
  specs?: { tests: { results: { duration: number }[] }[] }[];
}

/** The files of Playwright's report: what all their tests took together. */
export function filesOfPlaywright(report: string): Took[] {
  if (!existsSync(report)) return [];
  const { suites } = JSON.parse(readFileSync(report, 'utf8')) as { suites: Suite[] };
  const msOf = ({ specs = [], suites: inner = [] }: Suite): number =>
    [
      ...specs.flatMap(({ tests }) =>
        tests.flatMap(({ results }) => results.map(({ duration }) => duration)),
      ),
      ...inner.map(msOf),
    ].reduce((sum, ms) => sum + ms, 0);
  return suites.map((suite) => ({ name: `tests/e2e/${suite.file}`, seconds: msOf(suite) / 1000 }));
}
