import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { emptyMold, smallSprue, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

/** Round numbers near those of a tin alloy. */
export const tin = {
  densityKgM3: 7000,
  solidusC: 230,
  liquidusC: 240,
  pourC: 280,
  latentHeatJKg: 60_000,
  heatMoltenJKgK: 250,
  heatSolidJKgK: 240,
  conductivityWMK: 40,
};
/** e = 0.2 / sqrt(1e-7) = 632.4555 J/m2Ks^1/2, rho c = 2 MJ/m3K. */
export const rubber = { conductivityWMK: 0.2, diffusivityM2S: 1e-7 };

const cube = single(box([-6, -6, -6], [6, 6, 6]));

/** Cubes of 12 mm on a disc of 250 mm and 25.4 mm. */
export const cubes = (bench: Partial<Mold['bench']> = {}, count = 1): Mold => {
  const places = Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count);
  return {
    ...withMaster(
      { ...emptyMold, sprue: smallSprue },
      'cube',
      cube,
      ...places.map((angle) => translation(80 * Math.cos(angle), 80 * Math.sin(angle), 0)),
    ),
    bench: {
      alloy: tin,
      rubber,
      spin: { speedRpm: 600, shotKg: 0.04 },
      pouring: { halvesC: 30 },
      ...bench,
    },
  };
};
