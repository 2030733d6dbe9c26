/** As printed on the publications themselves, and in the addresses of pages. */
export const asPublished = [
  'Accuracy and Functionality of Hand Held Wood Moisture Content Meters',
  'Electric Moisture Meters for Wood',
  'Good Practice Guidance',
  'IPCC Guidelines',
  'Research Note',
  'U.S. Forest Service',
  'VTT Publications',
  'Wood Handbook',
  'holzhandel.de',
  'topstyle-flooring.com',
];

export const withoutTitles = (text: string): string =>
  asPublished.reduce((left, title) => left.replaceAll(title, ''), text);
