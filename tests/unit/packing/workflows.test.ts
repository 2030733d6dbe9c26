/** The workflows of CI, which nobody sees run here: what they name is there, and they may do no more than they need. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { builderConfigFor } from '../../../electron/packing/builder-config.ts';

const root = resolve(import.meta.dirname, '../../..');
const folder = join(root, '.github/workflows');
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

interface Step {
  uses?: string;
  run?: string;
  with?: Record<string, unknown>;
  env?: Record<string, string>;
}
interface Job {
  'runs-on': string;
  strategy: { matrix: { include?: { os: string; program: string }[] } };
  'timeout-minutes': number;
  steps: Step[];
}
interface Workflow {
  on: Record<string, unknown>;
  permissions: Record<string, string>;
  jobs: Record<string, Job>;
}

const workflows = readdirSync(folder).map((name) => {
  const workflow: Workflow = parse(readFileSync(join(folder, name), 'utf8'));
  const jobs = Object.values(workflow.jobs);
  return { name, workflow, jobs, steps: jobs.flatMap(({ steps }) => steps) };
});

test('CI has one workflow that checks and one that packs', () => {
  expect(workflows.map(({ name }) => name).sort()).toEqual(['check.yml', 'package.yml']);
});

describe.each(workflows)('$name', ({ workflow, jobs, steps }) => {
  test('runs on a push, by the keys that GitHub knows', () => {
    expect(Object.keys(workflow).sort()).toEqual(['jobs', 'name', 'on', 'permissions']);
    expect(workflow.on).toHaveProperty('push');
    for (const job of jobs) {
      expect(job['runs-on']).toMatch(/^(ubuntu|windows|macos)-\d|^\$\{\{ matrix\.os \}\}$/);
      expect(job['timeout-minutes']).toBeLessThanOrEqual(90);
    }
    // Of a step: https://docs.github.com/actions/reference/workflows-and-actions/workflow-syntax (from memory).
    const known = ['name', 'uses', 'run', 'with', 'env', 'if'];
    expect(steps.flatMap(Object.keys).filter((key) => !known.includes(key))).toEqual([]);
    expect(steps.filter(({ uses, run }) => (uses === undefined) === (run === undefined))).toEqual([]);
  });

  test('runs only scripts and files that are there', () => {
    const lines = steps.flatMap(({ run }) => run?.split('\n') ?? []);
    const named = lines.flatMap((line) => /\bnpm (?:run )?(test\b|(?<=run )[\w:-]+)/.exec(line)?.[1] ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => scripts[script] === undefined)).toEqual([]);
    const files = [
      ...lines.flatMap((line) =>
        [...line.matchAll(/\b(?:node|--config) ([\w./-]+\.m?[jt]s)/g)].map(([, file]) => file!),
      ),
      ...lines
        .flatMap((line) => /[\w-]+\.spec\.ts$/.exec(line)?.[0] ?? [])
        .map((spec) => `tests/e2e/${spec}`),
      ...steps.flatMap((step) => (step.with?.['node-version-file'] as string) ?? []),
    ];
    expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
  });

  test('takes actions of one version of GitHub itself', () => {
    const used = steps.flatMap(({ uses }) => uses ?? []);
    expect(used.length).toBeGreaterThan(1);
    expect(used.filter((action) => !/^actions\/[\w-]+@v\d+$/.test(action))).toEqual([]);
  });

  test('may only read, and holds no secret', () => {
    expect(workflow.permissions).toEqual({ contents: 'read' });
    expect(JSON.stringify(workflow)).not.toContain('secrets.');
  });
});

test('a release is made from a tag of a version, with what both ways of packing leave', () => {
  const { workflow, steps } = workflows.find(({ name }) => name === 'package.yml')!;
  expect(workflow.on.push).toEqual({ tags: ['v*'] });
  const runs = steps.map(({ run }) => run);
  const at = (line: string): number => runs.indexOf(line);
  expect(at('npm ci')).toBeLessThan(at('npm run pack:folder'));
  // Electron's binary is fetched by hand: no package may run a script of its own but those of allowScripts.
  expect(at('node node_modules/electron/install.js')).toBeGreaterThan(at('npm ci'));
  expect(at('npm run pack:electron')).toBeGreaterThan(at('node node_modules/electron/install.js'));
  const taken = steps.at(-1)?.with?.path;
  expect(taken).toBe('dist/pintally-*\ndist/electron/pintally-*\n');
});

test('the packed app is driven on each system before it is taken', () => {
  const { jobs, steps } = workflows.find(({ name }) => name === 'package.yml')!;
  const { productName, linux } = builderConfigFor(undefined);
  // Folders as electron-builder names them, and GitHub's macOS runs on Apple silicon (from memory).
  expect(jobs[0]!.strategy.matrix.include).toMatchObject([
    { os: expect.stringMatching(/^ubuntu/), program: `linux-unpacked/${linux!.executableName}` },
    { os: expect.stringMatching(/^windows/), program: `win-unpacked/${productName}.exe` },
    {
      os: expect.stringMatching(/^macos/),
      program: `mac-arm64/${productName}.app/Contents/MacOS/${productName}`,
    },
  ]);
  const drive = steps.findIndex(({ env }) => env?.PINTALLY_PACKED === `dist/electron/\${{ matrix.program }}`);
  expect(drive).toBeGreaterThan(steps.findIndex(({ run }) => run === 'npm run pack:electron'));
  expect(drive).toBeLessThan(steps.findIndex(({ uses }) => uses?.startsWith('actions/upload-artifact')));
});

test('a deb is made on Linux where the address that it must name is given, and not without', () => {
  const { jobs } = workflows.find(({ name }) => name === 'package.yml')!;
  const packing = jobs[0]!.steps.find(({ run }) => run === 'npm run pack:electron')!;
  expect(packing.env).toHaveProperty('PINTALLY_HOMEPAGE');
  const given = builderConfigFor('https://pintally.invalid');
  expect(given).toMatchObject({
    linux: { target: ['AppImage', 'deb'], executableName: 'pintally' },
    extraMetadata: { homepage: 'https://pintally.invalid' },
  });
  expect(builderConfigFor(undefined).linux).toMatchObject({ target: ['AppImage'] });
});
