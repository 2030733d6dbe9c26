/**
 * How freely moisture passes through a species: by its anatomy and not by its density alone. Boards of one class dry alike
 * in the same air.
 *
 * The classes are those that kiln schedules tell apart (J. F. Siau, Transport Processes in Wood, 1984, on permeability; W. T.
 * Simpson, Dry Kiln Operator's Manual, Agriculture Handbook 188, 1991, on schedules; both from memory). Lowland oaks are
 * apart from upland ones (P. J. Bois, Recognizing the Four Stages of Drying in Thick Oak; a page of it was read).
 */
import { z } from 'zod';
import type { Species } from './species.ts';

export const dryingClassSchema = z.enum([
  /** Vessels closed by tyloses or deposits throughout. */
  'refractory',
  'lowland-oak',
  'upland-oak',
  'ring-porous',
  'maple',
  'dense-hardwood',
  'light-hardwood',
  /** Interlocked grain and wet heartwood of southern bottomlands. */
  'gum',
  'pine',
  'softwood',
  /** Softwoods with wet pockets. */
  'wetwood',
  'baldcypress',
]);
export type DryingClass = z.infer<typeof dryingClassSchema>;

/** By genus; a botanical name that is listed with its species comes first. */
const classOfName: Readonly<Record<string, DryingClass>> = {
  'quercus-falcata': 'lowland-oak',
  'quercus-pagoda': 'lowland-oak',
  'quercus-laurifolia': 'lowland-oak',
  'quercus-nigra': 'lowland-oak',
  'quercus-phellos': 'lowland-oak',
  'quercus-palustris': 'lowland-oak',
  'quercus-shumardii': 'lowland-oak',
  'quercus-texana': 'lowland-oak',
  'quercus-lyrata': 'lowland-oak',
  'quercus-michauxii': 'lowland-oak',
  'quercus-bicolor': 'lowland-oak',
  'quercus-virginiana': 'refractory',
  quercus: 'upland-oak',
  notholithocarpus: 'refractory',
  robinia: 'refractory',
  maclura: 'refractory',
  eucalyptus: 'refractory',
  buxus: 'refractory',
  fraxinus: 'ring-porous',
  carya: 'ring-porous',
  ulmus: 'ring-porous',
  celtis: 'ring-porous',
  castanea: 'ring-porous',
  sassafras: 'ring-porous',
  gleditsia: 'ring-porous',
  gymnocladus: 'ring-porous',
  acer: 'maple',
  fagus: 'dense-hardwood',
  betula: 'dense-hardwood',
  prunus: 'dense-hardwood',
  'juglans-cinerea': 'light-hardwood',
  juglans: 'dense-hardwood',
  carpinus: 'dense-hardwood',
  ostrya: 'dense-hardwood',
  cornus: 'dense-hardwood',
  diospyros: 'dense-hardwood',
  arbutus: 'dense-hardwood',
  ilex: 'dense-hardwood',
  malus: 'dense-hardwood',
  pyrus: 'dense-hardwood',
  sorbus: 'dense-hardwood',
  swietenia: 'dense-hardwood',
  olea: 'dense-hardwood',
  alnus: 'light-hardwood',
  tilia: 'light-hardwood',
  populus: 'light-hardwood',
  salix: 'light-hardwood',
  aesculus: 'light-hardwood',
  liriodendron: 'light-hardwood',
  platanus: 'light-hardwood',
  catalpa: 'light-hardwood',
  'magnolia-acuminata': 'light-hardwood',
  magnolia: 'gum',
  liquidambar: 'gum',
  nyssa: 'gum',
  pinus: 'pine',
  picea: 'softwood',
  pseudotsuga: 'softwood',
  larix: 'softwood',
  thuja: 'softwood',
  chamaecyparis: 'softwood',
  callitropsis: 'softwood',
  calocedrus: 'softwood',
  juniperus: 'softwood',
  sequoia: 'softwood',
  taxus: 'softwood',
  cedrus: 'softwood',
  cupressus: 'softwood',
  abies: 'wetwood',
  tsuga: 'wetwood',
  taxodium: 'baldcypress',
};

/**
 * The class of a species, by its botanical name.
 *
 * @returns null where the name is not given or its genus not listed
 * @example dryingClassOf({ botanicalName: 'Quercus alba' }) // 'upland-oak'
 */
export function dryingClassOf({ botanicalName }: Pick<Species, 'botanicalName'>): DryingClass | null {
  const [genus = '', epithet = ''] = (botanicalName ?? '').toLowerCase().split(/[\s,]+/);
  return classOfName[`${genus}-${epithet}`] ?? classOfName[genus] ?? null;
}
