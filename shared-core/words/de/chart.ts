import type { chart as english } from '../en/chart.ts';

export const chart = {
  'chart.day': 'Tag',
  'chart.mc': 'Holzfeuchte',
  'chart.target': 'Ziel {targetRange}',
  'chart.with-interval': '{valueText} ({intervalText})',
  'chart.reading': '{seriesName}: {valueText}',
  'chart.values': 'Werte: {chartTitle}',
  'chart.keys': 'Mit den Pfeiltasten links und rechts lesen.',
  'chart.export': 'Exportieren',
  'chart.save-svg': 'SVG speichern',
  'chart.save-png': 'PNG speichern',
} satisfies Record<keyof typeof english, string>;
