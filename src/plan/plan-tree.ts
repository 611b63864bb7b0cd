import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import {
  type CodeValues,
  type Finding,
  type FindingCode,
  findingWith,
  type TextPlace,
} from '../findings/index.ts';
import type { PlanDocument } from './plan-document.ts';

/** Most entries read, counting what aliases repeat: bounds the work that anchors and aliases can ask for. */
const mostEntries = 50_000;
const deepest = 40;

/** A way into the plan, such as `['placements', 2, 'sink']`. */
export type PlanPath = readonly PropertyKey[];

/** The plan as plain values, and where each of them stands in the text. */
export interface PlanTree {
  readonly value: unknown;
  readonly findings: readonly Finding[];
  /** True when reading ended early, so that the value is only a beginning. */
  readonly cutShort: boolean;
  /** Place of a value; where the plan does not have it, of the nearest thing round it. */
  spotAt(path: PlanPath): TextPlace;
  /** Place of the name of an entry. */
  keySpotAt(path: PlanPath): TextPlace;
  has(path: PlanPath): boolean;
}

interface Leaf {
  readonly offset: number;
  readonly keyOffset: number;
  readonly inside: Map<PropertyKey, Leaf>;
}

/** Turns the YAML nodes into plain values in document order, following aliases within bounds. */
export function planTree(source: PlanDocument): PlanTree {
  const walk = new Walk(source);
  const root: Leaf = { offset: source.document.contents?.range?.[0] ?? 0, keyOffset: 0, inside: new Map() };
  const value = walk.value(source.document.contents, root, []);
  const leafAt = (path: PlanPath): { leaf: Leaf; whole: boolean } => {
    let leaf = root;
    for (const step of path) {
      const next = leaf.inside.get(step);
      if (!next) return { leaf, whole: false };
      leaf = next;
    }
    return { leaf, whole: true };
  };
  return {
    value,
    findings: walk.findings,
    cutShort: walk.stopped,
    spotAt: (path) => source.place(leafAt(path).leaf.offset),
    keySpotAt: (path) => source.place(leafAt(path).leaf.keyOffset),
    has: (path) => leafAt(path).whole,
  };
}

/** A path as people read it: `placements#3.sink`, entries of lists counted from 1. */
export const sayPath = (path: PlanPath): string =>
  path.reduce<string>((said, step) => {
    if (typeof step === 'number') return `${said}#${step + 1}`;
    return said === '' ? String(step) : `${said}.${String(step)}`;
  }, '') || 'plan';

class Walk {
  readonly findings: Finding[] = [];
  readonly #source: PlanDocument;
  readonly #anchors = new Map<string, Node>();
  #entries = 0;
  stopped = false;

  constructor(source: PlanDocument) {
    this.#source = source;
  }

  /** `node` is null only for an empty value. */
  value(node: Node | null, leaf: Leaf, path: PlanPath): unknown {
    if (this.stopped || node === null) return null;
    if (++this.#entries > mostEntries) {
      return this.#stop('plan.too-much', { limit: mostEntries }, leaf, path);
    }
    if (path.length > deepest) {
      return this.#stop('plan.too-deep', { limit: deepest }, leaf, path);
    }
    if (isAlias(node)) {
      const meant = this.#anchors.get(node.source);
      if (meant) return this.value(meant, leaf, path);
      this.#find('plan.alias', { name: node.source }, leaf.offset, path);
      return null;
    }
    if ('anchor' in node && node.anchor) this.#anchors.set(node.anchor, node);
    if (isMap(node)) return this.#map(node, leaf, path);
    if (isSeq(node)) return this.#list(node, leaf, path);
    return isScalar(node) ? node.value : null;
  }

  #list(list: YAMLSeq, leaf: Leaf, path: PlanPath): unknown[] {
    const values: unknown[] = [];
    for (const [i, item] of list.items.entries()) {
      if (this.stopped) break;
      const node = item as Node;
      const offset = node.range?.[0] ?? leaf.offset;
      const next: Leaf = { offset, keyOffset: offset, inside: new Map() };
      leaf.inside.set(i, next);
      values.push(this.value(node, next, [...path, i]));
    }
    return values;
  }

  #map(map: YAMLMap, leaf: Leaf, path: PlanPath): Record<string, unknown> {
    // Without a prototype, so that no name a user may write means anything special.
    const values: Record<string, unknown> = Object.create(null);
    for (const pair of map.items as Pair<Node | null, Node | null>[]) {
      if (this.stopped) break;
      const keyOffset = pair.key?.range?.[0] ?? leaf.offset;
      const key = this.#key(pair, keyOffset, path, map.flow === true);
      if (key === undefined) continue;
      if (Object.hasOwn(values, key)) {
        const { line } = this.#source.place(leaf.inside.get(key)?.keyOffset ?? 0);
        this.#find('plan.duplicate-key', { name: clip(key), line }, keyOffset, [...path, key]);
        continue;
      }
      const next: Leaf = { offset: pair.value?.range?.[0] ?? keyOffset, keyOffset, inside: new Map() };
      leaf.inside.set(key, next);
      values[key] = this.value(pair.value, next, [...path, key]);
    }
    return values;
  }

  /** The name of an entry in composed form, or undefined with a finding where it is none. */
  #key(
    pair: Pair<Node | null, Node | null>,
    offset: number,
    path: PlanPath,
    flow: boolean,
  ): string | undefined {
    const meant = isAlias(pair.key) ? this.#anchors.get(pair.key.source) : pair.key;
    if (!isScalar(meant) || (meant.value === null && !meant.source)) {
      this.#find('plan.wrong-kind', { which: 'key' }, offset, path);
      return undefined;
    }
    if (meant.anchor) this.#anchors.set(meant.anchor, meant);
    const key = (meant.source ?? String(meant.value)).normalize('NFC');
    if (flow && /^\d+$/.test(key) && !pair.value) {
      this.#find('plan.decimal-comma', { which: 'entry', given: clip(key) }, offset, path);
      return undefined;
    }
    if (key === '__proto__') {
      this.#find('plan.unknown-key', { which: 'reserved', name: key, known: [] }, offset, path);
      return undefined;
    }
    return key;
  }

  #stop<C extends FindingCode>(code: C, values: CodeValues<C>, leaf: Leaf, path: PlanPath): null {
    this.stopped = true;
    this.#find(code, values, leaf.offset, path.slice(0, 4));
    return null;
  }

  #find<C extends FindingCode>(code: C, values: CodeValues<C>, offset: number, path: PlanPath): void {
    this.findings.push(findingWith(code, values, { subject: sayPath(path), at: this.#source.place(offset) }));
  }
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}...` : text);
