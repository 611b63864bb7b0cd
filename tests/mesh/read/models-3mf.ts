import { meshXml, modelXml, package3mf, read } from '../mesh-files.ts';

/** Pieces of 3MF models written by hand. */
export const object = (id: number, inner = meshXml, more = ''): string =>
  `<object id="${id}" ${more}>${inner}</object>`;
export const item = (id: number, transform?: string): string =>
  `<item objectid="${id}"${transform === undefined ? '' : ` transform="${transform}"`}/>`;
export const component = (id: number, transform?: string): string =>
  `<component objectid="${id}"${transform === undefined ? '' : ` transform="${transform}"`}/>`;
export const components = (...list: string[]): string => `<components>${list.join('')}</components>`;
export const simple = modelXml(object(1), item(1));
export const read3mf = (model: string | Uint8Array, parts = {}) => read(package3mf(model, parts), 'leaf.3mf');
export const pointsOf = (outcome: ReturnType<typeof read>): number[] => [...(outcome.mesh?.positions ?? [])];

/** A chain of objects, each made of two of the one before: 2^n times the first. */
export const doubling = (n: number, first = meshXml): string =>
  Array.from({ length: n }, (_, i) => object(i + 2, components(component(i + 1), component(i + 1)))).reduce(
    (all, one) => all + one,
    object(1, first),
  );
export const chain = (n: number): string =>
  Array.from({ length: n }, (_, i) => object(i + 2, components(component(i + 1)))).reduce(
    (all, one) => all + one,
    object(1),
  );
