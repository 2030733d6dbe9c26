/**
 * A general-purpose solver for stiff equations to measure ourselves against: CVODE of SUNDIALS in JavaScript, as
 * diff-grok 1.4.0 has it (BSD-3-Clause). diff-grok is not on the npm registry that this project uses, so it cannot be a
 * dependency. The package @datagrok/diff-studio 1.7.0 (MIT) was built from it, and its source map has diff-grok's whole
 * files. They are extracted from there, once, into `node_modules/.cache`.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export type CvodeOptions = {
  lmm: 'bdf';
  rtol: number;
  atol: number;
  maxSteps: number;
  /** Never steps beyond it, s. */
  stopTime: number;
  /** Fills rows of the dense Jacobian, all 0 at first; without it, differences one by one. */
  jacFn?: (t: number, y: Float64Array, rates: Float64Array, rows: Float64Array[]) => void;
};
/** What is used of it. */
export type Cvode = {
  solve(until: number): { y: Float64Array; flag: number };
  getStats(): { nSteps: number };
};
export type CvodeClass = new (
  rates: (t: number, y: Float64Array, dydt: Float64Array) => void,
  cells: number,
  from: number,
  start: Float64Array,
  options: CvodeOptions,
) => Cvode;

const spec = '@datagrok/diff-studio@1.7.0';
const sha512 = 'wLrb6/ZtmEssxfAlrm1yyE6zSeM8krKBWD0GcpvzQUJPWacsonUK1bFNre4/M+5ngUKkW/SIfKmmPCd0FKjJMQ==';
const folder = fileURLToPath(new URL('../../node_modules/.cache/diff-grok-1.4.0', import.meta.url));

function run(command: string, args: string[], cwd: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (status !== 0) throw new Error(`${command} ${args[0]} failed: ${error?.message ?? stderr.trim()}`);
  return stdout;
}

function fetchSources(into: string): void {
  mkdirSync(into, { recursive: true });
  const tarball = run('npm', ['pack', spec, '--loglevel=error'], into).trim();
  const held = createHash('sha512')
    .update(readFileSync(join(into, tarball)))
    .digest('base64');
  if (held !== sha512) throw new Error(`${spec} is not the file it was.`);
  run('tar', ['xzf', tarball, 'package/dist/package.js.map'], into);
  const map = JSON.parse(readFileSync(join(into, 'package/dist/package.js.map'), 'utf8')) as {
    sources: string[];
    sourcesContent: string[];
  };
  for (const [i, source] of map.sources.entries()) {
    const name = source.split('/node_modules/diff-grok/dist/src/solver-tools/cvode/')[1];
    if (name === undefined) continue;
    // Node needs the endings that a bundler can do without. Nothing else is changed.
    writeFileSync(join(into, name), map.sourcesContent[i]!.replace(/(from '\.\/\w+)'/g, "$1.js'"));
  }
  writeFileSync(join(into, 'package.json'), '{ "type": "module" }');
  for (const spare of [tarball, 'package']) rmSync(join(into, spare), { recursive: true });
}

/** @throws Error with the reason where it cannot be downloaded, as when offline */
export async function loadCvode(): Promise<CvodeClass> {
  if (!existsSync(folder)) {
    const unfinished = `${folder}.${process.pid}`;
    try {
      fetchSources(unfinished);
      mkdirSync(dirname(folder), { recursive: true });
      renameSync(unfinished, folder);
    } finally {
      rmSync(unfinished, { recursive: true, force: true });
    }
  }
  const { Cvode } = (await import(pathToFileURL(join(folder, 'cvode_class.js')).href)) as {
    Cvode: CvodeClass;
  };
  return Cvode;
}
