export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Hours of a year, January 1 first, as an EPW file has them; other columns as where nothing was measured. */
export function epwText(
  hours: readonly (readonly [tempC: number, rhPct: number])[],
  siteName: string,
  region: string,
): string {
  const header = [
    `LOCATION,${siteName},${region},USA,TMY3,723150,35.43,-82.54,-5.0,661.0`,
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
  ];
  const days = MONTH_DAYS.flatMap((length, month) =>
    Array.from({ length }, (_, day) => [month + 1, day + 1]),
  );
  const rows = hours.map(([tempC, rhPct], hour) => {
    const [month, day] = days[Math.floor(hour / 24)]!;
    return `1995,${month},${day},${(hour % 24) + 1},0,?9?9?9,${tempC},99.9,${rhPct},999999,9999,9999`;
  });
  return [...header, ...rows].join('\r\n');
}
