import type { Figure, FigureName } from '../../findings/index.ts';
import { report } from './store.ts';

/** The report's figure of a name, about one subject or about whatever it has first. */
export const figureOf = (name: FigureName, subject?: string): Figure | undefined =>
  report.value?.figures.find(
    (one) => one.name === name && (subject === undefined || one.subject === subject),
  );

export const figuresOf = (name: FigureName): readonly Figure[] =>
  report.value?.figures.filter((one) => one.name === name) ?? [];
