import { compile } from 'css-select';
import type { CssNode, DeclarationList, Rule } from 'css-tree';
import parse from 'css-tree/parser';
import { parse as parseSelectors, type Selector, SelectorType } from 'css-what';
import type { AnyNode, Document, Element } from 'domhandler';
import { getElementsByTagName, textContent } from 'domutils';

interface Declared {
  readonly value: string;
  readonly important: boolean;
}

interface StyleRule {
  readonly matches: (node: AnyNode) => boolean;
  /** Ids, classes and names in its selector: more of the former win, then later rules. */
  readonly specificity: readonly number[];
  readonly declared: ReadonlyMap<string, Declared>;
}

/** What the style sheets in a drawing and its style attributes say of its elements. */
export class Styles {
  /** In the order in which they win: the last one that matches does. */
  private readonly rules: readonly StyleRule[];
  /** Rules that were not followed, with how many of each kind. */
  readonly ignored: ReadonlyMap<string, number>;

  constructor(document: Document) {
    const ignored = new Map<string, number>();
    const ignore = (kind: string): void => {
      ignored.set(kind, (ignored.get(kind) ?? 0) + 1);
    };
    this.rules = getElementsByTagName('style', document)
      .flatMap((element) => rulesOf(textContent(element), ignore))
      .sort((a, b) => compareSpecificity(a.specificity, b.specificity));
    this.ignored = ignored;
  }

  /**
   * The properties of an element: important ones of its style attribute, then of the sheets, then the others in the
   * same order, and last its attributes of the same names.
   */
  of(element: Element): (property: string) => string | undefined {
    const own = declarationsOf(element.attribs.style ?? '');
    const winners = new Map<string, Declared>();
    const take = (declared: ReadonlyMap<string, Declared>): void => {
      for (const [property, next] of declared) {
        if (next.important || !winners.get(property)?.important) winners.set(property, next);
      }
    };
    for (const { matches, declared } of this.rules) if (matches(element)) take(declared);
    take(own);
    return (property) => winners.get(property)?.value ?? element.attribs[property];
  }
}

/** What would not be followed although it may hide or move something. */
const conditional = new Set(['media', 'import', 'supports', 'layer', 'container', 'scope']);

function rulesOf(sheet: string, ignore: (kind: string) => void): StyleRule[] {
  const tree = parse(sheet, { parseRulePrelude: false, parseAtrulePrelude: false, parseValue: false });
  const nodes = tree.type === 'StyleSheet' ? tree.children.toArray() : [];
  return nodes.flatMap((node) => {
    if (node.type === 'Atrule' && conditional.has(node.name)) ignore(`@${node.name}`);
    return node.type === 'Rule' ? selectorsOf(node, ignore) : [];
  });
}

/** A rule for each of its selectors, which may differ in what they win over. */
function selectorsOf({ prelude, block }: Rule, ignore: (kind: string) => void): StyleRule[] {
  if (prelude.type !== 'Raw') return [];
  try {
    const declared = declaredIn(block.children.toArray());
    return parseSelectors(prelude.value).map((selector) => ({
      matches: compile<AnyNode, Element>([selector], { xmlMode: true }),
      specificity: specificityOf(selector),
      declared,
    }));
  } catch {
    // A selector of another kind of page, such as one with a state of the mouse, or none at all.
    ignore('style rule');
    return [];
  }
}

const declarationsOf = (text: string): ReadonlyMap<string, Declared> => {
  const list = parse(text, { context: 'declarationList', parseValue: false });
  return declaredIn(isDeclarationList(list) ? list.children.toArray() : []);
};

const isDeclarationList = (node: CssNode): node is DeclarationList => node.type === 'DeclarationList';

function declaredIn(nodes: readonly CssNode[]): ReadonlyMap<string, Declared> {
  const declared = new Map<string, Declared>();
  for (const node of nodes) {
    if (node.type !== 'Declaration' || node.value.type !== 'Raw') continue;
    const property = node.property.toLowerCase();
    const important = node.important !== false;
    if (important || !declared.get(property)?.important)
      declared.set(property, { value: node.value.value.trim(), important });
  }
  return declared;
}

/** Selectors Level 4, 17; what stands within a pseudo-class counts as one class. */
function specificityOf(selector: readonly Selector[]): readonly number[] {
  const isId = (token: Selector): boolean =>
    token.type === SelectorType.Attribute && token.name === 'id' && token.action === 'equals';
  const count = (test: (token: Selector) => boolean): number => selector.filter(test).length;
  return [
    count(isId),
    count(
      (token) =>
        token.type === SelectorType.Pseudo || (token.type === SelectorType.Attribute && !isId(token)),
    ),
    count((token) => token.type === SelectorType.Tag || token.type === SelectorType.PseudoElement),
  ];
}

const compareSpecificity = (a: readonly number[], b: readonly number[]): number =>
  a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
