import { create } from 'zustand';

/** The last search among the species, so that coming back from one finds the list as it was. */
export const useSpeciesSearch = create<{ query: string }>()(() => ({ query: '' }));
