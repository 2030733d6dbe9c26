import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { type ExportKind, exportKindSchema } from '../../shared-core/contract/exchange.ts';
import { type DisplayUnits, unitsOfRegion } from '../../shared-core/units/length.ts';
import { english } from '../../shared-core/words/en/index.ts';
import type { Display } from '../../shared-core/words/formats.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { createWords } from '../../shared-core/words/words.ts';
import { settingsOf } from '../app/yard/settings.ts';
import { dataDir } from '../data-dir.ts';
import { createBadCaches } from '../store/bad-caches.ts';
import { withChosenYard } from '../store/chosen-file.ts';
import { picturesBeside } from '../store/picture-files.ts';
import { readsOf } from '../store/yard.ts';
import { openYardFile } from '../store/yard-file.ts';
import { writeExport } from './export-file.ts';

const unitsNamed: readonly string[] = ['metric', 'imperial'] satisfies DisplayUnits[];

interface Asked {
  target: string;
  kind: ExportKind;
  /** Null: as the yard's settings have them. */
  units: DisplayUnits | null;
}

/**
 * Does the command, and says on the terminal what came of it.
 * @param args  what was typed after the command's name
 * @returns the exit code: 0 done, 1 refused
 */
export async function exportByCommand(args: readonly string[], env: NodeJS.ProcessEnv): Promise<number> {
  const { locale: own, timeZone } = Intl.DateTimeFormat().resolvedOptions();
  // Scripts read what comes out: it is English everywhere, with the numbers of the region.
  const locale = `en-${new Intl.Locale(own).maximize().region}`;
  const display: Display = { locale, timeZone, units: unitsOfRegion(locale), today: null };
  const { say } = createWords({ catalog: english, ...display });
  try {
    const done = await exportTo(askedBy(args), display, env);
    console.log(say(done));
    return 0;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    console.error(say(error.problem));
    return 1;
  }
}

/** @throws Refusal that says how to ask */
function askedBy(args: readonly string[]): Asked {
  const usage = new Refusal(message('export.usage'));
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { what: { type: 'string' }, units: { type: 'string' } },
      allowPositionals: true,
    });
    const [file, ...more] = positionals;
    const kind = file === undefined ? undefined : kindOf(extname(file).toLowerCase(), values.what);
    const units = values.units ?? null;
    const areUnits = units === null || unitsNamed.includes(units);
    if (file === undefined || more.length > 0 || kind === undefined || !areUnits) throw usage;
    return { target: resolve(file), kind, units: units as DisplayUnits | null };
  } catch {
    throw usage;
  }
}

const tableKindSchema = exportKindSchema.exclude(['everything']);

/** By the ending of the file's name; undefined where that and `what` do not go together. */
function kindOf(ending: string, what: string | undefined): ExportKind | undefined {
  if (ending === '.json') return what === undefined ? 'everything' : undefined;
  return ending === '.csv' ? tableKindSchema.safeParse(what ?? 'boards').data : undefined;
}

/** @throws Refusal; what was there before is never replaced */
async function exportTo(
  { target, kind, units }: Asked,
  display: Display,
  env: NodeJS.ProcessEnv,
): Promise<Message> {
  const file = join(dataDir(), 'yard.sqlite');
  if (!existsSync(file)) throw new Refusal(message('export.no-yard', { file }));
  if (existsSync(target)) throw new Refusal(message('export.taken', { file: target }));
  const folder = mkdtempSync(join(env.TMPDIR ?? tmpdir(), 'pintally-export-'));
  try {
    const copied = join(folder, 'yard.sqlite');
    await withChosenYard(file, (readable) => copyFileSync(readable, copied));
    // Of this layout, whichever Pintally saved it.
    const { db } = openYardFile(copied);
    const chosen = settingsOf(readsOf(db, createBadCaches())).units;
    db.close();
    const by = { ...display, units: units ?? chosen ?? display.units };
    const nowAt = new Date().toISOString();
    try {
      const pictures = picturesBeside(file);
      const what = { from: copied, pictures, target, kind, display: by, nowAt };
      const { missingPictures } = writeExport(what, english, () => undefined);
      return missingPictures === 0
        ? message('export.written', { file: target })
        : message('export.written-without', { file: target, pictures: missingPictures });
    } catch (error) {
      rmSync(target, { force: true });
      throw error;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
