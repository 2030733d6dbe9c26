/**
 * Tables of 2,000 rows as people keep them, each with its own habits. The habits are common practice, no source; the
 * values are invented, and the same in every run.
 */

/** A linear congruential generator: the constants of Numerical Recipes (from memory). */
function createRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const ROWS = 2000;

export interface Spreadsheet {
  bytes: Buffer;
  reader: { units: 'metric' | 'imperial'; order: 'mdy' | 'dmy' };
  boards: number;
  readings: number;
}

const pick = <T>(random: () => number, all: readonly T[]): T => all[Math.floor(random() * all.length)]!;
const pad = (number: number, width = 2): string => String(number).padStart(width, '0');
/** A day of the two years before the yard's clock. */
const dayOf = (random: () => number): Date =>
  new Date(Date.UTC(2024, 5, 1) + Math.floor(random() * 700) * 86_400_000);

/** One row a board; each column of readings has its date in the header; a title above, blanks where nothing was read. */
export function wide(): Spreadsheet {
  const random = createRandom(1);
  const days = ['2024-07-01', '2024-10-15', '2025-01-20', '2025-05-05'];
  const lines = [
    'Lumber log,,,,,,,,,',
    '',
    `Board,Species,Thickness (in),Width (in),Length (ft),Date sawn,${days.map((day) => `MC % ${day}`).join(',')}`,
  ];
  let readings = 0;
  for (let row = 1; row <= ROWS; row++) {
    const values = days.map((_, at) => {
      if (random() < 0.2) return '';
      readings++;
      return (32 - 6 * at + 4 * random()).toFixed(1);
    });
    const species = pick(random, ['Red oak', 'white oak', 'Black walnut', 'Cherry']);
    const thickness = pick(random, ['1', '1.25', '1 3/4', '2']);
    lines.push(
      `A-${pad(row, 4)},${species},${thickness},${6 + Math.floor(6 * random())},8,2024-05-20,${values.join(',')}`,
    );
  }
  return {
    bytes: Buffer.from(lines.join('\r\n')),
    reader: { units: 'imperial', order: 'mdy' },
    boards: ROWS,
    readings,
  };
}

/** One row a reading, in UTF-8 with its mark, with a percent sign behind each value. */
export function long(): Spreadsheet {
  const random = createRandom(2);
  const lines = ['board_id,date,species,thickness_mm,mc,depth,wood temp (°C)'];
  for (let row = 0; row < ROWS; row++) {
    const board = Math.floor(row / 8) + 1;
    const day = ['2025-03-01', '2025-06-01'][Math.floor(row / 4) % 2];
    const depth = row % 2 === 0 ? 'shell' : 'core';
    const mc = (14 + (depth === 'core' ? 4 : 0) + random()).toFixed(1);
    lines.push(`${board},${day},"Maple, hard",54,${mc}%,${depth},${12 + Math.floor(8 * random())}`);
  }
  const bytes = Buffer.from(`\uFEFF${lines.join('\n')}\n`);
  return { bytes, reader: { units: 'metric', order: 'mdy' }, boards: ROWS / 8, readings: ROWS };
}

/** Semicolons, decimal commas, days first, umlauts in Windows-1252. */
export function german(): Spreadsheet {
  const random = createRandom(3);
  const lines = ['Brett-Nr.;Holzart;Stärke [mm];Breite [mm];Länge [m];Datum;Holzfeuchte [%];Bemerkung'];
  for (let row = 1; row <= ROWS; row++) {
    const date = dayOf(random);
    const day = `${pad(date.getUTCDate())}.${pad(date.getUTCMonth() + 1)}.${date.getUTCFullYear()}`;
    const number = (value: number, digits: number) => value.toFixed(digits).replace('.', ',');
    const note = random() < 0.1 ? 'trocken, für Tür' : '';
    lines.push(
      `B${row};European beech;${pick(random, [27, 32, 52])};${180 + Math.floor(80 * random())};${number(2 + 2 * random(), 2)};${day};${number(9 + 9 * random(), 1)};${note}`,
    );
  }
  const bytes = Buffer.from(lines.join('\r\n'), 'latin1');
  return { bytes, reader: { units: 'metric', order: 'dmy' }, boards: ROWS, readings: ROWS };
}

/** Quarters of an inch, °F, month first, two digits of the year, and notes behind the values. */
export function quarters(): Spreadsheet {
  const random = createRandom(4);
  const lines = ['No.,Wood,Thickness,Date,Temp,Reading 1,Reading 2,Notes'];
  for (let row = 1; row <= ROWS; row++) {
    const date = dayOf(random);
    const day = `${date.getUTCMonth() + 1}/${date.getUTCDate()}/${String(date.getUTCFullYear()).slice(2)}`;
    const value = () => (8 + 10 * random()).toFixed(1);
    const behind = random() < 0.1 ? pick(random, [' wet end', '%', ' (knot near)', '*']) : '';
    const first = random() < 0.05 ? '30+' : `${value()}${behind}`;
    const temp = `${35 + Math.floor(50 * random())}${random() < 0.2 ? '°F' : ''}`;
    const note = random() < 0.1 ? '"for the table, top"' : '';
    lines.push(
      `#${row},${pick(random, ['walnut', 'hard maple'])},${pick(random, ['4/4', '8/4', '6/4'])},${day},${temp},${first},${value()},${note}`,
    );
  }
  const bytes = Buffer.from(lines.join('\n'));
  return { bytes, reader: { units: 'imperial', order: 'mdy' }, boards: ROWS, readings: 2 * ROWS };
}

/** Cells pasted from a spreadsheet, where a board's name stands once above its readings. */
export function pasted(): Spreadsheet {
  const random = createRandom(5);
  const lines = ['Stack\tBoard\tSpecies\tThickness\tDate\tMC'];
  for (let row = 0; row < ROWS; row++) {
    const isFirst = row % 4 === 0;
    const board = isFirst ? `Oak ${row / 4 + 1}` : '';
    const species = isFirst ? 'Northern red oak' : '';
    const thickness = isFirst ? '8/4' : '';
    const day = isFirst ? 'May 3, 2025' : row % 4 === 2 ? '6 Sep 2025' : '';
    lines.push(
      `${row % 400 === 0 ? `Pile ${row / 400 + 1}` : ''}\t${board}\t${species}\t${thickness}\t${day}\t${(12 + 3 * random()).toFixed(1)}`,
    );
  }
  const bytes = Buffer.from(lines.join('\n'));
  return { bytes, reader: { units: 'imperial', order: 'mdy' }, boards: ROWS / 4, readings: ROWS };
}

/**
 * A line over each stack where cells were merged, the names of the columns below it once more, blank lines, and an average
 * below each stack. Words beside the values, and "OL" where the meter showed nothing.
 */
export function inSections(): Spreadsheet {
  const random = createRandom(6);
  const columns = 'Brd #,Species,Thk,Date,Wood temp,Shell,Core,Remarks';
  const lines = ['LAZY CREEK SAWMILL,,,,,,,', ',,,,,,,'];
  let readings = 0;
  for (let row = 0; row < ROWS; row++) {
    if (row % 100 === 0) lines.push(`STACK ${row / 100 + 1} - NORTH SHED,,,,,,,`, columns);
    const value = () => {
      if (random() < 0.03) return 'OL';
      readings++;
      return `${(10 + 9 * random()).toFixed(1)}${random() < 0.1 ? ' wet side' : ''}`;
    };
    const date = dayOf(random);
    const day = `Sat ${date.getUTCMonth() + 1}/${date.getUTCDate()}/${date.getUTCFullYear()}`;
    const temp = 45 + Math.floor(40 * random());
    lines.push(
      `${row + 101},${pick(random, ['PECAN', 'Post oak', 'Black walnut'])},${pick(random, ['4/4', '5/4', '8/4'])},${day},${temp},${value()},${value()},${row % 50 === 0 ? 'split at end' : ''}`,
    );
    if (row % 100 === 99) lines.push('Average,,,,,14.2,15.1,', ',,,,,,,');
  }
  const bytes = Buffer.from(lines.join('\r\n'));
  return { bytes, reader: { units: 'imperial', order: 'mdy' }, boards: ROWS, readings };
}

/**
 * Finnish: semicolons and decimal commas, the stack named over the header, a line with the species and the thickness over
 * its boards, a board's number once over its readings.
 */
export function finnish(): Spreadsheet {
  const random = createRandom(7);
  const lines = ['Pino: Ranta 3;;;;;', 'Lauta nro;Leveys mm;Mitattu;Kosteus;Syvyys;Huom.'];
  for (let row = 0; row < ROWS; row++) {
    if (row % 500 === 0) lines.push(`${pick(random, ['Mänty', 'Kuusi'])} ${pick(random, [50, 63])} mm;;;;;`);
    const date = dayOf(random);
    const day = `la ${date.getUTCDate()}.${date.getUTCMonth() + 1}.${date.getUTCFullYear()} klo 14.20`;
    const isFirst = row % 2 === 0;
    lines.push(
      `${row / 2 + 1};150;${day};${(11 + 8 * random()).toFixed(1).replace('.', ',')};${isFirst ? 'pinta' : 'sydän'};${row % 80 === 0 ? 'oksa' : ''}`.replace(
        /^\d+\.5;150/,
        ';',
      ),
    );
  }
  const bytes = Buffer.from(`\uFEFF${lines.join('\n')}\n`);
  return { bytes, reader: { units: 'metric', order: 'dmy' }, boards: ROWS / 2, readings: ROWS };
}

/** Brazilian: quoted decimal commas, the day in words over what was read on it, megohms, averages. */
export function brazilian(): Spreadsheet {
  const random = createRandom(8);
  const lines = ['Tábua,Espécie,Espessura (cm),Leitura (MΩ),Temp. da madeira (°C),Obs.'];
  const days = ['12 de março de 2025', '3 de junho de 2025', '28/set/2025', '1º de dezembro de 2025'];
  for (let row = 0; row < ROWS; row++) {
    if (row % 500 === 0) lines.push(`${days[row / 500]},,,,,`);
    const value = (5 + 200 * random()).toFixed(1).replace('.', ',');
    lines.push(
      `T${(row % 500) + 1},Jatoba,"5,2","${value}","${(20 + 9 * random()).toFixed(1).replace('.', ',')}",${row % 90 === 0 ? 'ponta úmida' : ''}`,
    );
    if (row % 500 === 499) lines.push('Média,,,"80,2",,');
  }
  const bytes = Buffer.from(lines.join('\r\n'));
  return { bytes, reader: { units: 'metric', order: 'dmy' }, boards: 500, readings: ROWS };
}

/** Pasted: a row a board, and for each visit a date, two readings and a temperature beside each other. */
export function visitsAcross(): Spreadsheet {
  const random = createRandom(9);
  const lines = [
    ['Board', 'Species', 'Thickness', ...Array(3).fill('Date\tMC 1\tMC 2\tTemp (F)')].join('\t'),
  ];
  let readings = 0;
  for (let row = 1; row <= ROWS; row++) {
    const visits = ['1-Jul-24', "Jan 20, '25", '05-May-2025'].flatMap((day, at) => {
      if (random() < 0.1) return ['', '', '', ''];
      readings += 2;
      const value = () => (24 - 5 * at + 3 * random()).toFixed(1);
      return [day, value(), value(), String(50 + 10 * at)];
    });
    lines.push([`V${row}`, 'cherry', '6/4', ...visits].join('\t'));
  }
  return {
    bytes: Buffer.from(lines.join('\n')),
    reader: { units: 'imperial', order: 'mdy' },
    boards: ROWS,
    readings,
  };
}
