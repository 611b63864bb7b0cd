import type { CssNode, Dimension, NumberNode, Percentage } from 'css-tree';
import parse from 'css-tree/parser';
import { compose, identity, type Matrix, rotateDEG, scale, skew, translate } from 'transformation-matrix';
import { degreesPerRad, mmPerInch, radPerDegree } from '../../../geometry/index.ts';

/** A number as it is written, with its unit in small letters: '' for none, '%' for percent. */
export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/** User units, which are CSS pixels, are 96 to the inch. */
export const mmPerPixel = mmPerInch / 96;
/** SVG 2 / CSS absolute units in mm. */
const lengthUnits: Readonly<Record<string, number>> = {
  '': mmPerPixel,
  px: mmPerPixel,
  in: mmPerInch,
  mm: 1,
  cm: 10,
  q: 0.25,
  pt: mmPerInch / 72,
  pc: mmPerInch / 6,
};
const degreesPer: Readonly<Record<string, number>> = {
  '': 1,
  deg: 1,
  grad: 0.9,
  rad: degreesPerRad,
  turn: 360,
};

/** An absolute length in mm; undefined for any other. */
export function lengthInMm({ value, unit }: Quantity): number | undefined {
  const mm = lengthUnits[unit];
  return mm === undefined ? undefined : value * mm;
}

/** An absolute length in user units; undefined for any other. */
export function lengthInPixels({ value, unit }: Quantity): number | undefined {
  if (unit === '' || unit === 'px') return value;
  const mm = lengthInMm({ value, unit });
  return mm === undefined ? undefined : mm / mmPerPixel;
}

/** One length or percentage; undefined where the text is none. */
export function parseLength(text: string): Quantity | undefined {
  const nodes = partsOf(text);
  const quantities = nodes && quantitiesOf(nodes);
  return quantities?.length === 1 ? quantities[0] : undefined;
}

/** Plain numbers; undefined where the text holds anything else. */
export function parseNumbers(text: string): number[] | undefined {
  const nodes = partsOf(text);
  const quantities = nodes && quantitiesOf(nodes);
  return quantities?.every(({ unit }) => unit === '') ? quantities.map(({ value }) => value) : undefined;
}

/** A list of transforms as SVG or CSS writes them; undefined where it makes no sense. */
export function parseTransform(text: string): Matrix | undefined {
  if (text.trim() === '' || text.trim() === 'none') return identity();
  const steps = partsOf(text)?.map((node) => {
    const quantities = node.type === 'Function' ? quantitiesOf(node.children.toArray()) : undefined;
    return node.type === 'Function' && quantities ? single(node.name, quantities) : undefined;
  });
  if (!steps?.every((step) => step !== undefined)) return undefined;
  const matrix = compose(steps);
  return Object.values(matrix).every(Number.isFinite) ? matrix : undefined;
}

/** What a value is made of, less its commas; undefined where it breaks the grammar of CSS, which SVG's numbers follow. */
function partsOf(text: string): CssNode[] | undefined {
  try {
    // Some programs write 5. for 5, which is no number of SVG 2.
    const value = parse(text.replace(/(\d)\.(?=\D|$)/g, '$1'), { context: 'value' });
    return value.type === 'Value' ? value.children.toArray().filter((node) => !isComma(node)) : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

const isComma = (node: CssNode): boolean => node.type === 'Operator' && node.value.trim() === ',';

const isQuantity = (node: CssNode): node is NumberNode | Dimension | Percentage =>
  node.type === 'Number' || node.type === 'Dimension' || node.type === 'Percentage';

function quantitiesOf(nodes: readonly CssNode[]): Quantity[] | undefined {
  const parts = nodes.filter((node) => !isComma(node));
  if (!parts.every(isQuantity)) return undefined;
  const quantities = parts.map((node) => ({
    value: Number(node.value),
    unit: node.type === 'Number' ? '' : node.type === 'Percentage' ? '%' : node.unit.toLowerCase(),
  }));
  return quantities.every(({ value }) => Number.isFinite(value)) ? quantities : undefined;
}

const known = <T>(values: readonly (T | undefined)[]): values is readonly T[] =>
  values.every((value) => value !== undefined);

function single(name: string, given: readonly Quantity[]): Matrix | undefined {
  const plain = given.map(({ value, unit }) => (unit === '' ? value : undefined));
  const lengths = given.map(lengthInPixels);
  const degrees = given.map(({ value, unit }) => {
    const per = degreesPer[unit];
    return per === undefined ? undefined : value * per;
  });
  const n = given.length;
  if (name === 'matrix' && n === 6 && known(plain)) {
    const [a, b, c, d, e, f] = plain;
    return { a, b, c, d, e, f };
  }
  if (name === 'translate' && (n === 1 || n === 2) && known(lengths)) {
    return translate(lengths[0], n === 2 ? lengths[1] : 0);
  }
  if (name === 'scale' && (n === 1 || n === 2) && known(plain)) return scale(plain[0], plain[n - 1]);
  if (name === 'skewX' && n === 1 && known(degrees)) return skew(degrees[0] * radPerDegree, 0);
  if (name === 'skewY' && n === 1 && known(degrees)) return skew(0, degrees[0] * radPerDegree);
  if (name === 'rotate' && n === 1 && known(degrees)) return rotateDEG(degrees[0]);
  if (name === 'rotate' && n === 3 && known(plain)) return rotateDEG(plain[0], plain[1], plain[2]);
  return undefined;
}
