import type { missing as english } from '../en/missing.ts';

export const missing = {
  'missing.title': 'Fehlt noch',
  'missing.edit': 'Dieses Brett bearbeiten',
  'missing.sawn-on': 'Tag des Einschnitts: Damit beginnt die Prognose beim frischen Holz.',
  'missing.station': 'Nächste Wetterstation nach {placeName}: macht die Termine genauer.',
  'missing.log': 'Stamm: Bretter eines Stamms machen gegenseitig ihre Termine genauer.',
  'missing.length': 'Länge: Dann werden die Messstellen von den Enden aus bemessen.',
  'missing.end':
    '{lacking, select, width {Breite} sawing {Lage der Jahrringe} other {Breite und Lage der Jahrringe}}: Dann wird die Schüsselung vorhergesagt.',
  'missing.bark-side': 'Rindenseite: zeigt, welche Breitseite hohl wird.',
  'missing.layer': 'Lage: Oben und unten im Stapel trocknet es verschieden schnell.',
} satisfies Record<keyof typeof english, string>;
