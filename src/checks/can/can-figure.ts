import { type Figure, type FigureName, makeFigure } from '../../findings/index.ts';

/** A figure of the closing of the can. */
export const closingFigure = (name: FigureName, value: number, source: string, estimated = false): Figure =>
  makeFigure(name, { subject: 'closing', value, source, estimated });

export const byPlan = 'the plan, or its rule for this disc';
