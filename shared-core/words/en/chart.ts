/** What every chart has: its axes, what is read out, and what can be saved. */
export const chart = {
  'chart.day': 'Day',
  'chart.mc': 'Moisture content',
  'chart.target': 'Target {targetRange}',
  'chart.with-interval': '{valueText} ({intervalText})',
  'chart.reading': '{seriesName}: {valueText}',
  'chart.values': 'Values: {chartTitle}',
  'chart.keys': 'Read them with the left and right arrow keys.',
  'chart.export': 'Export',
  'chart.save-svg': 'Save SVG',
  'chart.save-png': 'Save PNG',
} as const;
