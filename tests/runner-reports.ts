import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { stripVTControlCharacters } from 'node:util';

/** What of a run took so long, in seconds. */
export interface Took {
  name: string;
  seconds: number;
  /** Of a part: of all its processes together; null where the system does not say. */
  cpuSeconds?: number | null;
}

/** What the report of a runner tells of its files and of its failed tests. */
export interface Told {
  files: Took[];
  /** Each failed test with its file, and the first lines of why. */
  failed: string[];
  /** Likewise each that failed at first and passed when it ran once more. */
  passedAgain: string[];
}

/** A part of a run that ended badly, and all it printed. */
export interface Ended {
  name: string;
  output: string;
}

/** So many files of each runner are named. */
const SLOWEST = 12;
/** So many lines of why a test failed are repeated. */
const LINES_OF_WHY = 6;
/** So many of the last lines of a part that ended badly are repeated: a runner that fell over has no report. */
const LAST_LINES = 15;

/** The parts of a run, then the files of each report that took longest. */
export function whereTimeWent(parts: readonly Took[], reports: readonly Told[]): string {
  const slowest = reports.flatMap(({ files }) =>
    files.toSorted((a, b) => b.seconds - a.seconds).slice(0, SLOWEST),
  );
  const line = ({ name, seconds }: Took) => `${shown(seconds)}  ${name}`;
  const ofPart = (part: Took) =>
    `${shown(part.seconds)} ${part.cpuSeconds == null ? '' : `${shown(part.cpuSeconds)} of CPU`}  ${part.name}`;
  return ['— where time went', ...parts.map(ofPart), '  the slowest files', ...slowest.map(line)].join('\n');
}

const shown = (seconds: number): string => `${seconds.toFixed(1).padStart(8)} s`;

/** What failed in a run once more, for a reader who has only the end of it. */
export function whatFailed(parts: readonly Ended[], reports: readonly Told[]): string {
  const ends = parts.map(({ name, output }) => {
    const lines = linesOf(output).slice(-LAST_LINES);
    return [`  ${name} ended badly:`, ...lines.map((line) => `      ${line}`)].join('\n');
  });
  return ['— what failed', ...ends, ...reports.flatMap((report) => report.failed)].join('\n');
}

/** What failed at first: it may be a fault that comes and goes. Empty where nothing did. */
export function whatPassedAgain(reports: readonly Told[]): string {
  const tests = reports.flatMap(({ passedAgain }) => passedAgain);
  return tests.length === 0
    ? ''
    : ['— what failed at first, and passed when it ran once more', ...tests].join('\n');
}

/** What V8 prints where its record of compiled code is wrong: a fault of its own, in processes of many threads (nodejs/node 64500). */
const FAULT_OF_V8 = 'Check failed: jit_page.has_value().';

/** The test files whose process V8 ended by that fault, where nothing else failed or ended a process; else none. */
export function filesEndedByV8(output: string): string[] {
  const lines = linesOf(output);
  const faults = lines.filter((line) => line.includes(FAULT_OF_V8)).length;
  const ended = lines.flatMap(
    (line) => /Worker exited unexpectedly .* while running test file (.+)$/.exec(line)?.[1] ?? [],
  );
  const errors = Number(lines.map((line) => /^\s*Errors\s+(\d+) error/.exec(line)?.[1]).find(Boolean) ?? 0);
  const isAllByV8 = faults === ended.length && errors === ended.length;
  return isAllByV8 && !lines.some((line) => / Failed (Tests|Suites) /.test(line)) ? ended : [];
}

/** What vitest's report tells. */
export function toldByVitest(report: string, root: string): Told {
  if (!existsSync(report)) return { files: [], failed: [], passedAgain: [] };
  const { testResults } = JSON.parse(readFileSync(report, 'utf8')) as {
    testResults: {
      name: string;
      startTime: number;
      endTime: number;
      status: string;
      message: string;
      assertionResults: { fullName: string; status: string; failureMessages: string[] }[];
    }[];
  };
  return {
    files: testResults.map(({ name, startTime, endTime }) => ({
      name: relative(root, name),
      seconds: (endTime - startTime) / 1000,
    })),
    failed: testResults.flatMap(({ name, status, message, assertionResults }) => {
      const failed = assertionResults.filter((each) => each.status === 'failed');
      // A file that could not be read has no tests to tell of.
      if (status === 'failed' && failed.length === 0) return [failure(relative(root, name), message)];
      return failed.map(({ fullName, failureMessages }) =>
        failure(`${relative(root, name)} › ${fullName}`, failureMessages.join('\n')),
      );
    }),
    passedAgain: [],
  };
}

interface Suite {
  file: string;
  suites?: Suite[];
  specs?: {
    title: string;
    line: number;
    tests: {
      status: string;
      results: { duration: number; error?: { message?: string } }[];
    }[];
  }[];
}

/** What Playwright's report tells. A file took what all its tests took together. */
export function toldByPlaywright(report: string): Told {
  if (!existsSync(report)) return { files: [], failed: [], passedAgain: [] };
  const { suites } = JSON.parse(readFileSync(report, 'utf8')) as { suites: Suite[] };
  const specsOf = ({ specs = [], suites: inner = [] }: Suite): NonNullable<Suite['specs']> => [
    ...specs,
    ...inner.flatMap(specsOf),
  ];
  const failuresOf = (asked: string): string[] =>
    suites.flatMap((suite) =>
      specsOf(suite).flatMap(({ title, line, tests }) =>
        tests
          .filter(({ status }) => status === asked)
          .map(({ results }) =>
            failure(
              `tests/e2e/${suite.file}:${line} › ${title}`,
              results.map(({ error }) => error?.message ?? '').join('\n'),
            ),
          ),
      ),
    );
  return {
    files: suites.map((suite) => ({
      name: `tests/e2e/${suite.file}`,
      seconds:
        specsOf(suite)
          .flatMap(({ tests }) => tests.flatMap(({ results }) => results))
          .reduce((sum, { duration }) => sum + duration, 0) / 1000,
    })),
    failed: failuresOf('unexpected'),
    passedAgain: failuresOf('flaky'),
  };
}

function failure(name: string, why: string): string {
  const lines = linesOf(why).slice(0, LINES_OF_WHY);
  return [`  ${name}`, ...lines.map((line) => `      ${line}`)].join('\n');
}

function linesOf(text: string): string[] {
  return stripVTControlCharacters(text)
    .split('\n')
    .filter((line) => line.trim() !== '');
}
