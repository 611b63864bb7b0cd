import { runs } from '../../wording/index.ts';
import type { Build } from '../build.ts';
import { folderOf } from '../folders.ts';
import { cutInstead, drawingsToCut, rubberToCut } from './cutting-list.ts';
import type { Listing, Sizes } from './listing.ts';
import { solidsToMake } from './solids-to-make.ts';
import { stockToTake } from './stock-to-take.ts';

export interface WhatToMake {
  readonly listings: readonly Listing[];
  /** Sentences after the tables. */
  readonly remarks: readonly string[];
}

/** All that is to be made, cut and taken for a mold: the same on paper and in the terminal. */
export function whatToMake(build: Build, sizes: Sizes): WhatToMake {
  const instead = cutInstead(build);
  const seen = build.solids.filter(({ solid }) => folderOf(solid, build.mold) === 'look');
  return {
    listings: [
      ...solidsToMake(build, sizes),
      ...drawingsToCut(build, sizes),
      ...rubberToCut(build, sizes),
      ...stockToTake(build),
    ],
    remarks: [
      ...(instead.length > 0
        ? [`Flat, and cut by its drawing in the folder cut where that is handier: ${runs(instead)}.`]
        : []),
      ...(seen.length > 0
        ? [`Only to look at, in the folder look: ${seen.map(({ name }) => name).join(', ')}.`]
        : []),
    ],
  };
}
