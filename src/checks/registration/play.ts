import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';
import { degreesPerRad } from '../../geometry/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { largestMismatch, largestTurn, type Pin } from '../../physics/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { holds, noFlex, pinsOf, source } from './pins.ts';

interface PlayInput {
  readonly pins: readonly Pin[] | null;
  readonly estimated: boolean;
}

/** How far one half can shift and turn on the other, closed. */
export const play: Check = check<PlayInput>({
  id: 'play',
  title: 'Play of the closed halves',
  follows: false,
  processes: everyProcess,
  units: (mold) =>
    holds(mold)
      ? [
          {
            subject: 'mold',
            about: [],
            input: { pins: pinsOf(mold) ?? null, estimated: mold.process !== 'rigid' },
          },
        ]
      : [],
  run: ({ pins, estimated }) => {
    if (!pins) return { findings: [noFlex()] };
    const figure = (name: FigureName, value: number): Figure =>
      makeFigure(name, { subject: 'mold', value, source, estimated });
    const shift = largestMismatch(pins, [[0, 0]])?.distance ?? 0;
    return {
      figures: [
        figure('registration.shift', shift),
        figure('registration.turn', largestTurn(pins) * degreesPerRad),
      ],
    };
  },
});
