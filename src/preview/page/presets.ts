import type { OpenedPlan } from '../state/store.ts';

export interface Preset {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  /** Address of a picture of its mold, taken of this page. */
  readonly picture: string;
  plan(): Omit<OpenedPlan, 'kept'>;
}

const texts: Record<string, string> = import.meta.glob('../../../presets/**/*.yaml', {
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
const hasFiles = (text: string): boolean => /(file|outline): *\S/.test(text.replaceAll(/^ *#.*$/gm, ''));

/** Where a preset's files are: beside the page. A page in one file has none beside it. */
function filesAt(path: string): string {
  const folder = path.slice(0, path.lastIndexOf('/') + 1);
  return new URL(`presets/${folder}`, document.baseURI).href;
}

export const presets: readonly Preset[] = offered
  .filter(([path]) => !__ONE_FILE__ || !hasFiles(whole(path)))
  .map(([path, says]) => {
    const text = whole(path);
    return {
      id: path,
      title: titleOf(text),
      says,
      picture: pictures[`./pictures/${path.replace(/(\/plan)?\.yaml$/, '')}.jpg`] ?? '',
      plan: () => ({
        name: path.split('/').at(-1) ?? path,
        text,
        origin: 'preset',
        ...(!__ONE_FILE__ && { filesAt: filesAt(path) }),
      }),
    };
  });
