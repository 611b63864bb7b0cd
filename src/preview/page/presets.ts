import { computed } from '@preact/signals';
import { filesNamed, readPlan } from '../../plan/index.ts';
import type { OpenedPlan } from '../state/store.ts';

export interface Preset {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  /** Address of a picture of its mold, taken of this page. */
  readonly picture: string;
  /** Its files, where the page has them in itself: names and texts. */
  readonly files: readonly (readonly [name: string, text: string])[];
  plan(): Omit<OpenedPlan, 'kept'>;
}

const texts: Record<string, string> = import.meta.glob('../../../presets/**/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** Outlines are small enough to be in the page itself; meshes are not. */
const outlines: Record<string, string> = import.meta.glob('../../../presets/**/*.svg', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const pictures: Record<string, string> = import.meta.glob('./pictures/*.jpg', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** The path of a plan within the presets' folder, and what there is to say about it. */
const offered = [
  ['hedgerow/plan.yaml', 'A mixed order of charms in rubber, with build-ups, gates and vents.'],
  ['hedgerow-rigid/plan.yaml', 'Test halves to print or machine.'],
  ['pattern-plates/plan.yaml', 'Plates to pour silicone on.'],
  ['stand-ins-only/plan.yaml', 'No meshes at all: parts given by outline and height.'],
  ['sprue-form-only.yaml', 'A center sprue form and nothing else.'],
] as const;

const whole = (path: string): string => texts[`../../../presets/${path}`] ?? '';
const titleOf = (text: string): string => /^title: *(.+)$/m.exec(text)?.[1] ?? '';
/** Where a preset's files are: beside the page. A page in one file has none beside it. */
function filesAt(path: string): string {
  const folder = path.slice(0, path.lastIndexOf('/') + 1);
  return new URL(`presets/${folder}`, document.baseURI).href;
}

function presetAt([path, says]: (typeof offered)[number]): Preset & { readonly isWhole: boolean } {
  const text = whole(path);
  const folder = path.slice(0, path.lastIndexOf('/') + 1);
  const named = filesNamed(readPlan(text, path).plan);
  const files = named.flatMap((file): [string, string][] => {
    const outline = outlines[`../../../presets/${folder}${file}`];
    return outline === undefined ? [] : [[file, outline]];
  });
  return {
    id: path,
    title: titleOf(text),
    says,
    picture: pictures[`./pictures/${path.replace(/(\/plan)?\.yaml$/, '')}.jpg`] ?? '',
    files,
    isWhole: files.length === named.length,
    plan: () => ({
      name: path.split('/').at(-1) ?? path,
      text,
      origin: 'preset',
      ...(!__ONE_FILE__ && { filesAt: filesAt(path) }),
    }),
  };
}

/**
 * Those that can be shown: in one file only what is wholly in it. And the titles of those that cannot, for their meshes
 * lie beside the program. Worked out when first looked at.
 */
export const offers = computed(() => {
  const all = offered.map(presetAt);
  const shown = (one: (typeof all)[number]): boolean => !__ONE_FILE__ || one.isWhole;
  return {
    presets: all.filter(shown),
    notCarried: all.filter((one) => !shown(one)).map(({ title }) => title),
  };
});
