import { type ColumnRole, type ColumnUnit, type DayOrder, isOhmUnit } from '../contract/import.ts';
import type { Depth } from '../probing/readings/reading.ts';
import { dayIn, monthIn, unitAt } from './cells.ts';

/** What a header says of its column. */
export interface HeaderMeaning {
  role: ColumnRole | null;
  unit: ColumnUnit | null;
  depth: Depth | null;
  /** Where the header is the date of readings, or of the wood's temperature, or has one in it: how it is written. */
  dateText: string | null;
  /** It says what the meter showed, before any correction. */
  isRaw: boolean;
}

/** What describes a board and where it is: a table may have a line or a column of each. */
export const factsOfBoards: readonly ColumnRole[] = [
  'species',
  'thickness',
  'width',
  'length',
  'stack',
  'place',
];

/** What columns are called, as words without marks. Common practice, no source. */
const NAMES: readonly [ColumnRole, RegExp][] = [
  [
    'sawn-on',
    /^(date )?(sawn|sawed|milled|cut|felled)( on| date)?$|^sawing date$|^mill date$|^(eingeschnitten|einschnitt(datum)?|(tag|datum) des einschnitts|gesagt|sagedatum)( am)?$|^(sahattu|sagad|serrado|serrada|aserrado|scie)( em| el| le)?$/,
  ],
  [
    'wood-temp',
    /^(wood |board )?temp(erature|eratur)?( of (the )?wood)?( [cf])?$|^holztemp(eratur)?( [cf])?$|^(puun lampotila|temp(eratura)?( da)? madeira|temp(eratura)?( de la)? madera)( [cf])?$/,
  ],
  [
    'air-temp',
    /^(air|ambient|outdoor|outside|room) temp(erature)?( [cf])?$|^lufttemp(eratur)?$|^dry bulb( temp(erature)?)?$|^(ilman lampotila|temp(eratura)? do ar|temp(eratura)? del aire|temp(erature)? de l air)$/,
  ],
  [
    'humidity',
    /^(rel(ative)? )?humidity$|^r ?h( mean| avg)?$|^(rel(ative)? )?(luft)?feuchtigkeit$|^(rel(ative)? )?luftfeuchte$|^rel(ative)? feuchte$|^r ?f$|^(mean|average|avg) (rh|humidity)$|^(ilman kosteus|umidade( relativa)?( do ar)|humedad relativa|humidite relative|luftfuktighet)$/,
  ],
  [
    'wet-weight',
    /^(wet|green|initial|start)( (piece|sample))?( (weight|mass|wt))?$|^(nass|feucht|frisch)(gewicht|masse)$|^gewicht vor dem trocknen$/,
  ],
  [
    'dry-weight',
    /^(oven ?)?(dry|dried|od|final)( (weight|mass|wt))?( \d)?$|^weight( \d| after.*)$|^darr(gewicht|masse)$|^trocken(gewicht|masse)$|^gewicht aus dem ofen$/,
  ],
  ['piece', /^(piece|sample|specimen|test piece|probe|probestuck|muster)( (id|no|number|nr))?$/],
  [
    'thickness',
    /^(nom(inal)? |rough )?(thick(ness)?|thk|t)$|^(dicke|starke)$|^quarters$|^(paksuus|tjocklek|espessura|espesor|grosor|epaisseur)$/,
  ],
  ['width', /^(avg |average |mean )?(width|w|wid)$|^breite$|^(leveys|bredd|largura|ancho|anchura|largeur)$/],
  ['length', /^(length|len|l)$|^lange$|^(pituus|langd|comprimento|largo|longitud|longueur)$/],
  [
    'species',
    /^(wood )?(species|spec|wood|timber|kind|type of wood)$|^(holz)?art$|^baumart$|^holz$|^(puulaji|traslag|especie|madeira|madera|essence|espece)$/,
  ],
  [
    'stack',
    /^(stack|pile|bundle|lot|stapel|paket)( (id|no|name|number|nr))?$|^(pino|taapeli|nippu|trave|pilha|lote|fardo|pila|empilage)( (nro|n|no))?$/,
  ],
  [
    'place',
    /^(place|location|loc|shed|site|where|room|lager(ort|platz)?|ort|standort|schuppen)( name)?$|^(paikka|varasto|plats|local|galpao|lugar|lieu|hangar)$/,
  ],
  ['log', /^(log|tree|stamm|baum)( (id|no|number|nr))?$|^(tukki|tora|tronco|grume)( (nro|n|no))?$/],
  ['layer', /^(layer|course|row in stack|lage)( no)?$/],
  [
    'note',
    /^(notes?|remarks?|comments?|bemerkung(en)?|notiz(en)?|anmerkung(en)?)$|^(huom(autus|io)?|muistiinpano|anmarkning|obs(ervac(ao|oes|ion|iones))?|notas?|remarques?)$/,
  ],
  ['month', /^(month|monat)$|^(kuukausi|kk|manad|mes|mois)$/],
  ['time', /^(time|hour|uhrzeit|zeit|time of day)$|^(klo|aika|kellonaika|hora|heure)$/],
  [
    'day',
    /^(date|day|datum|(date|day|datum) ?\d|(dry|oven dry|weighed|out) date|date (dry|dried|out|weighed)|date read|reading date|probed( on)?|measured( on)?|date (measured|taken|probed)|messdatum|gemessen( am)?|timestamp|date time|datetime|taken at|read at)$|^(pvm|paivays|paivamaara|mittauspaiva|mitattu|data( da medicao)?|fecha|dia|jour)$/,
  ],
  ['reading-unit', /^((meter|reading|moisture|mc) )?(unit|units|einheit( des messwerts)?)$/],
  [
    'depth',
    /^((pin|probe|reading) )?depth( of (pins|reading))?$|^(mess|einstech)?tiefe$|^(syvyys|djup|profundidade|profundidad|profondeur)$/,
  ],
  [
    'code',
    /^(board|id|no|nr|num(ber)?|code|tag|label|plank|slab|brett|bohle|nummer|kennung|item|piece|ref)( ?(id|no|nr|number|code|tag|name|nummer))?$|^(board|brett|bohlen)(id|nr|nummer|kennung)$|^(lauta|lankku|planka|brada|tabua|prancha|tabla|planche|numero|nro|codigo)( (n|nro|no|numero|id))?$/,
  ],
  [
    'reading',
    /^((wood )?moisture( content)?|m ?c|mc pct|reading|value|wert|messwert|holzfeuchte|holzfeuchtigkeit|feuchte|u|pin|meter|raw|corrected( mc)?)( (reading|value|content|pct|in))?( ?\d{1,2}| [a-c])?$|^(spot|point|r|p|m|mw|messpunkt|messstelle|messung|reading|pin|mc) ?\d{1,2}$|^(mittaus|kosteus|puun kosteus|fuktkvot|fukt|umidade|leitura|humedad|lectura|humidite|mesure|lecture)( da madeira| de la madera| du bois)?( pct)?( ?\d{1,2}| [a-c])?$/,
  ],
];

/** What a meter showed is what an import corrects; what somebody else corrected is no further reading. */
const RAW = /^(raw|uncorrected|(meter )?(showed|shown|displayed)|rohwert|unkorrigiert)\b/;

const DEPTHS: readonly [Depth, RegExp][] = [
  ['shell', /\b(shell|surface|face|outer|schale|rand|aussen|pinta|yta|superficie|casca)\b/],
  ['core', /\b(core|cent(er|re)|middle|inner|kern|mitte|innen|sydan|karna|mitt|nucleo|miolo|centro|coeur)\b/],
  ['average', /\b(average|avg|mean|mittel|mittelwert|durchschnitt|keskiarvo|medel|media|promedio|moyenne)\b/],
];

const words = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** A unit in brackets, or at the end behind a comma or a slash: "Thickness (in)", "Temp, °F", "MC %". */
const UNIT =
  /[([]\s*(?<bracketed>[^)\]]{1,12})\s*[)\]]|[,/]\s*(?<last>[^,/\s]{1,8})\s*$|(?<bare>\s(mm|cm|m|in|ft|°[CF]|kg|g|%|[kMG]?[ΩΩ])|%)$/u;

const ORDERS: readonly DayOrder[] = ['mdy', 'dmy', 'ymd'];

/** A date within a text, as it is written there; null for none. */
export function dateTextIn(text: string, today: string): string | null {
  const figures = /\d{1,4}[./-]\d{1,2}[./-]\d{2,4}/.exec(text)?.[0];
  if (figures !== undefined && ORDERS.some((order) => dayIn(figures, order, today) !== null)) return figures;
  // Nearly every ID has letters beside numbers: only those with the name of a month are read on.
  const letters = text.match(/\p{L}{3,}/gu) ?? [];
  if (!letters.some((word) => monthIn(word) !== null)) return null;
  const named =
    /\d{1,2}\.?[\s-]*\p{L}{3,}\.?,?[\s-]*\d{2,4}/u.exec(text)?.[0] ??
    /\p{L}{3,}\.?[\s-]*\d{1,2},?[\s-]+\d{2,4}/u.exec(text)?.[0];
  return named !== undefined && dayIn(named, 'ymd', today) !== null ? named : null;
}

/** What a header says: "Thickness (in)", "MC % 2024-05-03", "Core 5/3/24", "Holzfeuchte [%]". */
export function meaningOf(written: string, today: string): HeaderMeaning {
  const header = written.replaceAll('_', ' ');
  const dateText = dateTextIn(header, today);
  const rest = dateText === null ? header : header.replace(dateText, ' ');
  const found = UNIT.exec(rest);
  const unitText = found?.groups?.bracketed ?? found?.groups?.last ?? found?.groups?.bare ?? '';
  const trimmed = unitText.trim();
  const known = unitAt(trimmed) ?? unitAt(trimmed.toUpperCase());
  const unit =
    trimmed === '"' ? 'in' : /^(4\/4|quarters?|\/4)$/i.test(trimmed) ? 'quarters' : (known?.unit ?? null);
  const name = words(unit === null && !found?.groups?.bare ? rest : rest.replace(found?.[0] ?? '', ' '));
  const isRaw = RAW.test(name);
  const depth = DEPTHS.find(([, pattern]) => pattern.test(name))?.[0] ?? null;
  const withoutDepth = words(DEPTHS.reduce((left, [, pattern]) => left.replace(pattern, ' '), name));
  const role =
    NAMES.find(([, pattern]) => pattern.test(name))?.[0] ??
    // What is in ohms is what a meter showed, whatever it is called.
    (isRaw || isOhmUnit(unit) ? 'reading' : null) ??
    (depth === null
      ? null
      : withoutDepth === '' || /^\d{1,2}$/.test(withoutDepth) || isReading(withoutDepth)
        ? 'reading'
        : null);
  const isDated =
    dateText !== null && (name === '' || role === 'reading' || role === 'day' || depth !== null);
  const isOfTemp = dateText !== null && role === 'wood-temp';
  const inName = /temp\w* ([cf])$/.exec(name)?.[1] as ColumnUnit | undefined;
  return {
    role: isDated && !isOfTemp ? 'reading' : role,
    unit: unit ?? inName ?? null,
    depth,
    dateText: isDated || isOfTemp ? dateText : null,
    isRaw,
  };
}

const isReading = (name: string): boolean => NAMES.find(([role]) => role === 'reading')![1].test(name);

/** Whether a text is what a column is called, and no value. */
export const isHeaderLike = (text: string, today: string): boolean => {
  const { role, dateText } = meaningOf(text, today);
  return role !== null || dateText !== null;
};

/** What "S" and "C" are beside each other under dates. Common practice, no source. */
const SHORT_DEPTHS: Readonly<Record<string, Depth>> = { s: 'shell', c: 'core' };
/** What stands under a date as a person would write it out: "C" is core. */
export const writtenOut = (text: string): string => SHORT_DEPTHS[text.toLowerCase()] ?? text;

/** What readings tell whose depth is named so: "shell", "Kern"; null for another text. */
export const depthNamed = (text: string): Depth | null =>
  DEPTHS.find(([, pattern]) => pattern.test(words(text)))?.[0] ?? null;
