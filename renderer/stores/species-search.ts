import { create } from 'zustand';

/** What was last searched for among the woods, so that coming back from one finds the list as it was. */
export const useSpeciesSearch = create<{ query: string }>()(() => ({ query: '' }));
