import type { YardRecord } from '../../shared-core/exchange/yard-tables.ts';
import type { RecordReads } from '../store/yard-records.ts';

/** Where each of two files says that a sensor is now. */
export interface SensorApart {
  own: YardRecord;
  their: YardRecord;
  /** The later one of these: it says where the sensor is once both are in one file. */
  last: YardRecord;
}

const sinceMs = ({ since }: YardRecord): number => Date.parse(String(since));
const isAfter = (a: YardRecord, b: YardRecord): boolean =>
  sinceMs(a) === sinceMs(b) ? a.uuid > b.uuid : sinceMs(a) > sinceMs(b);

/** The newest stay of each sensor, by its UUID. */
function newestOf(reads: RecordReads): Map<unknown, YardRecord> {
  const newest = new Map<unknown, YardRecord>();
  for (const stay of reads.all('airSensorStays')) {
    const known = newest.get(stay.sensor);
    if (known === undefined || isAfter(stay, known)) newest.set(stay.sensor, stay);
  }
  return newest;
}

/** Sensors that each of the two put at another place since they were the same. */
export function sensorsApart({ mine, theirs }: { mine: RecordReads; theirs: RecordReads }): SensorApart[] {
  const owns = newestOf(mine);
  return [...newestOf(theirs)].flatMap(([sensor, their]) => {
    const own = owns.get(sensor);
    if (own === undefined || own.place === their.place) return [];
    const isOld = mine.one('airSensorStays', their.uuid) ?? theirs.one('airSensorStays', own.uuid);
    return isOld ? [] : [{ own, their, last: isAfter(their, own) ? their : own }];
  });
}
