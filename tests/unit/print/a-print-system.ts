import { type ChildProcess, spawn } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { request } from 'node:http';
import { userInfo } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

const DAEMON = '/usr/sbin/cupsd';
const FILTER = '/usr/lib/cups/filter/pdftopdf';

/** Why no print system can be run here; null where one can. */
export const noPrintSystem =
  existsSync(DAEMON) && existsSync(FILTER)
    ? null
    : 'needs cups-daemon and cups-filters-core-drivers of Debian or Ubuntu';

/** A device that saves what it is sent as a file, or does what the end of its address says. */
const backend = `#!/bin/sh
[ $# = 0 ] && exit 0
folder="\${DEVICE_URI#keep:}"
case "$folder" in
  */fails) echo "ERROR: The labels are used up" >&2; exit 1 ;;
  */slow) : > "$folder/$1.begun"; exec sleep 30 ;;
esac
cat "\${6:--}" > "$folder/$1.part" && mv "$folder/$1.part" "$folder/$1.pdf"
`;

/**
 * A printer as a PPD describes it (Adobe's PPD specification 4.3, from memory): of any size, or of Letter alone.
 * Its documents go through the filter of CUPS that lays PDFs out on the paper.
 */
const ppd = (takesAnySize: boolean): string => `*PPD-Adobe: "4.3"
*FormatVersion: "4.3"
*FileVersion: "1.0"
*LanguageVersion: English
*LanguageEncoding: ISOLatin1
*PCFileName: "TAGS.PPD"
*Product: "(Tags)"
*PSVersion: "(3010) 0"
*Manufacturer: "Test"
*ModelName: "Tags"
*ShortNickName: "Tags"
*NickName: "Tags"
*cupsFilter2: "application/vnd.cups-pdf application/pdf 0 -"
*OpenUI *PageSize: PickOne
*DefaultPageSize: Letter
*PageSize Letter/Letter: "<</PageSize[612 792]>>setpagedevice"
*CloseUI: *PageSize
*OpenUI *PageRegion: PickOne
*DefaultPageRegion: Letter
*PageRegion Letter/Letter: "<</PageSize[612 792]>>setpagedevice"
*CloseUI: *PageRegion
*DefaultImageableArea: Letter
*ImageableArea Letter/Letter: "18 18 594 774"
*DefaultPaperDimension: Letter
*PaperDimension Letter/Letter: "612 792"
${
  takesAnySize
    ? `*MaxMediaWidth: "700"
*MaxMediaHeight: "1000"
*HWMargins: 0 0 0 0
*VariablePaperSize: True
*CustomPageSize True: "pop pop pop <</PageSize[5 -2 roll]/ImagingBBox null>>setpagedevice"
*ParamCustomPageSize Width: 1 points 30 700
*ParamCustomPageSize Height: 2 points 30 1000
*ParamCustomPageSize WidthOffset: 3 points 0 0
*ParamCustomPageSize HeightOffset: 4 points 0 0
*ParamCustomPageSize Orientation: 5 int 0 3
`
    : ''
}`;

interface QueueOfTest {
  name: string;
  title: string;
  does: 'saves' | 'fails' | 'slow';
  takesAnySize: boolean;
  isStopped?: boolean;
  whenItFails: 'abort-job' | 'retry-job';
}

const queues: QueueOfTest[] = [
  { name: 'tags', title: 'Tags by the saw', does: 'saves', takesAnySize: true, whenItFails: 'abort-job' },
  { name: 'office', title: 'Office', does: 'saves', takesAnySize: false, whenItFails: 'abort-job' },
  { name: 'broken', title: 'Broken', does: 'fails', takesAnySize: true, whenItFails: 'abort-job' },
  { name: 'empty', title: 'Empty', does: 'fails', takesAnySize: true, whenItFails: 'retry-job' },
  { name: 'slow', title: 'Slow', does: 'slow', takesAnySize: true, whenItFails: 'abort-job' },
  {
    name: 'halted',
    title: 'Halted',
    does: 'saves',
    takesAnySize: true,
    isStopped: true,
    whenItFails: 'abort-job',
  },
];

/** The print system of Linux and macOS, CUPS, by itself in a folder, with printers that print to files. */
export async function startPrintSystem() {
  // The tests' own folder for temporary files is closed to the user of its devices.
  const folder = mkdtempSync('/tmp/printing-');
  const at = (...names: string[]) => join(folder, ...names);
  const isRoot = userInfo().uid === 0;
  for (const name of [
    'root/ppd',
    'cache',
    'spool',
    'state',
    'bin/backend',
    'bin/filter',
    'data/mime',
    'out/saves',
    'out/fails',
    'out/slow',
  ])
    mkdirSync(at(name), { recursive: true });
  symlinkSync(FILTER, at('bin/filter/pdftopdf'));
  symlinkSync('/usr/lib/cups/daemon', at('bin/daemon'));
  writeFileSync(at('bin/backend/keep'), backend);
  chmodSync(at('bin/backend/keep'), 0o755);
  writeFileSync(at('data/mime/pdf.types'), 'application/pdf pdf string(0,%PDF)\napplication/vnd.cups-pdf\n');
  writeFileSync(at('data/mime/pdf.convs'), 'application/pdf application/vnd.cups-pdf 66 pdftopdf\n');
  for (const { name, takesAnySize } of queues)
    writeFileSync(at('root/ppd', `${name}.ppd`), ppd(takesAnySize));
  writeFileSync(
    at('root/printers.conf'),
    queues
      .map(
        ({ name, title, does, isStopped, whenItFails }) => `<Printer ${name}>
Info ${title}
DeviceURI keep:${at('out', does)}
State ${isStopped ? 'Stopped' : 'Idle'}
${isStopped ? 'Reason paused\nStateMessage Changing the roll\n' : ''}Accepting Yes
ErrorPolicy ${whenItFails}
</Printer>
`,
      )
      .join(''),
  );
  writeFileSync(
    at('cupsd.conf'),
    `Listen ${at('sock')}
Browsing Off
WebInterface No
DefaultAuthType None
<Location />
  Allow all
</Location>
<Policy default>
  <Limit All>
    Allow all
  </Limit>
</Policy>
`,
  );
  writeFileSync(
    at('cups-files.conf'),
    `ServerRoot ${at('root')}
ServerBin ${at('bin')}
DataDir ${at('data')}
CacheDir ${at('cache')}
StateDir ${at('state')}
RequestRoot ${at('spool')}
TempDir ${at('spool')}
ErrorLog ${at('error.log')}
AccessLog ${at('access.log')}
PageLog ${at('page.log')}
${isRoot ? 'User lp\nGroup lp\nSystemGroup root\n' : `User ${userInfo().username}\n`}`,
  );
  if (isRoot) {
    // The system runs as root, and its devices as "lp", which has the number 7 on Debian.
    chmodSync(folder, 0o755);
    for (const name of ['out/saves', 'out/fails', 'out/slow', 'spool']) chownSync(at(name), 7, 7);
  }
  const daemon = spawn(DAEMON, ['-f', '-c', at('cupsd.conf'), '-s', at('cups-files.conf')], {
    stdio: 'ignore',
  });
  await answers(at('sock'), daemon, at('error.log'));
  const printed = (): Uint8Array[] =>
    readdirSync(at('out/saves'))
      .filter((name) => name.endsWith('.pdf'))
      .sort()
      .map((name) => new Uint8Array(readFileSync(at('out/saves', name))));
  return {
    socket: at('sock'),
    /** What its printers put on paper so far. */
    printed,
    /** How many jobs its slow printer has begun. */
    begun: (): number => readdirSync(at('out/slow')).length,
    /** How often printers have said that to it. Its log repeats itself where a job failed, in other words. */
    heard: (said: string): number => readFileSync(at('error.log'), 'utf8').split(`] ${said}`).length - 1,
    /** Takes away what was printed. */
    clear: (): void => {
      for (const name of readdirSync(at('out/saves'))) rmSync(at('out/saves', name));
    },
    close: async (): Promise<void> => {
      const ended = new Promise((resolve) => daemon.once('exit', resolve));
      daemon.kill();
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function answers(socketPath: string, daemon: ChildProcess, log: string): Promise<void> {
  for (let tries = 0; tries < 100 && daemon.exitCode === null; tries++) {
    const isUp = await new Promise<boolean>((resolve) => {
      const asking = request({ socketPath, path: '/', method: 'OPTIONS' }, (answer) => {
        answer.resume();
        resolve(true);
      });
      asking.on('error', () => resolve(false));
      asking.end();
    });
    if (isUp) return;
    await wait(100);
  }
  throw new Error(`cupsd does not start: ${existsSync(log) ? readFileSync(log, 'utf8') : ''}`);
}
